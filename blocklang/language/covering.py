"""Find the outline of what patches cover together, by cancelling the edges that two of them share."""

from blocklang.geometry import Arc, Edge, Outline, Point
from blocklang.geometry.points import cross, distance
from blocklang.geometry.tolerance import SAME_POINT

#: Outer edges are compared with all outer corners only while there are no more than this many of them.
MOST_OUTER = 2_000


def covered_outline(outlines: tuple[Outline, ...]) -> Outline | None:
    """Return the one ring round all patches; None when there is not exactly one that touches itself nowhere."""
    merge = Corners()
    edges = [merge.edge(edge) for outline in outlines for edge in outline.edges]
    outer = _uncancelled(edges)
    if len(outer) <= MOST_OUTER:
        corners = sorted({edge.start for edge in outer})
        outer = _uncancelled([part for edge in outer for part in _split(edge, corners)])
    ring = _chain(outer)
    return None if ring is None else Outline(_unbroken(ring)).counterclockwise()


class Corners:
    """Makes one corner of corners that lie within the tolerance of each other."""

    def __init__(self) -> None:
        """Begin with no corner seen."""
        self._seen: dict[tuple[int, int], Point] = {}

    def edge(self, edge: Edge) -> Edge:
        """Return an edge between merged corners."""
        arc = edge.arc and Arc(self.corner(edge.arc.centre), edge.arc.clockwise)
        return Edge(self.corner(edge.start), self.corner(edge.end), arc)

    def corner(self, point: Point) -> Point:
        """Return the first corner seen here."""
        size = 2 * SAME_POINT
        column, row = point.x // size, point.y // size
        for dx in (0, -1, 1):
            for dy in (0, -1, 1):
                found = self._seen.get((column + dx, row + dy))
                if found and abs(found.x - point.x) <= SAME_POINT and abs(found.y - point.y) <= SAME_POINT:
                    return found
        self._seen[column, row] = point
        return point


def _uncancelled(edges: list[Edge]) -> list[Edge]:
    """Return the edges that are not travelled the other way as well."""
    backward = {edge.reversed() for edge in edges}
    return [edge for edge in edges if edge not in backward]


def _split(edge: Edge, corners: list[Point]) -> tuple[Edge, ...]:
    stops = []
    for corner in corners:
        if corner not in (edge.start, edge.end):
            along, off = edge.offset_of(corner)
            if 0 < along < 1 and abs(off) <= SAME_POINT:
                stops.append((along, corner))
    return edge.split(tuple(corner for _, corner in sorted(stops)))


def _chain(edges: list[Edge]) -> list[Edge] | None:
    """Put edges one after the other; None when they make more than one ring, or a ring that meets itself."""
    leaving = {edge.start: edge for edge in edges}
    if not edges or len(leaving) < len(edges):
        return None
    ring = [edges[0]]
    while ring[-1].end != edges[0].start:
        after = leaving.get(ring[-1].end)
        if after is None or len(ring) > len(edges):
            return None
        ring.append(after)
    return ring if len(ring) == len(edges) else None


def _unbroken(ring: list[Edge]) -> tuple[Edge, ...]:
    """Leave out corners at which a straight side runs on."""
    first = next((index for index, edge in enumerate(ring) if not _runs_on(ring[index - 1], edge)), 0)
    merged: list[Edge] = []
    for edge in ring[first:] + ring[:first]:
        if merged and _runs_on(merged[-1], edge):
            merged[-1] = Edge(merged[-1].start, edge.end)
        else:
            merged.append(edge)
    return tuple(merged)


def _runs_on(before: Edge, after: Edge) -> bool:
    if before.arc or after.arc:
        return False
    off = abs(cross(before.start, before.end, after.end))
    return off <= SAME_POINT * distance(before.start, after.end)
