"""What runs round a section: its outline, and which other sections it meets along it."""

from dataclasses import dataclass

from blocklang.foundation.values import Foundation
from blocklang.geometry import Edge, Outline
from blocklang.geometry.congruence import runs_on, without_idle_corners
from blocklang.graph.values import OUTSIDE, PatchGraph


@dataclass(frozen=True, slots=True)
class Meeting:
    """A stretch of a section's border, counterclockwise: the section on the other side, None where the block ends.

    Its `edges` are whole: a straight side is one, whatever patches lie along it.
    """

    other: int | None
    edges: tuple[Edge, ...]


def section_outline(graph: PatchGraph, patches: tuple[int, ...]) -> Outline:
    """Return the finished outline of a section, counterclockwise, its straight sides whole."""
    return without_idle_corners(Outline(tuple(edge for edge, _ in _ring(graph, patches))))


def meetings_of(foundation: Foundation, section: int) -> tuple[Meeting, ...]:
    """Return the border of a section as stretches, each along one other section or along the edge of the block."""
    owner = {patch: place for place, one in enumerate(foundation.sections) for patch in one.patches}
    owner[OUTSIDE] = -1
    ring = [(edge, owner[other]) for edge, other in _ring(foundation.graph, foundation.sections[section].patches)]
    first = next((at for at, (_, other) in enumerate(ring) if other != ring[at - 1][1]), 0)
    found: list[Meeting] = []
    for edge, other in ring[first:] + ring[:first]:
        there = None if other < 0 else other
        if found and found[-1].other == there:
            found[-1] = Meeting(there, _with(found[-1].edges, edge))
        else:
            found.append(Meeting(there, (edge,)))
    return tuple(found)


def _with(edges: tuple[Edge, ...], edge: Edge) -> tuple[Edge, ...]:
    """Return edges with one more, made whole with the last where it runs straight on."""
    if runs_on(edges[-1], edge):
        return (*edges[:-1], Edge(edges[-1].start, edge.end, edge.arc))
    return (*edges, edge)


def _ring(graph: PatchGraph, patches: tuple[int, ...]) -> list[tuple[Edge, int]]:
    """Return the edges round a section in order, each with the patch beyond it."""
    members = set(patches)
    leaving: dict[int, tuple[int, Edge, int]] = {}
    for patch in sorted(members):
        for index, on_left in graph.sides[patch]:
            segment = graph.segments[index]
            beyond = segment.right if on_left else segment.left
            if beyond not in members:
                start, end = (segment.start, segment.end) if on_left else (segment.end, segment.start)
                leaving[start] = end, segment.edge if on_left else segment.edge.reversed(), beyond
    here = first = min(leaving)
    ring: list[tuple[Edge, int]] = []
    while not ring or here != first:
        here, edge, beyond = leaving[here]
        ring.append((edge, beyond))
    return ring
