"""How little has to be bought beside the stock, whatever is cut from it: the prices of the yardage bound it."""

import math
from collections.abc import Sequence
from fractions import Fraction

from blocklang.cloth.asking import ask
from blocklang.cloth.fillings import Shelf, weigh
from blocklang.cloth.kinds import Kind, unit_of
from blocklang.cloth.panels import stack
from blocklang.cloth.plan import Stock
from blocklang.cloth.program import PARTS
from blocklang.cloth.relaxing import relax
from blocklang.cutting import CuttingOptions
from blocklang.cutting.rounding import MARKS


def least_beside_stock(kinds: Sequence[Kind], stock: Sequence[Stock], options: CuttingOptions) -> Fraction:
    """Return a length in inches below which no plan of strips and sub-cuts goes, for the shapes of one fabric.

    Every shape has a price, and no strip of yardage pays for more than its width. What a piece of stock can hold at
    these prices, copies not counted, is the most that it can save.
    """
    if not kinds:
        return Fraction(0)
    asked = ask(kinds, unit_of(kinds, MARKS[options.rounding]), options.usable_width)
    prices = relax(asked.order).prices.shapes
    total = sum(price * kind.wanted for price, kind in zip(prices, kinds, strict=True))
    saved = sum(_most_saved(kinds, prices, each, asked.unit) * each.count for each in stock)
    return max(Fraction(0), Fraction(total - saved, PARTS)) * asked.unit


def _most_saved(kinds: Sequence[Kind], prices: Sequence[int], stock: Stock, unit: Fraction) -> int:
    order = ask(kinds, unit, stock.width).order
    high = math.floor(stock.height / unit)
    ways = tuple(way for way in order.ways if way.height <= high and len(way.takes) > 1)
    if not ways:
        return 0
    knapsack = weigh(
        Shelf(order.width, ways, tuple(order.most(way) for way in ways)), [prices[way.kind] for way in ways]
    )
    stacked = stack(high, knapsack)
    return stacked[max(stacked)][high]
