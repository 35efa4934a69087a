"""Cutting as frozen values; all lengths in inches."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING

from blocklang.geometry import Outline

if TYPE_CHECKING:
    from blocklang.cutting.offers import Offer


class Rounding(StrEnum):
    """Which marks a ruler has."""

    EIGHTHS = "eighths"
    SIXTEENTHS = "sixteenths"
    MILLIMETRES = "millimetres"


class Lay(StrEnum):
    """How shapes lie side by side along a strip."""

    UPRIGHT = "upright"  # cut straight across
    SLANTED = "slanted"  # all cuts at one angle
    POINTED = "pointed"  # triangles, every second one turned
    BOTH_ENDS = "both-ends"  # trapezoids with two slanted ends, every second one turned
    ONE_END = "one-end"  # trapezoids with one slanted end, every second one turned
    TEMPLATE = "template"  # cut round a template


@dataclass(frozen=True, slots=True)
class CuttingOptions:
    """What the person at the cutting table chooses; lengths in inches."""

    copies: int = 1
    usable_width: Fraction = Fraction(40)
    rounding: Rounding = Rounding.EIGHTHS
    round_up: bool = True
    oversize: Fraction = Fraction(0)  # added to pieces on the outside, to be squared up
    shrinkage: Fraction = Fraction(0)  # the part of its length that cloth loses in the wash, before it is cut


@dataclass(frozen=True, slots=True)
class Measure:
    """A length as it comes out exactly, and as the ruler shows it (for millimetres still in inches)."""

    exact: float
    shown: Fraction


@dataclass(frozen=True, slots=True)
class Strip:
    """Strips cut across the width of the fabric for one kind of piece; `holds` shapes fit in a strip."""

    width: Measure
    holds: int
    count: int


@dataclass(frozen=True, slots=True)
class Piece:
    """One line of the cutting list: equal patches of one fabric, cut in one way, for all copies of the block.

    `patches` are those of one block, `count` is how many are cut for all copies. `shape` is cut `shapes` times, each
    divided into `yields` patches (1; 2 for a square cut once across; 4 for twice). `cut` holds the sides of the shape
    as cut: one for a square, two (short, long) for a rectangle, strip width and cross-cut distance for a rhombus or
    parallelogram, strip width and long side for a trapezoid or an equilateral triangle, flat to flat and point to point
    for a hexagon, none for a template. `angle` is the cross-cut angle in degrees. `marks` are lengths marked on the shape
    before its corners are cut off: of a kite how far from its tip it is widest, of an octagon the side that is left.
    `pose` is "" but for fabrics that are never turned ("upright", "rising", "falling") or fussy-cut ("motif"); the cut
    of an upright rectangle begins with its height, which is the width of its strip.
    `outline` is the cut outline of the first of `patches` as it lies in the block (finished outline offset by the seam
    allowance, mitred, tips trimmed), in ticks; `strip` says what the shapes need when they are cut alone, None when
    they are too wide for the fabric or come from a strip set; `strip_set` indexes `Cutting.strip_sets` when the patch
    is cut from one. `how` is what a method adds to the sentence that says how to cut.
    """

    fabric: str
    method: str
    name: str
    patches: tuple[int, ...]
    count: int
    cut: tuple[Measure, ...]
    shapes: int
    yields: int
    angle: float | None
    reversed: int  # how many of `count` are mirror images
    grain: str
    strip: Strip | None
    strip_set: int | None
    outline: Outline
    lay: Lay = Lay.TEMPLATE
    how: str = ""
    marks: tuple[Measure, ...] = ()
    pose: str = ""


@dataclass(frozen=True, slots=True)
class StripSet:
    """Strips sewn side by side and then cut as one; `sewn` is what the set measures, `trimmed` what it is trimmed to.

    Every strip is the finished stripe with two seam allowances; what is trimmed off comes equally from both sides.
    """

    fabrics: tuple[str, ...]
    strip: Measure
    sewn: Measure
    trimmed: Measure
    angle: float
    sub_cut: Measure
    holds: int
    sets: int


@dataclass(frozen=True, slots=True)
class StripLayout:
    """What is cut from strips that are all alike: `pieces` pairs an index in `Cutting.pieces` with a number of shapes.

    `strip_set` indexes `Cutting.strip_sets` when the whole strip goes into a strip set.
    """

    width: Measure
    count: int
    pieces: tuple[tuple[int, int], ...]
    strip_set: int | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """How equal shapes of a piece follow each other along a strip: n of them take `lean + n * step` inches.

    `piece` indexes `Cutting.pieces`. `lots` are numbers of shapes that do not mix: as drawn, then mirror images.
    `area` is that of one shape. `length` is that of a shape that is cut straight across, exactly; None when the cuts
    slant.
    """

    piece: int
    width: Fraction
    step: float
    lean: float
    lots: tuple[int, ...]
    area: float
    length: Fraction | None = None


@dataclass(frozen=True, slots=True)
class FabricNeed:
    """What to buy of one fabric: the strips, their length together, the area bound, and yards in eighths.

    `length` and `bound` are inches of fabric at the usable width; `bound` is the area of all shapes as cut, divided by
    that width, which no plan can go below. `yards` is the length and what shrinks. `layout`
    tells what comes from which strip; it is a plan, not the best one.
    """

    fabric: str
    strips: tuple[tuple[Measure, int], ...]
    length: float
    bound: float
    yards: Fraction
    layout: tuple[StripLayout, ...] = ()


@dataclass(frozen=True, slots=True)
class Cutting:
    """The whole cutting list."""

    options: CuttingOptions
    seam_allowance: float
    pieces: tuple[Piece, ...]
    strip_sets: tuple[StripSet, ...]
    needs: tuple[FabricNeed, ...]
    notes: tuple[str, ...]  # what the rounding adds up to, what to trim, in plain sentences
    runs: tuple[Run, ...] = ()  # all that is cut from strips, those longer than a strip too; none from strip sets
    offers: "tuple[Offer, ...]" = ()  # other ways to cut and sew units, several at once
