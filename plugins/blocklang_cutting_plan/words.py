"""Every sentence of the cutting plan."""

import math
from fractions import Fraction
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cloth import ClothOptions, FabricPlan, PlannedStrip, in_yards
from blocklang.cutting import format_measure

TITLE: Final = "Cutting plan"
PIECES: Final = "What is cut"
STRIPS: Final = "Strips in the order of cutting"
STOCK: Final = "Cut these from your stock first"
WHOLE: Final = "The whole length, to scale"
NOTES: Final = "Good to know"
BLADE: Final = "Close the blade of the rotary cutter every time you put it down, and cut away from yourself."
READING: Final = (
    "Each bar is a strip from selvage to selvage, to scale. A letter says what a part of it is for; hatching is left over.",
    "Square the end of the fabric first. Cut the strips across the width in this order, the widest first.",
)
_EIGHTH = Fraction(1, 8)


def for_copies(copies: int, width: str) -> str:
    """Say what the plan is for, and how wide the fabric is taken to be."""
    blocks = "one block" if copies == 1 else f"{copies} blocks"
    return f"For {blocks}, from fabric {width} wide between the selvages."


def yards(number: Fraction) -> str:
    """Say a length of fabric in yards."""
    whole, part = divmod(number, 1)
    said = " ".join(str(each) for each in (whole, part) if each) or "0"
    return f"{said} {'yard' if number <= 1 else 'yards'}"


def buy(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what to buy, in metres too where the block is in metric."""
    if not plan.yards:
        return "Buy nothing"
    return f"Buy {amount(plan.to_buy, unit)}"


def amount(length: Fraction, unit: LengthUnit) -> str:
    """Say how much a shop cuts for a length in inches: eighths of a yard, or every 5 cm."""
    if unit is LengthUnit.INCH:
        return yards(in_yards(length))
    return f"{math.ceil(length * Fraction(254, 100) / 5) * 5} cm"


def length(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say how long the plan is and what of it is wasted."""
    waste = round(plan.waste * 100)
    wasted = f"about {waste} % of that is in no piece" if waste else "next to nothing of that is wasted"
    return f"The strips take {measure(plan.length, unit)} of the fabric; {wasted}."


def proof(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what is proven about the length, and no more."""
    if plan.cut_stock:
        return _proof_beside_stock(plan, unit)
    if plan.proven:
        return "Proven: no plan of strips and sub-cuts is shorter."
    least = measure(plan.bound, unit)
    if plan.least_to_buy:
        return f"Proven: no plan of strips and sub-cuts takes less than {least}, and that is as much to buy."
    return f"No plan of strips and sub-cuts takes less than {least}; whether this one is the best is not proven."


def _proof_beside_stock(plan: FabricPlan, unit: LengthUnit) -> str:
    if plan.proven:
        return "Proven: what is left to cut fits in no shorter plan of strips and sub-cuts."
    least = measure(plan.bound, unit)
    return f"Proven: what is left to cut takes at least {least} in any plan of strips and sub-cuts."


def area(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what the shapes come to by their area."""
    pieces = "the pieces that are left" if plan.cut_stock else "the pieces"
    return f"By area alone {pieces} come to {measure(_up(Fraction(plan.area)), unit)} of this width."


def numbers(strip: PlannedStrip) -> str:
    """Say which strips in the order of cutting these are."""
    return f"Strip {strip.first}" if strip.count == 1 else f"Strips {strip.first} to {strip.last}"


def whole(count: int, number: int) -> str:
    """Say that strips go whole into a strip set, by its number where there are several."""
    what = "it" if count == 1 else "them"
    return f"leave {what} whole, for strip set {number}" if number else f"leave {what} whole, for the strip set"


def wide(strip: PlannedStrip, unit: LengthUnit) -> str:
    """Say how wide strips are."""
    return f"{measure(strip.width, unit)} wide"


def added(options: ClothOptions, unit: LengthUnit) -> str:
    """Say what is added to the plan's length before it is rounded up to what shops sell."""
    parts = []
    if options.reserve:
        parts.append(f"{measure(options.reserve, unit)} to spare")
    if options.shrinkage:
        parts.append(f"what {_plain(options.shrinkage * 100)} % of shrinking takes")
    if not parts:
        return "Nothing is added for shrinking or for squaring the ends: buy a little more if you want that."
    return f"What to buy includes {' and '.join(parts)}; wash the fabric before you cut."


def too_large(name: str, fabric: str) -> str:
    """Say that a piece cannot be laid out."""
    return f"{name} ({fabric}) does not fit on this fabric; it is in none of the strips. Use a wider fabric."


def measure(inches: Fraction, unit: LengthUnit) -> str:
    """Return a length as a ruler shows it."""
    return format_measure(_up(inches), unit)


def left_over(inches: Fraction, unit: LengthUnit) -> str:
    """Say how much is left at the end of a strip, "" when that is less than an eighth of an inch."""
    if inches < _EIGHTH:
        return ""
    return f"{format_measure(math.floor(inches / _EIGHTH) * _EIGHTH, unit)} left over"


def _up(inches: Fraction) -> Fraction:
    """Return a length that a ruler has as it is, any other up to the next sixteenth."""
    if inches.denominator in (1, 2, 4, 8, 16) or inches.denominator % 127 == 0:
        return inches
    return Fraction(math.ceil(inches * 16), 16)


def _plain(number: Fraction) -> str:
    return f"{float(number):.1f}".removesuffix(".0")
