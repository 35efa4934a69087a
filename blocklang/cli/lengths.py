"""Lengths as a quilter reads them off a ruler."""

from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import format_measure
from blocklang.geometry import TICKS_PER_INCH

SIXTEENTH = Fraction(1, 16)
MILLIMETRE = Fraction(10, 254)


def shown(ticks: int, unit: LengthUnit) -> str:
    """Return a length with its unit, to the nearest sixteenth of an inch, or the nearest millimetre."""
    mark = SIXTEENTH if unit is LengthUnit.INCH else MILLIMETRE
    return format_measure(round(Fraction(ticks, TICKS_PER_INCH) / mark) * mark, unit)


def shown_size(size: tuple[int, int], unit: LengthUnit) -> str:
    """Return a width and a height."""
    return f"{shown(size[0], unit)} × {shown(size[1], unit)}"
