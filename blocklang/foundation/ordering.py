"""The order in which a section is sewn: from the patch that a teacher begins with, outward or from end to end."""

import math
from dataclasses import dataclass

from blocklang.foundation.lines import Lay, Line, mask_of, patches_of
from blocklang.foundation.peeling import core_of, last_line

#: Lines that lean by less than this from each other (about 1 degree) are parallel; a row is told from end to end.
_PARALLEL = 0.02

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Added:
    """A patch of a section and the line along which it is sewn on; the first has no line."""

    patch: int
    line: Line | None

    @property
    def seam(self) -> tuple[int, ...]:
        """The seam segments sewn with this patch."""
        return () if self.line is None else self.line.segments


def order_section(lay: Lay, members: int) -> tuple[Added, ...]:
    """Return the patches of a section in the order of sewing."""
    if not members & (members - 1):
        return (Added(patches_of(members)[0], None),)
    first = _first(lay, members)
    return _outward(lay, _taken_off(lay, members, first))


def _first(lay: Lay, members: int) -> int:
    patches = patches_of(members)
    able = [patch for patch in patches if core_of(lay, members, 1 << patch) == 1 << patch]
    middle = _middle(lay, patches)
    if _is_row(lay, members):
        return min(able, key=lambda patch: _reading(lay, patch))
    return min(able, key=lambda patch: (-_sewn_to_alone(lay, members, patch), _away(lay, patch, middle), patch))


def _sewn_to_alone(lay: Lay, members: int, patch: int) -> int:
    """Return how many patches of the section are sewn to this one alone, along a whole side."""
    return sum(
        line.beside == 1 << patch for other in patches_of(members & lay.near[patch]) for line in lay.lines[other]
    )


def _is_row(lay: Lay, members: int) -> bool:
    """Tell whether all seams of a section are parallel, as those of strips side by side are."""
    seams = [s.edge for s in lay.graph.seams if members >> s.left & 1 and members >> s.right & 1]
    turns = [math.remainder(edge.departs() - seams[0].departs(), math.pi) for edge in seams]
    return all(abs(turn) < _PARALLEL for turn in turns)


def _taken_off(lay: Lay, members: int, first: int) -> list[Added]:
    """Take patches off, the farthest from the first one first, and return them in the order of sewing."""
    start = lay.graph.block.patches[first].outline.centroid()
    left, order = members, []
    while left != 1 << first:
        off = [(patch, line) for patch in patches_of(left) if patch != first and (line := last_line(lay, left, patch))]
        patch, line = max(off, key=lambda one: (_away(lay, one[0], start), one[0]))
        order.append(Added(patch, line))
        left &= ~(1 << patch)
    return [Added(first, None), *order[::-1]]


def _outward(lay: Lay, order: list[Added]) -> tuple[Added, ...]:
    """Return the order round by round, each round clockwise, where that can be sewn; else the order as it is."""
    rounds: dict[int, int] = {}
    for added in order:
        under = patches_of(added.line.beside) if added.line else ()
        rounds[added.patch] = 1 + max((rounds[patch] for patch in under), default=-1)
    centre = lay.graph.block.patches[order[0].patch].outline.centroid()
    ranked = sorted(order, key=lambda added: (rounds[added.patch], _clockwise(lay, added.patch, centre)))
    return tuple(ranked) if _can_be_sewn(lay, ranked) else tuple(order)


def _can_be_sewn(lay: Lay, order: list[Added]) -> bool:
    sewn = mask_of((order[0].patch,))
    for added in order[1:]:
        if added.line is None or not lay.can_add(added.line, sewn):
            return False
        sewn |= 1 << added.patch
    return True


def _clockwise(lay: Lay, patch: int, centre: Place) -> float:
    """Return how far round clockwise a patch lies, from just past straight left."""
    x, y = lay.graph.block.patches[patch].outline.centroid()
    angle = math.atan2(y - centre[1], x - centre[0])
    return round(math.pi - angle, 3) % round(math.tau, 3)


def _middle(lay: Lay, patches: tuple[int, ...]) -> Place:
    bounds = [lay.graph.block.patches[patch].outline.bounds() for patch in patches]
    left, low = min(b[0] for b in bounds), min(b[1] for b in bounds)
    return (left + max(b[2] for b in bounds)) / 2, (low + max(b[3] for b in bounds)) / 2


def _away(lay: Lay, patch: int, from_: Place) -> float:
    x, y = lay.graph.block.patches[patch].outline.centroid()
    return round(math.hypot(x - from_[0], y - from_[1]) / 512)


def _reading(lay: Lay, patch: int) -> tuple[float, float]:
    x, y = lay.graph.block.patches[patch].outline.centroid()
    return round(x / 512) - round(y / 512), round(x / 512)
