"""Units placed on a drawing: which patches, moved by how much."""

import math
from dataclasses import dataclass

from blocklang.geometry import Outline
from blocklang.graph import PatchGraph
from blocklang_drawing.frame import Bounds, Frame, turned
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.raw_edges import Ring, raw_ring
from blocklang_drawing.shapes import Path, Place, polygon
from blocklang_drawing.theme import Theme

#: A side that leans by less than this many radians is level.
LEVEL = 1e-3


@dataclass(frozen=True, slots=True)
class Placed:
    """A unit with its seam allowances, moved from where it lies in the block (ticks)."""

    name: str
    patches: tuple[int, ...]
    move: Place
    rings: tuple[Ring, ...]

    def moved(self, place: Place) -> Place:
        """Return a place of the block where it has come to lie with this unit."""
        return place[0] + self.move[0], place[1] + self.move[1]


def place_unit(graph: PatchGraph, name: str, patches: tuple[int, ...], move: Place = (0.0, 0.0)) -> Placed:
    """Return a unit moved by some ticks."""
    members = frozenset(patches)
    rings = (raw_ring(graph, patch, members) for patch in patches)
    return Placed(name, patches, move, tuple(tuple((x + move[0], y + move[1]) for x, y in ring) for ring in rings))


def bounds_of(units: tuple[Placed, ...], turn: float = 0.0) -> Bounds:
    """Return the bounds of units together after turning them, raw edges included."""
    places = [turned(place, turn) for unit in units for ring in unit.rings for place in ring]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs), min(ys), max(xs), max(ys)


def lying_straight(outline: Outline) -> float:
    """Return the turn (radians) that lays a unit straight: its longest side level or upright.

    A unit with a longest side that is level or upright stays as it lies in the block.
    """
    straight = [edge for edge in outline.edges if edge.arc is None]
    longest = max((edge.length() for edge in straight), default=0.0)
    headings = [edge.departs() for edge in straight if edge.length() > 0.99 * longest]
    turns = [math.remainder(-heading, math.pi / 2) for heading in headings]
    turn = min(turns, key=lambda turn: (round(abs(turn), 6), turn), default=0.0)
    return 0.0 if abs(turn) < LEVEL else turn


def paint_units(frame: Frame, graph: PatchGraph, units: tuple[Placed, ...], theme: Theme) -> tuple[Path, ...]:
    """Return units painted with their fabrics."""
    painted: list[Painted] = []
    for unit in units:
        for patch, ring in zip(unit.patches, unit.rings, strict=True):
            local = tuple((x - unit.move[0], y - unit.move[1]) for x, y in ring)
            painted.append(Painted(graph.block.patches[patch], local, polygon(frame.ring(ring)), unit.move))
    return paint_patches(frame, painted, theme)
