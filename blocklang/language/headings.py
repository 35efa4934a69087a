"""The lines about the whole block: its name, its size, its fabrics and whom it is from."""

from fractions import Fraction

from blocklang.block import Counts, Credit, Fabric, LengthUnit, Print, Value
from blocklang.diagnostics import Related, Span
from blocklang.language.arithmetic import length
from blocklang.language.quantities import INCHES, Exact, Quantity
from blocklang.language.scope import Scope
from blocklang.language.syntax import (
    AllowanceLine,
    BlockFile,
    CountsLine,
    Expression,
    FabricLine,
    Heading,
    Item,
    Operation,
    OutlineLine,
    SizeLine,
    Word,
)
from blocklang.limits import MOST_FABRICS, SMALLEST_LENGTH

#: The language version that this program reads.
VERSION = 1
#: A quarter inch, what the trade sews with unless the file says otherwise.
QUARTER_INCH = Fraction(1, 4)
#: More than an inch of allowance is a slip.
WIDEST_ALLOWANCE = 1


class Headings:
    """What the headings of a file say."""

    def __init__(self) -> None:
        """Begin with nothing said."""
        self.said: dict[str, str] = {}
        self.notes: list[str] = []
        self.allowance: Exact = QUARTER_INCH
        self.outline: OutlineLine | None = None
        self.counts: Counts | None = None
        self.places: dict[str, Span] = {}

    @property
    def credit(self) -> Credit:
        """Whom the block is from."""
        said = self.said
        return Credit(said.get("block", ""), said.get("by", ""), said.get("licence", ""), said.get("source", ""))


def read_headings(scope: Scope, tree: BlockFile) -> Headings:
    """Read every line about the whole block, the size first, because lengths depend on its unit."""
    headings = Headings()
    flat = [line for item in tree.items for line in (item if _is_headings(item) else (item,))]
    for line in flat:
        if isinstance(line, Heading):
            _read_text(scope, headings, line)
        elif isinstance(line, SizeLine) and _is_first(scope, headings, "size", line[-2:]):
            _read_size(scope, line)
    for line in flat:
        if isinstance(line, FabricLine):
            _read_fabric(scope, line)
        elif isinstance(line, AllowanceLine) and _is_first(scope, headings, "seam allowance", line[-2:]):
            headings.allowance = _read_allowance(scope, line)
        elif isinstance(line, OutlineLine) and _is_first(scope, headings, "outline", line[-2:]):
            headings.outline = line
        elif isinstance(line, CountsLine) and _is_first(scope, headings, "counts", line[-2:]):
            headings.counts = _read_counts(scope, line)
    _check_missing(scope, headings)
    return headings


def _is_headings(item: Item) -> bool:
    return type(item) is tuple


def _is_first(scope: Scope, headings: Headings, what: str, at: tuple[int, int]) -> bool:
    first = headings.places.get(what)
    if first is None:
        headings.places[what] = scope.draft.span(*at)
        return True
    related = (Related(first, "The first one is here."),)
    found = f"A file has one `{what}` line."
    scope.draft.error("said-twice", f"There are two `{what}` lines", found, "Take one of them out.", at, related)
    return False


def _read_text(scope: Scope, headings: Headings, line: Heading) -> None:
    if line.verb == "note":
        headings.notes.append(line.text.text)
        return
    if not _is_first(scope, headings, line.verb, line[-2:]):
        return
    headings.said[line.verb] = line.text.text
    if line.verb == "language":
        _check_version(scope, line)
    elif line.verb == "block" and not line.text.text.strip():
        scope.draft.error("no-name", "The block has no name", "The text is empty.", "Give it a name.", line.text[1:])


def _check_version(scope: Scope, line: Heading) -> None:
    if line.text.text == str(VERSION):
        return
    text = line.text.text
    if text.isdigit() and int(text) > VERSION:
        found = f"It is written in version {text} of the language, and this program reads version {VERSION}."
        scope.draft.error(
            "newer-language",
            "This file is newer than the program",
            found,
            "Get a newer blocklang to read it.",
            line.text[1:],
        )
        return
    found = f"There is no version {text} of the language."
    scope.draft.error("unknown-version", "This version is not known", found, "Write `language 1`.", line.text[1:])


def _read_size(scope: Scope, line: SizeLine) -> None:
    draft = scope.draft
    unit = _unit_of(line.width) or (_unit_of(line.height) if line.height else "")
    if unit:
        draft.unit, draft.inches = LengthUnit(unit), INCHES[unit]
    sides = [length(scope, side) for side in (line.width, line.height or line.width)]
    for side, said in zip(sides, (line.width, line.height), strict=True):
        if side is not None and side < SMALLEST_LENGTH and said is not None:
            found = f"A block is at least {SMALLEST_LENGTH} in wide and high, and this is {float(side):.4g} in."
            draft.error("size-too-small", "This size cannot be used", found, "", said[-2:])
            return
    if sides[0] is not None and sides[1] is not None:
        draft.width, draft.height = Quantity(sides[0], 1), Quantity(sides[1], 1)


def _unit_of(expression: Expression) -> str:
    """Return the first unit of length in some arithmetic."""
    waiting = [expression]
    while waiting:
        part = waiting.pop()
        if isinstance(part, Operation):
            if part.verb in INCHES:
                return part.verb
            waiting += reversed(part.parts)
    return ""


def _read_allowance(scope: Scope, line: AllowanceLine) -> Exact:
    width = length(scope, line.width)
    if width is not None and not 0 < width <= WIDEST_ALLOWANCE:
        found = (
            f"A seam allowance is more than nothing and at most {WIDEST_ALLOWANCE} in; this is {float(width):.4g} in."
        )
        scope.draft.error("bad-allowance", "This seam allowance cannot be sewn", found, "", line.width[-2:])
        return QUARTER_INCH
    return QUARTER_INCH if width is None else width


def _read_counts(scope: Scope, line: CountsLine) -> Counts | None:
    for word in (line.patches, line.seams):
        if not word.text.isdecimal():
            found = f"Patches and seams are counted in whole numbers; this says {word.text}."
            scope.draft.error("number-out-of-range", "This number cannot be used here", found, "", word[1:])
            return None
    return Counts(int(line.patches.text), int(line.seams.text), scope.draft.span(line.start, line.end))


def _read_fabric(scope: Scope, line: FabricLine) -> None:
    draft, name = scope.draft, line.name.text
    if not scope.declare(line.name, "fabric") or (line.short and not scope.declare(line.short, "fabric")):
        return
    colour, value = read_colour(line.colour.text), line.value.text
    if colour is None:
        found = f"`{line.colour.text}` is not a colour: a colour is # and six (or three) of 0-9 and a-f."
        draft.error("bad-colour", "This is not a colour", found, "Write it like `#1f3a5f`.", line.colour[1:])
    if value not in VALUES:
        from blocklang.language.suggesting import did_you_mean

        found = f"`{value}` is not a value of fabric."
        advice = did_you_mean(value, VALUES, "Write `light`, `medium` or `dark`.")
        draft.error("bad-value", "This value is not known", found, advice, line.value[1:])
    printed = _read_print(scope, line.printed)
    if len(draft.fabrics) >= MOST_FABRICS:
        found = f"A block has at most {MOST_FABRICS} fabrics."
        draft.error("too-many-fabrics", "There are too many fabrics", found, "", line[-2:])
        return
    title = line.title.text if line.title else ""
    shade = Value(value) if value in VALUES else Value.MEDIUM
    draft.fabrics[name] = Fabric(name, line.role.text, shade, colour or "#000000", title, printed)
    draft.fabric_places[name] = draft.span(*line.name[1:])
    if line.short:
        draft.short_names[line.short.text] = name


def _read_print(scope: Scope, word: Word | None) -> Print:
    """Return what the print of a fabric asks of the cutting."""
    if word is None:
        return Print.ALL_OVER
    if word.text not in PRINTS:
        from blocklang.language.suggesting import did_you_mean

        found = f"`{word.text}` says nothing about a print."
        advice = did_you_mean(word.text, tuple(PRINTS), "Write `directional` or `fussy`, or nothing.")
        scope.draft.error("bad-print", "This print is not known", found, advice, word[1:])
    return PRINTS.get(word.text, Print.ALL_OVER)


#: A directional print stands upright in every patch; of a fussy one each patch shows a motif in its middle.
PRINTS = {"directional": Print.ONE_WAY, "fussy": Print.MOTIFS}
VALUES = tuple(value.value for value in Value)
HEX = frozenset("0123456789abcdef")


def read_colour(text: str) -> str | None:
    """Return a colour as #rrggbb in lower case; None when the text is not one."""
    digits = text.removeprefix("#").lower()
    if not set(digits) <= HEX or len(digits) not in (3, 6):
        return None
    return "#" + (digits if len(digits) == 6 else "".join(digit * 2 for digit in digits))


def _check_missing(scope: Scope, headings: Headings) -> None:
    at = _beginning(scope.draft.source.text)
    if "block" not in headings.places:
        found = "A file begins with the name of its block."
        advice = 'Write a line such as `block "Harbour Light"`.'
        scope.draft.error("no-name", "The block has no name", found, advice, at)
    if "size" not in headings.places:
        found = "Nothing says how large the finished block is."
        scope.draft.error("no-size", "The block has no size", found, "Write a line such as `size 12 in`.", at)


def _beginning(text: str) -> tuple[int, int]:
    """Return the place of the first line that is not empty."""
    start = len(text) - len(text.lstrip())
    end = text.find("\n", start)
    return start, len(text) if end < 0 else end
