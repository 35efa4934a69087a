"""The block: what a file means once names, sizes, groups and placed blocks are worked out."""

from dataclasses import dataclass
from enum import StrEnum

from blocklang.diagnostics import Span
from blocklang.geometry import Outline, Point


class Value(StrEnum):
    """How light a fabric looks beside the others."""

    LIGHT = "light"
    MEDIUM = "medium"
    DARK = "dark"


class LengthUnit(StrEnum):
    """The unit that a file's lengths are written and shown in."""

    INCH = "in"
    CENTIMETRE = "cm"
    MILLIMETRE = "mm"

    @property
    def per_inch(self) -> float:
        """How many of the unit make an inch."""
        return {"in": 1.0, "cm": 2.54, "mm": 25.4}[self.value]


class SpinSense(StrEnum):
    """Which way round the allowances of a junction are pressed, seen from the front of the block."""

    CLOCKWISE = "clockwise"
    COUNTERCLOCKWISE = "counterclockwise"
    NONE = "none"


class Print(StrEnum):
    """What the print of a fabric asks of the cutting."""

    ALL_OVER = "all-over"  # turned as the cutting likes
    ONE_WAY = "one-way"  # stands upright in the block: never turned
    MOTIFS = "motifs"  # fussy-cut: one motif in the middle of each patch


@dataclass(frozen=True, slots=True)
class Fabric:
    """One fabric; `colour` is always #rrggbb in lower case, `title` what to call it on a sheet ("" means its id)."""

    id: str
    role: str
    value: Value
    colour: str
    title: str = ""
    printed: Print = Print.ALL_OVER


@dataclass(frozen=True, slots=True)
class Stripes:
    """A patch cut from a strip set: equal strips of these fabrics, the first lying along the edge start to end."""

    fabrics: tuple[str, ...]
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Patch:
    """One piece of one fabric, or of one strip set.

    `id` is unique in the block ("diamond.3"), `name` is what equal patches share ("diamond"), `group` is the chain
    of placed blocks and named units that the patch belongs to, outermost first.
    """

    id: str
    name: str
    fabric: str
    outline: Outline
    stripes: Stripes | None = None
    group: tuple[str, ...] = ()
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class NamedPoint:
    """A point that the file names; junctions there carry its name."""

    name: str
    at: Point


@dataclass(frozen=True, slots=True)
class StopWish:
    """The author says that the seam between two patches stops at a point."""

    patches: tuple[str, str]
    at: Point
    span: Span


@dataclass(frozen=True, slots=True)
class SetInWish:
    """The author says that a patch is set in between others, after they are joined."""

    patch: str
    between: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class FirstWish:
    """The author says that these patches are joined to one unit before they meet anything else."""

    name: str
    patches: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class RowsWish:
    """The author says that the block is sewn in rows (or columns) before they are joined."""

    columns: bool
    span: Span


@dataclass(frozen=True, slots=True)
class PartialWish:
    """The author says that the seam between two patches is sewn in part and finished later."""

    patches: tuple[str, str]
    span: Span


@dataclass(frozen=True, slots=True)
class PressWish:
    """The author says which way the seam between two patches is pressed; `toward` is None for open."""

    patches: tuple[str, str]
    toward: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class PressFabricWish:
    """The author says that seams are pressed away from a fabric (or toward it) wherever it meets another."""

    fabric: str
    away: bool
    span: Span


@dataclass(frozen=True, slots=True)
class SpinWish:
    """The author says which way a junction is spun, or that it is not."""

    at: Point
    sense: SpinSense
    span: Span


Wish = StopWish | SetInWish | FirstWish | RowsWish | PartialWish | PressWish | PressFabricWish | SpinWish


@dataclass(frozen=True, slots=True)
class Credit:
    """Who made a block, under which licence, and where it comes from; texts as written, "" when not said."""

    name: str
    author: str = ""
    licence: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Counts:
    """How many patches and seams the author says there are; two patches side by side have one seam."""

    patches: int
    seams: int
    span: Span


@dataclass(frozen=True, slots=True)
class Block:
    """A whole block; lengths in ticks.

    `outline` is the finished outline with its lower left bounds at (0, 0); `credits` holds the block's own credit
    first, then one for each block placed in it.
    """

    name: str
    unit: LengthUnit
    outline: Outline
    seam_allowance: int
    fabrics: tuple[Fabric, ...]
    patches: tuple[Patch, ...]
    points: tuple[NamedPoint, ...] = ()
    wishes: tuple[Wish, ...] = ()
    credits: tuple[Credit, ...] = ()
    family: str = ""
    notes: tuple[str, ...] = ()
    span: Span | None = None
    counts: Counts | None = None

    @property
    def size(self) -> tuple[int, int]:
        """The finished width and height, in ticks."""
        left, low, right, high = self.outline.bounds()
        return right - left, high - low

    def fabric(self, fabric_id: str) -> Fabric:
        """Return the fabric of that id."""
        return next(fabric for fabric in self.fabrics if fabric.id == fabric_id)
