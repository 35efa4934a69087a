"""Every straight line along which a patch might be sewn on, and what must lie where when it is."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from blocklang.geometry.tolerance import NEAR_MISS, STRAIGHT_ANGLE
from blocklang.graph.values import OUTSIDE, Junction, PatchGraph

#: A patch may reach this far over a line (1/128 in) before it counts as lying across it; slivers are refused earlier.
_OVER = NEAR_MISS // 4

Angles = tuple[dict[int, float], ...]
Seams = tuple[tuple[tuple[int, int], ...], ...]


@dataclass(frozen=True, slots=True)
class Line:
    """One whole straight side of a patch with patches all along it; sets of patches and junctions are bit masks.

    `beside` are the patches along it, `across` those that reach over the line to the patch's own side of it.
    """

    patch: int
    segments: tuple[int, ...]
    junctions: tuple[int, ...]  # passed in order, both ends included
    beside: int
    across: int

    @property
    def ends(self) -> tuple[int, int]:
        """The junctions where the line leaves the patch."""
        return self.junctions[0], self.junctions[-1]


@dataclass(frozen=True, slots=True)
class Lay:
    """A patch graph made ready for asking what can be sewn to what."""

    graph: PatchGraph
    lines: tuple[tuple[Line, ...], ...]  # of each patch
    near: tuple[int, ...]  # the neighbours of each patch
    seams: Seams  # of each patch: segment and neighbour
    angles: Angles  # at each junction: patch and its inside angle

    def angle(self, junction: int, members: int) -> float:
        """Return the inside angle that patches have together at a junction."""
        return sum(angle for patch, angle in self.angles[junction].items() if members >> patch & 1)

    def can_add(self, line: Line, members: int) -> bool:
        """Tell whether a patch can be sewn along a line to a section that it is not part of yet."""
        if line.beside & ~members or line.across & members:
            return False
        if any(members >> other & 1 and index not in line.segments for index, other in self.seams[line.patch]):
            return False
        return all(self.angle(end, members) < math.pi - STRAIGHT_ANGLE for end in line.ends)


def lay_out(graph: PatchGraph) -> Lay:
    """Return the lay of a graph; every stage of dividing it into sections starts there."""
    angles = _angles(graph)
    seams = tuple(tuple(_neighbours(graph, patch)) for patch in range(len(graph.sides)))
    near = tuple(mask_of(other for _, other in around) for around in seams)
    lines = _lines(graph, angles)
    return Lay(graph, lines, near, seams, angles)


def patches_of(members: int) -> tuple[int, ...]:
    """Return the patches of a bit mask, ascending."""
    found = []
    while members:
        low = members & -members
        found.append(low.bit_length() - 1)
        members ^= low
    return tuple(found)


def mask_of(patches: Iterable[int]) -> int:
    """Return the bit mask of patches."""
    total = 0
    for patch in patches:
        total |= 1 << patch
    return total


def _lines(graph: PatchGraph, angles: Angles) -> tuple[tuple[Line, ...], ...]:
    import numpy

    rings = [patch.outline.chords() for patch in graph.block.patches]
    corners = numpy.array([corner for ring in rings for corner in ring], dtype=float)
    starts = numpy.cumsum([0] + [len(ring) for ring in rings[:-1]])
    found = []
    for patch in range(len(rings)):
        for segments, junctions in _straight_sides(graph, patch, angles):
            start, end = (graph.junctions[junctions[place]].at for place in (0, -1))
            across = (end.x - start.x, end.y - start.y)
            off = (corners[:, 1] - start.y) * across[0] - (corners[:, 0] - start.x) * across[1]
            off /= math.hypot(*across)
            low, high = numpy.minimum.reduceat(off, starts), numpy.maximum.reduceat(off, starts)
            if low[patch] >= -_OVER:
                over = mask_of(int(other) for other in numpy.flatnonzero(high > _OVER)) & ~(1 << patch)
                found.append(_line(graph, patch, segments, junctions, over, angles))
    return tuple(tuple(line for line in found if line.patch == patch) for patch in range(len(rings)))


def _line(
    graph: PatchGraph, patch: int, segments: tuple[int, ...], junctions: tuple[int, ...], over: int, angles: Angles
) -> Line:
    beside = mask_of(_other(graph, index, patch) for index in segments)
    elsewhere = {j for index, _ in graph.sides[patch] for j in _ends(graph, index)}.difference(junctions)
    # A patch that touches this one only beyond the line's ends would close a ring round a hole.
    touching = mask_of(other for junction in elsewhere for other in angles[junction]) & ~(1 << patch)
    return Line(patch, segments, junctions, beside, over | touching)


def _straight_sides(graph: PatchGraph, patch: int, angles: Angles) -> Iterator[tuple[tuple[int, ...], tuple[int, ...]]]:
    """Yield the whole straight sides of a patch that are seam all along and end in corners that point outward."""
    ring = graph.sides[patch]
    begins = [_begin(graph, index, on_left) for index, on_left in ring]
    inside = [angles[junction][patch] for junction in begins]
    corners = [place for place, angle in enumerate(inside) if abs(angle - math.pi) > STRAIGHT_ANGLE]
    for here, following in zip(corners, corners[1:] + corners[:1], strict=True):
        count = (following - here) % len(ring) or len(ring)
        places = [(here + step) % len(ring) for step in range(count)]
        side = [graph.segments[ring[place][0]] for place in places]
        outward = inside[here] < math.pi and inside[following] < math.pi
        if outward and all(segment.is_seam and segment.edge.arc is None for segment in side):
            yield tuple(segment.index for segment in side), (*(begins[place] for place in places), begins[following])


def _begin(graph: PatchGraph, index: int, on_left: bool) -> int:
    return graph.segments[index].start if on_left else graph.segments[index].end


def _ends(graph: PatchGraph, index: int) -> tuple[int, int]:
    return graph.segments[index].start, graph.segments[index].end


def _other(graph: PatchGraph, index: int, patch: int) -> int:
    left, right = graph.segments[index].patches
    return right if left == patch else left


def _neighbours(graph: PatchGraph, patch: int) -> Iterator[tuple[int, int]]:
    for index, _ in graph.sides[patch]:
        if graph.segments[index].is_seam:
            yield index, _other(graph, index, patch)


def _angles(graph: PatchGraph) -> Angles:
    return tuple(_angles_at(graph, junction) for junction in graph.junctions)


def _angles_at(graph: PatchGraph, junction: Junction) -> dict[int, float]:
    found: dict[int, float] = {}
    for end, following in zip(junction.ends, junction.ends[1:] + junction.ends[:1], strict=True):
        segment = graph.segments[end.segment]
        patch = segment.left if end.at_start else segment.right
        if patch != OUTSIDE:
            turn = (following.heading - end.heading) % math.tau
            found[patch] = found.get(patch, 0.0) + (0.0 if math.tau - turn < STRAIGHT_ANGLE else turn)
    return found
