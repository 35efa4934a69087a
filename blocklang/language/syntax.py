"""The syntax tree: what a block file says, line by line, before anything is worked out.

Nodes are named tuples, because a class of that kind is made in a fifth of the time that a frozen dataclass takes and
every command waits for it. `start` and `end` are character offsets into the file's text.
"""

from typing import NamedTuple, Union

from blocklang.diagnostics import SourceText, Span


class Word(NamedTuple):
    """A name, a number, a colour or a text, as written."""

    text: str
    start: int
    end: int


class Number(NamedTuple):
    """A number without a unit."""

    text: str
    start: int
    end: int


class Operation(NamedTuple):
    """Arithmetic: `verb` is + - * / negative sqrt sin cos tan width height, or a unit; `depth` counts what is inside."""

    verb: str
    parts: "tuple[Expression, ...]"
    depth: int
    start: int
    end: int


Expression = Union[Word, Number, Operation]


class Heading(NamedTuple):
    """A heading line with one text: block, language, family, note, by, licence or source."""

    verb: str
    text: Word
    start: int
    end: int


class SizeLine(NamedTuple):
    """The finished size; without a height the block is square."""

    width: Expression
    height: Expression | None
    start: int
    end: int


class AllowanceLine(NamedTuple):
    """The seam allowance."""

    width: Expression
    start: int
    end: int


class CountsLine(NamedTuple):
    """How many patches and seams the block is said to have."""

    patches: Word
    seams: Word
    start: int
    end: int


class FabricLine(NamedTuple):
    """One fabric and how it looks."""

    name: Word
    short: Word | None
    role: Word
    value: Word
    colour: Word
    printed: Word | None
    title: Word | None
    start: int
    end: int


class LetLine(NamedTuple):
    """A named length, number or angle."""

    name: Word
    value: Expression
    start: int
    end: int


class Spot(NamedTuple):
    """Where a point lies: `verb` is at, point, from, along, between or meeting."""

    verb: str
    points: tuple[Word, ...]
    amounts: tuple[Expression, ...]
    start: int
    end: int


class PointLine(NamedTuple):
    """A named point."""

    name: Word
    spot: Spot
    start: int
    end: int


class Step(NamedTuple):
    """One step of an outline; `bend` is "", via, clockwise, counterclockwise or not."""

    to: Word
    bend: str
    by: Word | None
    start: int
    end: int


class OutlineLine(NamedTuple):
    """The outline of the block; without steps it is whatever the patches cover."""

    steps: tuple[Step, ...]
    start: int
    end: int


class Material(NamedTuple):
    """What a patch is cut from: one fabric, or stripes that start along a line between two points."""

    fabrics: tuple[Word, ...]
    along: tuple[Word, ...]
    start: int
    end: int


class Rounds(NamedTuple):
    """How often an outline goes on with the same steps, turned about a point."""

    times: Word
    about: Word
    start: int
    end: int


class PatchLine(NamedTuple):
    """A patch through points."""

    name: Word
    material: Material
    steps: tuple[Step, ...]
    rounds: Rounds | None
    start: int
    end: int


class RectangleLine(NamedTuple):
    """A square or rectangular patch with its lower left corner at a spot."""

    name: Word
    material: Material
    spot: Spot
    width: Expression
    height: Expression | None
    start: int
    end: int


class AddLine(NamedTuple):
    """Strips sewn one after the other to sides of what is drawn so far."""

    name: Word
    fabrics: tuple[Word, ...]
    sides: tuple[Word, ...]
    width: Expression
    start: int
    end: int


class Swap(NamedTuple):
    """A fabric of a placed block, and the fabric to use instead."""

    theirs: Word
    ours: Word
    start: int
    end: int


class PlaceLine(NamedTuple):
    """A block placed by name."""

    block: Word
    name: Word
    spot: Spot
    sizes: tuple[Expression, ...]
    turns: tuple[Expression, ...]
    mirrored: bool
    swaps: tuple[Swap, ...]
    start: int
    end: int


class WishLine(NamedTuple):
    """What the author wants of the sewing: `verb` says which wish, `names` whom it is about, in the order written."""

    verb: str
    names: tuple[Word, ...]
    start: int
    end: int


class Turn(NamedTuple):
    """A group repeated round a point."""

    times: Word
    about: Word
    by: Expression | None
    items: "tuple[Item, ...]"
    start: int
    end: int


class Mirror(NamedTuple):
    """A group and its mirror image across a line."""

    across: tuple[Word, ...]
    items: "tuple[Item, ...]"
    start: int
    end: int


class CellText(NamedTuple):
    """One cell of a row: `verb` is square, rising, falling, made, placed, empty or comma; a made cell's maker comes first."""

    verb: str
    words: tuple[Word, ...]
    start: int
    end: int


class Row(NamedTuple):
    """One row of cells."""

    cells: tuple[CellText, ...]
    start: int
    end: int


class Rows(NamedTuple):
    """A grid of cells."""

    name: Word | None
    field: tuple[Word, ...]
    columns: tuple[Word, ...]
    heights: tuple[Word, ...]
    rows: tuple[Row, ...]
    start: int
    end: int


class CutLine(NamedTuple):
    """Cuts along whole lines, from each point on to the next, or (`whole` false) one cut between two points."""

    whole: bool
    points: tuple[Word, ...]
    start: int
    end: int


class Piece(NamedTuple):
    """The pieces that hold these points, and what they are cut from."""

    name: Word
    material: Material
    at: tuple[Word, ...]
    start: int
    end: int


class Cutting(NamedTuple):
    """A shape cut along lines; without steps it is the whole block."""

    steps: tuple[Step, ...]
    cuts: tuple[CutLine | Piece, ...]
    start: int
    end: int


Group = Union[Turn, Mirror, Rows, Cutting]
Statement = Union[
    Heading,
    SizeLine,
    AllowanceLine,
    CountsLine,
    FabricLine,
    LetLine,
    PointLine,
    OutlineLine,
    PatchLine,
    RectangleLine,
    AddLine,
    PlaceLine,
    WishLine,
    tuple[Heading, ...],
]
Item = Union[Statement, Group]


class BlockFile(NamedTuple):
    """A whole file."""

    items: tuple[Item, ...]
    source: SourceText

    def span(self, start: int, end: int) -> Span:
        """Return a place in this file."""
        return Span(self.source, start, end)
