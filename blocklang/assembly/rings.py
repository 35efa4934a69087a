"""Rings of precedence in a choice of closings: seams that would each have to be sewn before the next, round and round."""

from collections.abc import Mapping

from blocklang.assembly.closings import Closing
from blocklang.assembly.precedence import strong_parts
from blocklang.graph.values import PatchGraph

#: More rings than this are not looked for at once.
_AT_ONCE = 200

Arcs = dict[int, dict[int, int]]


def rings(graph: PatchGraph, choice: Mapping[int, Closing]) -> list[tuple[int, ...]]:
    """Return junctions whose closings cannot all hold, ring by ring, short rings among them; none when an order exists.

    What is sewn last at a junction is sewn at once, and every other seam there before it.
    """
    arcs = _arcs(graph, choice)
    part_of: dict[int, int] = {}
    for number, part in enumerate(strong_parts({seam: set(to) for seam, to in arcs.items()})):
        part_of.update(dict.fromkeys(part, number))
    found: dict[tuple[int, ...], None] = {}
    for junction, closing in choice.items():
        for seam in _before(graph, closing):
            if part_of.get(seam, -1) == part_of.get(closing.last[0], -2) and len(found) < _AT_ONCE:
                found[tuple(sorted({junction, *_way(arcs, part_of, closing.last, seam)}))] = None
    return list(found)


def _before(graph: PatchGraph, closing: Closing) -> list[int]:
    """Return the seams that must be sewn before a junction is closed."""
    return [e.segment for e in graph.junctions[closing.junction].ends if e.segment not in closing.last]


def _arcs(graph: PatchGraph, choice: Mapping[int, Closing]) -> Arcs:
    """Return which seam leads on to which, and at which junction."""
    arcs: Arcs = {}
    for junction, closing in choice.items():
        for seam in closing.last:
            arcs.setdefault(seam, {}).update((other, junction) for other in closing.last if other != seam)
        for seam in _before(graph, closing):
            arcs.setdefault(seam, {}).update(dict.fromkeys(closing.last, junction))
    return arcs


def _way(arcs: Arcs, part_of: dict[int, int], last: tuple[int, ...], goal: int) -> set[int]:
    """Return the junctions on a shortest way from some seams to another within their part."""
    came: dict[int, tuple[int, int] | None] = dict.fromkeys(last)
    waiting = list(last)
    for here in waiting:
        if here == goal:
            break
        for following, junction in arcs.get(here, {}).items():
            if following not in came and part_of.get(following) == part_of[goal]:
                came[following] = here, junction
                waiting.append(following)
    passed: set[int] = set()
    step = came[goal]
    while step is not None:
        here, junction = step
        passed.add(junction)
        step = came[here]
    return passed


def pieces(seams: frozenset[int], choice: Mapping[int, Closing]) -> list[list[int]]:
    """Return the seams of a region taken together where a junction is closed along them: one list for each join."""
    beside: dict[int, list[int]] = {seam: [] for seam in seams}
    for closing in choice.values():
        if len(closing.last) == 2:
            one, other = closing.last
            beside[one].append(other)
            beside[other].append(one)
    left = set(seams)
    return [_walk(beside, seam, left) for seam in sorted(seams, key=lambda s: (len(beside[s]), s)) if seam in left]


def _walk(beside: dict[int, list[int]], seam: int, left: set[int]) -> list[int]:
    walked = []
    here: int | None = seam
    while here is not None:
        walked.append(here)
        left.discard(here)
        here = next((following for following in beside[here] if following in left), None)
    return walked


def last_pieces(graph: PatchGraph, joins: list[list[int]], choice: Mapping[int, Closing]) -> list[list[int]]:
    """Return the joins that nothing has to follow."""
    followed = {seam for closing in choice.values() for seam in _before(graph, closing)}
    return [join for join in joins if not followed.intersection(join)]
