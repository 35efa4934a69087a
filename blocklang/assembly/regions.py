"""A unit seen as a region of the graph: what is sewn inside it, where its edge is, and how it falls apart."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import OUTSIDE, JunctionKind, PatchGraph


@dataclass(frozen=True, slots=True)
class Region:
    """A connected set of patches, ascending, and the seam segments inside it that are left open (partial seams)."""

    patches: tuple[int, ...]
    open: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Survey:
    """A region's seams in order, and the junctions on its edge."""

    region: Region
    members: frozenset[int]
    seams: frozenset[int]
    edge: frozenset[int]


@dataclass(frozen=True, slots=True)
class Chain:
    """Seam segments that run on straight, with the junctions passed, ends included."""

    segments: tuple[int, ...]
    junctions: tuple[int, ...]

    @property
    def inner(self) -> tuple[int, ...]:
        """The junctions between the ends."""
        return self.junctions[1:-1]


class Ground:
    """The graph, with what every look at a region needs worked out once."""

    def __init__(self, graph: PatchGraph) -> None:
        """Index straight continuations, corner angles and areas."""
        self.graph = graph
        self.on: list[dict[int, int]] = [{} for _ in graph.segments]
        for junction in graph.junctions:
            for end in junction.ends:
                if end.straight_on is not None:
                    self.on[end.segment][junction.index] = end.straight_on
        self.sectors = tuple(_sectors(graph, index) for index in range(len(graph.junctions)))
        self.areas = tuple(patch.outline.area() for patch in graph.block.patches)

    def survey(self, region: Region) -> Survey:
        """Look over a region; cost follows its patches."""
        members = frozenset(region.patches)
        seams: set[int] = set()
        edge: set[int] = set()
        for patch in region.patches:
            for index, _ in self.graph.sides[patch]:
                segment = self.graph.segments[index]
                if segment.left in members and segment.right in members and index not in region.open:
                    seams.add(index)
                else:
                    edge.update((segment.start, segment.end))
        return Survey(region, members, frozenset(seams), frozenset(edge))

    def chains(self, survey: Survey) -> list[Chain]:
        """Return the region's seams as straight chains, broken where they touch its edge."""
        done: set[int] = set()
        found = []
        for index in sorted(survey.seams):
            if index not in done:
                chain = self._chain(survey, index)
                done.update(chain.segments)
                found.append(chain)
        return found

    def follow(self, survey: Survey, segment: int, junction: int) -> tuple[list[int], list[int]]:
        """Walk on from a segment through its end at a junction; return the segments and junctions that follow."""
        segments: list[int] = []
        junctions: list[int] = []
        first = segment
        while junction not in survey.edge:
            following = self.on[segment].get(junction)
            if following is None or following not in survey.seams or following == first:
                break
            segment = following
            junction = self.graph.segments[segment].other_end(junction)
            segments.append(segment)
            junctions.append(junction)
        return segments, junctions

    def _chain(self, survey: Survey, index: int) -> Chain:
        segment = self.graph.segments[index]
        ahead, passed = self.follow(survey, index, segment.end)
        behind, left = self.follow(survey, index, segment.start)
        if ahead and ahead == behind[::-1]:
            behind, left = [], []
        return Chain((*behind[::-1], index, *ahead), (*left[::-1], segment.start, segment.end, *passed))

    def parts(self, survey: Survey, cut: Iterable[int]) -> list[tuple[int, ...]]:
        """Return the pieces that a region falls into when cut along segments, each ascending, by lowest patch."""
        closed = survey.seams.difference(cut)
        left = set(survey.members)
        return [self._flood(patch, closed, left) for patch in survey.region.patches if patch in left]

    def _flood(self, patch: int, closed: frozenset[int], left: set[int]) -> tuple[int, ...]:
        left.discard(patch)
        reached, waiting = [patch], [patch]
        while waiting:
            for index, on_left in self.graph.sides[waiting.pop()]:
                if index in closed:
                    segment = self.graph.segments[index]
                    other = segment.right if on_left else segment.left
                    if other in left:
                        left.discard(other)
                        reached.append(other)
                        waiting.append(other)
        return tuple(sorted(reached))

    def part(self, region: Region, patches: tuple[int, ...]) -> Region:
        """Return a part of a region with what is left open inside it."""
        if not region.open:
            return Region(patches)
        members = set(patches)
        inside = (index for index in region.open if members.issuperset(self.graph.segments[index].patches))
        return Region(patches, frozenset(inside))

    def angle(self, junction: int, members: frozenset[int] | set[int]) -> float:
        """Return the inside angle that patches have together at a junction, in radians."""
        return sum(angle for patch, angle in self.sectors[junction] if patch in members)

    def is_notch(self, junction: int, members: frozenset[int] | set[int]) -> bool:
        """Tell whether something will be set in at a junction: the stop rule."""
        if self.graph.junctions[junction].kind is JunctionKind.EDGE:
            return False
        return self.angle(junction, members) > math.pi + STRAIGHT_ANGLE


def _sectors(graph: PatchGraph, index: int) -> tuple[tuple[int, float], ...]:
    ends = graph.junctions[index].ends
    sectors = []
    for end, following in zip(ends, ends[1:] + ends[:1], strict=True):
        segment = graph.segments[end.segment]
        patch = segment.left if end.at_start else segment.right
        turn = (following.heading - end.heading) % math.tau
        if patch != OUTSIDE:
            sectors.append((patch, turn if turn > STRAIGHT_ANGLE or len(ends) > 2 else math.tau))
    return tuple(sectors)
