"""Sentences that several of the ways have in common."""

from fractions import Fraction
from typing import Final

from blocklang.cutting import format_measure, format_number
from blocklang_cutting_methods.kinds import TwoFabrics
from blocklang_cutting_methods.offering import to_mark

BIAS_OUTSIDE: Final = (
    "All four sides of these units lie on the bias: press them without pushing the iron, and trim them last."
)


def seam(kind: TwoFabrics) -> str:
    """Say the seam allowance."""
    return format_measure(Fraction(kind.seam).limit_denominator(25400), kind.units.unit)


def trimmed(kind: TwoFabrics, where: str) -> str:
    """Say what a unit is trimmed to, and how it lies under the ruler."""
    width, height = (to_mark(kind, side + 2 * kind.seam) for side in (kind.width, kind.height))
    unit = kind.units.unit
    return f"Trim each to {format_number(width, unit)} x {format_measure(height, unit)}, {where}."


def laid_together(kind: TwoFabrics) -> str:
    """Say how two squares are laid on each other."""
    return f"Lay a square of {kind.first} on a square of {kind.second}, right sides together."
