"""A set-in block drawn with more patches, so that it is sewn with straight seams only: advice, never done unasked.

At a corner where every order has a pivot, one of the seams is carried on straight through the patch across from it:
that patch is cut in two, and the junction has a straight run. Quilters cut setting squares and mitred corners so.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from blocklang.assembly.assemble import assemble
from blocklang.block import Block, Patch
from blocklang.geometry import Outline, Point
from blocklang.geometry.points import distance, same_point
from blocklang.graph import build_graph
from blocklang.graph.values import OUTSIDE, Junction, PatchGraph, SegmentEnd

#: Larger blocks get no such advice: it would cost more time than the plan itself.
_MOST_PATCHES = 60


@dataclass(frozen=True, slots=True)
class StraightVersion:
    """The block with patches cut in two; `cut` are the ids of those patches in the order of the file."""

    block: Block
    cut: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Way:
    """A seam to carry on at a junction: its end there, the patch it runs into, and its heading."""

    end: SegmentEnd
    patch: int
    heading: float


def straight_version(graph: PatchGraph) -> StraightVersion | None:
    """Return the version with the fewest patches that has neither pivots nor partial seams; None when none is found.

    Few patches are cut rather than many, and those on the outside of the block rather than those inside.
    """
    corners = [junction for junction in graph.junctions if junction.is_inner and junction.always_pivots]
    if not corners or len(graph.sides) > _MOST_PATCHES or _has_arcs(graph):
        return None
    versions = (_cut_at(graph, corners, choose) for choose in (_between_equals, _outside, _level, _upright))
    found = [version for version in versions if version is not None and _is_straight(version.block)]
    inside = {p.id for p, ring in zip(graph.block.patches, graph.sides, strict=True) if not _is_outside(graph, ring)}
    return min(found, key=lambda v: (len(v.block.patches), len(v.cut), len(inside.intersection(v.cut))), default=None)


def _is_outside(graph: PatchGraph, ring: tuple[tuple[int, bool], ...]) -> bool:
    return any(OUTSIDE in graph.segments[index].patches for index, _ in ring)


def _has_arcs(graph: PatchGraph) -> bool:
    return any(segment.edge.arc is not None for segment in graph.segments)


def _is_straight(block: Block) -> bool:
    graph = build_graph(block).graph
    assembly = None if graph is None else assemble(graph).assembly
    return assembly is not None and assembly.pivots.count == 0 and assembly.partials.count == 0


Choosing = Callable[[PatchGraph, _Way], float]


def _between_equals(graph: PatchGraph, way: _Way) -> float:
    """Prefer a seam between two patches of one name, as between the points of a star."""
    one, other = (graph.block.patches[side].name for side in graph.segments[way.end.segment].patches)
    return float(one != other)


def _outside(graph: PatchGraph, way: _Way) -> float:
    """Prefer to cut a patch on the outside of the block."""
    return float(not _is_outside(graph, graph.sides[way.patch]))


def _level(_: PatchGraph, way: _Way) -> float:
    return round(abs(math.sin(way.heading)), 3)


def _upright(_: PatchGraph, way: _Way) -> float:
    return round(abs(math.cos(way.heading)), 3)


def _cut_at(graph: PatchGraph, corners: list[Junction], choose: Choosing) -> StraightVersion | None:
    pieces: dict[int, list[tuple[Point, ...]]] = {}
    for junction in corners:
        way = min(_ways(graph, junction), key=lambda way: (choose(graph, way), way.end.segment))
        rings = pieces.setdefault(way.patch, [graph.block.patches[way.patch].outline.corners])
        if not _cut_one(rings, junction.at, way.heading):
            return None
    patches = [
        piece for place in range(len(graph.sides)) for piece in _pieces(graph.block.patches[place], pieces.get(place))
    ]
    names = tuple(graph.block.patches[place].id for place in sorted(pieces))
    return StraightVersion(replace(graph.block, patches=tuple(patches), wishes=(), counts=None), names)


def _ways(graph: PatchGraph, junction: Junction) -> Iterator[_Way]:
    """Yield every seam at a junction with the patch that it would run on into."""
    for end in junction.ends:
        heading = end.heading + math.pi
        before = max(junction.ends, key=lambda other: -((heading - other.heading) % math.tau))
        segment = graph.segments[before.segment]
        patch = segment.left if before.at_start else segment.right
        if patch != OUTSIDE:
            yield _Way(end, patch, heading)


def _pieces(patch: Patch, rings: list[tuple[Point, ...]] | None) -> list[Patch]:
    if rings is None:
        return [patch]
    return [
        replace(patch, id=f"{patch.id}~{number}", outline=Outline.through(ring), stripes=None)
        for number, ring in enumerate(rings, 1)
    ]


def _cut_one(rings: list[tuple[Point, ...]], at: Point, heading: float) -> bool:
    """Cut the ring that a line from one of its corners runs into; return whether there is such a line in the end."""
    for place, ring in enumerate(rings):
        start = next((i for i, corner in enumerate(ring) if same_point(corner, at)), None)
        if start is not None and _runs_along(ring, start, heading):
            return True
        if start is not None and _opens_to(ring, start, heading):
            turned = ring[start:] + ring[:start]
            rings[place : place + 1] = _in_two(turned, heading)
            return True
    return False


def _runs_along(ring: tuple[Point, ...], start: int, heading: float) -> bool:
    """Tell whether a side of a corner is that line already."""
    here = ring[start]
    beside = (ring[(start + 1) % len(ring)], ring[start - 1])
    return any(abs(math.remainder(math.atan2(p.y - here.y, p.x - here.x) - heading, math.tau)) < 1e-3 for p in beside)


def _opens_to(ring: tuple[Point, ...], start: int, heading: float) -> bool:
    """Tell whether a heading from a corner lies inside it."""
    here, after, before = ring[start], ring[(start + 1) % len(ring)], ring[start - 1]
    leaves = math.atan2(after.y - here.y, after.x - here.x)
    opening = (math.atan2(before.y - here.y, before.x - here.x) - leaves) % math.tau
    return 1e-3 < (heading - leaves) % math.tau < opening - 1e-3


def _in_two(ring: tuple[Point, ...], heading: float) -> list[tuple[Point, ...]]:
    """Cut a ring along a line from its first corner to the first side that the line meets."""
    reach = [(_meets(ring[0], heading, ring[i], ring[i + 1]), i) for i in range(1, len(ring) - 1)]
    far, side = min(pair for pair in reach if pair[0] > 0)
    hit = Point(round(ring[0].x + far * math.cos(heading)), round(ring[0].y + far * math.sin(heading)))
    if same_point(hit, ring[side]) or distance(hit, ring[side]) < 64:
        return [ring[: side + 1], (ring[0], *ring[side:])]
    if distance(hit, ring[side + 1]) < 64:
        return [ring[: side + 2], (ring[0], *ring[side + 1 :])]
    return [(*ring[: side + 1], hit), (ring[0], hit, *ring[side + 1 :])]


def _meets(origin: Point, heading: float, a: Point, b: Point) -> float:
    """Return how far along a line from a point it meets a side; infinite when it does not."""
    cos, sin = math.cos(heading), math.sin(heading)
    left_a = (a.y - origin.y) * cos - (a.x - origin.x) * sin
    left_b = (b.y - origin.y) * cos - (b.x - origin.x) * sin
    if (left_a * left_b > 0 and min(abs(left_a), abs(left_b)) > 64) or abs(left_a - left_b) < 1:
        return math.inf
    share = min(1.0, max(0.0, left_a / (left_a - left_b)))
    x, y = a.x + (b.x - a.x) * share - origin.x, a.y + (b.y - a.y) * share - origin.y
    along = x * cos + y * sin
    return along if along > 64 else math.inf
