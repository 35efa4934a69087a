"""Sentences that several of the ways have in common."""

from fractions import Fraction
from typing import Final

from blocklang.cutting import format_measure, format_number
from blocklang.wording import say
from blocklang_cutting_methods.kinds import TwoFabrics
from blocklang_cutting_methods.offering import to_mark

CUT_ON_THE_LINE: Final = say("Cut on the line.")
LINE_ON_THE_UPPER: Final = say("Draw a line from corner to corner on the upper square.")
BIAS_OUTSIDE: Final = say(
    "All four sides of these units lie on the bias: press them without pushing the iron, and trim them last."
)


def seam(kind: TwoFabrics) -> str:
    """Say the seam allowance."""
    return format_measure(Fraction(kind.seam).limit_denominator(25400), kind.units.unit)


def trimmed(kind: TwoFabrics, where: str) -> str:
    """Say what a unit is trimmed to, and how it lies under the ruler."""
    width, height = (to_mark(kind, side + 2 * kind.seam) for side in (kind.width, kind.height))
    unit = kind.units.unit
    return say(
        "Trim each to {width} x {height}, {where}.",
        width=format_number(width, unit),
        height=format_measure(height, unit),
        where=where,
    )


def laid_together(kind: TwoFabrics) -> str:
    """Say how two squares are laid on each other."""
    return say(
        "Lay a square of {first} on a square of {second}, right sides together.", first=kind.first, second=kind.second
    )


def sew_both_sides(kind: TwoFabrics) -> str:
    """Say to sew along a line, on either side of it."""
    return say("Sew {seam} from the line, on both sides of it.", seam=seam(kind))
