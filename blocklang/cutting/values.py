"""Cutting as frozen values; all lengths in inches."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from blocklang.geometry import Outline


class Rounding(StrEnum):
    """Which marks a ruler has."""

    EIGHTHS = "eighths"
    SIXTEENTHS = "sixteenths"
    MILLIMETRES = "millimetres"


@dataclass(frozen=True, slots=True)
class CuttingOptions:
    """What the person at the cutting table chooses; lengths in inches."""

    copies: int = 1
    usable_width: Fraction = Fraction(40)
    rounding: Rounding = Rounding.EIGHTHS
    round_up: bool = True
    oversize: Fraction = Fraction(0)  # added to pieces on the outside, to be squared up


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
    """One line of the cutting list: equal patches of one fabric, cut in one way.

    `shape` is cut `shapes` times, each divided into `yields` patches (1; 2 for a square cut once across; 4 for twice).
    `cut` holds the sides of the shape as cut: one for a square, two (short, long) for a rectangle, strip width and
    cross-cut distance for a rhombus or parallelogram, none for a template. `angle` is the cross-cut angle in degrees.
    `outline` is the cut outline of one patch as it lies in the block (finished outline offset by the seam allowance,
    mitred, tips trimmed), in ticks; `strip_set` indexes `Cutting.strip_sets` when the patch is cut from one.
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


@dataclass(frozen=True, slots=True)
class StripSet:
    """Strips sewn side by side and then cut as one; `sewn` is what the set measures, `trimmed` what it is trimmed to."""

    fabrics: tuple[str, ...]
    strip: Measure
    sewn: Measure
    trimmed: Measure
    angle: float
    sub_cut: Measure
    holds: int
    sets: int


@dataclass(frozen=True, slots=True)
class FabricNeed:
    """What to buy of one fabric: the strips, their length together, the area bound, and yards in eighths."""

    fabric: str
    strips: tuple[tuple[Measure, int], ...]
    length: float
    bound: float
    yards: Fraction


@dataclass(frozen=True, slots=True)
class Cutting:
    """The whole cutting list."""

    options: CuttingOptions
    seam_allowance: float
    pieces: tuple[Piece, ...]
    strip_sets: tuple[StripSet, ...]
    needs: tuple[FabricNeed, ...]
    notes: tuple[str, ...]  # what the rounding adds up to, what to trim, in plain sentences
