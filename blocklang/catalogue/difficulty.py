"""How hard a block is to sew, worked out from its sewing order; docs/sharing.md tells the same."""

from collections.abc import Iterator
from enum import StrEnum
from fractions import Fraction
from typing import Final, NamedTuple

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH


class Difficulty(StrEnum):
    """Four levels, the easiest first."""

    EASY = "easy"
    MODERATE = "moderate"
    DEMANDING = "demanding"
    EXPERT = "expert"


class Hardness(NamedTuple):
    """What makes a block hard; `narrowest` is in ticks, `meeting` the most seams that meet in one point.

    `sharpest` is the least angle of a patch, in whole degrees.
    """

    patches: int
    set_in: int
    pivots: int
    partials: int
    curves: int
    steps: int
    narrowest: int
    meeting: int
    sharpest: int


#: From this many points on a block is moderate, demanding, expert. The levels are ours.
MODERATE_FROM: Final = 2
DEMANDING_FROM: Final = 5
EXPERT_FROM: Final = 8
#: Narrower finished patches than this, in inches, are fiddly; half as wide, very fiddly.
FIDDLY: Final = Fraction(1)
#: A block with more different steps than these takes more keeping in mind; a log cabin has fewer.
SEVERAL_STEPS: Final = 16
MANY_STEPS: Final = 32
#: A block with more patches than these takes more patience.
MANY_PATCHES: Final = 100
VERY_MANY_PATCHES: Final = 400
#: More seams than this in one point make a thick, hard-to-match centre.
USUAL_MEETING: Final = 4

#: Points sharper than this, in degrees, are hard to keep. Half a square has 45; a diamond of six to a star, 60.
SHARP: Final = 40
VERY_SHARP: Final = 25

Point = tuple[int, str]


def difficulty_of(hardness: Hardness, unit: LengthUnit) -> tuple[Difficulty, tuple[str, ...]]:
    """Return how hard a block is and why, the hardest thing first."""
    points = sorted(_points(hardness, unit), key=lambda point: -point[0])
    total = sum(worth for worth, _ in points)
    level = Difficulty.EASY
    for least, higher in (
        (MODERATE_FROM, Difficulty.MODERATE),
        (DEMANDING_FROM, Difficulty.DEMANDING),
        (EXPERT_FROM, Difficulty.EXPERT),
    ):
        level = higher if total >= least else level
    return level, tuple(reason for _, reason in points)


def _points(hardness: Hardness, unit: LengthUnit) -> Iterator[Point]:
    """Give each thing that makes the block hard, and the points that it counts."""
    if hardness.pivots:
        yield 3 + (hardness.pivots > 4) + (hardness.pivots > 12), _counted(hardness.pivots, "set-in corner")
    if hardness.curves:
        yield 3 + (hardness.curves > 16), _counted(hardness.curves, "curved seam")
    if hardness.partials:
        yield 2 + (hardness.partials > 1), _counted(hardness.partials, "partial seam")
    if hardness.steps > SEVERAL_STEPS:
        yield 1 + (hardness.steps > MANY_STEPS), f"{hardness.steps} different steps"
    if hardness.patches > MANY_PATCHES:
        yield 1 + (hardness.patches > VERY_MANY_PATCHES), f"{hardness.patches} patches"
    if hardness.meeting > USUAL_MEETING:
        yield 1 + (hardness.meeting > 2 * USUAL_MEETING), f"{hardness.meeting} seams in one point"
    if hardness.sharpest < SHARP:
        yield 1 + (hardness.sharpest < VERY_SHARP), f"points of {hardness.sharpest} degrees"
    if hardness.narrowest < FIDDLY * TICKS_PER_INCH:
        yield (
            1 + (hardness.narrowest < FIDDLY * TICKS_PER_INCH / 2),
            f"patches {_width(hardness.narrowest, unit)} narrow",
        )


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun if count == 1 else noun + 's'}"


def _width(ticks: int, unit: LengthUnit) -> str:
    from blocklang.cutting import format_measure

    mark = Fraction(1, 16) if unit is LengthUnit.INCH else Fraction(10, 254)
    return format_measure(max(1, round(Fraction(ticks, TICKS_PER_INCH) / mark)) * mark, unit)
