"""From a cutting list to the cutting plan of every fabric: stock first where less is bought then, and the yardage."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.block import Block
from blocklang.cloth.buying import length_to_buy
from blocklang.cloth.kinds import Kind, kinds_of
from blocklang.cloth.plan import ClothOptions, ClothPlan, FabricPlan
from blocklang.cloth.stock import FilledStock, cut_alike, fill_stock, without
from blocklang.cloth.stock_bound import least_beside_stock
from blocklang.cloth.yardage import plan_yardage
from blocklang.cutting import Cutting
from blocklang.cutting.rounding import MARKS

AS_LISTED = ClothOptions()


def plan_cloth(block: Block, cutting: Cutting, options: ClothOptions = AS_LISTED) -> ClothPlan:
    """Return how the shapes of a cutting list are cut from as little of each fabric as is found, with the bounds.

    Fabrics come in the block's order; those of which nothing is cut are left out.
    """
    kinds = kinds_of(cutting, options)
    usable = cutting.options.usable_width
    fitting = tuple(kind for kind in kinds if any(lie.fits(usable) for lie in kind.lies))
    too_large = tuple(sorted({kind.piece for kind in kinds if kind not in fitting}))
    plans = (_fabric(fabric.id, fitting, cutting, options) for fabric in block.fabrics)
    return ClothPlan(cutting, options, tuple(plan for plan in plans if plan.strips or plan.cut_stock), too_large)


def _fabric(fabric: str, fitting: Sequence[Kind], cutting: Cutting, options: ClothOptions) -> FabricPlan:
    kinds = tuple(kind for kind in fitting if cutting.pieces[kind.piece].fabric == fabric)
    stock = tuple(each for each in options.stock if each.fabric == fabric)
    plain = plan_yardage(fabric, kinds, cutting, options)
    if not stock:
        return plain
    for_sets = sum((strip.width * strip.count for strip in plain.strips if strip.strip_set is not None), Fraction(0))
    least = least_beside_stock(kinds, stock, cutting.options) + for_sets
    least = length_to_buy(least, options.shrinkage, options.reserve)
    filled = fill_stock(kinds, stock, MARKS[cutting.options.rounding])
    chosen = _cut_least(_Beside(plain, kinds, filled, cutting, options))
    return replace(chosen, least_beside_stock=least, stock=stock)


@dataclass(frozen=True, slots=True)
class _Beside:
    """The plan of a fabric without stock, and what could be cut from stock, in this order."""

    plain: FabricPlan
    kinds: tuple[Kind, ...]
    filled: tuple[FilledStock, ...]
    cutting: Cutting
    options: ClothOptions

    def first(self, number: int) -> FabricPlan:
        """Return the plan when the first so many pieces of stock are cut."""
        if not number:
            return self.plain
        cut = self.filled[:number]
        rest = tuple(kind for kind in without(self.kinds, cut) if kind.wanted)
        plan = plan_yardage(self.plain.fabric, rest, self.cutting, self.options)
        areas = {run.piece: run.area for run in self.cutting.runs}
        gone = sum(areas[kind.piece] * count for each in cut for kind, count in zip(self.kinds, each.cut, strict=True))
        area = max(0.0, self.plain.area - gone / float(self.cutting.options.usable_width))
        return replace(plan, area=area, to_buy_without=self.plain.to_buy, cut_stock=tuple(cut_alike(cut)))


def _cut_least(beside: _Beside) -> FabricPlan:
    """Return the plan that cuts the fewest pieces of stock for what is bought when all of them are cut, by halving."""
    whole = beside.first(len(beside.filled))
    if whole.yards >= beside.plain.yards:
        return beside.plain
    low, high, best = 0, len(beside.filled), whole
    while high - low > 1:
        middle = (low + high) // 2
        plan = beside.first(middle)
        if plan.yards <= best.yards:
            high, best = middle, plan
        else:
            low = middle
    return best
