"""Sizes as cut: the exact closed form (sympy), shapely's mitred offset, and what the methods answer, all alike."""

import math

import pytest
import sympy as sp
from shapely import LineString, Polygon, affinity

from blocklang.cutting import CuttingOptions, Lay
from blocklang.cutting.rounding import measures, room_for_marks
from tests.cutting.shapes import ALLOWANCES, LATTICE, claim, mirrored, outline, raw, turned

R2, R3, R5 = sp.sqrt(2), sp.sqrt(3), sp.sqrt(5)


def exact(value) -> float:
    return float(sp.N(value, 30))


def extents(shape) -> tuple[float, float]:
    left, low, right, high = shape.bounds
    return right - left, high - low


def lying(corners, allowance, edge):
    """Return the raw shape turned so that an edge lies along the bottom."""
    (ax, ay), (bx, by) = corners[edge], corners[(edge + 1) % len(corners)]
    return affinity.rotate(raw(corners, allowance), -math.degrees(math.atan2(by - ay, bx - ax)), origin=(0, 0))


def rhombus(side, degrees):
    t = math.radians(degrees)
    dx, dy = side * math.cos(t), side * math.sin(t)
    return [(0, 0), (side, 0), (side + dx, dy), (dx, dy)]


def regular(count, side):
    radius = side / (2 * math.sin(math.pi / count))
    return [
        (
            radius * math.cos(math.pi * (2 * k - 1) / count - math.pi / 2),
            radius * math.sin(math.pi * (2 * k - 1) / count - math.pi / 2),
        )
        for k in range(count)
    ]


@pytest.fixture(params=ALLOWANCES, ids=["1/4 in", "3/8 in", "7 mm"])
def allowance(request):
    return request.param


@pytest.fixture(params=[0, 22.5, 100], ids=["upright", "turned", "far round"])
def degrees(request):
    return request.param


def sym(allowance):
    return sp.Rational(allowance.numerator, allowance.denominator)


@pytest.mark.parametrize("side", [1, 3, 3.5147186])
def test_square(side, allowance, degrees):
    corners = [(0, 0), (side, 0), (side, side), (0, side)]
    name, found = claim(turned(corners, degrees, 1, 2), allowance)
    assert name == "square"
    assert found.cut[0] == pytest.approx(side + 2 * float(allowance), abs=LATTICE)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[0], abs=LATTICE)


def test_rectangle(allowance, degrees):
    corners = [(0, 0), (4, 0), (4, 1.5), (0, 1.5)]
    name, found = claim(turned(corners, degrees), allowance)
    assert name == "rectangle"
    wide, high = extents(raw(corners, allowance))
    assert found.cut == pytest.approx((high, wide), abs=LATTICE)


@pytest.mark.parametrize("leg", [1, 2, 4.25])
def test_half_square_triangle(leg, allowance, degrees):
    corners = [(0, 0), (leg, 0), (0, leg)]
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.yields) == ("half-square-triangle", 2)
    assert found.cut[0] == pytest.approx(exact(leg + sym(allowance) * (2 + R2)), abs=LATTICE)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[0], abs=LATTICE)


@pytest.mark.parametrize("long", [2, 4, 8.5])
def test_quarter_square_triangle(long, allowance, degrees):
    corners = [(0, 0), (long, 0), (long / 2, long / 2)]
    name, found = claim(turned(corners, degrees), allowance, outside=[0])
    assert (name, found.yields) == ("quarter-square-triangle", 4)
    assert found.cut[0] == pytest.approx(exact(long + sym(allowance) * (2 + 2 * R2)), abs=LATTICE)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[0], abs=LATTICE)


@pytest.mark.parametrize(("p", "q"), [(1, 2), (2, 4), (3, 5)])
@pytest.mark.parametrize("over", [False, True])
def test_half_rectangle_triangle(p, q, over, allowance, degrees):
    corners = [(0, 0), (p, 0), (0, q)]
    corners = mirrored(corners) if over else corners
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.yields, found.handed) == ("half-rectangle-triangle", 2, True)
    s, c = sym(allowance), sp.sqrt(p * p + q * q)
    expected = exact(p + s * (p + q + c) / q), exact(q + s * (p + q + c) / p)
    assert found.cut == pytest.approx(expected, abs=LATTICE)
    assert found.cut == pytest.approx(extents(raw(corners, allowance)), abs=LATTICE)


@pytest.mark.parametrize("short", [1, 2.5])
def test_half_rectangle_of_one_to_two_adds_the_same_whatever_the_size(short, allowance):
    _, found = claim([(0, 0), (short, 0), (0, 2 * short)], allowance)
    s = sym(allowance)
    expected = exact(short + s * (3 + R5) / 2), exact(2 * short + s * (3 + R5))
    assert found.cut == pytest.approx(expected, abs=LATTICE)


@pytest.mark.parametrize(("long", "height"), [(6, 1), (4, 1.5)])
def test_mitred_trapezoid(long, height, allowance, degrees):
    corners = [(0, 0), (long, 0), (long - height, height), (height, height)]
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay) == ("trapezoid", Lay.BOTH_ENDS)
    assert found.angle == pytest.approx(45, abs=0.01)
    s = sym(allowance)
    assert found.cut == pytest.approx((height + 2 * float(allowance), exact(long + s * (2 + 2 * R2))), abs=LATTICE)
    assert found.cut == pytest.approx(extents(raw(corners, allowance))[::-1], abs=LATTICE)


def test_trapezoid_with_one_slanted_end(allowance, degrees):
    corners = [(0, 0), (5, 0), (3.5, 1.5), (0, 1.5)]
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay, found.handed) == ("trapezoid", Lay.ONE_END, True)
    assert found.cut == pytest.approx(extents(raw(corners, allowance))[::-1], abs=LATTICE)


def test_parallelogram_at_45(allowance, degrees):
    height, length = 1.5, 4
    corners = [(0, 0), (length, 0), (length + height, height), (height, height)]
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.handed) == ("parallelogram", True)
    s = sym(allowance)
    along = found.cut[1] / math.sin(math.radians(found.angle))
    assert along == pytest.approx(exact(length + s * 2 * R2), abs=1e-4)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[1], abs=LATTICE)
    assert found.cut[1] == pytest.approx(extents(lying(corners, allowance, 1))[1], abs=LATTICE)


@pytest.mark.parametrize("side", [1, 2.5, 3.5147186])
def test_diamond_at_45(side, allowance, degrees):
    corners = rhombus(side, 45)
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay, found.handed) == ("rhombus", Lay.SLANTED, False)
    assert found.angle == pytest.approx(45, abs=0.01)
    assert found.cut[0] == found.cut[1] == pytest.approx(exact(side / R2 + 2 * sym(allowance)), abs=LATTICE)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[1], abs=LATTICE)
    cut_side = found.cut[0] / math.sin(math.radians(45))
    assert cut_side == pytest.approx(exact(side + 2 * R2 * sym(allowance)), abs=1e-5)


@pytest.mark.parametrize("side", [1, 2])
def test_diamond_at_60(side, allowance, degrees):
    corners = rhombus(side, 60)
    name, found = claim(turned(corners, degrees), allowance)
    assert name == "rhombus"
    assert found.cut[0] == pytest.approx(exact(side * R3 / 2 + 2 * sym(allowance)), abs=LATTICE)
    assert found.cut[0] / math.sin(math.radians(60)) == pytest.approx(exact(side + 4 * sym(allowance) / R3), abs=1e-5)
    assert found.cut[0] == pytest.approx(extents(raw(corners, allowance))[1], abs=LATTICE)


@pytest.mark.parametrize("side", [1, 3])
def test_equilateral_triangle(side, allowance, degrees):
    corners = regular(3, side)
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay) == ("equilateral-triangle", Lay.POINTED)
    s = sym(allowance)
    assert found.cut == pytest.approx((exact(side * R3 / 2 + 3 * s), exact(side + 2 * R3 * s)), abs=LATTICE)
    assert found.cut == pytest.approx(extents(raw(corners, allowance))[::-1], abs=LATTICE)


@pytest.mark.parametrize("side", [1, 1.5])
def test_hexagon(side, allowance, degrees):
    corners = regular(6, side)
    name, found = claim(turned(corners, degrees), allowance)
    assert name == "hexagon"
    s = sym(allowance)
    assert found.cut == pytest.approx((exact(side * R3 + 2 * s), exact(2 * side + 4 * s / R3)), abs=LATTICE)
    assert found.cut == pytest.approx(extents(raw(corners, allowance))[::-1], abs=LATTICE)


@pytest.mark.parametrize("finished", [6, 12])
def test_kaleidoscope_wedge(finished, allowance, degrees):
    """Base S(root 2 - 1), height S/2: the strip is higher by a(1 + 1/sin 22.5), the base by 2 tan 22.5 of that."""
    half = sp.pi / 8
    base = exact(finished * (R2 - 1))
    corners = [(-base / 2, 0), (base / 2, 0), (0, finished / 2)]
    name, found = claim(turned(corners, degrees), allowance, outside=[0])
    assert (name, found.lay, found.handed) == ("wedge", Lay.POINTED, False)
    assert found.angle == pytest.approx(67.5, abs=0.01)
    more = sym(allowance) * (1 + 1 / sp.sin(half))
    expected = exact(sp.Rational(finished, 2) + more), exact(finished * (R2 - 1) + 2 * sp.tan(half) * more)
    assert found.cut == pytest.approx(expected, abs=2 * LATTICE)
    assert found.cut == pytest.approx(extents(raw(corners, allowance))[::-1], abs=2 * LATTICE)


def test_a_wedge_with_a_leg_on_the_outside_is_cut_round_a_template():
    name, _ = claim([(0, 0), (2, 0), (1, 3)], outside=[1])
    assert name == "template"


def kite_in_a_square(side):
    """The 45-degree kite between the lines at 22.5 and 67.5 degrees from one corner of a square."""
    short = side * math.tan(math.radians(22.5))
    return [(0, 0), (side, short), (side, side), (short, side)]


@pytest.mark.parametrize("side", [2, 4])
def test_kite_in_a_square(side, allowance, degrees):
    corners = kite_in_a_square(side)
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay, found.handed) == ("kite", Lay.UPRIGHT, False)
    whole = affinity.rotate(raw(corners, allowance), 45, origin=(0, 0))
    assert found.cut == pytest.approx(extents(whole), abs=8 * LATTICE)
    # Area 2a^2(root 2 - 1) over half the sides around is the radius of the circle that touches all four.
    long, short = side / sp.cos(sp.pi / 8), side * (2 - R2)
    radius = long * short * sp.sin(sp.Rational(5, 8) * sp.pi) / (long + short)
    larger = 1 + sym(allowance) / radius
    across = 2 * long * sp.sin(sp.pi / 8)
    assert found.cut == pytest.approx((exact(across * larger), exact(side * R2 * larger)), abs=8 * LATTICE)
    assert found.marks == pytest.approx((exact(long * sp.cos(sp.pi / 8) * larger),), abs=8 * LATTICE)


def test_kite_of_four_inches():
    """The sides as cut at 1/4 in: 5.1002 and 2.7602 in."""
    _, found = claim(kite_in_a_square(4))
    half, (mark,) = found.cut[0] / 2, found.marks
    assert math.hypot(half, mark) == pytest.approx(5.1002, abs=5e-5)
    assert math.hypot(half, found.cut[1] - mark) == pytest.approx(2.7602, abs=5e-5)


def test_the_grain_of_a_kite_runs_along_its_middle(degrees):
    corners = turned(kite_in_a_square(3), degrees)
    _, found = claim(corners)
    edge = outline(corners).edges[found.along]
    assert math.remainder(edge.departs() + found.lean - math.radians(45 + degrees), math.tau) == pytest.approx(
        0, abs=1e-5
    )


def test_a_kite_with_a_side_on_the_outside_is_cut_round_a_template():
    name, _ = claim(kite_in_a_square(3), outside=[1])
    assert name == "template"


def cornered(side, leg):
    whole = [(leg, 0), (side - leg, 0), (side, leg), (side, side - leg)]
    return whole + [(side - x, side - y) for x, y in whole]


@pytest.mark.parametrize(("side", "leg"), [(6, 2), (4, 1), (6, 6 / (2 + math.sqrt(2))), (3, 1.2)])
def test_square_with_cut_corners(side, leg, allowance, degrees):
    corners = cornered(side, leg)
    name, found = claim(turned(corners, degrees), allowance)
    assert (name, found.lay) == ("octagon", Lay.UPRIGHT)
    whole = raw(corners, allowance)
    if leg * math.sqrt(2) > side - 2 * leg + 1e-6:  # the slanted sides are the longer ones: they are the square's
        whole = affinity.rotate(whole, 45, origin=(0, 0))
    assert found.cut[0] == pytest.approx(extents(whole)[0], abs=4 * LATTICE)
    left, low, right, _ = whole.bounds
    flat = whole.exterior.intersection(LineString([(left, low + 1e-7), (right, low + 1e-7)]))
    assert found.marks[0] == pytest.approx(extents(flat)[0], abs=4 * LATTICE)


def test_regular_octagon(allowance):
    """Side S(root 2 - 1); moved out by a it is the octagon of S + 2a."""
    _, found = claim(regular(8, exact(6 * (R2 - 1))), allowance)
    whole = 6 + 2 * sym(allowance)
    assert found.cut == pytest.approx((exact(whole),), abs=8 * LATTICE)
    assert found.marks == pytest.approx((exact(whole * (R2 - 1)),), abs=8 * LATTICE)


@pytest.mark.parametrize("corners", [kite_in_a_square(2.3), kite_in_a_square(4), cornered(5.1, 1.3), cornered(3, 0.9)])
def test_marks_on_a_ruler_leave_room_for_the_patch(corners, allowance):
    """What is cut from mark to mark, each rounded up, holds the finished patch with its allowance."""
    _, found = claim(corners, allowance)
    options = CuttingOptions()
    marks = measures(found.marks, options)
    sides = [float(side.shown) for side in room_for_marks(measures(found.cut, options), marks, options)]
    mark = float(marks[0].shown)
    whole = raw(corners, allowance)
    if len(sides) == 2:
        wide, long = sides
        shape = Polygon([(0, 0), (mark, -wide / 2), (long, 0), (mark, wide / 2)])
        whole = affinity.rotate(whole, -45, origin=(0, 0))
        widest = max(whole.exterior.coords, key=lambda place: place[1])[0]
        whole = affinity.translate(whole, mark - widest, 0)
    else:
        leg = (sides[0] - mark) / 2
        shape = affinity.translate(Polygon(cornered(sides[0], leg)), -sides[0] / 2, -sides[0] / 2)
        whole = affinity.translate(whole, -whole.centroid.x, -whole.centroid.y)
    assert whole.difference(shape).area < 1e-4


@pytest.mark.parametrize(
    "corners",
    [
        [(0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)],  # L
        regular(5, 1),
        regular(7, 1),
        [(0, 0), (4, 0), (3.4, 1.41), (0.5, 1.2)],  # kite-like, no parallel sides
        [(0, 0), (4, 0), (3, 1), (0.4, 1)],  # two different slants
        [(0, 0), (4, 0), (2.5, 1.3)],  # no two sides alike
        [(0, 0), (1, 0), (0.5, 3)],  # a wedge so slender that its tip is cut off square
        [(0, 0), (4, 0), (2, 1), (2, 3)],  # a dent
    ],
)
def test_everything_else_is_cut_round_a_template(corners, degrees):
    name, found = claim(turned(corners, degrees))
    assert (name, found.cut, found.lay, found.handed) == ("template", (), Lay.TEMPLATE, True)
