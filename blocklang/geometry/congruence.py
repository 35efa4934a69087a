"""Which shapes are the same when turned, and which only when turned over."""

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from blocklang.geometry.edges import Edge
from blocklang.geometry.marks import Marks
from blocklang.geometry.outlines import Outline, inside_angle
from blocklang.geometry.points import distance, heading
from blocklang.geometry.tolerance import SAME_POINT, STRAIGHT_ANGLE

#: Lengths that differ by less than this are one length: both ends may be off by as much as a junction is wide.
SAME_LENGTH = 3 * SAME_POINT


@dataclass(frozen=True, slots=True)
class Shape:
    """What an outline is, wherever it lies and however it is turned.

    Equal shapes have equal `key`; the mirror image of a shape has its `mirror` as key. `start` is the edge at which
    the key begins to read, `turn` the heading of that edge in radians: of two equal shapes, one is the other turned by
    the difference. `order` is how many turns bring the shape onto itself.
    """

    key: int
    mirror: int
    start: int
    turn: float
    order: int

    @property
    def symmetric(self) -> bool:
        """Whether the shape is its own mirror image."""
        return self.key == self.mirror

    @property
    def either_way_up(self) -> int:
        """The key that a shape shares with its mirror image."""
        return min(self.key, self.mirror)


class Interner:
    """Numbers lengths, angles and rings of them; what differs by no more than lattice noise has one number.

    A value takes the number of a value met before that lies within the tolerance, so there is no rounding
    boundary on which two equal values could part. Numbers follow the order of meeting.
    """

    __slots__ = ("_angles", "_lengths", "_placed", "_rings", "_tokens")

    def __init__(self) -> None:
        self._lengths = Marks(SAME_LENGTH)
        self._angles = Marks(STRAIGHT_ANGLE)
        self._tokens: dict[Hashable, int] = {}
        self._rings: dict[tuple[int, ...], int] = {}
        self._placed: dict[Hashable, Shape] = {}

    def shape(self, outline: Outline, labels: Sequence[Hashable]) -> Shape:
        """Return the shape of an outline, remembering those that were only moved."""
        placed = (_from_first_corner(outline), tuple(labels))
        if placed not in self._placed:
            self._placed[placed] = self._worked_out(outline, labels)
        return self._placed[placed]

    def _worked_out(self, outline: Outline, labels: Sequence[Hashable]) -> Shape:
        forward, backward = self._both_ways(outline.edges, labels or (None,) * len(outline.edges))
        start, mirrored = least_turn(forward), least_turn(backward)
        first = outline.edges[start]
        return Shape(
            self._ring(forward, start),
            self._ring(backward, mirrored),
            start,
            heading(first.start, first.end),
            _order(forward),
        )

    def _both_ways(self, edges: tuple[Edge, ...], labels: Sequence[Hashable]) -> tuple[list[int], list[int]]:
        sides = [(self._lengths.number(distance(e.start, e.end)), self._lengths.number(_bulge(e))) for e in edges]
        corners = [
            (self._angles.number(inside_angle(a, b)), self._lengths.number(distance(a.start, b.end)))
            for a, b in zip(edges[-1:] + edges[:-1], edges, strict=True)
        ]
        after = corners[1:] + corners[:1]
        forward = [self._token(*three) for three in zip(sides, corners, labels, strict=True)]
        backward = [self._token(*three) for three in zip(sides, after, labels, strict=True)]
        return forward, backward[::-1]

    def _token(self, side: tuple[int, int], corner: tuple[int, int], label: Hashable) -> int:
        return self._tokens.setdefault((side, corner, label), len(self._tokens))

    def _ring(self, tokens: list[int], start: int) -> int:
        return self._rings.setdefault(tuple(tokens[start:] + tokens[:start]), len(self._rings))


def shape_key(outline: Outline, interner: Interner, labels: Sequence[Hashable] = ()) -> Shape:
    """Return the shape of a counterclockwise outline, comparable with those of the same interner.

    `labels` may tell its edges apart, one for each edge. Without labels, corners on a straight run do not count;
    `start` then counts the edges of `without_idle_corners(outline)`.
    """
    return interner.shape(outline if labels else without_idle_corners(outline), labels)


def without_idle_corners(outline: Outline) -> Outline:
    """Return the outline with edges joined where one runs straight on into the next."""
    edges = outline.edges
    bends = [i for i, edge in enumerate(edges) if not runs_on(edges[i - 1], edge)]
    if len(bends) == len(edges) or len(bends) < 2:
        return outline
    stops = [*bends, bends[0]]
    return Outline(tuple(Edge(edges[i].start, edges[j].start, edges[i].arc) for i, j in pairwise(stops)))


def runs_on(before: Edge, after: Edge) -> bool:
    """Tell whether an edge runs straight on, or along the same circle, into the next."""
    if before.arc is None and after.arc is None:
        (ax, ay), (bx, by), (cx, cy) = before.start, before.end, after.end
        ahead = (bx - ax) * (cx - bx) + (by - ay) * (cy - by)
        return abs((bx - ax) * (cy - by) - (by - ay) * (cx - bx)) <= STRAIGHT_ANGLE * ahead
    if before.arc is None or after.arc is None:
        return False
    if abs(math.remainder(after.departs() - before.arrives(), 2 * math.pi)) > STRAIGHT_ANGLE:
        return False
    return before.arc.clockwise == after.arc.clockwise and (
        distance(before.arc.centre, after.arc.centre) <= 4 * SAME_POINT
    )


def least_turn(ring: Sequence[int]) -> int:
    """Return where a ring of numbers begins when it reads least; the first such place when there are several."""
    n, i, j, k = len(ring), 0, 1, 0
    while i < n and j < n and k < n:
        a, b = ring[(i + k) % n], ring[(j + k) % n]
        if a == b:
            k += 1
            continue
        if a > b:
            i += k + 1
        else:
            j += k + 1
        j += i == j
        k = 0
    return min(i, j)


def _order(ring: list[int]) -> int:
    """Return how often a ring repeats itself."""
    n = len(ring)
    return next(n // step for step in range(1, n + 1) if n % step == 0 and ring[step:] + ring[:step] == ring)


def _bulge(edge: Edge) -> float:
    """Return how far an arc rises over its chord, to the right positive; 0 for a straight edge."""
    rise = edge.radius() * (1 - math.cos(edge.sweep() / 2)) if edge.arc else 0.0
    return -rise if edge.arc and edge.arc.clockwise else rise


def _from_first_corner(outline: Outline) -> tuple[tuple[int, int, Hashable], ...]:
    x, y = outline.edges[0].start
    return tuple(
        (e.end.x - x, e.end.y - y, e.arc and (e.arc.centre.x - x, e.arc.centre.y - y, e.arc.clockwise))
        for e in outline.edges
    )
