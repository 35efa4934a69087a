"""How four-sided patches are cut: closed forms in the finished size and the seam allowance."""

import math

from blocklang.cutting import grain_words
from blocklang.cutting.claims import Claim
from blocklang.cutting.sides import RIGHT, Sides, same_angle, sides_of
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline


def square(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a square: finished + 2a."""
    del outside
    sides = sides_of(outline, 4)
    if sides is None or not sides.is_equilateral or not sides.is_equiangular:
        return None
    side = sum(sides.lengths) / 4
    return Claim((side + 2 * allowance,), Lay.UPRIGHT, grain_words.SIDES)


def rectangle(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a rectangle: finished + 2a each way."""
    del outside
    sides = sides_of(outline, 4)
    if sides is None or not sides.is_equiangular:
        return None
    first, second = (sides.lengths[0] + sides.lengths[2]) / 2, (sides.lengths[1] + sides.lengths[3]) / 2
    short, long = sorted((first, second))
    return Claim(
        (short + 2 * allowance, long + 2 * allowance), Lay.UPRIGHT, grain_words.SIDES, along=int(second > first)
    )


def rhombus(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a rhombus of angle t: strip side*sin t + 2a, sub-cut at t at the same distance."""
    sides = sides_of(outline, 4)
    if sides is None or not sides.is_equilateral or not _is_parallelogram(sides):
        return None
    angle = _sharp(sides)
    height = sum(sides.lengths) / 4 * math.sin(angle) + 2 * allowance
    along = outside[0] if outside else 0
    grain = grain_words.TWO_SIDES
    return Claim((height, height), Lay.SLANTED, grain, angle=math.degrees(angle), along=along)


def parallelogram(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a parallelogram of angle t, its outer (else longer) side along the strip: the other side*sin t + 2a.

    The sub-cuts lie side*sin t + 2a apart, measured square to the cut; left and right ones are cut the opposite way.
    """
    sides = sides_of(outline, 4)
    if sides is None or not _is_parallelogram(sides):
        return None
    first, second = (sides.lengths[0] + sides.lengths[2]) / 2, (sides.lengths[1] + sides.lengths[3]) / 2
    along = outside[0] if outside else int(second > first)
    lying, leaning = (second, first) if along % 2 else (first, second)
    angle = _sharp(sides)
    cut = leaning * math.sin(angle) + 2 * allowance, lying * math.sin(angle) + 2 * allowance
    grain = grain_words.ALONG_THE_STRIP
    return Claim(cut, Lay.SLANTED, grain, angle=math.degrees(angle), handed=True, along=along)


def trapezoid(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a trapezoid with both ends at one angle t, or one end square: strip height + 2a.

    The long side is longer by a(1 + cos t)/sin t at each slanted end, by a at a square one.
    """
    sides = sides_of(outline, 4)
    base = _long_base(sides) if sides else None
    if sides is None or base is None:
        return None
    left, right = sides.angles[base], sides.angles[(base + 1) % 4]
    slanted = [angle for angle in (left, right) if not same_angle(angle, RIGHT)]
    if not _ends_suit(slanted) or not set(outside) <= _sides_on_grain(base, left, right):
        return None
    height = sides.lengths[base - 1] * math.sin(left)
    long = sides.lengths[base] + sum(allowance / math.tan(angle / 2) for angle in (left, right))
    both = len(slanted) == 2
    return Claim(
        (height + 2 * allowance, long),
        Lay.BOTH_ENDS if both else Lay.ONE_END,
        grain_words.LONG_SIDE,
        angle=math.degrees(slanted[0]),
        handed=not both,
        along=base,
    )


def _ends_suit(slanted: list[float]) -> bool:
    if not slanted or any(angle > RIGHT for angle in slanted):
        return False
    return same_angle(slanted[0], slanted[-1])


def _sides_on_grain(base: int, left: float, right: float) -> set[int]:
    upright = {base - 1: left, base + 1: right}
    return {base, (base + 2) % 4} | {side % 4 for side, angle in upright.items() if same_angle(angle, RIGHT)}


def _is_parallelogram(sides: Sides) -> bool:
    a, b, c, d = sides.angles
    return same_angle(a, c) and same_angle(b, d)


def _sharp(sides: Sides) -> float:
    a, b, c, d = sides.angles
    return min(a + c, b + d) / 2


def _long_base(sides: Sides) -> int | None:
    """Return the longer of two parallel sides, when just two are parallel."""
    a, b, _, d = sides.angles
    if max(sides.angles) >= math.pi or _is_parallelogram(sides):
        return None
    if same_angle(a + d, math.pi):
        return _longer(sides, 0, 2) if not same_angle(a + b, math.pi) else None
    return _longer(sides, 1, 3) if same_angle(a + b, math.pi) else None


def _longer(sides: Sides, first: int, second: int) -> int:
    return first if sides.lengths[first] >= sides.lengths[second] else second
