"""One moved edge as it is before its corners are known, and where two of them cross."""

import math
from dataclasses import dataclass

from blocklang.geometry import Arc, Edge, Point

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Curve:
    """A straight line or an arc beside an edge, `by` ticks to its right; `start` and `end` lie square to its ends."""

    start: Place
    end: Place
    departs: float
    arrives: float
    by: float
    arc: Arc | None

    @staticmethod
    def beside(edge: Edge, by: float) -> "Curve":
        """Return the curve beside an edge; a hollow too tight for the distance is bridged by its chord."""
        if edge.arc is not None and edge.arc.clockwise and edge.radius() <= by:
            edge = Edge(edge.start, edge.end)
        departs, arrives = edge.departs(), edge.arrives()
        return Curve(_aside(edge.start, departs, by), _aside(edge.end, arrives, by), departs, arrives, by, edge.arc)

    @property
    def radius(self) -> float:
        """The radius of an arc."""
        assert self.arc is not None
        return math.dist(self.arc.centre, self.end)


def crossing(a: Curve, b: Curve, near: Place) -> Place | None:
    """Return where two curves cross, prolonged if need be, nearest to a place; None when they do not."""
    if a.arc is None and b.arc is None:
        return None
    if a.arc is None:
        found = _line_and_circle(a, b)
    elif b.arc is None:
        found = _line_and_circle(b, a)
    else:
        found = _two_circles(a, b)
    return min(found, key=lambda place: math.dist(place, near), default=None)


def _aside(at: Point, heading: float, by: float) -> Place:
    return at.x + math.sin(heading) * by, at.y - math.cos(heading) * by


def _line_and_circle(line: Curve, circle: Curve) -> list[Place]:
    assert circle.arc is not None
    ux, uy = math.cos(line.departs), math.sin(line.departs)
    dx, dy = circle.arc.centre.x - line.start[0], circle.arc.centre.y - line.start[1]
    middle, off = dx * ux + dy * uy, dx * uy - dy * ux
    return [
        (line.start[0] + ux * along, line.start[1] + uy * along)
        for along in _either_side(middle, circle.radius**2 - off**2)
    ]


def _two_circles(a: Curve, b: Curve) -> list[Place]:
    assert a.arc is not None and b.arc is not None
    (ax, ay), (bx, by) = a.arc.centre, b.arc.centre
    apart = math.hypot(bx - ax, by - ay)
    if apart < 1:
        return []
    ux, uy = (bx - ax) / apart, (by - ay) / apart
    along = (apart**2 + a.radius**2 - b.radius**2) / (2 * apart)
    return [(ax + ux * along - uy * up, ay + uy * along + ux * up) for up in _either_side(0.0, a.radius**2 - along**2)]


def _either_side(middle: float, square: float) -> list[float]:
    if square < 0:
        return []
    return [middle - math.sqrt(square), middle + math.sqrt(square)]
