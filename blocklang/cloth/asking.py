"""From kinds of shapes to an order in whole units, and from its strips back to strips in inches."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.cloth.kinds import Kind, Lie
from blocklang.cloth.plan import PlannedStrip, SubCuts
from blocklang.cloth.values import Filling, Order, Way


@dataclass(frozen=True, slots=True)
class Asked:
    """An order in units of so many inches, with the kind and the lie behind each of its ways."""

    order: Order
    unit: Fraction
    behind: tuple[tuple[Kind, Lie], ...]


def ask(kinds: Sequence[Kind], unit: Fraction, usable: Fraction) -> Asked:
    """Return the order for kinds of shapes on cloth of a usable width, in inches."""
    width = math.floor(usable / unit)
    ways = [
        (Way(number, int(lie.width / unit), _takes(kind, lie, unit, width)), (kind, lie))
        for number, kind in enumerate(kinds)
        for lie in kind.lies
        if lie.fits(usable)
    ]
    ways.sort(key=lambda pair: (pair[0].height, pair[0].kind))
    order = Order(width, tuple(way for way, _ in ways), tuple(kind.wanted for kind in kinds))
    return Asked(order, unit, tuple(behind for _, behind in ways))


def strips_of(strips: Iterable[tuple[Filling, int]], asked: Asked, usable: Fraction) -> Iterator[PlannedStrip]:
    """Yield strips in inches, not numbered yet."""
    for filling, count in strips:
        cuts = tuple(_sub_cuts(asked, place, number) for place, number in reversed(filling.runs))
        offcut = usable - sum((cut.length for cut in cuts), Fraction(0))
        yield PlannedStrip(0, count, filling.height * asked.unit, cuts, max(offcut, Fraction(0)))


def _takes(kind: Kind, lie: Lie, unit: Fraction, width: int) -> tuple[int, ...]:
    takes = [0]
    while len(takes) <= kind.wanted and (length := lie.takes(len(takes), unit)) <= width:
        takes.append(length)
    return tuple(takes)


def _sub_cuts(asked: Asked, place: int, count: int) -> SubCuts:
    kind, lie = asked.behind[place]
    length = asked.order.ways[place].takes[count] * asked.unit
    return SubCuts(kind.piece, count, lie.width, length, kind.mirrored, lie.turned)


def numbered(strips: Sequence[PlannedStrip]) -> tuple[PlannedStrip, ...]:
    """Return strips in the order of cutting, the widest first, each with its number."""
    numbered, number = [], 1
    for strip in sorted(strips, key=lambda strip: -strip.width):
        numbered.append(replace(strip, first=number))
        number += strip.count
    return tuple(numbered)
