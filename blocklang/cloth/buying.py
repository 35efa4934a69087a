"""What to buy for a length of cloth."""

import math
from fractions import Fraction

INCHES_IN_YARD = 36
#: Shops cut cloth by eighths of a yard (common practice).
EIGHTHS = 8


def length_to_buy(length: Fraction, shrinkage: Fraction, reserve: Fraction) -> Fraction:
    """Return the length that is left long enough when it has shrunk: length / (1 - shrinkage)."""
    return (length + reserve) / (1 - shrinkage) if length else Fraction(0)


def in_yards(length: Fraction) -> Fraction:
    """Return inches in yards, up to the next eighth."""
    return Fraction(math.ceil(length * EIGHTHS / INCHES_IN_YARD), EIGHTHS)
