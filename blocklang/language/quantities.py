"""Lengths, numbers and angles, and arithmetic that knows which is which.

Values stay exact fractions as long as they can; a root that does not come out, or a sine, goes on as a decimal.
"""

import math
from fractions import Fraction
from typing import NamedTuple

from blocklang.limits import LARGEST_VALUE, MOST_FRACTION_BITS

Exact = Fraction | float


def magnitude(value: Exact) -> Exact:
    """Return a number without its sign, still a fraction when it was one."""
    return value if value >= 0 else -value


class Quantity(NamedTuple):
    """A value with its powers of length (in inches) and of angle (in degrees)."""

    value: Exact
    lengths: int = 0
    angles: int = 0

    @property
    def kind(self) -> str:
        """What a sewer would call it."""
        return KINDS.get((self.lengths, self.angles), "something that is neither a length nor a number")


KINDS = {(0, 0): "a number", (1, 0): "a length", (2, 0): "an area", (0, 1): "an angle"}


class Trouble(NamedTuple):
    """Why arithmetic has no result."""

    code: str
    found: str
    advice: str = ""


INCHES = {"in": Fraction(1), "cm": Fraction(50, 127), "mm": Fraction(5, 127)}
FRACTIONS = dict(zip("¼½¾⅓⅔⅛⅜⅝⅞", ("1/4", "1/2", "3/4", "1/3", "2/3", "1/8", "3/8", "5/8", "7/8"), strict=True))


def read_number(text: str) -> Fraction | None:
    """Return the value of a number as written; None when it divides by zero."""
    if text[-1] in FRACTIONS:
        return Fraction(text[:-1].strip() or 0) + Fraction(FRACTIONS[text[-1]])
    whole, _, part = text.replace("\t", " ").rpartition(" ")
    try:
        return Fraction(whole.strip() or 0) + Fraction(part)
    except ZeroDivisionError:  # a nought may be written in the digits of any script
        return None


def add(a: Quantity, b: Quantity, sign: int, unit: Fraction) -> Quantity | Trouble:
    """Add or take away; a bare number beside a length is in the file's unit."""
    if a.kind == "a number" and b.kind == "a length":
        a = Quantity(a.value * unit, 1)
    elif a.kind == "a length" and b.kind == "a number":
        b = Quantity(b.value * unit, 1)
    if a[1:] != b[1:]:
        verb = "added to" if sign > 0 else "taken from"
        return Trouble("mixed-kinds", f"{_capital(b.kind)} cannot be {verb} {a.kind}.")
    return bounded(Quantity(a.value + sign * b.value, a.lengths, a.angles))


def multiply(a: Quantity, b: Quantity) -> Quantity | Trouble:
    """Multiply."""
    return bounded(Quantity(a.value * b.value, a.lengths + b.lengths, a.angles + b.angles))


def divide(a: Quantity, b: Quantity) -> Quantity | Trouble:
    """Divide, unless by nothing."""
    if magnitude(b.value) < 1e-12:
        return Trouble("division-by-zero", "This divides by zero.", "Check the value below the line.")
    return bounded(Quantity(a.value / b.value, a.lengths - b.lengths, a.angles - b.angles))


def square_root(a: Quantity) -> Quantity | Trouble:
    """Return a square root; the root of an area is a length."""
    if a.value < 0:
        return Trouble("root-of-negative", f"`sqrt` is asked for the root of {float(a.value):g}, which has none.")
    if a.lengths % 2 or a.angles:
        return Trouble("mixed-kinds", f"`sqrt` needs a number or an area, but this is {a.kind}.")
    return Quantity(_root(a.value), a.lengths // 2)


def _root(value: Exact) -> Exact:
    if isinstance(value, Fraction):
        top, bottom = math.isqrt(value.numerator), math.isqrt(value.denominator)
        if top * top == value.numerator and bottom * bottom == value.denominator:
            return Fraction(top, bottom)
    return math.sqrt(value)


def turned(verb: str, a: Quantity) -> Quantity | Trouble:
    """Return the sine, cosine or tangent of an angle; a bare number is in degrees."""
    if a.kind not in ("an angle", "a number"):
        return Trouble("mixed-kinds", f"`{verb}` needs an angle, but this is {a.kind}.")
    cosine, sine = direction(a.value)
    if verb == "tan":
        if magnitude(cosine) < 1e-12:
            return Trouble("division-by-zero", "A right angle has no tangent.")
        return bounded(Quantity(sine / cosine))
    return Quantity(cosine if verb == "cos" else sine)


def direction(degrees: Exact) -> tuple[Exact, Exact]:
    """Return cosine and sine, exact where they are fractions and the same to the last bit at mirrored angles."""
    degrees = degrees % 360
    quarter = int(degrees // 90)
    rest = degrees - 90 * quarter
    cosine, sine = _in_first_quarter(rest)
    for _ in range(quarter):
        cosine, sine = -sine, cosine
    return cosine, sine


def _in_first_quarter(degrees: Exact) -> tuple[Exact, Exact]:
    if degrees > 45:
        sine, cosine = _in_first_quarter(90 - degrees)
        return cosine, sine
    if degrees == 0:
        return Fraction(1), Fraction(0)
    if degrees == 30:
        return math.sqrt(0.75), Fraction(1, 2)
    if degrees == 45:
        return math.sqrt(0.5), math.sqrt(0.5)
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))


def bounded(a: Quantity) -> Quantity | Trouble:
    """Keep a value within what the program works with, and its fraction within what is worth being exact about."""
    if not magnitude(a.value) <= LARGEST_VALUE:
        return Trouble("number-too-large", f"This comes out larger than {LARGEST_VALUE:,}.")
    if abs(a.lengths) > 4 or abs(a.angles) > 4:
        return Trouble("mixed-kinds", "This multiplies more lengths with each other than a block has use for.")
    if isinstance(a.value, Fraction) and a.value.denominator.bit_length() > MOST_FRACTION_BITS:
        return Quantity(float(a.value), a.lengths, a.angles)
    return a


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]
