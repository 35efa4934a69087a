"""Turning matched seams into segments and junctions."""

import math
from collections.abc import Iterable
from dataclasses import replace

from blocklang.geometry import Edge, Point
from blocklang.geometry.points import distance
from blocklang.geometry.tolerance import SAME_POINT, STRAIGHT_ANGLE
from blocklang.graph.matching import Matched, Seam
from blocklang.graph.values import OUTSIDE, Junction, JunctionKind, Segment, SegmentEnd

#: How far from a junction two curves that leave it in one direction are told apart.
_A_LITTLE_WAY_ON = 64 * SAME_POINT


def segments_of(matched: Matched) -> tuple[Segment, ...]:
    """Return the segments in a stable order, each reaching from junction to junction."""
    raw = [_segment(seam) for seam in matched.seams]
    joined = _without_idle_corners(raw)
    points = matched.corners
    used = sorted({n for s in joined for n in (s.start, s.end)}, key=lambda n: (points[n].y, points[n].x))
    rank = {number: place for place, number in enumerate(used)}
    upward = [s if rank[s.start] <= rank[s.end] else _turned(s) for s in joined]
    order = sorted(upward, key=lambda s: (rank[s.start], rank[s.end], s.edge.middle()))
    return tuple(Segment(index, s.edge, rank[s.start], rank[s.end], s.left, s.right) for index, s in enumerate(order))


def junctions_of(segments: tuple[Segment, ...]) -> tuple[Junction, ...]:
    """Return the junctions that segments end in, by index."""
    ends: dict[int, list[tuple[SegmentEnd, float]]] = {}
    at: dict[int, Point] = {}
    outside: set[int] = set()
    for segment in segments:
        for number, edge, start in ((segment.start, segment.edge, True), (segment.end, segment.edge.reversed(), False)):
            ends.setdefault(number, []).append((SegmentEnd(segment.index, start, edge.departs(), None), _bend(edge)))
            at[number] = edge.start
            if not segment.is_seam:
                outside.add(number)
    return tuple(_junction(n, at[n], ends[n], n in outside) for n in sorted(ends))


def sides_of(segments: tuple[Segment, ...], patches: int) -> tuple[tuple[tuple[int, bool], ...], ...]:
    """Return, for each patch, the segments round it counterclockwise."""
    leaving: list[dict[int, tuple[int, int, bool]]] = [{} for _ in range(patches)]
    for s in segments:
        if s.left != OUTSIDE:
            leaving[s.left][s.start] = (s.end, s.index, True)
        if s.right != OUTSIDE:
            leaving[s.right][s.end] = (s.start, s.index, False)
    return tuple(_ring(links) for links in leaving)


def _segment(seam: Seam) -> Segment:
    f, b = seam.forward, seam.backward
    return Segment(-1, f.edge, f.start, f.end, f.patch, b.patch)


def _turned(s: Segment) -> Segment:
    return Segment(s.index, s.edge.reversed(), s.end, s.start, s.right, s.left)


def _without_idle_corners(segments: list[Segment]) -> list[Segment]:
    """Merge two segments that run on straight between the same two patches, with nothing else meeting there."""
    at: dict[int, list[int]] = {}
    for index, segment in enumerate(segments):
        at.setdefault(segment.start, []).append(index)
        at.setdefault(segment.end, []).append(index)
    current: list[Segment | None] = list(segments)
    for corner, touching in at.items():
        if len(touching) == 2 and touching[0] != touching[1]:
            _merge(current, at, corner, *touching)
    return [segment for segment in current if segment is not None]


def _merge(current: list[Segment | None], at: dict[int, list[int]], corner: int, i: int, j: int) -> None:
    a, b = current[i], current[j]
    assert a is not None and b is not None
    a = a if a.end == corner else _turned(a)
    b = b if b.start == corner else _turned(b)
    if a.patches != b.patches or a.start == b.end or not _runs_on(a.edge, b.edge):
        return
    current[i] = Segment(-1, Edge(a.edge.start, b.edge.end, a.edge.arc), a.start, b.end, a.left, a.right)
    current[j] = None
    at[b.end] = [i if index == j else index for index in at[b.end]]


def _runs_on(a: Edge, b: Edge) -> bool:
    if abs(math.remainder(b.departs() - a.arrives(), 2 * math.pi)) > STRAIGHT_ANGLE:
        return False
    if a.arc is None or b.arc is None:
        return a.arc is b.arc
    return a.arc.clockwise == b.arc.clockwise and distance(a.arc.centre, b.arc.centre) <= 4 * SAME_POINT


def _bend(edge: Edge) -> float:
    """Return the heading a little way along, which tells curves apart that leave in one direction."""
    radius = edge.radius()
    sign = 0.0 if edge.arc is None else (-1.0 if edge.arc.clockwise else 1.0)
    return edge.departs() + sign * _A_LITTLE_WAY_ON / radius


def _junction(number: int, at: Point, ends: Iterable[tuple[SegmentEnd, float]], outside: bool) -> Junction:
    around = [end for end, _ in sorted(ends, key=lambda pair: (pair[1] % (2 * math.pi), pair[0].segment))]
    across = _straight_pairs(around)
    linked = tuple(replace(end, straight_on=across.get(i)) for i, end in enumerate(around))
    kind = JunctionKind.EDGE if outside else _kind(len(around), len(across) // 2)
    return Junction(number, at, kind, linked)


def _straight_pairs(ends: list[SegmentEnd]) -> dict[int, int]:
    """Return, by place in the ring, the segment that each end runs straight on into; the straightest pairs first."""
    pairs = [
        (off, i, j)
        for i, a in enumerate(ends)
        for j, b in enumerate(ends[i + 1 :], i + 1)
        if (off := abs(math.remainder(a.heading - b.heading - math.pi, 2 * math.pi))) <= STRAIGHT_ANGLE
    ]
    across: dict[int, int] = {}
    for _, i, j in sorted(pairs):
        if i not in across and j not in across:
            across[i], across[j] = ends[j].segment, ends[i].segment
    return across


def _kind(seams: int, straight: int) -> JunctionKind:
    if seams == 2:
        return JunctionKind.CORNER
    if straight == 0:
        return JunctionKind.Y
    if seams == 3:
        return JunctionKind.TEE
    return JunctionKind.CROSS if (seams, straight) == (4, 2) else JunctionKind.MANY


def _ring(links: dict[int, tuple[int, int, bool]]) -> tuple[tuple[int, bool], ...]:
    start = min(links)
    ring, here = [], start
    while True:
        here, segment, on_left = links[here]
        ring.append((segment, on_left))
        if here == start:
            return tuple(ring)
