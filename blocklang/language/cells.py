"""Cells of a grid: what can be drawn into a unit square."""

from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

Exact = Fraction | float | int
Corner = tuple[Exact, Exact]


class CellArc(NamedTuple):
    """An edge of a cell patch that curves: the edge that leaves that corner, round a centre, one way or the other."""

    corner: int
    centre: Corner
    clockwise: bool


class CellPatch(NamedTuple):
    """One patch of a cell in the unit square, (0, 0) at the lower left; `fabric` counts the cell's fabrics from 0."""

    fabric: int
    corners: tuple[Corner, ...]
    arcs: tuple[CellArc, ...] = ()


class Cell(NamedTuple):
    """A kind of cell that a row can name: `fabrics` says what each fabric is for, in the order in which they are given.

    `draw` returns the patches. It is called with the number that may follow the fabrics, or `number` when none does;
    None for `number` means that the cell takes none. `least` and `most` bound the number.
    """

    name: str
    summary: str
    fabrics: tuple[str, ...]
    draw: Callable[[Fraction], tuple[CellPatch, ...]]
    number: Fraction | None = None
    least: Fraction = Fraction(0)
    most: Fraction = Fraction(1)

    @property
    def sample(self) -> str:
        """How the cell is written."""
        return f"{self.name}({' '.join(self.fabrics)})"


# Whole numbers, because cells are laid down by the thousand and fractions are slow to compare.
NIL, ONE, HALF = 0, 1, Fraction(1, 2)
SW, SE, NE, NW, MIDDLE = (NIL, NIL), (ONE, NIL), (ONE, ONE), (NIL, ONE), (HALF, HALF)

SQUARE = (CellPatch(0, (SW, SE, NE, NW)),)
RISING = (CellPatch(0, (SW, NE, NW)), CellPatch(1, (SW, SE, NE)))
FALLING = (CellPatch(0, (SW, SE, NW)), CellPatch(1, (SE, NE, NW)))
QUARTERS = (
    CellPatch(0, (MIDDLE, NE, NW)),
    CellPatch(1, (MIDDLE, SE, NE)),
    CellPatch(2, (MIDDLE, SW, SE)),
    CellPatch(3, (MIDDLE, NW, SW)),
)


BARS = (CellPatch(0, ((NIL, HALF), (ONE, HALF), NE, NW)), CellPatch(1, (SW, SE, (ONE, HALF), (NIL, HALF))))


def quarter_turned(corner: Corner, turns: int) -> Corner:
    """Turn a place in the unit square about its middle, counterclockwise by quarters."""
    x, y = corner
    for _ in range(turns % 4):
        x, y = ONE - y, x
    return x, y


def patches_turned(patches: tuple[CellPatch, ...], turns: int) -> tuple[CellPatch, ...]:
    """Turn the patches of a cell counterclockwise by quarters."""
    return tuple(
        CellPatch(
            patch.fabric,
            tuple(quarter_turned(corner, turns) for corner in patch.corners),
            tuple(CellArc(arc.corner, quarter_turned(arc.centre, turns), arc.clockwise) for arc in patch.arcs),
        )
        for patch in patches
    )


GOOSE_UP = (
    CellPatch(0, (SW, (HALF, ONE), NW)),
    CellPatch(1, (SW, SE, (HALF, ONE))),
    CellPatch(0, (SE, NE, (HALF, ONE))),
)


def _still(patches: tuple[CellPatch, ...]) -> Callable[[Fraction], tuple[CellPatch, ...]]:
    return lambda _: patches


def _pie(turns: int) -> Callable[[Fraction], tuple[CellPatch, ...]]:
    def draw(radius: Fraction) -> tuple[CellPatch, ...]:
        right, up = (radius, NIL), (NIL, radius)
        pie = CellPatch(0, (SW, right, up), (CellArc(1, SW, False),))
        ground = CellPatch(1, (right, SE, NE, NW, up), (CellArc(4, SW, True),))
        return patches_turned((pie, ground), turns)

    return draw


def _goose(name: str, turns: int) -> Cell:
    summary = f"a flying goose that points {name}, between two sky triangles"
    return Cell(f"goose-{name}", summary, ("sky", "goose"), _still(patches_turned(GOOSE_UP, turns)))


def _pie_cell(corner: str, turns: int) -> Cell:
    summary = f"a quarter circle at the {corner} corner; a number gives its radius as a part of the cell, else 2/3"
    bounds = Fraction(1, 20), Fraction(19, 20)
    return Cell(f"pie-{corner}", summary, ("pie", "ground"), _pie(turns), Fraction(2, 3), *bounds)


BUILT_IN_CELLS: tuple[Cell, ...] = (
    _goose("up", 0),
    _goose("left", 1),
    _goose("down", 2),
    _goose("right", 3),
    _pie_cell("sw", 0),
    _pie_cell("se", 1),
    _pie_cell("ne", 2),
    _pie_cell("nw", 3),
    Cell("bars-across", "two bars, one above the other", ("top", "bottom"), _still(BARS)),
    Cell("bars-upright", "two bars side by side", ("left", "right"), _still(patches_turned(BARS, 1))),
    Cell("quarters", "four triangles round the middle", ("top", "right", "bottom", "left"), _still(QUARTERS)),
)
