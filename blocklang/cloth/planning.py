"""From a cutting list to the cutting plan of every fabric."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.block import Block
from blocklang.cloth.buying import in_yards, length_to_buy
from blocklang.cloth.kinds import Kind, Lie, kinds_of, unit_of
from blocklang.cloth.laying_out import lay_out, least_length
from blocklang.cloth.plan import ClothOptions, ClothPlan, FabricPlan, PlannedStrip, SubCuts, Turning
from blocklang.cloth.values import Layout, Order, Way
from blocklang.cutting import Cutting, CuttingOptions
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
    return ClothPlan(cutting, options, tuple(plan for plan in plans if plan.strips), too_large)


def _fabric(fabric: str, fitting: Sequence[Kind], cutting: Cutting, options: ClothOptions) -> FabricPlan:
    kinds = tuple(kind for kind in fitting if cutting.pieces[kind.piece].fabric == fabric)
    for_sets = _for_sets(fabric, cutting)
    taken = sum((strip.width * strip.count for strip in for_sets), Fraction(0))
    found = _laid_out(kinds, cutting.options, taken, options)
    strips = _strips(found.layout, found.asked, cutting.options.usable_width)
    length = found.layout.length * found.asked.unit + taken
    to_buy = length_to_buy(length, options.shrinkage, options.reserve)
    return FabricPlan(
        fabric=fabric,
        strips=_numbered((*for_sets, *strips)),
        length=length,
        area=_area(fabric, kinds, cutting),
        relaxed=found.relaxed + taken,
        bound=found.bound + taken,
        to_buy=to_buy,
        yards=in_yards(to_buy),
        least_yards=in_yards(length_to_buy(found.bound + taken, options.shrinkage, options.reserve)),
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
class _Asked:
    """An order in units of so many inches, with the kind and the lie behind each of its ways."""

    order: Order
    unit: Fraction
    behind: tuple[tuple[Kind, Lie], ...]


@dataclass(frozen=True, slots=True)
class _LaidOut:
    """The layout of an order, and what bounds it, in inches."""

    asked: _Asked
    layout: Layout
    relaxed: Fraction
    bound: Fraction


def _asked(kinds: Sequence[Kind], options: CuttingOptions) -> _Asked:
    unit = unit_of(kinds, MARKS[options.rounding])
    width = math.floor(options.usable_width / unit)
    ways = [
        (Way(number, int(lie.width / unit), _takes(kind, lie, unit, width)), (kind, lie))
        for number, kind in enumerate(kinds)
        for lie in kind.lies
        if lie.fits(options.usable_width)
    ]
    ways.sort(key=lambda pair: (pair[0].height, pair[0].kind))
    order = Order(width, tuple(way for way, _ in ways), tuple(kind.wanted for kind in kinds))
    return _Asked(order, unit, tuple(behind for _, behind in ways))


def _takes(kind: Kind, lie: Lie, unit: Fraction, width: int) -> tuple[int, ...]:
    takes = [0]
    while len(takes) <= kind.wanted and (length := lie.takes(len(takes), unit)) <= width:
        takes.append(length)
    return tuple(takes)


def _for_sets(fabric: str, cutting: Cutting) -> tuple[PlannedStrip, ...]:
    """Return the strips that go into strip sets: they run the full width."""
    return tuple(
        PlannedStrip(0, count, made.strip.shown, (), Fraction(0), index)
        for index, made in enumerate(cutting.strip_sets)
        if (count := made.fabrics.count(fabric) * made.sets)
    )


def _strips(layout: Layout, asked: _Asked, usable: Fraction) -> Iterator[PlannedStrip]:
    for filling, count in layout.strips:
        cuts = tuple(_sub_cuts(asked, place, number) for place, number in reversed(filling.runs))
        offcut = usable - sum((cut.length for cut in cuts), Fraction(0))
        yield PlannedStrip(0, count, filling.height * asked.unit, cuts, max(offcut, Fraction(0)))


def _sub_cuts(asked: _Asked, place: int, count: int) -> SubCuts:
    kind, lie = asked.behind[place]
    length = asked.order.ways[place].takes[count] * asked.unit
    return SubCuts(kind.piece, count, lie.width, length, kind.mirrored, lie.turned)


def _numbered(strips: Sequence[PlannedStrip]) -> tuple[PlannedStrip, ...]:
    """Return strips in the order of cutting, the widest first, each with its number."""
    numbered, number = [], 1
    for strip in sorted(strips, key=lambda strip: -strip.width):
        numbered.append(replace(strip, first=number))
        number += strip.count
    return tuple(numbered)


def _area(fabric: str, kinds: Sequence[Kind], cutting: Cutting) -> float:
    """Return the bound by area: what the cutting list says, and what it leaves out but the plan lays lengthwise."""
    listed = sum(need.bound for need in cutting.needs if need.fabric == fabric)
    laid = {kind.piece for kind in kinds if cutting.pieces[kind.piece].strip is None}
    more = sum(run.area * sum(run.lots) for run in cutting.runs if run.piece in laid)
    return listed + more / float(cutting.options.usable_width)
