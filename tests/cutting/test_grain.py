"""Which right isosceles triangles are halves of a square and which are quarters."""

import pytest

from blocklang.cutting import cut
from tests.cutting.shapes import GOOSE, block_of, graph
from tests.support import blocks

HALF, QUARTER = "half-square-triangle", "quarter-square-triangle"


def methods(block):
    return {piece.name: piece.method for piece in cut(graph(block)).pieces}


def moved(corners, dx, dy):
    return [(x + dx, y + dy) for x, y in corners]


def hourglass(x, y, size=2, names=("fog:a", "deep:b")):
    c, s = (x + size / 2, y + size / 2), size
    ring = [(x, y), (x + s, y), (x + s, y + s), (x, y + s)]
    return {f"{names[i % 2]}.{x}-{y}-{i + 1}": [ring[i], ring[(i + 1) % 4], c] for i in range(4)}


def squares(cells, size=2):
    return {f"coral:square.{x}-{y}": [(x, y), (x + size, y), (x + size, y + size), (x, y + size)] for x, y in cells}


def test_an_hourglass_is_cut_in_quarters():
    assert methods(block_of(hourglass(0, 0), (2, 2))) == {"a": QUARTER, "b": QUARTER}


def test_a_pinwheel_is_cut_in_halves():
    assert methods(blocks.pinwheel()) == {"t": HALF}


def test_the_quarter_sets_of_an_ohio_star_are_quarters_on_the_inside_too():
    """Four hourglasses round a square: 21 pieces (Smithsonian American Art Museum, Ohio Star, c. 1845)."""
    patches = squares([(0, 0), (4, 0), (0, 4), (4, 4), (2, 2)])
    for x, y in ((2, 0), (0, 2), (4, 2), (2, 4)):
        patches |= hourglass(x, y)
    pieces = cut(graph(block_of(patches, (6, 6)))).pieces
    assert sum(piece.count for piece in pieces if piece.method == QUARTER) == 16
    assert sum(piece.count for piece in pieces if piece.method == "square") == 5
    assert len(pieces) == 3


def test_inner_triangles_have_their_legs_on_the_grain():
    """A square unit of two triangles in the middle of a nine patch."""
    patches = squares([(x, y) for x in (0, 2, 4) for y in (0, 2, 4) if (x, y) != (2, 2)])
    patches |= {"a.1": [(2, 2), (4, 2), (4, 4)], "fog:b.1": [(2, 2), (4, 4), (2, 4)]}
    found = methods(block_of(patches, (6, 6)))
    assert (found["a"], found["b"]) == (HALF, HALF)


def test_geese_in_a_column_are_quarters_with_halves_beside_them():
    patches = {
        f"{name.split('.')[0]}.{name.split('.')[-1]}{row}": moved(corners, 0, 2 * row)
        for row in range(3)
        for name, corners in GOOSE.items()
    }
    pieces = cut(graph(block_of(patches, (4, 6)))).pieces
    assert {(piece.name, piece.method, piece.count) for piece in pieces} == {("goose", QUARTER, 3), ("wing", HALF, 6)}


def test_the_corners_of_a_square_in_a_square_are_halves():
    patches = {
        "coral:middle.1": [(2, 0), (4, 2), (2, 4), (0, 2)],
        "corner.1": [(0, 0), (2, 0), (0, 2)],
        "corner.2": [(4, 0), (4, 2), (2, 0)],
        "corner.3": [(4, 4), (2, 4), (4, 2)],
        "corner.4": [(0, 4), (0, 2), (2, 4)],
    }
    assert methods(block_of(patches, (4, 4))) == {"middle": "square", "corner": HALF}


@pytest.mark.parametrize("outer", [0, 1])
def test_a_long_side_on_the_outside_keeps_a_right_triangle_from_being_half_a_rectangle(outer):
    """Otherwise its bias would end on the outside of the block."""
    from tests.cutting.shapes import claim

    name, _ = claim([(0, 0), (4, 0), (0, 2)], outside=[outer])
    assert name == ("half-rectangle-triangle" if outer == 0 else "template")


def test_side_triangles_of_the_star_have_their_long_side_on_the_outside():
    assert methods(blocks.star()) == {"diamond": "rhombus", "corner": "square", "side": QUARTER}
