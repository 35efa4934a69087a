"""How kites are cut: from a rectangle as long and as wide as they are, from mark to mark."""

import math

from blocklang.cutting import grain_words
from blocklang.cutting.claims import Claim
from blocklang.cutting.sides import Sides, same_angle, same_length, sides_of
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline


def kite(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a kite of tip angle t with no edge on the outside: its middle line lies on the straight grain.

    With long sides p, short sides q and end angle u it is w = 2p*sin(t/2) wide and p*cos(t/2) + q*cos(u/2) long. All
    four sides touch one circle, of radius r; so with its allowance it is larger by 1 + a/r each way.
    """
    sides = sides_of(outline, 4)
    tip = _tip(sides) if sides else None
    if sides is None or tip is None or outside:
        return None
    long, short = sides.lengths[tip], sides.lengths[(tip + 1) % 4]
    half, end = sides.angles[tip] / 2, sides.angles[(tip + 2) % 4] / 2
    above, below = long * math.cos(half), short * math.cos(end)
    width = 2 * long * math.sin(half)
    radius = width * (above + below) / 2 / (long + short)
    larger = 1 + allowance / radius
    cut = width * larger, (above + below) * larger
    grain = grain_words.MIDDLE_LINE
    return Claim(cut, Lay.UPRIGHT, grain, along=tip, lean=half, marks=(above * larger,))


def _tip(sides: Sides) -> int | None:
    """Return the corner between the two long sides of a convex kite that is longer than it is wide."""
    lengths, angles = sides.lengths, sides.angles
    if max(angles) >= math.pi - math.radians(5):
        return None
    for tip in range(4):
        pairs = same_length(lengths[tip], lengths[tip - 1]) and same_length(lengths[tip - 2], lengths[tip - 3])
        if pairs and same_angle(angles[tip - 1], angles[tip - 3]) and lengths[tip] > lengths[tip - 2]:
            return tip if _is_long(lengths[tip], lengths[tip - 2], angles[tip], angles[tip - 2]) else None
    return None


def _is_long(long: float, short: float, tip: float, end: float) -> bool:
    return long * math.cos(tip / 2) + short * math.cos(end / 2) >= 2 * long * math.sin(tip / 2)
