"""What a crease does to cloth: which places lie beyond it, and where they come to lie when they are folded back."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from blocklang.geometry import Edge, Point
from blocklang.thickness.cloth import CURVE_ERROR, polygons_of

if TYPE_CHECKING:
    import numpy
    from shapely import Polygon

Place = tuple[float, float]

#: No allowance reaches further than this many seam allowances, its longest tip included.
REACH = 4.5


@dataclass(frozen=True, slots=True)
class Zone:
    """Where cloth from the left of a crease is folded: on the right of `edge`, as far as an allowance can reach."""

    edge: Edge
    ring: tuple[Place, ...]  # clockwise
    is_hollow: bool
    bounds: tuple[float, float, float, float]

    def may_hold(self, bounds: tuple[float, float, float, float]) -> bool:
        """Tell whether something with these bounds may reach into the zone."""
        low_x, low_y, high_x, high_y = self.bounds
        if bounds[0] >= high_x or bounds[2] <= low_x or bounds[1] >= high_y or bounds[3] <= low_y:
            return False
        if self.is_hollow:
            return True
        return not any(_lies_left(start, end, bounds) for start, end in pairwise((*self.ring, self.ring[0])))


def fold_back(edges: Sequence[Edge], cloths: "Sequence[Polygon]") -> "list[Polygon]":
    """Return each piece of cloth folded back over its crease: mirrored, across a curve square to it."""
    folded = list(cloths)
    straight = [place for place, edge in enumerate(edges) if edge.arc is None]
    mirrored = _mirrored([edges[place] for place in straight], [cloths[place] for place in straight])
    for place, cloth in zip(straight, mirrored, strict=True):
        folded[place] = cloth
    for place, edge in enumerate(edges):
        if edge.arc is not None:
            folded[place] = _over_curve(edge, cloths[place])
    return folded


def _over_curve(edge: Edge, cloth: "Polygon") -> "Polygon":
    from shapely import segmentize, transform

    fine = segmentize(cloth, math.sqrt(8 * edge.radius() * CURVE_ERROR))
    return transform(fine, _turn_inside_out(edge))


def _mirrored(edges: Sequence[Edge], cloths: "Sequence[Polygon]") -> "Sequence[Polygon]":
    import numpy
    from shapely import get_coordinates, get_num_coordinates, set_coordinates

    if not edges:
        return ()
    shapes = numpy.array(cloths, dtype=object)
    counts = get_num_coordinates(shapes)
    given = [(math.cos(edge.departs()), math.sin(edge.departs()), *edge.start) for edge in edges]
    ux, uy, x0, y0 = numpy.repeat(numpy.array(given, dtype=float), counts, axis=0).T
    mirrored: Sequence[Polygon] = set_coordinates(shapes, _mirror(get_coordinates(shapes), ux, uy, x0, y0)).tolist()
    return mirrored


def zone_beyond(edge: Edge, cuts: tuple[float | None, float | None], allowance: float) -> Zone:
    """Return the zone on the right of a crease.

    `cuts` gives for each end the heading along which the zone is cut off, None where the crease is drawn on.
    """
    reach = REACH * allowance
    ring = _round_zone(edge, cuts, reach) if edge.arc else _straight_zone(edge, cuts, reach)
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    is_hollow = edge.arc is not None or not _is_convex(ring)
    return Zone(edge, tuple(ring), is_hollow, (min(xs), min(ys), max(xs), max(ys)))


def shapes_of(zones: Sequence[Zone]) -> "list[Polygon]":
    """Return the shape of each zone."""
    drawn = polygons_of([(zone.ring,) for zone in zones]).tolist()
    return [
        shape if zone.edge.arc is None or shape.is_valid else shape.buffer(0)
        for zone, shape in zip(zones, drawn, strict=True)
    ]


def _is_convex(ring: list[Place]) -> bool:
    corners = zip(ring, ring[1:] + ring[:1], ring[2:] + ring[:2], strict=True)
    return all((bx - ax) * (cy - by) - (by - ay) * (cx - bx) < 0 for (ax, ay), (bx, by), (cx, cy) in corners)


def _lies_left(start: Place, end: Place, bounds: tuple[float, float, float, float]) -> bool:
    """Tell whether all that has these bounds lies on the left of the line from start to end, or on it."""
    along_x, along_y = end[0] - start[0], end[1] - start[1]
    x = bounds[0] if along_y < 0 else bounds[2]
    y = bounds[1] if along_x > 0 else bounds[3]
    return along_x * (y - start[1]) >= along_y * (x - start[0])


def _straight_zone(edge: Edge, cuts: Sequence[float | None], reach: float) -> list[tuple[float, float]]:
    heading = edge.departs()
    square = heading - math.pi / 2
    near = [
        (float(at.x), float(at.y)) if cut is not None else _from(at, heading, by)
        for at, cut, by in ((edge.start, cuts[0], -reach), (edge.end, cuts[1], reach))
    ]
    headings = [square if cut is None else cut for cut in cuts]
    far = [_from(at, cut, reach / max(math.cos(cut - square), 0.2)) for at, cut in zip(near, headings, strict=True)]
    return [near[0], near[1], far[1], far[0]]


def _from(at: tuple[float, float], heading: float, by: float) -> tuple[float, float]:
    return at[0] + math.cos(heading) * by, at[1] + math.sin(heading) * by


def _round_zone(edge: Edge, cuts: Sequence[float | None], reach: float) -> list[tuple[float, float]]:
    """Return the zone beside an arc; where it is drawn on it goes straight on, as the needle does."""
    assert edge.arc is not None
    (cx, cy), radius = edge.arc.centre, edge.radius()
    outward = not edge.arc.clockwise  # the centre of an arc travelled counterclockwise lies on its left
    other = radius + reach if outward else max(radius - reach, radius * 0.05)
    near = [(float(x), float(y)) for x, y in edge.chords(CURVE_ERROR)]
    far = [_on(cx, cy, other, math.atan2(y - cy, x - cx)) for x, y in near]
    if cuts[0] is None:
        near, far = ([_from(ring[0], edge.departs(), -reach), *ring] for ring in (near, far))
    if cuts[1] is None:
        near, far = ([*ring, _from(ring[-1], edge.arrives(), reach)] for ring in (near, far))
    return near + far[::-1]


def _on(cx: float, cy: float, radius: float, angle: float) -> tuple[float, float]:
    return cx + radius * math.cos(angle), cy + radius * math.sin(angle)


def _mirror(places: "numpy.ndarray[Any, Any]", ux: Any, uy: Any, x0: Any, y0: Any) -> "numpy.ndarray[Any, Any]":
    """Return places mirrored in lines through (x0, y0) along (ux, uy)."""
    x, y = places[:, 0] - x0, places[:, 1] - y0
    along = 2 * (x * ux + y * uy)
    out = places.copy()
    out[:, 0], out[:, 1] = x0 + along * ux - x, y0 + along * uy - y
    return out


def _mirror_in(edge: Edge) -> Any:
    ux, uy = math.cos(edge.departs()), math.sin(edge.departs())
    return lambda places: _mirror(places, ux, uy, float(edge.start.x), float(edge.start.y))


def _turn_inside_out(edge: Edge) -> Any:
    """Return what turns places over an arc, and over its tangents beyond its ends."""
    assert edge.arc is not None
    (cx, cy), radius, sweep = edge.arc.centre, edge.radius(), edge.sweep()
    middle = math.atan2(edge.start.y - cy, edge.start.x - cx) + sweep / 2
    before, after = _mirror_in(Edge(edge.start, _ahead(edge, 0))), _mirror_in(Edge(edge.end, _ahead(edge, 1)))

    def turned(places: "numpy.ndarray[Any, Any]") -> "numpy.ndarray[Any, Any]":
        import numpy

        x, y = places[:, 0] - cx, places[:, 1] - cy
        off = numpy.maximum(numpy.hypot(x, y), radius / 100)
        scale = numpy.maximum(2 * radius - off, radius / 100) / off
        out = places.copy()
        out[:, 0], out[:, 1] = cx + x * scale, cy + y * scale
        along = (numpy.arctan2(y, x) - middle + math.pi) % math.tau - math.pi
        along = along if sweep > 0 else -along
        beyond = numpy.abs(along) > abs(sweep) / 2
        out[beyond & (along < 0)] = before(places[beyond & (along < 0)])
        out[beyond & (along > 0)] = after(places[beyond & (along > 0)])
        return out

    return turned


def _ahead(edge: Edge, end: int) -> Point:
    at, heading = (edge.end, edge.arrives()) if end else (edge.start, edge.departs())
    x, y = _from(at, heading, edge.radius())
    return Point(round(x), round(y))
