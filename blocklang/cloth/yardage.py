"""What is cut from cloth off the bolt: the plan of one fabric."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.cloth.asking import Asked, ask, numbered, strips_of
from blocklang.cloth.buying import in_yards, length_to_buy
from blocklang.cloth.kinds import Kind, Lie, unit_of
from blocklang.cloth.laying_out import lay_out, least_length
from blocklang.cloth.plan import ClothOptions, FabricPlan, PlannedStrip, Turning
from blocklang.cloth.values import Layout
from blocklang.cutting import Cutting, CuttingOptions
from blocklang.cutting.rounding import MARKS


def plan_yardage(fabric: str, kinds: Sequence[Kind], cutting: Cutting, options: ClothOptions) -> FabricPlan:
    """Return how shapes of one fabric, and strips for its strip sets, are cut from as little of it as is found."""
    for_sets = _for_sets(fabric, cutting)
    taken = sum((strip.width * strip.count for strip in for_sets), Fraction(0))
    found = _laid_out(kinds, cutting.options, taken, options)
    strips = strips_of(found.layout.strips, found.asked, cutting.options.usable_width)
    length = found.layout.length * found.asked.unit + taken
    to_buy = length_to_buy(length, options.shrinkage, options.reserve)
    least = length_to_buy(found.bound + taken, options.shrinkage, options.reserve)
    return FabricPlan(
        fabric=fabric,
        strips=numbered((*for_sets, *strips)),
        length=length,
        area=_area(fabric, kinds, cutting),
        relaxed=found.relaxed + taken,
        bound=found.bound + taken,
        to_buy=to_buy,
        yards=in_yards(to_buy),
        least_yards=in_yards(least),
        least_beside_stock=least,
        to_buy_without=to_buy,
    )


def _laid_out(kinds: Sequence[Kind], options: CuttingOptions, taken: Fraction, chosen: ClothOptions) -> "_LaidOut":
    """Return a layout with every shape as the cutting list has it, or with some turned where that is worth it.

    The bounds hold for both, so they are those with turning.
    """
    first = [replace(kind, lies=_first_that_fits(kind, options.usable_width)) for kind in kinds]
    plain = _asked(first, options)
    layout = lay_out(plain.order)
    if all(len(kind.lies) == 1 for kind in kinds):
        return _LaidOut(plain, layout, layout.relaxed * plain.unit, layout.bound * plain.unit)
    free = _asked(kinds, options)
    relaxed, bound = (length * free.unit for length in least_length(free.order))

    shortest = layout.length * plain.unit
    if _counted(bound, taken, chosen) < _counted(shortest, taken, chosen):
        turned = lay_out(free.order)
        bound = turned.bound * free.unit
        if _counted(turned.length * free.unit, taken, chosen) < _counted(shortest, taken, chosen):
            return _LaidOut(free, turned, relaxed, bound)
    return _LaidOut(plain, layout, relaxed, min(bound, shortest))


def _counted(length: Fraction, taken: Fraction, chosen: ClothOptions) -> Fraction:
    """Return what counts about a length: itself where shapes are always turned, else what has to be bought for it."""
    if chosen.turning is Turning.ALWAYS:
        return length
    return in_yards(length_to_buy(length + taken, chosen.shrinkage, chosen.reserve))


def _first_that_fits(kind: Kind, usable: Fraction) -> tuple[Lie, ...]:
    return tuple(lie for lie in kind.lies if lie.fits(usable))[:1]


@dataclass(frozen=True, slots=True)
class _LaidOut:
    """The layout of an order, and what bounds it, in inches."""

    asked: Asked
    layout: Layout
    relaxed: Fraction
    bound: Fraction


def _asked(kinds: Sequence[Kind], options: CuttingOptions) -> Asked:
    return ask(kinds, unit_of(kinds, MARKS[options.rounding]), options.usable_width)


def _for_sets(fabric: str, cutting: Cutting) -> tuple[PlannedStrip, ...]:
    """Return the strips that go into strip sets: they run the full width."""
    return tuple(
        PlannedStrip(0, count, made.strip.shown, (), Fraction(0), index)
        for index, made in enumerate(cutting.strip_sets)
        if (count := made.fabrics.count(fabric) * made.sets)
    )


def _area(fabric: str, kinds: Sequence[Kind], cutting: Cutting) -> float:
    """Return the bound by area: what the cutting list says, and what it leaves out but the plan lays lengthwise."""
    listed = sum(need.bound for need in cutting.needs if need.fabric == fabric)
    laid = {kind.piece for kind in kinds if cutting.pieces[kind.piece].strip is None}
    more = sum(run.area * sum(run.lots) for run in cutting.runs if run.piece in laid)
    return listed + more / float(cutting.options.usable_width)
