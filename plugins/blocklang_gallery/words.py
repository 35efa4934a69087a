"""Every word on the pages of a gallery that is not a block's own."""

from fractions import Fraction
from math import ceil
from typing import Final

from blocklang.block import Credit, LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.cutting import CuttingOptions, FabricNeed, format_measure

TITLE: Final = "Blocks to sew"
NO_FAMILY: Final = "Other blocks"

#: The first page. `{found}` and `{all}` are numbers that change while the page is read.
FIRST: Final = {
    "choose": "Choose a block to see its fabrics, sizes and cutting, and to take its sewing sheet.",
    "families": "Families",
    "find": "Find a block",
    "words": "Words",
    "words_hint": "name, family or maker",
    "any": "any",
    "clear_all": "Clear all",
    "found": "{found} of {all} blocks",
    "nothing": "No block is all of that. Take one wish back, or clear them all.",
    "credits": "Credits",
}

#: The page of a block.
PAGE: Final = {
    "all_blocks": "All blocks",
    "take": "Sheets and files",
    "at_a_glance": "At a glance",
    "colours": "Try other colours",
    "colours_hint": "Choose a colour for a fabric. The picture changes at once, and this browser keeps your colours.",
    "reset": "Colours of the block",
    "line": "To make the sewing sheet in these colours and this size, keep the block file and type:",
    "copy_line": "Copy this line",
    "copied": "Copied.",
    "select": "Selected: copy it now.",
    "sizes": "Sizes and cutting",
    "choose_size": "Finished size",
    "fabric": "Fabric",
    "buy": "Buy",
    "cut": "Cut",
    "strip_sets": "Strip sets",
    "steps": "What it measures after each step",
    "steps_hint": "With the seam allowance on every side. Steps that make no rectangle are not measured.",
    "step": "Step",
    "made": "Made",
    "measures": "Measures",
    "credits": "Credits and licence",
    "no_credit": "The block file does not say who made it.",
}

FIND_FAMILY: Final = "Family"
FIND_DIFFICULTY: Final = "Difficulty"
FIND_PATCHES: Final = "Patches"
FIND_SET_IN: Final = "Set-in seams"
FIND_SIZE: Final = "Size as drawn"
FIND_FABRICS: Final = "Fabrics"
NO, SOME = "none", "some"


def counted(count: int, noun: str, plural: str = "") -> str:
    """Say how many there are."""
    return f"{count} {noun if count == 1 else plural or noun + 's'}"


def no_size(written: str) -> str:
    """Say that a size cannot be read."""
    return f"`{written}` is no size: write --set sizes=6in,9in,12in."


def too_many_sizes(most: int) -> str:
    """Say that too many sizes were asked for."""
    return f"A page tells {most} sizes at most: name fewer with --set sizes."


def picture_of(name: str) -> str:
    """Say what the picture shows."""
    return f"{name}: the finished block"


def family_title(family: str) -> str:
    """Return a family's name as a heading: its first letter large, spaces for hyphens."""
    spaced = family.replace("-", " ")
    return spaced[:1].upper() + spaced[1:] if family else NO_FAMILY


def at_most(most: str) -> str:
    """Name a range that has no lower end."""
    return f"up to {most}"


def from_to(least: str, most: str) -> str:
    """Name a range of whole numbers."""
    return f"{least} to {most}"


def over_to(over: str, most: str) -> str:
    """Name a range of lengths, the first not in it."""
    return f"over {over}, up to {most}"


def more_than(number: str) -> str:
    """Name a range that has no upper end."""
    return f"over {number}"


def byline(credit: Credit) -> str:
    """Say whom a block is by."""
    return f"by {credit.author}" if credit.author else ""


def credit_line(credit: Credit) -> str:
    """Say whom a block is by, under which licence, and where it comes from."""
    told = (credit.name, byline(credit), credit.licence, credit.source)
    return ", ".join(part for part in told if part)


def made_by(author: str, licence: str, count: int) -> str:
    """Say how many blocks are by one person under one licence."""
    blocks = counted(count, "block")
    licensed = f", {licence}" if licence else ""
    return f"{blocks} by {author}{licensed}" if author else f"{blocks} of unknown makers{licensed}"


def glance(facts: Facts, narrowest: str) -> tuple[tuple[str, str], ...]:
    """Say what a sewer wants to know first, each with its name."""
    hard = f"{facts.difficulty} ({', '.join(facts.because)})" if facts.because else facts.difficulty
    return (
        ("Difficulty", hard),
        ("Patches", str(facts.patches)),
        ("Seams", str(facts.seams)),
        ("Steps", str(facts.steps)),
        ("Set-in seams", _or_none(facts.set_in)),
        ("Partial seams", _or_none(facts.partials)),
        ("Curved seams", _or_none(facts.curves)),
        ("Narrowest patch", f"{narrowest} finished"),
    )


def on_card(facts: Facts, size: str) -> str:
    """Say the least about a block, under its picture."""
    set_in = f", {counted(facts.set_in, 'set-in seam')}" if facts.set_in else ""
    return f"{counted(facts.patches, 'patch', 'patches')}{set_in}, {size}, {facts.difficulty}"


def size_told(wide: str, high: str, shape: str) -> str:
    """Say a finished or unfinished size."""
    if wide != high:
        return f"{wide} by {high}"
    return f"{wide} square" if shape == "square" else f"{wide} wide and high"


def size_label(wide: str, high: str, own: bool) -> str:
    """Name a size to choose."""
    size = wide if wide == high else f"{wide} by {high}"
    return f"{size}, as drawn" if own else size


def strips(count: int, width: str) -> str:
    """Say how many strips of one width are cut."""
    return f"{counted(count, 'strip')} {width} wide"


def piece(name: str, sentence: str) -> str:
    """Say how one kind of piece is cut."""
    return f"{name}: {sentence}"


def size_heading(name: str, size: str) -> str:
    """Head what is told about one size."""
    return f"{name}, {size} finished"


def size_sentences(unfinished: str, narrowest: str, options: CuttingOptions, unit: LengthUnit) -> tuple[str, ...]:
    """Say what a block of one size measures before it is sewn on ("" where that is no width and height), and more."""
    blocks = "one block" if options.copies == 1 else f"{options.copies} blocks"
    measures = (f"It measures {unfinished} before it is sewn to anything else.",) if unfinished else ()
    return (
        *measures,
        f"Its narrowest patch finishes {narrowest} wide.",
        f"The cutting is for {blocks}, from fabric {format_measure(options.usable_width, unit)} wide between the selvages.",
    )


def left_out(sizes: tuple[str, ...]) -> str:
    """Say which sizes are not told, and why."""
    listed = " and ".join(filter(None, (", ".join(sizes[:-1]), sizes[-1])))
    return f"Not in {listed}: a patch would be narrower than its seam allowance."


def to_buy(need: FabricNeed, options: CuttingOptions, unit: LengthUnit) -> str:
    """Say what to buy of one fabric: in eighths of a yard, or in steps of ten centimetres."""
    if unit is LengthUnit.INCH:
        return _yards(need.yards)
    tens = ceil(need.length * 2.54 / 10 / float(1 - options.shrinkage) - 0.001)
    return f"{tens * 10} cm" if tens < 10 else f"{tens / 10:g} m"


def times(title: str, count: int) -> str:
    """Say a step, and how many times it is sewn."""
    return title if count == 1 else f"{title} ({count} times)"


#: What can be taken from a page: which output, in which format, what it is called, and how it is told.
TAKEN: Final = (
    ("sewing-sheet", "pdf", "Sewing sheet", "to print"),
    ("sewing-sheet", "html", "Sewing sheet", "to follow on a screen and tick off"),
    ("cutting-list", "pdf", "Cutting list", "to print"),
    ("templates", "pdf", "Templates", "full size, to print"),
    ("colouring-page", "pdf", "Colouring page", "to print"),
    ("diagram", "svg", "Picture", "to put on a page of your own"),
)
TEXT_FILE: Final = "text"
BLOCK_FILE: Final = ("Block file", "for making it in other sizes and colours")


def kilobytes(size: int) -> str:
    """Say how large a file is."""
    return f"{max(1, round(size / 1000))} kB"


def _or_none(count: int) -> str:
    return str(count) if count else "none"


def _yards(amount: Fraction) -> str:
    whole, part = divmod(amount, 1)
    said = " ".join(str(number) for number in (whole, part) if number) or "0"
    return f"{said} {'yard' if amount <= 1 else 'yards'}"
