"""Measuring lines beside a unit: how wide and how high it must be."""

from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import format_measure
from blocklang.geometry import TICKS_PER_INCH
from blocklang_drawing import words
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Paint, Path, Shape, Text, polyline
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import text_width

SIZE = 9.0
#: Nearer to a mark of the ruler than this (1/200 in) nobody sees a difference.
ON_THE_MARK = Fraction(1, 200)
AWAY, _TICK = 9.0, 3.0
#: Bounds that differ from the measures by more than this many ticks belong to a turned unit.
_TURNED = TICKS_PER_INCH // 64


def room_for_dimensions(measures: tuple[int, int] | None, theme: Theme, shown_in: LengthUnit) -> tuple[float, float]:
    """Return the room to keep free at the left of a unit and below it (points)."""
    if measures is None:
        return 0.0, 0.0
    wide, high = (_width(ticks, theme, shown_in) for ticks in measures)
    beside = wide / 2 if measures[0] == measures[1] else max(AWAY + 8 + high, wide / 2)
    return beside, AWAY + SIZE + 6


def right_of_dimensions(frame: Frame, measures: tuple[int, int] | None, theme: Theme, shown_in: LengthUnit) -> float:
    """Return how far to the right the measure below a unit reaches: further than the unit when that is narrow."""
    if measures is None:
        return frame.left + frame.width
    return frame.left + frame.width / 2 + max(_width(measures[0], theme, shown_in), frame.width) / 2


def draw_dimensions(
    frame: Frame, measures: tuple[int, int] | None, theme: Theme, shown_in: LengthUnit
) -> tuple[Shape, ...]:
    """Return the measuring lines of a unit that lies straight: below it, and for an oblong also at its left."""
    if measures is None or not _lies_straight(frame, measures):
        return ()
    wide, high = (theme.language.say(say_measure(ticks, shown_in)) for ticks in measures)
    right, low = frame.left + frame.width, frame.top + frame.height
    below = measure_below(frame.left, right, low, wide, theme)
    beside = () if measures[0] == measures[1] else measure_beside(frame.left, frame.top, low, high, theme)
    return below + beside


def measure_below(left: float, right: float, low: float, measure: str, theme: Theme) -> tuple[Shape, ...]:
    """Return a measuring line below what reaches down to `low`."""
    y = low + AWAY
    lines = (
        polyline(((left, y), (right, y))),
        polyline(((left, y - _TICK), (left, y + _TICK))),
        polyline(((right, y - _TICK), (right, y + _TICK))),
    )
    at = ((left + right) / 2, y + SIZE + 2)
    return Path(lines, Paint(stroke=theme.quiet, width=0.8)), Text(at, measure, SIZE, theme.ink, anchor="middle")


def measure_beside(left: float, top: float, low: float, measure: str, theme: Theme) -> tuple[Shape, ...]:
    """Return a measuring line at the left of what begins at `left`."""
    x = left - AWAY
    lines = (
        polyline(((x, top), (x, low))),
        polyline(((x - _TICK, top), (x + _TICK, top))),
        polyline(((x - _TICK, low), (x + _TICK, low))),
    )
    at = (x - 5, (top + low) / 2 + SIZE * 0.35)
    return Path(lines, Paint(stroke=theme.quiet, width=0.8)), Text(at, measure, SIZE, theme.ink, anchor="end")


def say_measure(ticks: int, shown_in: LengthUnit) -> str:
    """Return a length in ticks as a ruler shows it: "about" the nearest mark when it lies between two."""
    exact = Fraction(ticks, TICKS_PER_INCH)
    mark = Fraction(1, 16) if shown_in is LengthUnit.INCH else Fraction(5, 127)  # a millimetre
    shown = round(exact / mark) * mark
    measure = format_measure(shown, shown_in)
    return words.about(measure) if abs(exact - shown) > ON_THE_MARK else measure


def _width(ticks: int, theme: Theme, shown_in: LengthUnit) -> float:
    return text_width(theme.language.say(say_measure(ticks, shown_in)), SIZE)


def _lies_straight(frame: Frame, measures: tuple[int, int]) -> bool:
    left, low, right, high = frame.bounds
    return abs(right - left - measures[0]) <= _TURNED and abs(high - low - measures[1]) <= _TURNED
