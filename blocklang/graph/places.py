"""Finding which patches lie at a place, for telling what is wrong there."""

import math
from dataclasses import dataclass

from blocklang.block import Block, LengthUnit
from blocklang.geometry import Edge, Outline, Point
from blocklang.geometry.tolerance import SAME_POINT, TICKS_PER_INCH

#: A place this far off an edge is clearly on one side of it.
_ASIDE = 8 * SAME_POINT


@dataclass(frozen=True, slots=True)
class Places:
    """The outlines of a block, as chords with their bounds."""

    unit: LengthUnit
    rings: tuple[tuple[Point, ...], ...]
    bounds: tuple[tuple[int, int, int, int], ...]
    outline: tuple[Point, ...]

    def patches_at(self, place: tuple[float, float]) -> tuple[int, ...]:
        """Return the patches that cover a place."""
        x, y = place
        return tuple(
            index
            for index, (left, low, right, high) in enumerate(self.bounds)
            if left <= x <= right and low <= y <= high and inside(self.rings[index], place)
        )

    def is_inside(self, place: tuple[float, float]) -> bool:
        """Tell whether a place lies within the outline of the block."""
        return inside(self.outline, place)


def places_of(block: Block) -> Places:
    """Return the places of a block."""
    rings = tuple(patch.outline.chords() for patch in block.patches)
    bounds = tuple(patch.outline.bounds() for patch in block.patches)
    return Places(block.unit, rings, bounds, block.outline.chords())


def beside(edge: Edge, left: bool) -> tuple[float, float]:
    """Return a place just to the left (or right) of the middle of an edge, in ticks."""
    middle = edge.middle()
    x, y = edge.at(0.501)
    along = math.atan2(y - middle.y, x - middle.x)
    turn = along + (math.pi / 2 if left else -math.pi / 2)
    return middle.x + _ASIDE * math.cos(turn), middle.y + _ASIDE * math.sin(turn)


def inside(ring: tuple[Point, ...], place: tuple[float, float]) -> bool:
    """Tell whether a place lies inside a ring of points (crossing count)."""
    x, y = place
    within = False
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        if (a.y > y) != (b.y > y) and x < a.x + (y - a.y) * (b.x - a.x) / (b.y - a.y):
            within = not within
    return within


def say_place(place: tuple[float, float], unit: LengthUnit) -> str:
    """Say where a place is: so much from the left, so much up."""
    x, y = (value / TICKS_PER_INCH * unit.per_inch for value in place)
    return f"{_number(x)} {unit} from the left, {_number(y)} {unit} up"


def say_length(ticks: float, unit: LengthUnit) -> str:
    """Say a length in the file's unit."""
    return f"{_number(ticks / TICKS_PER_INCH * unit.per_inch)} {unit}"


def _number(value: float) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".") if abs(value) >= 5e-5 else "0"


def holds(outer: Outline, inner: Outline) -> bool:
    """Tell whether one outline lies wholly within another."""
    ring = outer.chords()
    return all(inside(ring, (float(p.x), float(p.y))) for p in inner.chords())
