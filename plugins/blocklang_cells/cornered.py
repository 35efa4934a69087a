"""Cells with a triangle in each corner: the square in a square, and the snowball."""

from fractions import Fraction

from blocklang.language import Cell, CellPatch

HALF = Fraction(1, 2)
THIRD = Fraction(1, 3)


def _corner_triangles(cut: Fraction) -> tuple[CellPatch, ...]:
    """Return the four triangles of fabric 1 whose legs are `cut` long, counterclockwise from the lower left."""
    rest = 1 - cut
    return (
        CellPatch(1, ((0, 0), (cut, 0), (0, cut))),
        CellPatch(1, ((1, 0), (1, cut), (rest, 0))),
        CellPatch(1, ((1, 1), (rest, 1), (1, rest))),
        CellPatch(1, ((0, 1), (0, rest), (cut, 1))),
    )


def _square_in_square(_: Fraction) -> tuple[CellPatch, ...]:
    middle = CellPatch(0, ((HALF, 0), (1, HALF), (HALF, 1), (0, HALF)))
    return (middle, *_corner_triangles(HALF))


def _snowball(cut: Fraction) -> tuple[CellPatch, ...]:
    rest = 1 - cut
    octagon = ((cut, 0), (rest, 0), (1, cut), (1, rest), (rest, 1), (cut, 1), (0, rest), (0, cut))
    return (CellPatch(0, octagon), *_corner_triangles(cut))


SQUARE_IN_SQUARE = Cell(
    "square-in-square",
    "a square that stands on its point, with a triangle in each corner",
    ("middle", "corners"),
    _square_in_square,
)
SNOWBALL = Cell(
    "snowball",
    "a square with its corners cut off; a number gives the legs of the corners as a part of the cell, else 1/3",
    ("middle", "corners"),
    _snowball,
    THIRD,
    Fraction(1, 20),
    Fraction(9, 20),
)
