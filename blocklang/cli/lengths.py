"""Lengths as a quilter reads them off a ruler."""

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH

SIXTEENTHS = 16


def shown(ticks: int, unit: LengthUnit) -> str:
    """Return a length with its unit, to the nearest sixteenth of an inch, or the nearest millimetre."""
    if unit is LengthUnit.INCH:
        return f"{_mixed(round(ticks * SIXTEENTHS / TICKS_PER_INCH))} in"
    millimetres = round(ticks * LengthUnit.MILLIMETRE.per_inch / TICKS_PER_INCH)
    return f"{millimetres} mm" if unit is LengthUnit.MILLIMETRE else f"{millimetres / 10:g} cm"


def shown_size(size: tuple[int, int], unit: LengthUnit) -> str:
    """Return a width and a height."""
    return f"{shown(size[0], unit)} × {shown(size[1], unit)}"


def _mixed(sixteenths: int) -> str:
    from fractions import Fraction

    whole, rest = divmod(sixteenths, SIXTEENTHS)
    if not rest:
        return str(whole)
    return f"{whole} {Fraction(rest, SIXTEENTHS)}" if whole else str(Fraction(rest, SIXTEENTHS))
