"""How many shapes a strip holds: the formulas, and shapely laying the shapes out."""

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Polygon, box

from blocklang.cutting import Lay, Measure
from blocklang.cutting.strips import spacing


def marked(*inches):
    return tuple(Measure(float(Fraction(i)), Fraction(i)) for i in inches)


@pytest.mark.parametrize(
    ("cut", "usable", "holds"),
    [("5/2", 40, 16), ("5/2", 42, 16), ("7/2", 40, 11), ("7/2", 42, 12), ("9/2", 40, 8), ("9/2", 42, 9)],
)
def test_squares(cut, usable, holds):
    assert spacing(Lay.UPRIGHT, marked(cut), None).holds(usable) == holds


@pytest.mark.parametrize(
    ("width", "angle", "usable", "holds"),
    [
        ("5/2", 45, 40, 10),
        ("5/2", 45, 42, 11),
        (3, 45, 40, 8),
        (3, 45, 42, 9),
        ("5/2", 60, 40, 13),
        ("5/2", 60, 42, 14),
    ],
)
def test_diamonds(width, angle, usable, holds):
    assert spacing(Lay.SLANTED, marked(width, width), float(angle)).holds(usable) == holds


@pytest.mark.parametrize(("usable", "holds"), [(40, 17), (42, 18)])
def test_equilateral_triangles_of_a_strip_of_three_and_three_quarters(usable, holds):
    assert spacing(Lay.POINTED, marked("15/4", "35/8"), 60.0).holds(usable) == holds


def test_eight_diamonds_and_0_72_of_another():
    space = spacing(Lay.SLANTED, marked(3, 3), 45.0)
    assert (40 - space.lean) / space.step == pytest.approx(8.72, abs=5e-3)


def laid_out(lay, width, second, angle, count):
    """Return shapes as they are cut from a strip one after another."""
    t = math.radians(angle)
    lean = width / math.tan(t)
    if lay is Lay.UPRIGHT:
        return [box(i * second, 0, (i + 1) * second, width) for i in range(count)]
    if lay is Lay.SLANTED:
        step = second / math.sin(t)
        one = Polygon([(0, 0), (step, 0), (step + lean, width), (lean, width)])
        return [affinity.translate(one, i * step) for i in range(count)]
    if lay is Lay.POINTED:
        one, step = Polygon([(0, 0), (2 * lean, 0), (lean, width)]), lean
    elif lay is Lay.BOTH_ENDS:
        one, step = Polygon([(0, 0), (second, 0), (second - lean, width), (lean, width)]), second - lean
    else:
        one, step = Polygon([(0, 0), (second, 0), (second - lean, width), (0, width)]), second - lean / 2
    shapes, right = [], 0.0
    for i in range(count):
        if lay is Lay.ONE_END:
            # Square ends meet square ends, slanted ones meet slanted ones.
            at = i // 2 * 2 * step
            shape = (
                one
                if i % 2 == 0
                else affinity.translate(affinity.rotate(one, 180, origin=(second / 2, width / 2)), second - lean)
            )
            shapes.append(affinity.translate(shape, at))
        else:
            middle = (one.bounds[2] / 2, width / 2)
            shapes.append(affinity.translate(one if i % 2 == 0 else affinity.rotate(one, 180, origin=middle), i * step))
        right = max(right, shapes[-1].bounds[2])
    return shapes


@given(
    st.sampled_from([Lay.UPRIGHT, Lay.SLANTED, Lay.POINTED, Lay.BOTH_ENDS, Lay.ONE_END]),
    st.integers(8, 40),
    st.integers(8, 80),
    st.sampled_from([30.0, 45.0, 60.0, 72.0]),
    st.integers(18, 44),
)
@settings(deadline=None)
def test_strips_hold_what_they_claim(lay, eighths, more, angle, usable):
    """All the shapes lie within the strip, none over another, and for one more there is no room."""
    width = Fraction(eighths, 8)
    lean = float(width) / math.tan(math.radians(angle))
    second = Fraction(more, 8) + (math.ceil(2 * lean) if lay in (Lay.BOTH_ENDS, Lay.ONE_END) else 0)
    space = spacing(lay, marked(width, second), angle)
    holds = space.holds(usable)
    shapes = laid_out(lay, float(width), float(second), angle, holds + 1)
    strip = box(-1e-6, -1e-6, usable + 1e-6, float(width) + 1e-6)
    assert all(strip.contains(shape) for shape in shapes[:holds])
    for a, b in zip(shapes, shapes[1:], strict=False):
        assert a.intersection(b).area < 1e-6
    if lay is not Lay.ONE_END:  # whose last one may lie shorter than the safe count says
        assert shapes[holds].bounds[2] > usable
    assert shapes[0].area == pytest.approx(space.area, rel=1e-6)


def test_what_a_number_of_shapes_takes_is_what_holds_them():
    space = spacing(Lay.SLANTED, marked(3, 3), 45.0)
    for count in range(1, 12):
        assert space.holds(space.takes(count)) == count
        assert space.holds(space.takes(count) - 0.01) == count - 1
