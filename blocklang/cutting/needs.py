"""What to buy: the strips of each fabric, filled first-fit from the widest down, their length and yards."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from blocklang.block import Block
from blocklang.cutting.pieces import Laid
from blocklang.cutting.striped import set_area
from blocklang.cutting.strips import Spacing
from blocklang.cutting.values import CuttingOptions, FabricNeed, Measure, Run, StripLayout, StripSet

INCHES_IN_YARD = 36

#: How many strips with room left are tried before a new one is begun; keeps long lists quick.
_STRIPS_TRIED = 32


def runs_of(laid: Sequence[Laid]) -> tuple[Run, ...]:
    """Return how the shapes of each piece follow each other along a strip, without those from strip sets."""
    return tuple(
        Run(index, space.width.shown, space.step, space.lean, item.lots, space.area, space.length)
        for index, item in enumerate(laid)
        if (space := item.space) is not None
    )


@dataclass(slots=True)
class _Filling:
    """A strip that is being filled."""

    width: Measure
    room: float
    pieces: dict[int, int] = field(default_factory=dict)


def needs_of(
    block: Block, laid: Sequence[Laid], sets: Sequence[StripSet], options: CuttingOptions
) -> tuple[FabricNeed, ...]:
    """Return what each fabric of the block needs, in the block's order; fabrics that are not cut are left out."""
    of_fabric: dict[str, list[int]] = {}
    for index, item in enumerate(laid):
        if item.piece.strip is not None:
            of_fabric.setdefault(item.piece.fabric, []).append(index)
    cut = {*of_fabric, *(fabric for made in sets if made.sets for fabric in made.fabrics)}
    return tuple(_need(f.id, of_fabric.get(f.id, []), laid, sets, options) for f in block.fabrics if f.id in cut)


def _need(
    fabric: str, indices: list[int], laid: Sequence[Laid], sets: Sequence[StripSet], options: CuttingOptions
) -> FabricNeed:
    usable = float(options.usable_width)
    layout = (*_set_strips(fabric, sets), *_filled(indices, laid, usable))
    strips: dict[Fraction, tuple[Measure, int]] = {}
    for strip in layout:
        width, count = strips.get(strip.width.shown, (strip.width, 0))
        strips[strip.width.shown] = width, count + strip.count
    length = sum((width.shown * count for width, count in strips.values()), Fraction(0))
    area = sum(_area(laid[index]) for index in indices) + _striped_area(fabric, laid, sets)
    return FabricNeed(
        fabric,
        tuple(strips[width] for width in sorted(strips, reverse=True)),
        float(length),
        area / usable,
        Fraction(math.ceil(length / (1 - options.shrinkage) * 8 / INCHES_IN_YARD), 8),
        layout,
    )


def _set_strips(fabric: str, sets: Sequence[StripSet]) -> Iterator[StripLayout]:
    for index, made in enumerate(sets):
        count = made.fabrics.count(fabric) * made.sets
        if count:
            yield StripLayout(made.strip, count, (), index)


def _filled(indices: list[int], laid: Sequence[Laid], usable: float) -> Iterator[StripLayout]:
    """Yield strips filled from the widest shapes down; like strips that follow each other are counted together."""
    done: list[_Filling] = []
    tried: list[_Filling] = []
    least = min((_space(laid[i]).takes(1) for i in indices), default=0.0)
    for index in sorted(indices, key=lambda i: (-_space(laid[i]).width.shown, -_space(laid[i]).step, i)):
        space = _space(laid[index])
        for lot in laid[index].lots:
            left = lot - sum(_put_in_turn(tried, index, space, lot))
            while left > 0:
                strip = _Filling(space.width, usable)
                left -= _put(strip, index, space, left)
                done.append(strip)
                tried.append(strip)
            tried = [strip for strip in tried if strip.room >= least][-_STRIPS_TRIED:]
    yield from _counted(done)


def _put_in_turn(strips: Sequence[_Filling], index: int, space: Spacing, wanted: int) -> Iterator[int]:
    for strip in strips:
        count = _put(strip, index, space, wanted)
        wanted -= count
        yield count


def _put(strip: _Filling, index: int, space: Spacing, wanted: int) -> int:
    """Put as many shapes as go in, and return how many."""
    count = min(wanted, space.holds(strip.room))
    if count > 0:
        strip.room -= space.takes(count)
        strip.pieces[index] = strip.pieces.get(index, 0) + count
    return max(count, 0)


def _counted(strips: list[_Filling]) -> Iterator[StripLayout]:
    counts: dict[tuple[Fraction, tuple[tuple[int, int], ...]], tuple[Measure, int]] = {}
    for strip in strips:
        key = strip.width.shown, tuple(strip.pieces.items())
        width, count = counts.get(key, (strip.width, 0))
        counts[key] = width, count + 1
    for (_, pieces), (width, count) in counts.items():
        yield StripLayout(width, count, pieces)


def _space(item: Laid) -> Spacing:
    assert item.space is not None
    return item.space


def _area(item: Laid) -> float:
    return _space(item).area * sum(item.lots)


def _striped_area(fabric: str, laid: Sequence[Laid], sets: Sequence[StripSet]) -> float:
    return sum(
        set_area(sets[item.piece.strip_set]) * item.piece.count * sets[item.piece.strip_set].fabrics.count(fabric)
        for item in laid
        if item.piece.strip_set is not None
    )
