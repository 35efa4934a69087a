"""The bound on the length of a layout: strips cut in part, the fillings found as they are needed."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.cloth.fillings import Knapsack, Shelf, tallest_of, weigh
from blocklang.cloth.program import PARTS, StripProgram
from blocklang.cloth.values import Filling, Order, Way

#: A filling that saves less than this part of a unit is not worth another round.
_WORTH_A_ROUND = PARTS // 10**6
#: How many fillings a round adds, and how many rounds there are, at most.
_A_ROUND, _MOST_ROUNDS = 24, 300
#: What all rounds together may cost; weighing one more shape costs so much and as much again as the cloth is wide.
_WORK, _EACH = 5 * 10**8, 3_000


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


def relax(
    order: Order, least: tuple[tuple[int, int], ...] = (), known: tuple[Filling, ...] = (), rounds: int = _MOST_ROUNDS
) -> Relaxation:
    """Return the bound of an order by column generation; `least` are numbers of strips that are known to be needed.

    The bound is exact: prices are rounded to whole parts, and lowered until no filling is worth more than its strip.
    It holds after any number of rounds.
    """
    program = StripProgram(order, least)
    for filling in (*plain_fillings(order), *known):
        program.add(filling)
    shelf = shelf_of(order)
    for last in range(min(rounds, _rounds_for(shelf)), -1, -1):
        found = program.relax()
        knapsack = weigh(shelf, [found.shapes[way.kind] for way in order.ways])
        counts = tuple((height, price) for (height, _), price in zip(least, found.counts, strict=True))
        raw = Prices(found.shapes, counts, Fraction(0))
        added = [program.add(filling) for filling in _worth_adding(knapsack, raw)] if last else []
        if not any(added):
            break
    return Relaxation(_lowered(order, least, raw, knapsack), tuple(program.fillings), found.times)


def _rounds_for(shelf: Shelf) -> int:
    """Return how many rounds may be spent on an order: fewer the more is to be weighed in each."""
    return max(3, _WORK // (sum(shelf.most) * (_EACH + shelf.width) + 1))


def _worth_adding(knapsack: Knapsack, raw: Prices) -> Iterator[Filling]:
    """Yield fillings that are worth more than their strips, those that save most for their height first."""
    saving = [
        (Fraction(knapsack.best(top) - raw.strip(height), height), height, top)
        for height, top in knapsack.shelf.tops()
        if knapsack.best(top) > raw.strip(height) + _WORTH_A_ROUND
    ]
    for _, height, top in sorted(saving, reverse=True)[:_A_ROUND]:
        yield knapsack.filling(height, top)


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
    worth, may_be = 1, 1
    for height, top in knapsack.shelf.tops():
        best, price = knapsack.best(top), raw.strip(height)
        if price <= 0 and (best or price):
            return Prices((0,) * len(order.wanted), tuple((height, 0) for height, _ in least), Fraction(0))
        if best * may_be > worth * price:
            worth, may_be = best, price
    shapes = tuple(price * may_be // worth for price in raw.shapes)
    total = sum(price * count for price, count in zip(shapes, order.wanted, strict=True))
    total += sum(price * count for (_, price), (_, count) in zip(raw.counts, least, strict=True))
    return Prices(shapes, raw.counts, Fraction(total, PARTS))
