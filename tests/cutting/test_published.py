"""Figures that others have published; the source stands beside each check."""

from fractions import Fraction

import pytest

from blocklang.cutting import CuttingOptions, cut
from blocklang.cutting.rounding import measure
from tests.cutting.shapes import GOOSE, block_of, claim, graph
from tests.support import blocks

UP = CuttingOptions()


def half_square(leg):
    _, found = claim([(0, 0), (leg, 0), (0, leg)])
    return measure(found.cut[0], UP).shown


def quarter_square(long):
    _, found = claim([(0, 0), (long, 0), (long / 2, long / 2)], outside=[0])
    return measure(found.cut[0], UP).shown


@pytest.mark.parametrize("finished", range(1, 13))
def test_half_square_triangles_add_seven_eighths(finished):
    """North Hampshire Quilters, half- and quarter-square triangles: finished + 7/8 in."""
    assert half_square(finished) == finished + Fraction(7, 8)


@pytest.mark.parametrize("finished", range(1, 13))
def test_quarter_square_triangles_add_one_and_a_quarter(finished):
    """North Hampshire Quilters, half- and quarter-square triangles: finished long side + 1 1/4 in."""
    assert quarter_square(finished) == finished + Fraction(5, 4)


def test_setting_triangles_of_a_six_inch_block():
    """Moonlight Quilters, on-point settings, worked example: 9 3/4 and 5 1/8 in for 6 in blocks."""
    assert quarter_square(6 * 2**0.5) == Fraction(39, 4)
    assert half_square(6 / 2**0.5) == Fraction(41, 8)


SIDES = "8 3/8, 9 3/4, 11 1/4, 12 5/8, 14, 15 1/2, 16 7/8, 18 1/4, 19 3/4, 21 1/8, 22 1/2, 23 7/8"
CORNERS = "4 1/2, 5 1/8, 5 7/8, 6 5/8, 7 1/4, 8, 8 3/4, 9 3/8, 10 1/8, 10 7/8, 11 1/2, 12 1/4"


def listed(text):
    return [sum(map(Fraction, size.split())) for size in text.split(", ")]


@pytest.mark.parametrize(
    ("finished", "side", "corner"), list(zip(range(5, 17), listed(SIDES), listed(CORNERS), strict=True))
)
def test_chart_of_setting_triangles(finished, side, corner):
    """Personal reference chart of on-point cut sizes, 5 to 16 in blocks.

    The chart adds the rounded 1 1/4 in to 1.414 times the size; the exact form is an eighth less at 7, 10 and 13 in.
    """
    less = Fraction(1, 8) if finished in (7, 10, 13) else 0
    assert quarter_square(finished * 2**0.5) == side - less
    assert half_square(finished / 2**0.5) == corner


def sizes(block):
    return {piece.name: piece.cut for piece in cut(graph(block)).pieces}


def test_eight_pointed_star_at_twelve_inches():
    """Unsigned eight-pointed-star drafting handout (divisor 3.414), and the rounding of the trade: 4, 6 1/4, 3.

    The corner square comes out at 4.0147 in; the trade cuts it at 4, a hundredth of an inch too small. Rounding up
    is strict here, so it is cut at 4 1/8.
    """
    found = sizes(blocks.star(12))
    assert found["diamond"][0].exact == pytest.approx(2.9853, abs=5e-5)
    assert found["diamond"][0].shown == found["diamond"][1].shown == 3
    assert found["corner"][0].exact == pytest.approx(4.0147, abs=5e-5)
    assert found["corner"][0].shown == Fraction(33, 8)
    assert found["side"][0].exact == pytest.approx(6.1777, abs=5e-5)
    assert found["side"][0].shown == Fraction(25, 4)


def test_eight_pointed_star_rounded_to_nearest():
    """Nearest eighths of 4.0147, 6.1777 and 2.9853; the trade takes 4 and 3, but 6 1/4 for the side triangles."""
    cutting = cut(graph(blocks.star(12)), CuttingOptions(round_up=False))
    assert {p.name: p.cut[0].shown for p in cutting.pieces} == {"corner": 4, "side": Fraction(49, 8), "diamond": 3}
    assert "corner (fog) is cut 0.015 in smaller than it comes out." in cutting.notes
    assert "side (fog) is cut 0.053 in smaller than it comes out." in cutting.notes


def test_eight_pointed_star_at_six_inches():
    """Side of the diamond 6/3.414 = 1.7574 in by the same handout; all by the closed forms."""
    found = sizes(blocks.star(6))
    assert found["corner"][0].exact == pytest.approx(1.7574 + 0.5, abs=5e-5)
    assert found["side"][0].exact == pytest.approx(1.7574 * 2**0.5 + 1.2071, abs=1e-4)
    assert found["diamond"][0].exact == pytest.approx(1.7574 / 2**0.5 + 0.5, abs=1e-4)
    assert [found[name][0].shown for name in ("corner", "side", "diamond")] == [
        Fraction(19, 8),
        Fraction(15, 4),
        Fraction(7, 4),
    ]


def test_large_star_counts_its_diamonds():
    """Smithsonian, National Museum of American History, "Rising Sun" quilt: 648 diamonds, nine to an edge, 76 in."""
    pieces = cut(graph(blocks.star(76, 9))).pieces
    diamonds = [piece for piece in pieces if piece.method == "rhombus"]
    assert sum(piece.count for piece in diamonds) == 648
    side = 76 / (9 * (2 + 2**0.5))
    assert side == pytest.approx(2.4733, abs=5e-5)
    assert {round(piece.cut[0].exact - side / 2**0.5, 4) for piece in diamonds} == {0.5}


def test_flying_geese():
    """North Hampshire Quilters' rule on a goose of 4 x 2 in: 5 1/4 in cut twice, 2 7/8 in cut once."""
    found = {p.name: p for p in cut(graph(block_of(GOOSE, (4, 2)))).pieces}
    assert (found["goose"].method, found["goose"].cut[0].shown) == ("quarter-square-triangle", Fraction(21, 4))
    assert (found["wing"].method, found["wing"].cut[0].shown) == ("half-square-triangle", Fraction(23, 8))


def test_diamonds_from_a_strip():
    """Eight diamonds of a 12 in star from 40 in, 0.72 of one to spare: (40 - 3)/(3 root 2) = 8.72."""
    (diamond,) = [piece for piece in cut(graph(blocks.star(12))).pieces if piece.name == "diamond"]
    assert diamond.strip is not None
    assert (diamond.strip.width.shown, diamond.strip.holds, diamond.strip.count) == (3, 8, 1)
    assert pytest.approx(8.72, abs=5e-3) == (40 - 3) / (3 * 2**0.5)


@pytest.mark.parametrize(
    ("finished", "side", "corner"), list(zip(range(5, 17), listed(SIDES), listed(CORNERS), strict=True))
)
def test_chart_of_setting_triangles_by_its_own_path(finished, side, corner):
    """The same chart, 24 of 24 by the path that it states: 1.414 times (or divided by 1.414), then 1 1/4 or 7/8 in.

    Both sums go up to the next eighth, as every size is put on its mark here.
    """
    assert measure(1.414 * finished + 1.25, UP).shown == side
    assert measure(finished / 1.414 + 0.875, UP).shown == corner


def on_point(across, down, side):
    """Blocks on point with alternate blocks, side and corner triangles: outlines in inches by name."""
    half = side / 2**0.5
    patches = {}
    width, height = 2 * across * half, 2 * down * half
    for row in range(2 * down + 1):
        for column in range(row % 2, 2 * across + 1, 2):
            if row in (0, 2 * down) and column in (0, 2 * across):
                continue
            x, y = column * half, row * half
            ring = [(x - half, y), (x, y - half), (x + half, y), (x, y + half)]
            inside = [(a, b) for a, b in ring if -1e-9 <= a <= width + 1e-9 and -1e-9 <= b <= height + 1e-9]
            whole = 0 < column < 2 * across and 0 < row < 2 * down
            kind = "deep:block" if row % 2 == 1 and column % 2 == 1 else "fog:alternate"
            kind = kind if whole else "coral:side"
            patches[f"{kind}.{row}-{column}"] = inside
    for name, corner in enumerate([(0, 0), (width, 0), (width, height), (0, height)]):
        x, y = corner
        legs = (x + (half if x == 0 else -half), y), (x, y + (half if y == 0 else -half))
        patches[f"coral:corner.{name}"] = [corner, *legs]
    return patches, (width, height)


def test_four_by_five_blocks_on_point():
    """12 alternate blocks, 14 side triangles from 4 squares (2 over), 4 corners from 2 squares; 67.88 x 84.85 in.

    Sizes for 12 in blocks by the same chart: 18 1/4 and 9 3/8 in.
    """
    patches, size = on_point(4, 5, 12.0)
    assert size == pytest.approx((67.88, 84.85), abs=5e-3)
    found = {piece.name: piece for piece in cut(graph(block_of(patches, size))).pieces}
    assert (found["block"].count, found["alternate"].count) == (20, 12)
    side, corner = found["side"], found["corner"]
    assert (side.count, side.shapes, side.shapes * side.yields - side.count) == (14, 4, 2)
    assert (corner.count, corner.shapes) == (4, 2)
    assert (side.method, side.cut[0].shown) == ("quarter-square-triangle", Fraction(73, 4))
    assert (corner.method, corner.cut[0].shown) == ("half-square-triangle", Fraction(75, 8))


def test_patches_of_blocks_that_others_have_counted():
    """Smithsonian American Art Museum, Pieced Quilt (Ohio Star), about 1845: 21 pieces, 3^21 ways in three colours."""
    star = {}
    for row in range(3):
        for column in range(3):
            x, y = 3 * column, 3 * row
            ring = [(x, y), (x + 3, y), (x + 3, y + 3), (x, y + 3)]
            if (row + column) % 2:
                star |= {f"deep:q{i}.{row}{column}": [ring[i], ring[(i + 1) % 4], (x + 1.5, y + 1.5)] for i in range(4)}
            else:
                star[f"fog:s.{row}{column}"] = ring
    pieces = cut(graph(block_of(star, (9, 9)))).pieces
    assert sum(piece.count for piece in pieces) == 21
    assert 3**21 == 10_460_353_203
    assert {piece.method: piece.count for piece in pieces} == {"square": 5, "quarter-square-triangle": 16}
