"""Several units at once: start squares by sympy, what is left after sewing and cutting by shapely, and when they suit."""

from dataclasses import replace
from fractions import Fraction

import pytest
import sympy as sp
from blocklang_cutting_methods import blocklang_cutting_methods
from shapely import LineString, Polygon, affinity
from shapely.ops import split

from blocklang.assembly import assemble
from blocklang.cutting import CuttingMethod, CuttingOptions, Rounding, cut, describe_offer, equal_units, with_offers
from tests.cutting.shapes import ALLOWANCES, GOOSE, QUARTER, block_of, graph, raw
from tests.support import blocks

R2 = sp.sqrt(2)
METHODS = blocklang_cutting_methods()


@pytest.fixture(params=ALLOWANCES, ids=["1/4 in", "3/8 in", "7 mm"])
def allowance(request):
    return request.param


def offers(block, **options):
    """Return the offers for a block by method."""
    drawn = graph(block)
    assembly = assemble(drawn).assembly
    cutting = cut(drawn, CuttingOptions(**options))
    found = with_offers(cutting, assembly, METHODS).offers
    return {offer.method: offer for offer in found}


def half_squares(side, allowance=QUARTER, count=4):
    """A row of square units, each of two triangles, with plain squares between them."""
    patches = {}
    for n in range(count):
        x = 2 * n * side
        patches[f"deep:dark.{n}"] = [(x, 0), (x + side, 0), (x, side)]
        patches[f"fog:light.{n}"] = [(x + side, 0), (x + side, side), (x, side)]
        patches[f"coral:gap.{n}"] = [(x + side, 0), (x + 2 * side, 0), (x + 2 * side, side), (x + side, side)]
    return block_of(patches, (2 * count * side, side), allowance=allowance)


def geese(height, allowance=QUARTER, count=4, sky=("fog", "fog")):
    patches = {}
    for n in range(count):
        y = n * height
        corners = {name: [(x * height / 2, y + z * height / 2) for x, z in ring] for name, ring in GOOSE.items()}
        patches[f"deep:goose.{n}"] = corners["goose"]
        patches[f"{sky[0]}:left.{n}"] = corners["wing.1"]
        patches[f"{sky[1]}:right.{n}"] = corners["wing.2"]
    return block_of(patches, (2 * height, count * height), allowance=allowance)


def quarters(side, fabrics, allowance=QUARTER, count=2):
    """A row of square units, each of four triangles round the middle, with plain squares between them."""
    patches = {}
    for n in range(count):
        x, h = 2 * n * side, side / 2
        ring = [(x, 0), (x + side, 0), (x + side, side), (x, side)]
        for i, fabric in enumerate(fabrics):
            patches[f"{fabric}:quarter{i}.{n}"] = [ring[i], ring[(i + 1) % 4], (x + h, h)]
        patches[f"reed:gap.{n}"] = [(x + side, 0), (x + 2 * side, 0), (x + 2 * side, side), (x + side, side)]
    return block_of(patches, (2 * count * side, side), allowance=allowance)


def start(offer, place=0):
    return offer.starts[place].sides[-1].exact


def exactly(value):
    return pytest.approx(float(sp.N(value)), abs=2e-5)


def sym(allowance):
    return sp.Rational(allowance.numerator, allowance.denominator)


@pytest.mark.parametrize("side", [2, 3, sp.Rational(7, 2)])
def test_squares_to_begin_with_for_half_square_triangles(side, allowance):
    found, s = offers(half_squares(float(side), allowance, 8), copies=1), sym(allowance)
    assert start(found["half-squares-by-two"]) == exactly(side + s * (2 + R2))
    assert start(found["half-squares-by-four"]) == exactly(side * R2 + s * (2 + 2 * R2))
    assert start(found["half-squares-by-eight"]) == exactly(2 * side + 2 * s * (2 + R2))
    for offer in found.values():
        assert [measure.exact for measure in offer.trim] == [exactly(side + 2 * s)] * 2


def opened(sewn: Polygon, seam: LineString) -> Polygon:
    """Return a two-layered piece sewn along a line, opened there: the piece without its allowance, and its mirror image."""
    (a, b) = seam.coords
    far = LineString([a, b])
    parts = sorted(split(sewn, far).geoms, key=lambda part: part.area)
    kept = parts[-1]
    angle = sp.atan2(b[1] - a[1], b[0] - a[0])
    flat = affinity.rotate(kept, -float(angle), origin=a, use_radians=True)
    return flat.union(affinity.scale(flat, yfact=-1, origin=a))


@pytest.mark.parametrize("side", [2.0, 3.5])
def test_two_at_a_time_come_out_at_their_size(side, allowance):
    """Sew a on both sides of the diagonal, cut on it, open: the two legs of the square are finished + 2a apart."""
    a = float(allowance)
    square = start(offers(half_squares(side, allowance))["half-squares-by-two"])
    triangle = Polygon([(0, 0), (square, 0), (0, square)])
    off = a * 2**0.5
    seam = LineString([(square - off + 9, -9), (-9, square - off + 9)])
    unit = opened(triangle, seam)
    legs = unit.bounds
    # The square lies on its corner: across both corners on the seam it is root 2 times its side.
    assert (legs[3] - legs[1]) / 2**0.5 == pytest.approx(side + 2 * a, abs=1e-4)


@pytest.mark.parametrize("side", [2.0, 3.5])
def test_four_at_a_time_come_out_at_their_size(side, allowance):
    """Sewn a from the edge all round and cut corner to corner: each quarter opens to a square of finished + 2a."""
    a = float(allowance)
    square = start(offers(half_squares(side, allowance))["half-squares-by-four"])
    quarter = Polygon([(0, 0), (square, 0), (square / 2, square / 2)])
    unit = opened(quarter, LineString([(-9, a), (square + 9, a)]))
    assert (unit.bounds[3] - unit.bounds[1]) / 2**0.5 == pytest.approx(side + 2 * a, abs=1e-4)


def test_eight_at_a_time_are_four_times_two_at_a_time(allowance):
    found = offers(half_squares(2.0, allowance, 8))
    assert start(found["half-squares-by-eight"]) == pytest.approx(2 * start(found["half-squares-by-two"]))


def test_a_popular_shortcut_is_too_small_for_small_units():
    """(finished + 1/2)/0.64 gives 3.906 in for a unit of 2 in that needs 4.036, and wastes at 6 in."""
    assert start(offers(half_squares(2.0))["half-squares-by-four"]) == pytest.approx(4.0355, abs=5e-5) != 2.5 / 0.64
    assert start(offers(half_squares(6.0))["half-squares-by-four"]) == pytest.approx(9.6924, abs=5e-5)


@pytest.mark.parametrize("height", [1.5, 2.0])
def test_geese_four_at_a_time(height, allowance):
    """The pieces are those of the plain cutting, whole; the small squares overlap by two allowances in the middle."""
    offer = offers(geese(height, allowance))["geese-by-four"]
    s, h = sym(allowance), sp.Rational(height)
    large, small = start(offer, 0), start(offer, 1)
    assert large == exactly(2 * h + s * (2 + 2 * R2))
    assert small == exactly(h + s * (2 + R2))
    assert 2 * small - large == exactly(2 * s)
    body = raw([(0, 0), (2 * height, 0), (height, height)], allowance)
    wing = raw([(0, 0), (height, height), (0, height)], allowance)
    assert large**2 == pytest.approx(4 * body.area, abs=1e-4)
    assert small**2 == pytest.approx(2 * wing.area, abs=1e-4)


def test_geese_of_four_by_two_inches():
    """North Hampshire Quilters' rule: 5 1/4 and 2 7/8 in for geese of 4 x 2 in, trimmed to 4 1/2 x 2 1/2."""
    offer = offers(geese(2.0))["geese-by-four"]
    assert [piece.sides[0].shown for piece in offer.starts] == [Fraction(21, 4), Fraction(23, 8)]
    assert [piece.count for piece in offer.starts] == [1, 4]
    assert [side.shown for side in offer.trim] == [Fraction(9, 2), Fraction(5, 2)]


def test_geese_by_corner_squares_have_their_point_below_the_edge(allowance):
    """The diagonals of the two squares cross in the middle, an allowance below the raw edge."""
    offer = offers(geese(2.0, allowance, 3))["geese-by-corner-squares"]
    a = float(allowance)
    (high, wide), (square,) = ([side.exact for side in piece.sides] for piece in offer.starts)
    assert (high, wide, square) == pytest.approx((2 + 2 * a, 4 + 2 * a, 2 + 2 * a), abs=1e-5)
    left = LineString([(0, 0), (square, square)])
    right = LineString([(wide, 0), (wide - square, square)])
    tip = left.intersection(right)
    assert (tip.x, high - tip.y) == pytest.approx((wide / 2, a), abs=1e-5)


@pytest.mark.parametrize("side", [2.0, 3.0])
def test_hourglasses_two_at_a_time(side, allowance):
    found = offers(quarters(side, ("deep", "fog", "deep", "fog"), allowance))
    assert list(found) == ["hourglasses-by-two"]
    assert start(found["hourglasses-by-two"]) == exactly(sp.Rational(side) + sym(allowance) * (2 + 2 * R2))
    assert found["hourglasses-by-two"].work.bias == 0 < found["hourglasses-by-two"].plain.bias == 16


def test_units_of_three_fabrics_four_at_a_time():
    offer = offers(quarters(3.0, ("deep", "fog", "deep", "coral"), count=4))["quarter-squares-by-four"]
    assert [(piece.fabric, piece.count) for piece in offer.starts] == [("deep", 2), ("fog", 1), ("coral", 1)]
    assert (offer.needed, offer.rounds, offer.left_over) == (4, 1, 0)


def test_units_whose_opposite_triangles_differ_are_left_alone():
    assert offers(quarters(3.0, ("deep", "fog", "coral", "reed"), count=4)) == {}


def test_geese_with_two_skies_are_left_alone():
    assert offers(geese(2.0, sky=("fog", "coral"))) == {}


@pytest.mark.parametrize(
    ("count", "copies", "ways"),
    [
        (1, 1, []),
        (2, 1, ["two"]),
        (4, 1, ["two", "four"]),
        (1, 4, ["two", "four"]),
        (5, 1, ["two"]),
        (8, 1, ["two", "four", "eight"]),
        (9, 1, ["two"]),
    ],
)
def test_ways_are_offered_where_the_plan_holds_enough(count, copies, ways):
    found = offers(half_squares(2.0, count=count), copies=copies)
    assert [method.removeprefix("half-squares-by-") for method in found] == ways
    for offer in found.values():
        assert offer.needed == count * copies
        assert offer.left_over * 4 <= offer.needed <= offer.rounds * offer.yields


def test_work_is_counted_by_hand_for_sixteen_units():
    """Plain: 8 + 8 squares and a cut across each, 32 long sides on the bias. By eight: 2 + 2 squares, 2 times 4 cuts."""
    found = offers(half_squares(2.0, count=16))
    eight, two, four = (found[f"half-squares-by-{name}"] for name in ("eight", "two", "four"))
    assert (eight.plain.cuts, eight.plain.bias) == (32, 32)
    assert (eight.work.cuts, eight.work.bias) == (12, 0)
    assert (two.work.cuts, two.work.bias) == (24, 0)
    assert (four.work.cuts, four.work.bias) == (16, 64)
    assert eight.plain.area == eight.work.area == two.work.area == 16 * 2.875**2
    assert "the same fabric, 20 fewer cuts, and 32 fewer bias edges to handle." in describe_offer(eight)[-1]
    assert "bias" in describe_offer(four)[-1]


def test_offers_follow_the_rounding():
    offer = offers(half_squares(2.0), rounding=Rounding.MILLIMETRES)["half-squares-by-two"]
    assert offer.starts[0].sides[0].shown == Fraction(73 * 10, 254)  # 2.8536 in are 72.48 mm


def test_equal_units_are_those_of_the_sewing_order():
    drawn = graph(blocks.pinwheel())
    assembly = assemble(drawn).assembly
    kinds = equal_units(assembly, cut(drawn))
    assert (len(kinds[0].units), kinds[0].size) == (4, pytest.approx((3.0, 3.0)))
    sewn = {frozenset(patches) for patches in assembly.unit_patches}
    assert all(frozenset(p.patch for p in unit) in sewn for kind in kinds for unit in kind.units)


def test_an_offer_changes_nothing_else():
    drawn = graph(half_squares(2.0))
    cutting = cut(drawn)
    offered = with_offers(cutting, assemble(drawn).assembly, METHODS)
    assert replace(offered, offers=()) == cutting


def test_methods_that_offer_claim_no_patch():
    drawn = graph(half_squares(2.0))
    assert cut(drawn, methods=METHODS).pieces[0].method == "template"


def test_methods_that_claim_offer_no_unit():
    only = CuttingMethod("nothing", "nothing at all", 5)
    drawn = graph(half_squares(2.0))
    assert with_offers(cut(drawn), assemble(drawn).assembly, (only,)).offers == ()
