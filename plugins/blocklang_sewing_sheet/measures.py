"""Lengths of a plan as a ruler shows them."""

from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting.words import format_measure
from blocklang.geometry import TICKS_PER_INCH
from blocklang_sewing_sheet import words


def say_length(ticks: int, unit: LengthUnit) -> str:
    """Return a length in ticks as a ruler shows it."""
    return format_measure(Fraction(ticks, TICKS_PER_INCH), unit)


def say_oblong(measures: tuple[int, int], unit: LengthUnit) -> str:
    """Return two lengths, "6 1/2 in square" or "3 1/2 in by 6 1/2 in"."""
    return words.oblong(say_length(measures[0], unit), say_length(measures[1], unit))
