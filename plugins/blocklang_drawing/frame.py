"""From the block's lattice (ticks, y up) to a drawing (points, y down), straight or seen from the back."""

import math
from dataclasses import dataclass

from blocklang.geometry import Edge, Outline
from blocklang_drawing.shapes import ArcTo, LineTo, Place, Trail

Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """Where bounds in ticks come to lie on a drawing: upper left corner at (left, top), `scale` points to the tick.

    With a `turn` (radians, counterclockwise) the bounds are those of the places after turning them about (0, 0).
    """

    bounds: Bounds
    scale: float
    left: float = 0.0
    top: float = 0.0
    mirrored: bool = False
    turn: float = 0.0

    @staticmethod
    def fit(
        bounds: Bounds, width: float, height: float, *, left: float = 0.0, top: float = 0.0, mirrored: bool = False
    ) -> "Frame":
        """Return the largest frame for bounds that fits in a box, in its upper left corner."""
        across, up = max(bounds[2] - bounds[0], 1.0), max(bounds[3] - bounds[1], 1.0)
        return Frame(bounds, min(width / across, height / up), left, top, mirrored)

    @property
    def width(self) -> float:
        """The width of the bounds on the drawing."""
        return (self.bounds[2] - self.bounds[0]) * self.scale

    @property
    def height(self) -> float:
        """The height of the bounds on the drawing."""
        return (self.bounds[3] - self.bounds[1]) * self.scale

    def at(self, place: tuple[float, float]) -> Place:
        """Return where a place in ticks comes to lie."""
        x, y = turned(place, self.turn)
        across = self.bounds[2] - x if self.mirrored else x - self.bounds[0]
        return self.left + across * self.scale, self.top + (self.bounds[3] - y) * self.scale

    def outline(self, outline: Outline) -> Trail:
        """Return a finished outline as a closed trail, its arcs exact."""
        stretches = tuple(map(self._stretch, outline.edges))
        straight_home = isinstance(stretches[-1], LineTo)
        return Trail(self.at(outline.edges[0].start), stretches[:-1] if straight_home else stretches, closed=True)

    def edge(self, edge: Edge) -> Trail:
        """Return one edge as an open trail."""
        return Trail(self.at(edge.start), (self._stretch(edge),))

    def ring(self, places: "tuple[tuple[float, float], ...]") -> tuple[Place, ...]:
        """Return several places at once."""
        if self.turn or self.mirrored:
            return tuple(map(self.at, places))
        (low, _, _, high), scale, left, top = self.bounds, self.scale, self.left, self.top
        return tuple((left + (x - low) * scale, top + (high - y) * scale) for x, y in places)

    def _stretch(self, edge: Edge) -> LineTo | ArcTo:
        if edge.arc is None:
            return LineTo(self.at(edge.end))
        large = abs(edge.sweep()) > math.pi
        # SVG's sweep flag means clockwise on the drawing, as on the block: turning y over and looking at the
        # drawing cancel out.
        return ArcTo(self.at(edge.end), edge.radius() * self.scale, edge.arc.clockwise != self.mirrored, large)


def turned(place: tuple[float, float], turn: float) -> tuple[float, float]:
    """Return a place turned about (0, 0), counterclockwise by so many radians."""
    if not turn:
        return place
    cos, sin = math.cos(turn), math.sin(turn)
    return place[0] * cos - place[1] * sin, place[0] * sin + place[1] * cos
