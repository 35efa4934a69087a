"""Closed outlines: the shape of a patch, a unit or a whole block."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from blocklang.geometry.edges import Edge
from blocklang.geometry.points import Point


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed ring of edges, counterclockwise, each ending where the next begins."""

    edges: tuple[Edge, ...]

    @staticmethod
    def through(points: Iterable[Point]) -> "Outline":
        """Return the straight-sided outline through points, turned counterclockwise if need be."""
        corners = tuple(points)
        ring = Outline(tuple(Edge(a, b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)))
        return ring.counterclockwise()

    @property
    def corners(self) -> tuple[Point, ...]:
        """The corners in order."""
        return tuple(edge.start for edge in self.edges)

    def chords(self) -> tuple[Point, ...]:
        """Return the outline as a broken line within a thousandth of an inch, first point not repeated."""
        return tuple(point for edge in self.edges for point in edge.chords()[:-1])

    def area(self) -> float:
        """Return the signed area in square ticks, arcs exact; positive when counterclockwise."""
        return sum(map(_under, self.edges))

    def counterclockwise(self) -> "Outline":
        """Return the same shape travelled counterclockwise."""
        return self if self.area() >= 0 else self.reversed()

    def reversed(self) -> "Outline":
        """Return the same ring travelled the other way."""
        return Outline(tuple(edge.reversed() for edge in reversed(self.edges)))

    def perimeter(self) -> float:
        """Return the length all round, in ticks."""
        return sum(edge.length() for edge in self.edges)

    def bounds(self) -> tuple[int, int, int, int]:
        """Return the least x, least y, greatest x and greatest y, in ticks."""
        points = self.chords()
        return min(p.x for p in points), min(p.y for p in points), max(p.x for p in points), max(p.y for p in points)

    def angles(self) -> tuple[float, ...]:
        """Return the inside angle at each corner, in radians."""
        return tuple(inside_angle(before, after) for before, after in self._turns())

    def _turns(self) -> Iterator[tuple[Edge, Edge]]:
        return zip(self.edges[-1:] + self.edges[:-1], self.edges, strict=True)

    def centroid(self) -> tuple[float, float]:
        """Return the centre of area of the chorded outline, in ticks."""
        ring = self.chords()
        ox, oy = ring[0]
        twice = sx = sy = 0.0
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
            weight = float((a.x - ox) * (b.y - oy) - (b.x - ox) * (a.y - oy))
            twice += weight
            sx += (a.x + b.x - 2 * ox) * weight
            sy += (a.y + b.y - 2 * oy) * weight
        if not twice:
            return float(ox), float(oy)
        return ox + sx / (3 * twice), oy + sy / (3 * twice)


def inside_angle(before: Edge, after: Edge) -> float:
    """Return the angle on the left between an edge that arrives and the edge that leaves, 0 to a full turn."""
    return math.pi - math.remainder(after.departs() - before.arrives(), 2 * math.pi)


def _under(edge: Edge) -> float:
    a, b = edge.start, edge.end
    flat = (a.x * b.y - b.x * a.y) / 2
    if edge.arc is None:
        return flat
    sweep = edge.sweep()
    return flat + edge.radius() ** 2 * (sweep - math.sin(sweep)) / 2
