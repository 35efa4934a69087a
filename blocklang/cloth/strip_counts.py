"""How many strips of a height or more an order needs, whatever else they hold: whole numbers make the bound better."""

import math
from dataclasses import replace

from blocklang.cloth.relaxing import relax
from blocklang.cloth.values import Order


def least_strips(order: Order) -> tuple[tuple[int, int], ...]:
    """Return pairs of a height and how many strips at least that height are needed."""
    lowest: dict[int, int] = {}
    for way in order.ways:
        lowest.setdefault(way.kind, way.height)
    counts = []
    for height in sorted({lowest[kind] for kind, count in enumerate(order.wanted) if count}):
        tall = tuple(count if lowest.get(kind, 0) >= height else 0 for kind, count in enumerate(order.wanted))
        counts.append((height, _strips_for(replace(order, wanted=tall))))
    return tuple(counts)


def _strips_for(order: Order) -> int:
    level = tuple(replace(way, height=1) for way in order.ways)
    return math.ceil(relax(replace(order, ways=level)).prices.bound)
