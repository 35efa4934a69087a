"""Units placed on a drawing: which patches, moved by how much."""

from dataclasses import dataclass

from blocklang.graph import PatchGraph
from blocklang_drawing.frame import Bounds, Frame
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.raw_edges import Ring, raw_ring
from blocklang_drawing.shapes import Path, Place, polygon
from blocklang_drawing.theme import Theme


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


def bounds_of(units: tuple[Placed, ...]) -> Bounds:
    """Return the bounds of units together, raw edges included."""
    places = [place for unit in units for ring in unit.rings for place in ring]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs), min(ys), max(xs), max(ys)


def paint_units(frame: Frame, graph: PatchGraph, units: tuple[Placed, ...], theme: Theme) -> tuple[Path, ...]:
    """Return units painted with their fabrics."""
    painted: list[Painted] = []
    for unit in units:
        for patch, ring in zip(unit.patches, unit.rings, strict=True):
            local = tuple((x - unit.move[0], y - unit.move[1]) for x, y in ring)
            painted.append(Painted(graph.block.patches[patch], local, polygon(frame.ring(ring)), unit.move))
    return paint_patches(frame, painted, theme)
