"""Filling stock, piece by piece: each the fullest it can be with the shapes that are still to be cut."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.cloth.asking import Asked, ask, numbered, strips_of
from blocklang.cloth.diving import surplus_dropped
from blocklang.cloth.kinds import Kind, unit_of
from blocklang.cloth.panels import fill_panel
from blocklang.cloth.plan import CutStock, PlannedStrip, Stock
from blocklang.cloth.program import Strips
from blocklang.cloth.values import Panel

#: What may be spent on proving that one piece is filled best.
_FILLINGS, _TRIES = 5_000, 200_000


@dataclass(frozen=True, slots=True)
class FilledStock:
    """One piece of stock with what is cut from it; `cut` counts the shapes of each kind."""

    stock: Stock
    strips: tuple[PlannedStrip, ...]
    cut: tuple[int, ...]
    worth: int
    fullest: bool

    def times(self, kinds: Sequence[Kind]) -> int:
        """Return how many pieces may be cut like this one before a kind runs out."""
        return min((kind.wanted // count for kind, count in zip(kinds, self.cut, strict=True) if count), default=0)


def fill_stock(kinds: Sequence[Kind], stock: Sequence[Stock], mark: Fraction) -> tuple[FilledStock, ...]:
    """Return pieces of stock in the order in which they are filled, the one that takes the most area always first.

    A filling that was the fullest stays so as long as the shapes in it are wanted, for then there is only less choice.
    """
    left, filled = {each: each.count for each in stock}, []
    best: dict[Stock, FilledStock] = {}
    while left:
        best = {
            each: best[each] if each in best and best[each].times(kinds) else _fill(kinds, each, mark) for each in left
        }
        chosen = max(best.values(), key=lambda each: each.worth)
        times = min(left[chosen.stock], chosen.times(kinds))
        if not times:
            break
        filled.extend([chosen] * times)
        kinds = without(kinds, [chosen] * times)
        left[chosen.stock] -= times
        left = {each: count for each, count in left.items() if count}
    return tuple(filled)


def without(kinds: Sequence[Kind], filled: Sequence[FilledStock]) -> tuple[Kind, ...]:
    """Return what is still wanted, kinds of which nothing is among them."""
    cut = [sum(each.cut[number] for each in filled) for number in range(len(kinds))]
    return tuple(replace(kind, wanted=kind.wanted - gone) for kind, gone in zip(kinds, cut, strict=True))


def cut_alike(filled: Sequence[FilledStock]) -> Iterator[CutStock]:
    """Yield the pieces numbered, those that are cut alike and follow each other together."""
    number: dict[Stock, int] = {}
    place = 0
    while place < len(filled):
        each, count = filled[place], 1
        while place + count < len(filled) and filled[place + count] == each:
            count += 1
        left = each.stock.height - sum((strip.width * strip.count for strip in each.strips), Fraction(0))
        first = number.get(each.stock, 1)
        yield CutStock(each.stock, first, count, each.strips, left, each.fullest)
        number[each.stock] = first + count
        place += count


def _fill(kinds: Sequence[Kind], stock: Stock, mark: Fraction) -> FilledStock:
    asked = ask(kinds, unit_of(kinds, mark), stock.width)
    high = math.floor(stock.height / asked.unit)
    panel = Panel(
        asked.order.width, high, asked.order.ways, tuple(_worth(kind, mark) for kind in kinds), asked.order.wanted
    )
    panel, asked = _that_fit(panel, asked)
    filled = fill_panel(panel, _FILLINGS, _TRIES)
    strips: Strips = {}
    for filling in filled.strips:
        strips[filling] = strips.get(filling, 0) + 1
    kept = surplus_dropped(asked.order, strips)
    return FilledStock(
        stock,
        numbered(tuple(strips_of(kept.items(), asked, stock.width))),
        _counts(kept, asked),
        filled.worth,
        filled.proven,
    )


def _that_fit(panel: Panel, asked: Asked) -> tuple[Panel, Asked]:
    """Return the panel and what is asked with only the ways that fit in it."""
    fitting = [
        (way, behind)
        for way, behind in zip(asked.order.ways, asked.behind, strict=True)
        if way.height <= panel.height and len(way.takes) > 1
    ]
    ways = tuple(way for way, _ in fitting)
    asked = Asked(replace(asked.order, ways=ways), asked.unit, tuple(behind for _, behind in fitting))
    return replace(panel, ways=ways), asked


def _counts(strips: Strips, asked: Asked) -> tuple[int, ...]:
    counts = [0] * len(asked.order.wanted)
    for filling, times in strips.items():
        for place, count in filling.runs:
            counts[asked.order.ways[place].kind] += count * times
    return tuple(counts)


def _worth(kind: Kind, mark: Fraction) -> int:
    """Return the area of a shape, in squares of a mark, rounded up."""
    lie = kind.lies[0]
    return math.ceil(lie.width * Fraction(lie.step) / mark**2)
