"""Measuring lines beside a unit: how wide and how high it must be."""

from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting.words import format_measure
from blocklang.geometry import TICKS_PER_INCH
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Paint, Path, Shape, Text, polyline
from blocklang_drawing.theme import Theme

SIZE = 9.0
_AWAY, _TICK = 9.0, 3.0
#: Bounds that differ from the measures by more than this many ticks belong to a turned unit.
_TURNED = TICKS_PER_INCH // 64


def draw_dimensions(
    frame: Frame, measures: tuple[int, int] | None, theme: Theme, shown_in: LengthUnit
) -> tuple[Shape, ...]:
    """Return the measuring lines below and to the left of a unit that lies straight, none for any other."""
    if measures is None or not _lies_straight(frame, measures):
        return ()
    left, top, right, low = frame.left, frame.top, frame.left + frame.width, frame.top + frame.height
    below, beside = low + _AWAY, left - _AWAY
    lines = (
        polyline(((left, below), (right, below))),
        polyline(((left, below - _TICK), (left, below + _TICK))),
        polyline(((right, below - _TICK), (right, below + _TICK))),
        polyline(((beside, top), (beside, low))),
        polyline(((beside - _TICK, top), (beside + _TICK, top))),
        polyline(((beside - _TICK, low), (beside + _TICK, low))),
    )
    wide, high = (say_measure(ticks, shown_in) for ticks in measures)
    middle = (top + low) / 2 + SIZE * 0.35
    return (
        Path(lines, Paint(stroke=theme.quiet, width=0.8)),
        Text(((left + right) / 2, below + SIZE + 4), wide, SIZE, theme.ink, anchor="middle"),
        Text((beside - 5, middle), high, SIZE, theme.ink, anchor="end"),
    )


def say_measure(ticks: int, shown_in: LengthUnit) -> str:
    """Return a length in ticks as a ruler shows it."""
    return format_measure(Fraction(ticks, TICKS_PER_INCH), shown_in)


def _lies_straight(frame: Frame, measures: tuple[int, int]) -> bool:
    left, low, right, high = frame.bounds
    return abs(right - left - measures[0]) <= _TURNED and abs(high - low - measures[1]) <= _TURNED
