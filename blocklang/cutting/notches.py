"""A notch narrower than its allowances: moved edges would cross there, so what they cover together is cut round."""

import math
from collections.abc import Iterator, Sequence

from blocklang.cutting.curves import Curve, Place
from blocklang.geometry import Edge, Outline, Point
from blocklang.geometry.congruence import without_idle_corners
from blocklang.geometry.points import cross


def crosses_itself(outline: Outline) -> bool:
    """Tell whether a closed outline (arcs as chords) crosses, touches or turns back on itself."""
    ring = outline.chords()
    sides = list(zip(ring, ring[1:] + ring[:1], strict=True))
    if any(_turns_back(a, b, c) for (a, b), (_, c) in zip(sides, sides[1:] + sides[:1], strict=True)):
        return True
    # Along x, so that only stretches that lie above each other are compared.
    order = sorted(range(len(sides)), key=lambda i: min(sides[i][0].x, sides[i][1].x))
    for place, i in enumerate(order):
        far = max(sides[i][0].x, sides[i][1].x)
        for j in order[place + 1 :]:
            if min(sides[j][0].x, sides[j][1].x) > far:
                break
            if abs(i - j) not in (1, len(sides) - 1) and _meet(*sides[i], *sides[j]):
                return True
    return False


def covered(outline: Outline, curves: Sequence[Curve], corners: Sequence[Sequence[Place]]) -> tuple[Outline, list[int]]:
    """Return the outline round a patch and the allowances of all its edges, and the edge that each side lies beside.

    `curves` are the moved edges, `corners` what passes round the corner where each edge starts. Arcs become chords.
    """
    from shapely import Polygon, union_all

    parts = [Polygon(outline.chords()), *(Polygon(ring).buffer(0) for ring in _allowances(outline, curves, corners))]
    whole = union_all(parts, grid_size=1.0)
    ring = [Point(round(x), round(y)) for x, y in Polygon(whole.exterior).exterior.coords[:-1]]
    cut = without_idle_corners(Outline.through(ring))
    return cut, [_beside(edge, curves) for edge in cut.edges]


def _allowances(
    outline: Outline, curves: Sequence[Curve], corners: Sequence[Sequence[Place]]
) -> Iterator[tuple[Place, ...]]:
    for i, (edge, curve) in enumerate(zip(outline.edges, curves, strict=True)):
        outer = Edge(_snap(curve.start), _snap(curve.end), curve.arc).chords() if curve.by else ()
        if outer:
            yield (*edge.chords(), *reversed(outer))
        before = curves[i - 1]
        if math.remainder(curve.departs - before.arrives, math.tau) > 0:
            yield edge.start, before.end, *corners[i], curve.start


def _beside(edge: Edge, curves: Sequence[Curve]) -> int:
    return min(range(len(curves)), key=lambda i: (round(max(_off(p, curves[i]) for p in (edge.start, edge.end))), i))


def _off(place: Place, curve: Curve) -> float:
    if curve.arc is not None:
        return abs(math.dist(curve.arc.centre, place) - curve.radius)
    dx, dy = place[0] - curve.start[0], place[1] - curve.start[1]
    return abs(math.cos(curve.departs) * dy - math.sin(curve.departs) * dx)


def _turns_back(a: Point, b: Point, c: Point) -> bool:
    return cross(a, b, c) == 0 and (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    if max(c.y, d.y) < min(a.y, b.y) or min(c.y, d.y) > max(a.y, b.y):
        return False
    first = _sign(cross(a, b, c)) * _sign(cross(a, b, d))
    second = _sign(cross(c, d, a)) * _sign(cross(c, d, b))
    return first <= 0 and second <= 0


def _sign(value: int) -> int:
    return (value > 0) - (value < 0)


def _snap(place: Place) -> Point:
    return Point(round(place[0]), round(place[1]))
