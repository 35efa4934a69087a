"""From what a length comes out at to what a ruler can show."""

import math
from fractions import Fraction

from blocklang.cutting.values import CuttingOptions, Measure, Rounding
from blocklang.geometry.tolerance import RULER_SLACK, TICKS_PER_INCH

#: The distance between two marks, in inches.
MARKS = {
    Rounding.EIGHTHS: Fraction(1, 8),
    Rounding.SIXTEENTHS: Fraction(1, 16),
    Rounding.MILLIMETRES: Fraction(10, 254),
}
SLACK = RULER_SLACK / TICKS_PER_INCH


def measure(exact: float, options: CuttingOptions) -> Measure:
    """Return a length in inches with the mark it is cut at: the next one up, or the nearest when that was asked for."""
    mark = MARKS[options.rounding]
    marks = math.ceil((exact - SLACK) / mark) if options.round_up else math.floor(exact / mark + 0.5)
    return Measure(exact, marks * mark)


def measures(exact: tuple[float, ...], options: CuttingOptions) -> tuple[Measure, ...]:
    """Return several lengths with their marks."""
    return tuple(measure(length, options) for length in exact)


def room_for_marks(
    cut: tuple[Measure, ...], marks: tuple[Measure, ...], options: CuttingOptions
) -> tuple[Measure, ...]:
    """Return the sides of a rectangle, the long one with room for what lies beyond a mark on it, each part rounded."""
    if len(cut) != 2 or not marks:
        return cut
    short, long = cut
    beyond = measure(long.exact - marks[0].exact, options)
    return short, Measure(long.exact, max(long.shown, marks[0].shown + beyond.shown))
