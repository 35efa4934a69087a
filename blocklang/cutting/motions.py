"""How one outline is laid on an equal one: turned, moved, and turned over where need be."""

import math
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

from blocklang.cutting.curves import Place
from blocklang.geometry import Arc, Edge, Outline, Point
from blocklang.geometry.congruence import SAME_LENGTH


@dataclass(frozen=True, slots=True)
class Motion:
    """A turn in radians about (0, 0), after turning over from right to left if `mirrored`, and then a shift in ticks."""

    mirrored: bool
    turn: float
    shift: Place

    def lay(self, place: Place) -> Place:
        """Return where a place comes to lie."""
        x, y = (-place[0], place[1]) if self.mirrored else place
        c, s = math.cos(self.turn), math.sin(self.turn)
        return x * c - y * s + self.shift[0], x * s + y * c + self.shift[1]

    def back(self, place: Place) -> Place:
        """Return which place comes to lie here."""
        x, y = place[0] - self.shift[0], place[1] - self.shift[1]
        c, s = math.cos(self.turn), math.sin(self.turn)
        x, y = x * c + y * s, y * c - x * s
        return (-x, y) if self.mirrored else (x, y)

    def heading(self, heading: float) -> float:
        """Return the heading that a heading is turned into."""
        return (math.pi - heading if self.mirrored else heading) + self.turn


STAY = Motion(False, 0.0, (0.0, 0.0))


def motions(
    outline: Outline, labels: Sequence[Hashable], onto: Outline, onto_labels: Sequence[Hashable]
) -> Iterator[Motion]:
    """Yield every motion that lays an outline on another, plain ones first, then mirrored.

    Labels, one for each edge or none at all, must come to lie on equal labels.
    """
    for mirrored in (False, True):
        ring, marks = (_over(outline), tuple(reversed(labels))) if mirrored else (outline, tuple(labels))
        count = len(ring.edges)
        if count != len(onto.edges):
            return
        for start in range(count):
            motion = _motion(mirrored, ring, start, onto)
            if marks[start:] + marks[:start] == tuple(onto_labels) and _fits(motion, ring, start, onto):
                yield motion


def _over(outline: Outline) -> Outline:
    def over(point: Point) -> Point:
        return Point(-point.x, point.y)

    turned = (
        Edge(over(e.end), over(e.start), e.arc and Arc(over(e.arc.centre), e.arc.clockwise)) for e in outline.edges
    )
    return Outline(tuple(turned)[::-1])


def _motion(mirrored: bool, ring: Outline, start: int, onto: Outline) -> Motion:
    first = onto.edges[0]
    a, b = ring.edges[start].start, ring.edges[start].end
    turn = math.atan2(first.end.y - first.start.y, first.end.x - first.start.x) - math.atan2(b.y - a.y, b.x - a.x)
    c, s = math.cos(turn), math.sin(turn)
    middle = ((a.x + b.x) / 2, (a.y + b.y) / 2)
    goal = ((first.start.x + first.end.x) / 2, (first.start.y + first.end.y) / 2)
    return Motion(mirrored, turn, (goal[0] - middle[0] * c + middle[1] * s, goal[1] - middle[0] * s - middle[1] * c))


def _fits(motion: Motion, ring: Outline, start: int, onto: Outline) -> bool:
    plain = Motion(False, motion.turn, motion.shift)
    for step, goal in enumerate(onto.edges):
        edge = ring.edges[(start + step) % len(ring.edges)]
        if (edge.arc is None) != (goal.arc is None):
            return False
        if any(math.dist(plain.lay(edge.at(t)), goal.at(t)) > SAME_LENGTH for t in (0.0, 0.5)):
            return False
    return True
