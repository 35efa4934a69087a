"""Lengths as they are written on a cutting list."""

import math
from fractions import Fraction
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cutting.values import Measure
from blocklang.wording import Message, Saying, message, say_decimal

#: A fraction with one of these below the line is read off a ruler; anything else is written with a decimal point.
_ON_A_RULER = (1, 2, 4, 8, 16, 32)

_LENGTHS: Final[dict[LengthUnit, Message]] = {
    LengthUnit.INCH: message("{number} in", context="a length in inches"),
    LengthUnit.CENTIMETRE: message("{number} cm"),
    LengthUnit.MILLIMETRE: message("{number} mm"),
}


def format_measure(length: Measure | Fraction, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return a length in inches in words: "4 1/8 in", "10.5 cm", "105 mm"; metric lengths to the next millimetre."""
    return with_unit(format_number(length, unit), unit)


def with_unit(number: str, unit: LengthUnit) -> Saying:
    """Return a number of a unit as a length."""
    return _LENGTHS[unit].say(number=number)


def format_number(length: Measure | Fraction, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return a length in inches as a number of the unit, without its name."""
    inches = length.shown if isinstance(length, Measure) else length
    if unit is LengthUnit.INCH:
        return _mixed(inches)
    millimetres = math.ceil(inches * Fraction(254, 10) - Fraction(1, 100))
    return str(millimetres) if unit is LengthUnit.MILLIMETRE else _decimal(millimetres / 10, 1)


def format_exact(length: float, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return a length as it comes out, with decimals enough to see what rounding changed."""
    return with_unit(_decimal(length * unit.per_inch, 3), unit)


def a_little(length: Fraction, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return a small length: as a fraction of an inch, or with decimals of a metric unit."""
    return format_measure(length, unit) if unit is LengthUnit.INCH else format_exact(float(length), unit)


def _mixed(inches: Fraction) -> str:
    if inches.denominator not in _ON_A_RULER:
        return _decimal(float(inches), 3)
    whole, rest = divmod(abs(inches), 1)
    sign = "-" if inches < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"


def _decimal(value: float, places: int) -> str:
    text = f"{value:.{places}f}"
    return say_decimal(text.rstrip("0").rstrip(".") if "." in text else text)
