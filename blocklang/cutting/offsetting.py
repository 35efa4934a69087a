"""A finished outline moved outward edge by edge: straight edges stay parallel, arcs concentric, corners are mitred."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang.cutting.curves import Curve, Place, crossing
from blocklang.cutting.notches import covered, crosses_itself
from blocklang.geometry import Edge, Outline, Point
from blocklang.geometry.tolerance import SAME_POINT, STRAIGHT_ANGLE

#: A tip that no neighbour trims is cut off square where it would stick out further than this many allowances.
LONG_TIP = 4
#: And this is how many allowances beyond the finished corner it is cut off.
TIP_KEPT = 2
#: A neighbour's edge in line with this patch's own lies beside it by rounding only; in ticks.
_HAIR = 1.0


@dataclass(frozen=True, slots=True)
class Limit:
    """A line that a tip is trimmed along; what is kept lies on the left of `heading`."""

    at: Place
    heading: float

    def inside(self, place: Place) -> float:
        """Return how far inside of the line a place lies."""
        dx, dy = place[0] - self.at[0], place[1] - self.at[1]
        return math.cos(self.heading) * dy - math.sin(self.heading) * dx

    def on(self, other: "Limit") -> bool:
        """Tell whether this is the same line as another, up to noise of the lattice."""
        turn = math.remainder(self.heading - other.heading, 2 * math.pi)
        return abs(turn) <= STRAIGHT_ANGLE and abs(self.inside(other.at)) <= SAME_POINT


@dataclass(frozen=True, slots=True)
class Moved:
    """An outline moved outward, and for each of its edges the edge that it comes from (or whose end it prolongs)."""

    outline: Outline
    sources: tuple[int, ...]


def offset(outline: Outline, distances: Sequence[float], limits: Sequence[tuple[Limit, ...]] = ()) -> Moved:
    """Move each edge of a counterclockwise outline outward by its distance in ticks.

    Where a notch is too narrow for the distance, the outline runs round what the moved edges cover together; where
    an edge of a patch without notches is moved out further than its neighbours meet, it is left out.
    `limits` may give, for the corner where each edge starts, the lines that its tip is trimmed along.
    """
    curves = [Curve.beside(edge, by) for edge, by in zip(outline.edges, distances, strict=True)]
    places = [edge.start for edge in outline.edges]
    corners = _corners(places, curves, limits or ((),) * len(curves))
    if _is_hollow(outline):
        pieces = list(_pieces(curves, corners, range(len(curves))))
        moved = Outline(tuple(edge for edge, _ in pieces))
        if any(_turning_round(curves, corners)) or crosses_itself(moved):
            cut, beside = covered(outline, curves, corners)
            return Moved(cut, tuple(beside))
        return Moved(moved, tuple(source for _, source in pieces))
    sources = list(range(len(curves)))
    while len(curves) > 3 and any(lost := _turning_round(curves, corners)):
        for kept in (sources, places, curves):
            del kept[lost.index(True)]
        corners = _corners(places, curves, [limits[source] if limits else () for source in sources])
    pieces = list(_pieces(curves, corners, sources))
    return Moved(Outline(tuple(edge for edge, _ in pieces)), tuple(source for _, source in pieces))


def _corners(
    places: Sequence[Point], curves: Sequence[Curve], limits: Sequence[tuple[Limit, ...]]
) -> list[list[Place]]:
    return [_corner(places[i], curves[i - 1], curves[i], limits[i]) for i in range(len(curves))]


def _is_hollow(outline: Outline) -> bool:
    """Tell whether an outline bends inward anywhere, so that moved edges may cross."""
    return any(edge.arc is not None and edge.arc.clockwise for edge in outline.edges) or any(
        angle > math.pi + STRAIGHT_ANGLE for angle in outline.angles()
    )


def _turning_round(curves: list[Curve], corners: list[list[Place]]) -> list[bool]:
    """Tell which moved edges run from end to start, since the corners beside them have passed each other."""
    return [
        (following[0][0] - here[-1][0]) * (curve.end[0] - curve.start[0])
        + (following[0][1] - here[-1][1]) * (curve.end[1] - curve.start[1])
        < 0
        for curve, here, following in zip(curves, corners, corners[1:] + corners[:1], strict=True)
    ]


def _pieces(curves: list[Curve], corners: list[list[Place]], sources: Sequence[int]) -> Iterator[tuple[Edge, int]]:
    for i, curve in enumerate(curves):
        corner, following = corners[i], corners[(i + 1) % len(corners)]
        for a, b in zip(corner, corner[1:], strict=False):
            yield from _edge(a, b, None, sources[i])
        yield from _edge(corner[-1], following[0], curve, sources[i])


def _edge(a: Place, b: Place, curve: Curve | None, source: int) -> Iterator[tuple[Edge, int]]:
    start, end = _snap(a), _snap(b)
    if start != end:
        yield Edge(start, end, curve.arc if curve else None), source


def _snap(place: Place) -> Point:
    return Point(round(place[0]), round(place[1]))


def _corner(at: Point, before: Curve, after: Curve, limits: tuple[Limit, ...]) -> list[Place]:
    """Return the places that the moved outline passes at a corner: where `before` ends, ..., where `after` starts."""
    turn = math.remainder(after.departs - before.arrives, 2 * math.pi)
    if abs(turn) <= STRAIGHT_ANGLE:
        return [before.end] if math.dist(before.end, after.start) < 1 else [before.end, after.start]
    curved = before.arc is not None or after.arc is not None
    if turn < 0 and curved:
        met = crossing(before, after, (at.x, at.y))
        return [met] if met else [before.end, after.start]
    tip = _tip(before, after, turn)
    limits = limits or _blunt(at, before, after)
    if turn < 0 or not (curved or limits):
        return tip
    chain = [before.end, *tip, after.start]
    for limit in limits:
        if min(limit.inside(before.end), limit.inside(after.start)) >= -_HAIR:
            chain = _trimmed(chain, limit)
    first = 0 if before.arc else 1
    last = len(chain) if after.arc else len(chain) - 1
    return chain[first:last]


def _tip(before: Curve, after: Curve, turn: float) -> list[Place]:
    """Return the mitred tip where the tangents meet; two far places where they all but turn back."""
    (px, py), (qx, qy) = before.end, after.start
    ux, uy = math.cos(before.arrives), math.sin(before.arrives)
    vx, vy = math.cos(after.departs), math.sin(after.departs)
    if math.pi - abs(turn) <= STRAIGHT_ANGLE:
        far = 1000 * max(math.dist(before.end, after.start), 1.0)
        return [(px + ux * far, py + uy * far), (qx - vx * far, qy - vy * far)]
    along = ((qx - px) * vy - (qy - py) * vx) / (ux * vy - uy * vx)
    return [(px + ux * along, py + uy * along)]


def _blunt(at: Point, before: Curve, after: Curve) -> tuple[Limit, ...]:
    """Return the line that cuts a very long tip off square, if it is one."""
    by = max(before.by, after.by)
    inside = math.pi - math.remainder(after.departs - before.arrives, 2 * math.pi)
    if by / max(math.sin(inside / 2), 1e-9) <= LONG_TIP * by:
        return ()
    outward = after.departs + inside / 2 + math.pi
    beyond = at.x + TIP_KEPT * by * math.cos(outward), at.y + TIP_KEPT * by * math.sin(outward)
    return (Limit(beyond, outward + math.pi / 2),)


def _trimmed(chain: list[Place], limit: Limit) -> list[Place]:
    """Return a broken line with whatever lies beyond a limit cut off; both of its ends lie inside, and stay."""
    kept: list[Place] = []
    for a, b in zip(chain, [*chain[1:], None], strict=True):
        here = limit.inside(a)
        if here >= -_HAIR:
            kept.append(a)
        if b is not None and (here < -_HAIR) != ((there := limit.inside(b)) < -_HAIR):
            share = min(1.0, max(0.0, here / (here - there)))
            kept.append((a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share))
    return kept
