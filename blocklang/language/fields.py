"""Fields that cells are laid into: a grid's corner and its two sides, and the frame of one cell."""

from typing import NamedTuple

from blocklang.language.cells import Corner
from blocklang.language.drawing import Place
from blocklang.language.quantities import Exact, magnitude


class Field(NamedTuple):
    """The lower left corner of a grid and its two sides."""

    origin: Place
    across: Place
    up: Place

    def at(self, x: Exact, y: Exact) -> Place:
        """Return the place that lies parts of the way across and up."""
        (ox, oy), (ax, ay), (ux, uy) = self
        return ox + ax * x + ux * y, oy + ay * x + uy * y


class CellFrame(NamedTuple):
    """One cell's four shared corners (sw, se, ne, nw), and where any place in its unit square lies."""

    corners: tuple[Place, Place, Place, Place]

    def place(self, corner: Corner) -> Place:
        """Return where a place of the unit square lies; the corners themselves are shared between cells."""
        index = CORNERS.get(corner)
        if index is not None:
            return self.corners[index]
        return self.field.at(*corner)

    @property
    def field(self) -> Field:
        """The cell as a field of its own."""
        sw, se, _, nw = self.corners
        return Field(sw, (se[0] - sw[0], se[1] - sw[1]), (nw[0] - sw[0], nw[1] - sw[1]))

    def is_square(self) -> bool:
        """Say whether a circle drawn in the unit square stays one."""
        _, (ax, ay), (ux, uy) = self.field
        size = float(ax * ax + ay * ay)
        return magnitude(ax * ux + ay * uy) <= 1e-6 * size and magnitude(ux * ux + uy * uy - size) <= 1e-6 * size


CORNERS: dict[Corner, int] = {(0, 0): 0, (1, 0): 1, (1, 1): 2, (0, 1): 3}
