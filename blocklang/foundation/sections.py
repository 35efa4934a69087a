"""From a patch graph to paper foundations: the only way in."""

from collections.abc import Iterator
from itertools import islice

from blocklang.foundation.bounds import divide_by_junctions
from blocklang.foundation.dividing import Division, Fewest, divide, divisions
from blocklang.foundation.growing import MOST_SETS, Grown, grow
from blocklang.foundation.joining import join_sections
from blocklang.foundation.lines import Lay, lay_out, patches_of
from blocklang.foundation.papers import Groups, group_alike, tell_sections
from blocklang.foundation.peeling import is_section
from blocklang.foundation.values import Foundation, SectionCount, SectionJoin
from blocklang.graph.values import PatchGraph

#: So many of the divisions with the fewest sections are sewn together on trial, the most promising first.
_MOST_TRIED, _FEW_TRIED = 6, 2  # few, where a junction makes set-in seams certain

Joins = tuple[SectionJoin, ...]


def sections(graph: PatchGraph, most_sets: int = MOST_SETS) -> Foundation:
    """Return the block divided into the fewest sections that can each be sewn to one paper.

    `most_sets` bounds the sets of patches that are looked at; a search ends after counted steps, never after a time.
    Where it ends early the count may not be proven, and its minimum comes from the junctions.
    """
    lay = lay_out(graph)
    everything = (1 << len(graph.sides)) - 1
    if is_section(lay, everything):
        return _told(lay, ((everything,),), (), SectionCount(1, 1, True))
    grown = grow(lay, most_sets)
    fewest = divide_by_junctions(lay)
    if not fewest.proven and grown.all_of_them:
        fewest = divide(lay, grown, fewest)
    groups, joins = _best(lay, grown, fewest)
    # One section has been ruled out, so two is a bound that needs no search.
    count = SectionCount(len(fewest.division), max(2, fewest.bound), len(fewest.division) <= max(2, fewest.bound))
    return _told(lay, groups, joins or (), count)


def _told(lay: Lay, groups: Groups, joins: Joins, count: SectionCount) -> Foundation:
    told, papers = tell_sections(lay, groups)
    return Foundation(lay.graph, told, papers, joins, count)


def _best(lay: Lay, grown: Grown, fewest: Fewest) -> tuple[Groups, Joins | None]:
    """Return the division whose sections are joined with the fewest set-in seams, of those that are tried."""
    best: tuple[tuple[int, int], Groups, Joins | None] | None = None
    bends = any(junction.is_inner and junction.always_pivots for junction in lay.graph.junctions)
    for division in islice(_in_turn(lay, grown, fewest), _FEW_TRIED if bends else _MOST_TRIED):
        groups = group_alike(lay, division)
        joins = join_sections(lay.graph, _owner(lay, groups))
        cost = _cost(joins)
        if best is None or cost < best[0]:
            best = cost, groups, joins
        if cost == (0, 0):
            break
    assert best is not None
    return best[1], best[2]


def _in_turn(lay: Lay, grown: Grown, fewest: Fewest) -> Iterator[Division]:
    """Yield divisions to try; the one already found when no other is chosen."""
    following = divisions(lay, grown, fewest)
    first = next(following, None)
    yield fewest.division if first is None else first
    yield from following


def _cost(joins: Joins | None) -> tuple[int, int]:
    """Return the set-in joins and the pivots; more than any division has when the sections cannot be joined."""
    if joins is None:
        return 1 << 30, 0
    return sum(join.is_set_in for join in joins), sum(len(join.pivots) for join in joins)


def _owner(lay: Lay, groups: Groups) -> tuple[int, ...]:
    owner = [0] * len(lay.near)
    for place, members in enumerate(one for group in groups for one in group):
        for patch in patches_of(members):
            owner[patch] = place
    return tuple(owner)
