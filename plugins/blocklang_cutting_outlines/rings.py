"""Closed lines as drawing programs know them: corners, each with how far the line bulges on its way to the next."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from blocklang.geometry import TICKS_PER_INCH, Outline

#: Where a point in ticks comes to lie, in ticks.
Lay = Callable[[tuple[float, float]], tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner in inches; `bulge` is the tangent of a quarter of the angle that the arc to the next corner turns."""

    x: float
    y: float
    bulge: float


@dataclass(frozen=True, slots=True)
class Ring:
    """A closed line; `bounds` are its least x and y and its greatest x and y, in inches."""

    corners: tuple[Corner, ...]
    bounds: tuple[float, float, float, float]

    def moved(self, x: float, y: float) -> "Ring":
        """Return the ring so many inches further to the right and up."""
        left, low, right, high = self.bounds
        corners = tuple(Corner(one.x + x, one.y + y, one.bulge) for one in self.corners)
        return Ring(corners, (left + x, low + y, right + x, high + y))


def ring_of(outline: Outline, lay: Lay, mirrored: bool = False) -> Ring:
    """Return an outline after it is laid somewhere; one that is turned over bulges to the other side."""
    side = -1.0 if mirrored else 1.0
    corners = []
    for edge in outline.edges:
        x, y = in_inches(lay(edge.start))
        corners.append(Corner(x, y, side * math.tan(edge.sweep() / 4)))
    places = [in_inches(lay(point)) for point in outline.chords()]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return Ring(tuple(corners), (min(xs), min(ys), max(xs), max(ys)))


@dataclass(frozen=True, slots=True)
class Room:
    """The largest circle in an outline: where it lies in ticks, and how wide it is in inches."""

    middle: tuple[float, float]
    width: float


def room_in(outline: Outline) -> Room:
    """Return where there is most room for a name."""
    from shapely.geometry import Polygon
    from shapely.ops import polylabel

    shape = Polygon(outline.chords())
    found = polylabel(shape, TICKS_PER_INCH / 64)
    return Room((found.x, found.y), 2 * shape.exterior.distance(found) / TICKS_PER_INCH)


def in_inches(place: tuple[float, float]) -> tuple[float, float]:
    """Return a place in ticks in inches."""
    return place[0] / TICKS_PER_INCH, place[1] / TICKS_PER_INCH
