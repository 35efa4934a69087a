"""How triangles are cut: closed forms in the finished size and the seam allowance."""

import math

from blocklang.cutting import grain_words
from blocklang.cutting.claims import Claim
from blocklang.cutting.offsetting import LONG_TIP
from blocklang.cutting.sides import Sides, long_side_of_right_isosceles, right_angle, same_length, sides_of
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline

ROOT_2 = math.sqrt(2)
ROOT_3 = math.sqrt(3)


def half_square(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a right isosceles triangle with its legs on the grain: half of a square of leg + a(2 + root 2)."""
    long_side = long_side_of_right_isosceles(outline)
    sides = sides_of(outline, 3)
    if long_side is None or sides is None or long_side in outside:
        return None
    leg = sides.lengths[long_side] / ROOT_2
    square = leg + allowance * (2 + ROOT_2)
    return Claim((square,), Lay.UPRIGHT, grain_words.SHORT_SIDES, yields=2)


def quarter_square(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a right isosceles triangle with its long side on the grain: quarter of a square of it + a(2 + 2 root 2)."""
    long_side = long_side_of_right_isosceles(outline)
    sides = sides_of(outline, 3)
    if long_side is None or sides is None or long_side not in outside:
        return None
    square = sides.lengths[long_side] + allowance * (2 + 2 * ROOT_2)
    return Claim((square,), Lay.UPRIGHT, grain_words.LONG_SIDE, yields=4)


def half_rectangle(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a right triangle with unequal legs p and q and long side r: half of a rectangle.

    Its sides are p + a(p + q + r)/q and q + a(p + q + r)/p; left and right ones are cut on opposite diagonals.
    """
    sides = sides_of(outline, 3)
    corner = right_angle(sides) if sides else None
    if sides is None or corner is None or (corner + 1) % 3 in outside:
        return None
    short, long = sorted((sides.lengths[corner], sides.lengths[corner - 1]))
    if same_length(short, long):
        return None
    around = allowance * sum(sides.lengths)
    cut = short + around / long, long + around / short
    return Claim(cut, Lay.UPRIGHT, grain_words.SHORT_SIDES, yields=2, handed=True)


def equilateral(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a triangle with three equal sides, tip sharp: strip side*root 3/2 + 3a, cut side + 2a root 3."""
    sides = sides_of(outline, 3)
    if sides is None or not sides.is_equilateral:
        return None
    side = sides.lengths[0]
    cut = side * ROOT_3 / 2 + 3 * allowance, side + 2 * ROOT_3 * allowance
    along = outside[0] if outside else 0
    return Claim(cut, Lay.POINTED, grain_words.ONE_SIDE, angle=60.0, along=along)


def wedge(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a triangle with two equal sides and tip angle t, tip sharp: strip height + a(1 + 1/sin(t/2)).

    Its base is longer by 2 tan(t/2) times as much. A wedge so slender that its tip is cut off square is left alone.
    """
    sides = sides_of(outline, 3)
    base = _base(sides) if sides else None
    if sides is None or base is None or not set(outside) <= {base}:
        return None
    half = sides.angles[(base + 2) % 3] / 2
    if math.sin(half) * LONG_TIP < 1:
        return None
    high = sides.lengths[base] / 2 / math.tan(half) + allowance * (1 + 1 / math.sin(half))
    grain = grain_words.BASE
    angle = math.degrees(math.pi / 2 - half)
    return Claim((high, 2 * high * math.tan(half)), Lay.POINTED, grain, angle=angle, along=base)


def _base(sides: Sides) -> int | None:
    """Return the side that the two equal ones stand on."""
    return next((i for i in range(3) if same_length(sides.lengths[i - 1], sides.lengths[i - 2])), None)
