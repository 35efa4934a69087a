"""Edges of a patch: straight lines and circular arcs, one type for both."""

import math
from dataclasses import dataclass
from itertools import pairwise

from blocklang.geometry.points import Point, distance, heading
from blocklang.geometry.tolerance import CHORD_ERROR, SAME_POINT

TURN = 2 * math.pi


@dataclass(frozen=True, slots=True)
class Arc:
    """How an edge curves: round which centre, and which way it is travelled."""

    centre: Point
    clockwise: bool


@dataclass(frozen=True, slots=True)
class Edge:
    """A directed edge; `arc` is None for a straight one. Lengths in ticks, angles in radians."""

    start: Point
    end: Point
    arc: Arc | None = None

    def reversed(self) -> "Edge":
        """Return the same edge, travelled the other way."""
        arc = None if self.arc is None else Arc(self.arc.centre, not self.arc.clockwise)
        return Edge(self.end, self.start, arc)

    def radius(self) -> float:
        """Return the radius of an arc, infinity for a straight edge."""
        if self.arc is None:
            return math.inf
        return (distance(self.arc.centre, self.start) + distance(self.arc.centre, self.end)) / 2

    def sweep(self) -> float:
        """Return the signed angle an arc turns through, counterclockwise positive; 0 when straight."""
        if self.arc is None:
            return 0.0
        first, last = heading(self.arc.centre, self.start), heading(self.arc.centre, self.end)
        return -((first - last) % TURN) if self.arc.clockwise else (last - first) % TURN

    def length(self) -> float:
        """Return the length along the edge."""
        if self.arc is None:
            return distance(self.start, self.end)
        return abs(self.sweep()) * self.radius()

    def departs(self) -> float:
        """Return the heading in which the edge leaves its start."""
        return heading(self.start, self.end) if self.arc is None else self._tangent(self.start)

    def arrives(self) -> float:
        """Return the heading in which the edge reaches its end."""
        return heading(self.start, self.end) if self.arc is None else self._tangent(self.end)

    def _tangent(self, at: Point) -> float:
        assert self.arc is not None
        quarter = -math.pi / 2 if self.arc.clockwise else math.pi / 2
        return heading(self.arc.centre, at) + quarter

    def at(self, fraction: float) -> tuple[float, float]:
        """Return the place a fraction of the way along, in ticks, unsnapped."""
        if self.arc is None:
            return (
                self.start.x + (self.end.x - self.start.x) * fraction,
                self.start.y + (self.end.y - self.start.y) * fraction,
            )
        angle = heading(self.arc.centre, self.start) + self.sweep() * fraction
        radius = self.radius()
        return self.arc.centre.x + radius * math.cos(angle), self.arc.centre.y + radius * math.sin(angle)

    def middle(self) -> Point:
        """Return the lattice point half-way along."""
        x, y = self.at(0.5)
        return Point(round(x), round(y))

    def chords(self, error: float = CHORD_ERROR) -> tuple[Point, ...]:
        """Return the points of a broken line no further than `error` ticks from the edge, both ends included."""
        if self.arc is None:
            return self.start, self.end
        radius = max(self.radius(), 2 * error)
        step = 2 * math.acos(1 - error / radius)
        count = max(1, math.ceil(abs(self.sweep()) / step))
        inner = tuple(self.at(index / count) for index in range(1, count))
        return self.start, *(Point(round(x), round(y)) for x, y in inner), self.end

    def offset_of(self, point: Point) -> tuple[float, float]:
        """Return how far along the edge (a fraction) and how far off it (ticks, left positive) a point lies."""
        if self.arc is None:
            dx, dy = self.end.x - self.start.x, self.end.y - self.start.y
            length = math.hypot(dx, dy) or 1.0
            px, py = point.x - self.start.x, point.y - self.start.y
            return (px * dx + py * dy) / length**2, (dx * py - dy * px) / length
        turned = heading(self.arc.centre, point) - heading(self.arc.centre, self.start)
        sweep = self.sweep()
        slack = SAME_POINT / max(self.radius(), 1.0)
        along = (-turned if self.arc.clockwise else turned) % TURN
        along = along - TURN if along > TURN - slack else along
        outward = distance(self.arc.centre, point) - self.radius()
        return along / (abs(sweep) or 1.0), outward if self.arc.clockwise else -outward

    def split(self, points: tuple[Point, ...]) -> "tuple[Edge, ...]":
        """Return the edge broken at points that lie on it, given in order along it."""
        stops = (self.start, *points, self.end)
        return tuple(Edge(a, b, self.arc) for a, b in pairwise(stops))
