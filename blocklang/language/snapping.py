"""From inches to the lattice: every coordinate is snapped once, here."""

from blocklang.geometry import TICKS_PER_INCH, Arc, Edge, Outline, Point
from blocklang.language.drawing import Place, Shape
from blocklang.language.quantities import Exact


class Snapper:
    """Snaps places, each only once, at a scale."""

    def __init__(self, scale: Exact = 1.0, corner: Place = (0, 0)) -> None:
        """Set how many times larger than drafted the block becomes, and which place becomes (0, 0)."""
        self._ticks = scale * TICKS_PER_INCH
        self._corner = self._snapped(corner)
        self._known: dict[int, tuple[Place, Point]] = {}

    def point(self, place: Place) -> Point:
        """Return the lattice point of a place."""
        found = self._known.get(id(place))
        if found is None:
            x, y = self._snapped(place)
            point = Point(x - self._corner[0], y - self._corner[1])
            # The place is kept beside its point, so that its id stays its own.
            found = self._known[id(place)] = (place, point)
        return found[1]

    def _snapped(self, place: Place) -> tuple[int, int]:
        return round(place[0] * self._ticks), round(place[1] * self._ticks)

    def outline(self, shape: Shape) -> Outline:
        """Return the counterclockwise outline of a shape."""
        corners = [self.point(corner) for corner in shape.corners]
        after = [*corners[1:], corners[0]]
        if not shape.bends:
            edges = tuple(map(Edge, corners, after))
            return Outline(edges) if _leftward(corners) else Outline(edges).reversed()
        arcs = [None if bend is None else Arc(self.point(bend.centre), bend.clockwise) for bend in shape.bends]
        return Outline(tuple(map(Edge, corners, after, arcs))).counterclockwise()


def _leftward(corners: list[Point]) -> bool:
    x, y = corners[-1]
    twice = 0
    for cx, cy in corners:
        twice += x * cy - cx * y
        x, y = cx, cy
    return twice > 0


def snapped_outline(shape: Shape) -> Outline:
    """Return the outline of one shape at its drafted size."""
    return Snapper().outline(shape)
