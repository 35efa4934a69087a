"""Every sentence of the cutting plan."""

import math
from fractions import Fraction
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cloth import ClothOptions, FabricPlan, PlannedStrip, SubCuts, in_yards
from blocklang.cutting import Lay, Piece, describe_yards, format_measure
from blocklang.cutting.words import degrees
from blocklang.wording import joined, listed, say, say_decimal, say_number

TITLE: Final = say("Cutting plan")
PIECES: Final = say("What is cut")
STRIPS: Final = say("Strips in the order of cutting")
STOCK: Final = say("Cut these from your stock first")
WHOLE: Final = say("The whole length, to scale")
NOTES: Final = say("Good to know")
BLADE: Final = say("Close the blade of the rotary cutter every time you put it down, and cut away from yourself.")
READING: Final = (
    say(
        "Each bar is a strip from selvage to selvage, to scale. A letter says what a part of it is for; hatching is left over."
    ),
    say("Square the end of the fabric first. Cut the strips across the width in this order, the widest first."),
)
_EIGHTH = Fraction(1, 8)


def for_copies(copies: int, width: str) -> str:
    """Say what the plan is for, and how wide the fabric is taken to be."""
    return say_number(
        "For one block, from fabric {width} wide between the selvages.",
        "For {count} blocks, from fabric {width} wide between the selvages.",
        copies,
        width=width,
    )


def buy(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what to buy."""
    if not plan.yards:
        return say("Buy nothing")
    return say("Buy {amount}", amount=amount(plan.to_buy, unit))


def and_buy(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what to buy, within a line."""
    if not plan.yards:
        return say("buy nothing")
    return say("buy {amount}", amount=amount(plan.to_buy, unit))


def amount(length: Fraction, unit: LengthUnit) -> str:
    """Say how much a shop cuts for a length in inches: eighths of a yard, or every 5 cm."""
    if unit is LengthUnit.INCH:
        return describe_yards(in_yards(length))
    return say("{number} cm", number=math.ceil(length * Fraction(254, 100) / 5) * 5)


def length(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say how long the plan is and what of it is wasted."""
    waste = round(plan.waste * 100)
    taken = measure(plan.length, unit)
    if not waste:
        return say("The strips take {length} of the fabric; next to nothing of that is wasted.", length=taken)
    return say(
        "The strips take {length} of the fabric; about {percent} % of that is in no piece.", length=taken, percent=waste
    )


def proof(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what is proven about the length, and no more."""
    if plan.cut_stock:
        return _proof_beside_stock(plan, unit)
    if plan.proven:
        return say("Proven: no plan of strips and sub-cuts is shorter.")
    least = measure(plan.bound, unit)
    if plan.least_to_buy:
        return say(
            "Proven: no plan of strips and sub-cuts takes less than {least}, and that is as much to buy.", least=least
        )
    return say(
        "No plan of strips and sub-cuts takes less than {least}; whether this one is the best is not proven.",
        least=least,
    )


def _proof_beside_stock(plan: FabricPlan, unit: LengthUnit) -> str:
    if plan.proven:
        return say("Proven: what is left to cut fits in no shorter plan of strips and sub-cuts.")
    least = measure(plan.bound, unit)
    return say("Proven: what is left to cut takes at least {least} in any plan of strips and sub-cuts.", least=least)


def area(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what the shapes come to by their area."""
    covered = measure(_up(Fraction(plan.area)), unit)
    if plan.cut_stock:
        return say("By area alone the pieces that are left come to {length} of this width.", length=covered)
    return say("By area alone the pieces come to {length} of this width.", length=covered)


def whole_length(fabric: str) -> str:
    """Say what the picture of the whole length shows."""
    return say("The whole length of {fabric}", fabric=fabric)


def numbers(strip: PlannedStrip) -> str:
    """Say which strips in the order of cutting these are."""
    if strip.count == 1:
        return say("Strip {number}", number=strip.first)
    return say("Strips {first} to {last}", first=strip.first, last=strip.last)


def whole(count: int, number: int) -> str:
    """Say that strips go whole into a strip set, by its number where there are several."""
    if number:
        return say_number(
            "leave it whole, for strip set {number}", "leave them whole, for strip set {number}", count, number=number
        )
    return say_number("leave it whole, for the strip set", "leave them whole, for the strip set", count)


def wide(strip: PlannedStrip, unit: LengthUnit) -> str:
    """Say how wide strips are."""
    return say("{width} wide", width=measure(strip.width, unit))


def added(options: ClothOptions, unit: LengthUnit) -> str:
    """Say what is added to the plan's length before it is rounded up to what shops sell."""
    parts = []
    if options.reserve:
        parts.append(say("{length} to spare", length=measure(options.reserve, unit)))
    if options.shrinkage:
        parts.append(say("what {percent} % of shrinking takes", percent=say_decimal(_plain(options.shrinkage * 100))))
    if not parts:
        return say("Nothing is added for shrinking or for squaring the ends: buy a little more if you want that.")
    return say("What to buy includes {parts}; wash the fabric before you cut.", parts=listed(parts))


def too_large(name: str, fabric: str) -> str:
    """Say that a piece cannot be laid out."""
    return say(
        "{name} ({fabric}) does not fit on this fabric; it is in none of the strips. Use a wider fabric.",
        name=name,
        fabric=fabric,
    )


def measure(inches: Fraction, unit: LengthUnit) -> str:
    """Return a length as a ruler shows it."""
    return format_measure(_up(inches), unit)


def left_over(inches: Fraction, unit: LengthUnit) -> str:
    """Say how much is left at the end of a strip, "" when that is less than an eighth of an inch."""
    if inches < _EIGHTH:
        return ""
    return say("{length} left over", length=format_measure(math.floor(inches / _EIGHTH) * _EIGHTH, unit))


def below(left: str) -> str:
    """Say how much of a piece of stock is left below its strips; "" when that is next to nothing."""
    return say("{left} below the strips", left=left) if left else ""


def letter(name: str, sentence: str) -> str:
    """Say what a letter stands for."""
    return joined((name, sentence), ". ")


def cut(piece: Piece, cut: SubCuts, strip: PlannedStrip, letter: str, unit: LengthUnit) -> str:
    """Say what is cut from a strip for one piece."""
    said = (
        _straight(cut, letter, unit) if piece.lay in (Lay.UPRIGHT, Lay.TEMPLATE) else _slanted(piece, cut, letter, unit)
    )
    if cut.width >= strip.width:
        return said
    width = measure(cut.width, unit)
    trimmed = say_number("trimmed to {width} wide", "trimmed to {width} wide", cut.count, width=width)
    return joined((said, trimmed), ", ")


def _straight(cut: SubCuts, letter: str, unit: LengthUnit) -> str:
    long = measure(cut.length / cut.count, unit)
    if cut.mirrored:
        return say_number(
            "{letter}: cut {count} reversed, {length} long",
            "{letter}: cut {count} reversed, each {length} long",
            cut.count,
            letter=letter,
            length=long,
        )
    return say_number(
        "{letter}: cut {count}, {length} long",
        "{letter}: cut {count}, each {length} long",
        cut.count,
        letter=letter,
        length=long,
    )


def _slanted(piece: Piece, cut: SubCuts, letter: str, unit: LengthUnit) -> str:
    angle = degrees(piece.angle or 90.0)
    if cut.mirrored:
        said = say_number(
            "{letter}: cut {count} reversed at {angle} degrees",
            "{letter}: cut {count} reversed at {angle} degrees",
            cut.count,
            letter=letter,
            angle=angle,
        )
    else:
        said = say("{letter}: cut {count} at {angle} degrees", letter=letter, count=cut.count, angle=angle)
    if piece.lay is not Lay.SLANTED:
        return said
    return joined((said, say("cuts {length} apart", length=measure(piece.cut[-1].shown, unit))), ", ")


def _up(inches: Fraction) -> Fraction:
    """Return a length that a ruler has as it is, any other up to the next sixteenth."""
    if inches.denominator in (1, 2, 4, 8, 16) or inches.denominator % 127 == 0:
        return inches
    return Fraction(math.ceil(inches * 16), 16)


def _plain(number: Fraction) -> str:
    return f"{float(number):.1f}".removesuffix(".0")
