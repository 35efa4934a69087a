"""From an order to its layout: relax, dive, and choose among the strips that could still make it shorter."""

import math
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import reduce

from blocklang.cloth.diving import Least, dive, surplus_dropped
from blocklang.cloth.program import PARTS, StripProgram, Strips, length_of
from blocklang.cloth.relaxing import Relaxation, knapsack_of, relax
from blocklang.cloth.searching import TooManyError, worthy_fillings
from blocklang.cloth.strip_counts import least_strips
from blocklang.cloth.values import Filling, Layout, Order

#: How many layouts are dived for, each from another strip.
_DIVES = 3
#: With more kinds than this the first layout is so near to the bound that it is kept.
_MANY_KINDS = 30
#: How many strips are chosen from at most.
_MOST_FILLINGS = 300


def lay_out(order: Order) -> Layout:
    """Return the strips of an order in the least length of cloth that is found, with the bound.

    Every kind that is wanted must have a way that fits in the width.
    """
    if not any(order.wanted):
        return Layout((), 0, Fraction(0), 0)
    assert {way.kind for way in order.ways if order.most(way)} >= {k for k, count in enumerate(order.wanted) if count}
    loose, least, tight = _relaxed(order)
    step = _step(order)
    bound = _next_step(tight.prices.bound, step)
    many = _has_many_kinds(order)
    strips = _dived(order, least, tight, bound, 1 if many else _DIVES)
    if length_of(strips) > bound and not many:
        strips, bound = _chosen(order, least, tight, strips, step)
    strips = surplus_dropped(order, strips)
    return Layout(_sorted(strips), length_of(strips), loose.prices.bound, min(bound, length_of(strips)))


def least_length(order: Order) -> tuple[Fraction, int]:
    """Return the bound of the linear program over all strips, and the best bound there is without laying out."""
    if not any(order.wanted):
        return Fraction(0), 0
    loose, _, tight = _relaxed(order)
    return loose.prices.bound, _next_step(tight.prices.bound, _step(order))


def _relaxed(order: Order) -> tuple[Relaxation, Least, Relaxation]:
    loose = _no_less_than_area(order, relax(order))
    if _has_many_kinds(order):
        return loose, (), loose
    least = least_strips(order, loose.fillings)
    return loose, least, _no_less_than_area(order, relax(order, least, loose.fillings))


def _no_less_than_area(order: Order, relaxed: Relaxation) -> Relaxation:
    """Return a relaxed layout with a bound that is no less than the area: it may be where rounds were too few."""
    each: dict[int, Fraction] = {}
    for way in order.ways:
        shape = way.height * min(Fraction(length, count) for count, length in enumerate(way.takes) if count)
        each[way.kind] = min(shape, each.get(way.kind, shape))
    area = sum((area * order.wanted[kind] for kind, area in each.items()), Fraction(0)) / order.width
    prices = replace(relaxed.prices, bound=max(relaxed.prices.bound, area))
    return replace(relaxed, prices=prices)


def _has_many_kinds(order: Order) -> bool:
    return sum(count > 0 for count in order.wanted) > _MANY_KINDS


def _step(order: Order) -> int:
    """Return what every length of strips is a multiple of."""
    return reduce(math.gcd, (way.height for way in order.ways))


def _dived(order: Order, least: Least, tight: Relaxation, bound: int, dives: int) -> Strips:
    best: Strips | None = None
    for first in range(dives):
        found = dive(order, least, tight, first, None if best is None else length_of(best))
        if found is not None and (best is None or length_of(found) < length_of(best)):
            best = found
        assert best is not None
        if length_of(best) <= bound:
            break
    assert best is not None
    return best


def _chosen(order: Order, least: Least, tight: Relaxation, strips: Strips, step: int) -> tuple[Strips, int]:
    """Return the best choice among the strips that a shorter layout can be made of, and the bound that it proves.

    A layout with a strip that is worth less than its price by more than the slack is longer than bound plus slack.
    """
    gap = length_of(strips) - tight.prices.bound
    fillings, slack = _within_reach(order, tight, gap, step)
    program = StripProgram(order, least)
    for filling in (*fillings, *tight.fillings, *strips):
        program.add(filling)
    chosen, proven = program.choose(strips)
    reached = min(tight.prices.bound + slack, Fraction(length_of(chosen))) if proven else tight.prices.bound
    return chosen, _next_step(max(reached, tight.prices.bound), step)


def _within_reach(order: Order, tight: Relaxation, gap: Fraction, step: int) -> tuple[tuple[Filling, ...], Fraction]:
    """Return all strips within the largest slack that leaves them few enough, and that slack."""
    knapsack = knapsack_of(order, tight.prices)
    found: tuple[tuple[Filling, ...], Fraction] = ((), Fraction(0))
    slack = Fraction(step)
    while found[1] < gap:
        slack = min(slack, gap)
        try:
            fillings = worthy_fillings(knapsack, _enough(tight, slack), _MOST_FILLINGS)
        except TooManyError:
            break
        found, slack = (fillings, slack), slack * 2
    return found


def _enough(tight: Relaxation, slack: Fraction) -> Callable[[int], int]:
    allowed = math.ceil(slack * PARTS)
    return lambda height: tight.prices.strip(height) - allowed


def _next_step(bound: Fraction, step: int) -> int:
    return math.ceil(bound / step) * step


def _sorted(strips: Strips) -> tuple[tuple[Filling, int], ...]:
    """Return strips in the order of cutting: the highest first, then those with the most of the highest shapes."""
    return tuple(
        sorted(strips.items(), key=lambda pair: (-pair[0].height, tuple((-p, -n) for p, n in reversed(pair[0].runs))))
    )
