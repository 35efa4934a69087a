"""A layout from the relaxed one: cut the whole strips, relax what is left, and so on."""

from collections.abc import Sequence
from dataclasses import replace

from blocklang.cloth.fillings import tallest_of
from blocklang.cloth.program import Strips, length_of
from blocklang.cloth.relaxing import Relaxation, fitted, relax
from blocklang.cloth.values import Filling, Order

_NEARLY = 1e-6
Least = tuple[tuple[int, int], ...]


#: With more strips in part than this, all of them are made whole at once that are at least half a strip.
_MANY = 40
_MANY_FILLINGS = 400
#: How many rounds follow each cut.
_ROUNDS, _FEW_ROUNDS = 100, 5


def dive(order: Order, least: Least, known: Relaxation, first: int, shorter_than: int | None) -> Strips | None:
    """Return a layout, or None when it comes out no shorter than asked.

    `known` is the relaxed layout to begin from. `first` says which of the strips that are cut in part is made whole
    first, the nearest to whole being 0.
    """
    strips: Strips = {}
    fillings = _kept(known, ())
    while any(order.wanted):
        relaxed = relax(
            order, least, fitted(order, fillings), _FEW_ROUNDS if sum(map(bool, order.wanted)) > _MANY else _ROUNDS
        )
        if shorter_than is not None and length_of(strips) + relaxed.prices.bound > shorter_than - 1:
            return None
        fillings = _kept(relaxed, fillings)
        for filling, times in _whole(relaxed, 0 if strips else first).items():
            order, least = _cut(order, least, filling, times, strips)
    return strips


def _kept(relaxed: Relaxation, known: Sequence[Filling]) -> tuple[Filling, ...]:
    """Return the fillings to begin the next round with; of very many, those in use."""
    if len(relaxed.fillings) > _MANY_FILLINGS:
        return tuple(filling for filling, part in zip(relaxed.fillings, relaxed.times, strict=True) if part > _NEARLY)
    return tuple(dict.fromkeys((*known, *relaxed.fillings)))


def surplus_dropped(order: Order, strips: Strips) -> Strips:
    """Return strips without shapes that nobody wants, and as low as what is left in them lets them be."""
    wanted = list(order.wanted)
    kept: Strips = {}
    for filling in sorted(strips, key=lambda filling: (-filling.height, filling.runs)):
        for _ in range(strips[filling]):
            runs = []
            for place, count in reversed(filling.runs):
                kind = order.ways[place].kind
                used = min(count, wanted[kind])
                wanted[kind] -= used
                if used:
                    runs.append((place, used))
            if runs:
                rest = Filling(0, tuple(reversed(runs)))
                rest = replace(rest, height=tallest_of(rest, order.ways))
                kept[rest] = kept.get(rest, 0) + 1
    return kept


def _whole(relaxed: Relaxation, first: int) -> Strips:
    """Return the strips that are cut at least once; if there are none, or one is asked for, the nearest to whole."""
    times = dict(zip(relaxed.fillings, relaxed.times, strict=True))
    whole = {filling: int(part + _NEARLY) for filling, part in times.items() if part + _NEARLY >= 1}
    in_part = [(part % 1, place) for place, part in enumerate(relaxed.times) if _NEARLY < part % 1 < 1 - _NEARLY]
    if whole and not (first and in_part):
        return whole
    if len(in_part) > _MANY:
        return {relaxed.fillings[place]: 1 for part, place in in_part if part >= 0.5} or _nearest(relaxed, in_part, 0)
    return _nearest(relaxed, in_part, first)


def _nearest(relaxed: Relaxation, in_part: list[tuple[float, int]], first: int) -> Strips:
    in_part.sort(key=lambda pair: (-round(pair[0], 6), pair[1]))
    return {relaxed.fillings[in_part[min(first, len(in_part) - 1)][1]]: 1}


def _cut(order: Order, least: Least, filling: Filling, times: int, strips: Strips) -> tuple[Order, Least]:
    """Cut a strip some times, but no more often than anything in it is wanted; return what is left to do."""
    wanted = list(order.wanted)
    for _ in range(times):
        if not any(wanted[order.ways[place].kind] for place, _ in filling.runs):
            break
        for place, count in filling.runs:
            kind = order.ways[place].kind
            wanted[kind] = max(0, wanted[kind] - count)
        strips[filling] = strips.get(filling, 0) + 1
        least = tuple((height, max(0, count - (height <= filling.height))) for height, count in least)
    return replace(order, wanted=tuple(wanted)), least
