"""How much of a fabric a shop is asked for: in eighths of a yard, or in steps of ten centimetres."""

import math
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting.values import CuttingOptions, FabricNeed
from blocklang.wording import say, say_decimal, say_number

#: Less of a ten-centimetre step than this is no more than how a decimal was rounded.
_SAME = 0.001


def describe_need(need: FabricNeed, options: CuttingOptions, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Say what to buy of a fabric, shrinkage in it."""
    if unit is LengthUnit.INCH:
        return describe_yards(need.yards)
    tens = math.ceil(need.length * 2.54 / 10 / float(1 - options.shrinkage) - _SAME)
    if tens < 10:
        return say("{number} cm", number=tens * 10)
    return say("{number} m", number=say_decimal(f"{tens / 10:g}"))


def describe_yards(amount: Fraction) -> str:
    """Say a length of fabric in yards."""
    whole, part = divmod(amount, 1)
    said = " ".join(str(number) for number in (whole, part) if number) or "0"
    if not whole and part:
        return say("{fraction} yard", fraction=said)
    return say_number("{number} yard", "{number} yards", 1 if amount <= 1 else 2, number=said)
