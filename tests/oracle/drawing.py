"""A block's seams read from its outlines alone: an own small subdivision to hold orders against."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from blocklang.block import Block
from blocklang.geometry import TICKS_PER_INCH, Edge

_NEAR = 1e-3  # inches: two corners are one point
_STRAIGHT = 2e-3  # radians

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of an edge between neighbouring corners, with headings in which it leaves its two ends."""

    start: int
    end: int
    middle: Place
    leaves_start: float
    leaves_end: float


@dataclass(frozen=True)
class Drawing:
    """Points, seams between two patches, and what lies round each inner point.

    Seam s lies between patches `sides[s]` and leads from `ends[s][0]` to `ends[s][1]`; `headings[s]` are the
    headings in which it leaves them, and `middles[s]` is the place half-way along it.
    """

    patches: int
    points: tuple[Place, ...]
    sides: tuple[tuple[int, int], ...]
    ends: tuple[tuple[int, int], ...]
    headings: tuple[tuple[float, float], ...]
    middles: tuple[Place, ...]
    outside: frozenset[int]  # points on the outline
    angles: tuple[dict[int, float], ...]  # the patches at each point, with their inside angles there

    @cached_property
    def seams_at(self) -> tuple[tuple[int, ...], ...]:
        """The seams that end at each point."""
        return tuple(tuple(s for s, ends in enumerate(self.ends) if p in ends) for p in range(len(self.points)))

    @cached_property
    def knots(self) -> frozenset[int]:
        """The inner points through which no seam runs straight."""
        inner = (p for p in range(len(self.points)) if p not in self.outside and self.seams_at[p])
        return frozenset(p for p in inner if not any(self.ahead(s, p) for s in self.seams_at[p]))

    @cached_property
    def _ahead(self) -> dict[tuple[int, int], tuple[int, ...]]:
        return {(s, p): tuple(self._straight_on(s, p)) for s, ends in enumerate(self.ends) for p in ends}

    def ahead(self, seam: int, point: int) -> tuple[int, ...]:
        """Return the seams that run straight on from a seam through one of its ends."""
        return self._ahead[seam, point]

    def _straight_on(self, seam: int, point: int) -> Iterator[int]:
        mine = self.leaving(seam, point)
        for other in self.seams_at[point]:
            if other != seam and abs(math.remainder(self.leaving(other, point) - mine - math.pi, math.tau)) < _STRAIGHT:
                yield other

    def leaving(self, seam: int, point: int) -> float:
        """Return the heading in which a seam leaves one of its ends."""
        return self.headings[seam][self.ends[seam].index(point)]

    def far(self, seam: int, point: int) -> int:
        """Return the other end of a seam."""
        start, end = self.ends[seam]
        return end if point == start else start


def draw(block: Block) -> Drawing:
    """Read the seams of a block off the outlines of its patches."""
    points: list[Place] = []
    rings = [[(_inches(edge), _settle(points, edge)) for edge in patch.outline.edges] for patch in block.patches]
    found: list[tuple[Piece, int]] = []
    angles: list[dict[int, float]] = [{} for _ in points]
    for patch, ring in enumerate(rings):
        pieces = [piece for edge, ends in ring for piece in _pieces(points, edge, ends)]
        found.extend((piece, patch) for piece in pieces)
        for before, after in zip(pieces[-1:] + pieces[:-1], pieces, strict=True):
            angles[after.start][patch] = (before.leaves_end - after.leaves_start) % math.tau
    return _paired(points, found, angles, len(block.patches))


def _paired(
    points: list[Place], found: list[tuple[Piece, int]], angles: list[dict[int, float]], patches: int
) -> Drawing:
    waiting: dict[tuple[int, int], list[tuple[Piece, int]]] = {}
    seams: list[tuple[Piece, int, int]] = []
    for piece, patch in found:
        partners = waiting.setdefault((piece.end, piece.start), [])
        partner = next((p for p in partners if math.dist(p[0].middle, piece.middle) < _NEAR * 10), None)
        if partner is None:
            waiting.setdefault((piece.start, piece.end), []).append((piece, patch))
        else:
            partners.remove(partner)
            seams.append((partner[0], partner[1], patch))
    alone = [piece for left in waiting.values() for piece, _ in left]
    return Drawing(
        patches,
        tuple(points),
        tuple((a, b) for _, a, b in seams),
        tuple((piece.start, piece.end) for piece, _, _ in seams),
        tuple((piece.leaves_start, piece.leaves_end) for piece, _, _ in seams),
        tuple(piece.middle for piece, _, _ in seams),
        frozenset(point for piece in alone for point in (piece.start, piece.end)),
        tuple(angles),
    )


@dataclass(frozen=True, slots=True)
class Line:
    """An edge in inches; `centre` is None for a straight one."""

    start: Place
    end: Place
    centre: Place | None
    clockwise: bool

    def sweep(self, to: Place) -> float:
        """Return the angle travelled along an arc from its start to a place on it, always positive."""
        assert self.centre is not None
        a, b = (math.atan2(p[1] - self.centre[1], p[0] - self.centre[0]) for p in (self.start, to))
        turned = (a - b if self.clockwise else b - a) % math.tau
        return 0.0 if math.tau - turned < 1e-6 else turned

    def tangent(self, at: Place) -> float:
        """Return the heading of travel at a place on the edge."""
        if self.centre is None:
            return math.atan2(self.end[1] - self.start[1], self.end[0] - self.start[0])
        out = math.atan2(at[1] - self.centre[1], at[0] - self.centre[0])
        return out - math.pi / 2 if self.clockwise else out + math.pi / 2

    def along(self, at: Place) -> float | None:
        """Return how far along a place lies, or None when it is not between the ends."""
        if self.centre is not None:
            radius = math.dist(self.centre, self.start)
            if abs(math.dist(self.centre, at) - radius) > _NEAR:
                return None
            far = self.sweep(at) * radius
            return far if _NEAR < far < self.sweep(self.end) * radius - _NEAR else None
        length = math.dist(self.start, self.end)
        ux, uy = (self.end[0] - self.start[0]) / length, (self.end[1] - self.start[1]) / length
        x, y = at[0] - self.start[0], at[1] - self.start[1]
        far = x * ux + y * uy
        return far if abs(x * uy - y * ux) < _NEAR and _NEAR < far < length - _NEAR else None

    def between(self, a: Place, b: Place) -> Place:
        """Return the place half-way between two places on the edge."""
        if self.centre is None:
            return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        first, last = self.sweep(a), self.sweep(b)
        turn = (first + last) / 2 * (-1 if self.clockwise else 1)
        x, y = self.start[0] - self.centre[0], self.start[1] - self.centre[1]
        cos, sin = math.cos(turn), math.sin(turn)
        return self.centre[0] + x * cos - y * sin, self.centre[1] + x * sin + y * cos


def _inches(edge: Edge) -> Line:
    def place(x: int, y: int) -> Place:
        return x / TICKS_PER_INCH, y / TICKS_PER_INCH

    arc = edge.arc
    return Line(
        place(*edge.start), place(*edge.end), None if arc is None else place(*arc.centre), bool(arc and arc.clockwise)
    )


def _settle(points: list[Place], edge: Edge) -> tuple[int, int]:
    line = _inches(edge)
    return _number(points, line.start), _number(points, line.end)


def _number(points: list[Place], at: Place) -> int:
    for number, (x, y) in enumerate(points):
        if abs(x - at[0]) < _NEAR and abs(y - at[1]) < _NEAR:
            return number
    points.append(at)
    return len(points) - 1


def _pieces(points: list[Place], line: Line, ends: tuple[int, int]) -> Iterator[Piece]:
    """Part an edge at the corners of other patches on it."""
    inner = sorted((far, n) for n, at in enumerate(points) if n not in ends and (far := line.along(at)) is not None)
    stops = [ends[0], *(number for _, number in inner), ends[1]]
    for a, b in zip(stops, stops[1:], strict=False):
        middle = line.between(points[a], points[b])
        yield Piece(a, b, middle, line.tangent(points[a]), line.tangent(points[b]) + math.pi)
