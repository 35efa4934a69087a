"""The corner of a patch at a junction."""

import math
from dataclasses import dataclass

from blocklang.graph.values import OUTSIDE, PatchGraph


@dataclass(frozen=True, slots=True)
class Wedge:
    """A patch lies counterclockwise from heading `start`, `angle` radians wide."""

    start: float
    angle: float

    @property
    def middle(self) -> float:
        """The heading half-way."""
        return self.start + self.angle / 2

    @property
    def middle_outside(self) -> float:
        """The heading half-way round the rest."""
        return self.start + self.angle + (math.tau - self.angle) / 2


def wedge_of(graph: PatchGraph, patch: int, junction: int) -> Wedge:
    """Return the corner of a patch that touches a junction."""
    headings = {(end.segment, end.at_start): end.heading for end in graph.junctions[junction].ends}
    leaves = back = 0.0
    for index, on_left in graph.sides[patch]:
        segment = graph.segments[index]
        if (segment.start if on_left else segment.end) == junction:
            leaves = headings[index, on_left]
        if (segment.end if on_left else segment.start) == junction:
            back = headings[index, not on_left]
    return Wedge(leaves, (back - leaves) % math.tau or math.tau)


def patches_round(graph: PatchGraph) -> tuple[frozenset[int], ...]:
    """Return the patches at each junction."""
    return tuple(
        frozenset(p for end in junction.ends for p in graph.segments[end.segment].patches) - {OUTSIDE}
        for junction in graph.junctions
    )
