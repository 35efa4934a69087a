"""Where a patch touches what is already joined: one chain of edges, or more than can be stitched at once."""

from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from blocklang.graph.values import PatchGraph


@dataclass(frozen=True, slots=True)
class Chain:
    """Edges of a patch one after the other, counterclockwise round it, and the junctions between them."""

    edges: tuple[int, ...]
    between: tuple[int, ...]


def chain_of(graph: PatchGraph, patch: int, joined: AbstractSet[int], touched: AbstractSet[int]) -> Chain | None:
    """Return the one chain along which a patch touches the joined patches; None when it touches them in two places.

    `touched` are the junctions round the joined patches: a patch that also touches them with a mere corner elsewhere
    would close a ring round what is not joined yet.
    """
    sides = graph.sides[patch]
    shared = [_across(graph, segment, on_left) in joined for segment, on_left in sides]
    starts = [place for place, here in enumerate(shared) if here and not shared[place - 1]]
    if len(starts) != 1:
        return None
    count = shared.count(True)
    places = [(starts[0] + step) % len(sides) for step in range(len(sides))]
    ends = [_end(graph, *sides[place]) for place in places]
    # The ends of the edges beyond the chain, without the last, which is where the chain begins.
    if any(end in touched for end in ends[count:-1]):
        return None
    return Chain(tuple(sides[place][0] for place in places[:count]), tuple(ends[: count - 1]))


def _across(graph: PatchGraph, segment: int, on_left: bool) -> int:
    return graph.segments[segment].right if on_left else graph.segments[segment].left


def _end(graph: PatchGraph, segment: int, on_left: bool) -> int:
    return graph.segments[segment].end if on_left else graph.segments[segment].start
