"""The bound on the length of a layout: strips cut in part, the fillings found as they are needed."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.cloth.fillings import Knapsack, Shelf, tallest_of, weigh
from blocklang.cloth.program import PARTS, StripProgram
from blocklang.cloth.values import Filling, Order, Way

#: A filling that saves less than this part of a unit is not worth another round.
_WORTH_A_ROUND = PARTS // 10**6


@dataclass(frozen=True, slots=True)
class Prices:
    """Prices that prove a bound: no filling of a height is worth more than `strip(height)`.

    `shapes` is the price of one shape of each kind, `counts` that of each least number of strips, `bound` what no
    layout goes below; prices in parts of a unit, the bound in units.
    """

    shapes: tuple[int, ...]
    counts: tuple[tuple[int, int], ...]
    bound: Fraction

    def strip(self, height: int) -> int:
        """Return what a strip may be worth at most."""
        return height * PARTS - sum(price for least, price in self.counts if least <= height)


@dataclass(frozen=True, slots=True)
class Relaxation:
    """The bound with the prices that prove it, the fillings that were found, and how often each is cut in part."""

    prices: Prices
    fillings: tuple[Filling, ...]
    times: tuple[float, ...]


def shelf_of(order: Order) -> Shelf:
    """Return what may lie in the strips of an order."""
    return Shelf(order.width, order.ways, tuple(order.most(way) for way in order.ways))


def knapsack_of(order: Order, prices: Prices) -> Knapsack:
    """Return what fillings are worth at these prices."""
    return weigh(shelf_of(order), [prices.shapes[way.kind] for way in order.ways])


def relax(order: Order, least: tuple[tuple[int, int], ...] = (), known: tuple[Filling, ...] = ()) -> Relaxation:
    """Return the bound of an order by column generation; `least` are numbers of strips that are known to be needed.

    The bound is exact: prices are rounded to whole parts, and lowered until no filling is worth more than its strip.
    """
    program = StripProgram(order, least)
    for filling in (*plain_fillings(order), *known):
        program.add(filling)
    shelf, best = shelf_of(order), Prices((0,) * len(order.wanted), (), Fraction(0))
    while True:
        found = program.relax()
        knapsack = weigh(shelf, [found.shapes[way.kind] for way in order.ways])
        counts = tuple((height, price) for (height, _), price in zip(least, found.counts, strict=True))
        raw = Prices(found.shapes, counts, Fraction(0))
        best = max(best, _lowered(order, least, raw, knapsack), key=lambda prices: prices.bound)
        better = [
            program.add(knapsack.filling(height, top))
            for height, top in shelf.tops()
            if knapsack.best(top) > raw.strip(height) + _WORTH_A_ROUND
        ]
        if not any(better):
            return Relaxation(best, tuple(program.fillings), found.times)


def plain_fillings(order: Order) -> tuple[Filling, ...]:
    """Return for every way a strip that holds as much of it as is wanted and nothing else."""
    return tuple(
        Filling(way.height, ((place, most),))
        for place, way in enumerate(order.ways)
        if (most := _held(way, order.most(way), order.width))
    )


def fitted(order: Order, fillings: Sequence[Filling]) -> tuple[Filling, ...]:
    """Return the fillings with no more shapes than are still wanted."""
    less = []
    for filling in fillings:
        runs = tuple((place, min(count, order.most(order.ways[place]))) for place, count in filling.runs)
        runs = tuple(run for run in runs if run[1])
        if runs:
            rest = Filling(0, runs)
            less.append(replace(rest, height=tallest_of(rest, order.ways)))
    return tuple(dict.fromkeys(less))


def _held(way: Way, most: int, width: int) -> int:
    while most and way.takes[most] > width:
        most -= 1
    return most


def _lowered(order: Order, least: tuple[tuple[int, int], ...], raw: Prices, knapsack: Knapsack) -> Prices:
    """Return prices lowered so far that they prove a bound; none at all when that cannot be."""
    over = Fraction(1)
    for height, top in knapsack.shelf.tops():
        worth, may_be = knapsack.best(top), raw.strip(height)
        if may_be <= 0 and (worth or may_be):
            return Prices((0,) * len(order.wanted), (), Fraction(0))
        if worth:
            over = max(over, Fraction(worth, may_be))
    shapes = tuple(int(price / over) for price in raw.shapes)
    total = sum(price * count for price, count in zip(shapes, order.wanted, strict=True))
    total += sum(price * count for (_, price), (_, count) in zip(raw.counts, least, strict=True))
    return Prices(shapes, raw.counts, Fraction(total, PARTS))
