"""How hard a block is to sew, worked out from its sewing order; docs/sharing.md tells the same."""

from collections.abc import Iterator
from enum import StrEnum
from fractions import Fraction
from typing import Final, NamedTuple

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.wording import Saying, say, say_number


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
        yield 3 + (hardness.pivots > 4) + (hardness.pivots > 12), _corners(hardness.pivots)
    if hardness.curves:
        yield 3 + (hardness.curves > 16), say_number("{count} curved seam", "{count} curved seams", hardness.curves)
    if hardness.partials:
        yield (
            2 + (hardness.partials > 1),
            say_number("{count} partial seam", "{count} partial seams", hardness.partials),
        )
    if hardness.steps > SEVERAL_STEPS:
        yield 1 + (hardness.steps > MANY_STEPS), _steps(hardness.steps)
    if hardness.patches > MANY_PATCHES:
        yield (
            1 + (hardness.patches > VERY_MANY_PATCHES),
            say_number("{count} patch", "{count} patches", hardness.patches),
        )
    if hardness.meeting > USUAL_MEETING:
        yield 1 + (hardness.meeting > 2 * USUAL_MEETING), _meeting(hardness.meeting)
    if hardness.sharpest < SHARP:
        yield 1 + (hardness.sharpest < VERY_SHARP), _points_of(hardness.sharpest)
    if hardness.narrowest < FIDDLY * TICKS_PER_INCH:
        yield (
            1 + (hardness.narrowest < FIDDLY * TICKS_PER_INCH / 2),
            say("patches {length} narrow", length=_width(hardness.narrowest, unit)),
        )


def _corners(count: int) -> Saying:
    return say_number("{count} set-in corner", "{count} set-in corners", count)


def _steps(count: int) -> Saying:
    return say_number("{count} different step", "{count} different steps", count)


def _meeting(count: int) -> Saying:
    return say_number("{count} seam in one point", "{count} seams in one point", count)


def _points_of(degrees: int) -> Saying:
    return say_number("points of {count} degrees", "points of {count} degrees", degrees)


def _width(ticks: int, unit: LengthUnit) -> str:
    from blocklang.cutting import format_measure

    mark = Fraction(1, 16) if unit is LengthUnit.INCH else Fraction(10, 254)
    return format_measure(max(1, round(Fraction(ticks, TICKS_PER_INCH) / mark)) * mark, unit)
