"""How hexagons are cut, and everything that no ruler method suits."""

import math

from blocklang.cutting import grain_words
from blocklang.cutting.claims import Claim
from blocklang.cutting.sides import same_length, sides_of
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline

ROOT_2 = math.sqrt(2)
ROOT_3 = math.sqrt(3)


def hexagon(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a regular hexagon: strip side*root 3 + 2a flat to flat, 2*side + 4a/root 3 point to point."""
    sides = sides_of(outline, 6)
    if sides is None or not sides.is_equilateral or not sides.is_equiangular:
        return None
    side = sum(sides.lengths) / 6
    cut = side * ROOT_3 + 2 * allowance, 2 * side + 4 * allowance / ROOT_3
    along = outside[0] if outside else 0
    return Claim(cut, Lay.UPRIGHT, grain_words.TWO_SIDES, angle=60.0, along=along)


def octagon(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim a square with four equal corners cut off: finished + 2a; of each side f + 2a(root 2 - 1) is left."""
    del outside
    sides = sides_of(outline, 8)
    if sides is None or not sides.is_equiangular:
        return None
    even, odd = sides.lengths[::2], sides.lengths[1::2]
    if not all(same_length(side, pair[0]) for pair in (even, odd) for side in pair):
        return None
    flat, slant = max(even[0], odd[0]), min(even[0], odd[0])
    square = flat + slant * ROOT_2 + 2 * allowance
    left = flat + 2 * allowance * (ROOT_2 - 1)
    along = int(odd[0] > even[0])
    return Claim((square,), Lay.UPRIGHT, grain_words.OF_THE_SQUARE, along=along, marks=(left,))


def template(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim any patch: it is cut round a template, its longest outer (else longest straight) edge on the grain."""
    del allowance
    straight = [i for i, edge in enumerate(outline.edges) if edge.arc is None]
    outer = [i for i in straight if i in outside]
    if not straight:
        return Claim((), Lay.TEMPLATE, grain_words.ARROW, handed=True)
    along = max(outer or straight, key=lambda i: (round(outline.edges[i].length(), -2), -i))
    grain = grain_words.OUTER_EDGE if outer else grain_words.LONGEST_EDGE
    return Claim((), Lay.TEMPLATE, grain, handed=True, along=along)
