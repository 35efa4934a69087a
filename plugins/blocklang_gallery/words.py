"""Every word on the pages of a gallery that is not a block's own."""

from typing import Final

from blocklang.block import Credit, LengthUnit
from blocklang.catalogue.difficulty import Difficulty
from blocklang.catalogue.facts import Facts
from blocklang.cutting import CuttingOptions, FabricNeed, describe_need, format_measure
from blocklang.wording import Saying, joined, listed, say, say_number

TITLE: Final = say("Blocks to sew")
NO_FAMILY: Final = say("Other blocks")

#: The first page. `{found}` and `{all}` are numbers that change while the page is read.
FIRST: Final = {
    "choose": say("Choose a block to see its fabrics, sizes and cutting, and to take its sewing sheet."),
    "families": say("Families"),
    "find": say("Find a block"),
    "words": say("Words"),
    "words_hint": say("name, family or maker"),
    "any": say("any"),
    "clear_all": say("Clear all"),
    "found": say("{found} of {all} blocks"),
    "nothing": say("No block is all of that. Take one wish back, or clear them all."),
    "credits": say("Credits"),
}

#: The page of a block.
PAGE: Final = {
    "all_blocks": say("All blocks"),
    "take": say("Sheets and files"),
    "at_a_glance": say("At a glance"),
    "colours": say("Try other colours"),
    "colours_hint": say(
        "Choose a colour for a fabric. The picture changes at once, and this browser keeps your colours."
    ),
    "reset": say("Colours of the block"),
    "line": say("To make the sewing sheet in these colours and this size, keep the block file and type:"),
    "copy_line": say("Copy this line"),
    "copied": say("Copied."),
    "select": say("Selected: copy it now."),
    "sizes": say("Sizes and cutting"),
    "choose_size": say("Finished size"),
    "strip_sets": say("Strip sets"),
    "steps": say("What it measures after each step"),
    "steps_hint": say("With the seam allowance on every side. Steps that make no rectangle are not measured."),
    "step": say("Step"),
    "made": say("Made"),
    "measures": say("Measures"),
    "credits": say("Credits and licence"),
    "no_credit": say("The block file does not say who made it."),
}

FIND_FAMILY: Final = say("Family")
FIND_DIFFICULTY: Final = say("Difficulty")
FIND_PATCHES: Final = say("Patches")
FIND_SET_IN: Final = say("Set-in seams")
FIND_SIZE: Final = say("Size as drawn")
FIND_FABRICS: Final = say("Fabrics")
ROLES: Final = {
    "background": say("background", context="what a fabric is for"),
    "star": say("star", context="what a fabric is for"),
    "accent": say("accent", context="what a fabric is for"),
}
NO, SOME = "none", "some"
HOW_MANY: Final = {NO: say("none", context="seams of a kind"), SOME: say("some", context="seams of a kind")}
DIFFICULTIES: Final = {
    Difficulty.EASY.value: say("easy", context="how hard a block is"),
    Difficulty.MODERATE.value: say("moderate", context="how hard a block is"),
    Difficulty.DEMANDING.value: say("demanding", context="how hard a block is"),
    Difficulty.EXPERT.value: say("expert", context="how hard a block is"),
}

#: The families of the blocks that ship; those of other files are named by their authors.
FAMILIES: Final = {
    "baskets-and-houses": say("Baskets and houses"),
    "borders-and-lattices": say("Borders and lattices"),
    "curves": say("Curves"),
    "five-patch": say("Five patch"),
    "four-patch": say("Four patch"),
    "hexagons-and-diamonds": say("Hexagons and diamonds"),
    "log-cabins": say("Log cabins"),
    "nine-patch": say("Nine patch"),
    "samplers": say("Samplers"),
    "seven-patch": say("Seven patch"),
    "stars": say("Stars"),
    "strips": say("Strips"),
    "units": say("Units"),
}


def difficulty(level: str) -> str:
    """Say how hard a block is."""
    return DIFFICULTIES.get(level, level)


def role(name: str) -> str:
    """Say what a fabric is for."""
    return ROLES.get(name, name)


def blocks(count: int) -> Saying:
    """Say how many blocks there are."""
    return say_number("{count} block", "{count} blocks", count)


def no_size(written: str) -> str:
    """Say that a size cannot be read."""
    return f"`{written}` is no size: write --set sizes=6in,9in,12in."


def too_many_sizes(most: int) -> str:
    """Say that too many sizes were asked for."""
    return f"A page tells {most} sizes at most: name fewer with --set sizes."


def picture_of(name: str) -> str:
    """Say what the picture shows."""
    return say("{name}: the finished block", name=name)


def family_title(family: str) -> str:
    """Return a family's name as a heading: its first letter large, spaces for hyphens."""
    spaced = family.replace("-", " ")
    return FAMILIES.get(family, spaced[:1].upper() + spaced[1:]) if family else NO_FAMILY


def at_most(most: str) -> str:
    """Name a range that has no lower end."""
    return say("up to {most}", most=most)


def from_to(least: str, most: str) -> str:
    """Name a range of whole numbers."""
    return say("{least} to {most}", least=least, most=most)


def over_to(over: str, most: str) -> str:
    """Name a range of lengths, the first not in it."""
    return say("over {over}, up to {most}", over=over, most=most)


def more_than(number: str) -> str:
    """Name a range that has no upper end."""
    return say("over {number}", number=number)


def byline(credit: Credit) -> str:
    """Say whom a block is by."""
    return say("by {author}", author=credit.author) if credit.author else ""


def credit_line(credit: Credit) -> str:
    """Say whom a block is by, under which licence, and where it comes from."""
    told = (credit.name, byline(credit), credit.licence, credit.source)
    return joined((part for part in told if part), ", ")


def made_by(author: str, licence: str, count: int) -> str:
    """Say how many blocks are by one person under one licence."""
    if author:
        told = say_number("{count} block by {author}", "{count} blocks by {author}", count, author=author)
    else:
        told = say_number("{count} block of unknown makers", "{count} blocks of unknown makers", count)
    return joined((told, licence), ", ") if licence else told


def glance(facts: Facts, narrowest: str) -> tuple[tuple[str, str], ...]:
    """Say what a sewer wants to know first, each with its name."""
    return (
        (FIND_DIFFICULTY, _why(facts)),
        (FIND_PATCHES, str(facts.patches)),
        (say("Seams"), str(facts.seams)),
        (say("Steps"), str(facts.steps)),
        (FIND_SET_IN, _or_none(facts.set_in)),
        (say("Partial seams"), _or_none(facts.partials)),
        (say("Curved seams"), _or_none(facts.curves)),
        (say("Narrowest patch"), say("{length} finished", length=narrowest)),
    )


def _why(facts: Facts) -> str:
    level = difficulty(facts.difficulty)
    return say("{level} ({reasons})", level=level, reasons=joined(facts.because, ", ")) if facts.because else level


def on_card(facts: Facts, size: str) -> Saying:
    """Say the least about a block, under its picture."""
    told: list[str] = [say_number("{count} patch", "{count} patches", facts.patches)]
    if facts.set_in:
        told.append(say_number("{count} set-in seam", "{count} set-in seams", facts.set_in))
    return joined((*told, size, difficulty(facts.difficulty)), ", ")


def size_told(wide: str, high: str, shape: str) -> Saying:
    """Say a finished or unfinished size."""
    if wide != high:
        return say("{width} by {height}", width=wide, height=high)
    return say("{width} square", width=wide) if shape == "square" else say("{width} wide and high", width=wide)


def size_label(wide: str, high: str, own: bool) -> str:
    """Name a size to choose."""
    size = wide if wide == high else say("{width} by {height}", width=wide, height=high)
    return say("{size}, as drawn", size=size) if own else size


def strips(count: int, width: str) -> Saying:
    """Say how many strips of one width are cut."""
    return say_number("{count} strip {width} wide", "{count} strips {width} wide", count, width=width)


def piece(name: str, sentence: str) -> Saying:
    """Say how one kind of piece is cut."""
    return say("{name}: {how}", name=name, how=sentence)


def size_heading(name: str, size: str) -> Saying:
    """Head what is told about one size."""
    return say("{name}, {size} finished", name=name, size=size)


def size_sentences(unfinished: str, narrowest: str, options: CuttingOptions, unit: LengthUnit) -> tuple[str, ...]:
    """Say what a block of one size measures before it is sewn on ("" where that is no width and height), and more."""
    return (
        *((say("It measures {size} before it is sewn to anything else.", size=unfinished),) if unfinished else ()),
        say("Its narrowest patch finishes {length} wide.", length=narrowest),
        say_number(
            "The cutting is for one block, from fabric {width} wide between the selvages.",
            "The cutting is for {count} blocks, from fabric {width} wide between the selvages.",
            options.copies,
            width=format_measure(options.usable_width, unit),
        ),
    )


def left_out(sizes: tuple[str, ...]) -> Saying:
    """Say which sizes are not told, and why."""
    return say("Not in {sizes}: a patch would be narrower than its seam allowance.", sizes=listed(sizes))


def to_buy(need: FabricNeed, options: CuttingOptions, unit: LengthUnit) -> Saying:
    """Say what to buy of one fabric: in eighths of a yard, or in steps of ten centimetres."""
    return say("Buy {amount}.", amount=describe_need(need, options, unit))


def times(title: str, count: int) -> str:
    """Say a step, and how many times it is sewn."""
    return title if count == 1 else say_number("{title} ({count} time)", "{title} ({count} times)", count, title=title)


#: What can be taken from a page: which output, in which format, what it is called, and how it is told.
TAKEN: Final = (
    ("sewing-sheet", "pdf", say("Sewing sheet"), say("to print")),
    ("sewing-sheet", "html", say("Sewing sheet"), say("to follow on a screen and tick off")),
    ("cutting-list", "pdf", say("Cutting list"), say("to print")),
    ("templates", "pdf", say("Templates"), say("full size, to print")),
    ("colouring-page", "pdf", say("Colouring page"), say("to print")),
    ("diagram", "svg", say("Picture"), say("to put on a page of your own")),
)
TEXT_FILE: Final = say("text", context="a kind of file")
BLOCK_FILE: Final = (say("Block file"), say("for making it in other sizes and colours"))


def kilobytes(size: int) -> str:
    """Say how large a file is."""
    return f"{max(1, round(size / 1000))} kB"


def _or_none(count: int) -> str:
    return str(count) if count else HOW_MANY[NO]
