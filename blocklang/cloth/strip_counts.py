"""How many strips of a height or more an order needs, whatever else they hold: whole numbers make the bound better."""

import math
from collections.abc import Sequence
from dataclasses import replace

from blocklang.cloth.relaxing import fitted, relax
from blocklang.cloth.values import Filling, Order

#: For how many heights strips are counted at most.
_HEIGHTS = 16


def least_strips(order: Order, known: Sequence[Filling]) -> tuple[tuple[int, int], ...]:
    """Return pairs of a height and how many strips at least that height are needed; `known` are fillings to begin with.

    A kind counts for a height when it cannot lie in anything lower.
    """
    lowest: dict[int, int] = {}
    for way in order.ways:
        lowest.setdefault(way.kind, way.height)
    heights = sorted({lowest[kind] for kind, count in enumerate(order.wanted) if count}, reverse=True)
    counts, fillings = [], tuple(known)
    for height in heights[:: -(-len(heights) // _HEIGHTS)]:
        tall = tuple(count if lowest.get(kind, 0) >= height else 0 for kind, count in enumerate(order.wanted))
        needed, fillings = _strips_for(replace(order, wanted=tall), fillings)
        counts.append((height, needed))
    return tuple(reversed(counts))


def _strips_for(order: Order, known: Sequence[Filling]) -> tuple[int, tuple[Filling, ...]]:
    level = replace(order, ways=tuple(replace(way, height=1) for way in order.ways))
    relaxed = relax(level, (), fitted(level, known))
    return math.ceil(relaxed.prices.bound), relaxed.fillings
