"""Shapes that are the same when turned, and those that are only mirrored."""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from blocklang.geometry import Arc, Edge, Outline, Point, from_inches
from blocklang.geometry.congruence import Interner, least_turn, shape_key, without_idle_corners
from tests.cutting.shapes import mirrored, outline, turned

SCALENE = [(0, 0), (3, 0), (1, 2)]
PARALLELOGRAM = [(0, 0), (3, 0), (4, 1), (1, 1)]
ELL = [(0, 0), (3, 0), (3, 1), (1, 1), (1, 2), (0, 2)]
NEEDLE = [(0, 0), (5, 0), (5, 1 / 16)]
SHAPES = [SCALENE, PARALLELOGRAM, ELL, NEEDLE, [(0, 0), (2, 0), (2, 2), (0, 2)], [(0, 0), (3, 0), (3, 1), (0, 1)]]


@given(
    st.sampled_from(SHAPES),
    st.floats(0, 360),
    st.floats(-20, 20),
    st.floats(-20, 20),
    st.integers(0, 5),
)
def test_turned_and_moved_shapes_are_one(corners, degrees, dx, dy, first):
    interner = Interner()
    plain = shape_key(outline(corners), interner)
    ring = outline(turned(corners, degrees, dx, dy)).edges
    first %= len(ring)
    other = shape_key(Outline(ring[first:] + ring[:first]), interner)
    assert (other.key, other.mirror) == (plain.key, plain.mirror)
    by = math.degrees(other.turn - plain.turn) - degrees
    step = 360 / plain.order
    assert abs(by / step - round(by / step)) * step < 0.05


@given(st.sampled_from(SHAPES), st.floats(0, 360))
def test_mirror_images_name_each_other(corners, degrees):
    interner = Interner()
    plain = shape_key(outline(corners), interner)
    other = shape_key(outline(turned(mirrored(corners), degrees)), interner)
    assert (other.key, other.mirror) == (plain.mirror, plain.key)
    assert other.either_way_up == plain.either_way_up
    assert plain.symmetric == (plain.key == other.key)


@pytest.mark.parametrize(
    ("corners", "symmetric", "order"),
    [
        (SCALENE, False, 1),
        (PARALLELOGRAM, False, 2),
        (ELL, False, 1),
        ([(0, 0), (2, 0), (2, 2), (0, 2)], True, 4),
        ([(0, 0), (3, 0), (3, 1), (0, 1)], True, 2),
        ([(0, 0), (2, 0), (0, 2)], True, 1),
    ],
)
def test_symmetry(corners, symmetric, order):
    shape = shape_key(outline(corners), Interner())
    assert (shape.symmetric, shape.order) == (symmetric, order)


def test_different_shapes_differ():
    interner = Interner()
    nearly = [(0, 0), (3, 0), (1.001, 2)]
    bigger = [(x * 1.001, y * 1.001) for x, y in SCALENE]
    keys = {shape_key(outline(c), interner).key for c in (*SHAPES, nearly, bigger)}
    assert len(keys) == len(SHAPES) + 2


def test_rhombi_with_equal_sides_and_another_angle_differ():
    interner = Interner()

    def rhombus(degrees):
        t = math.radians(degrees)
        return outline([(0, 0), (2, 0), (2 + 2 * math.cos(t), 2 * math.sin(t)), (2 * math.cos(t), 2 * math.sin(t))])

    assert shape_key(rhombus(45), interner).key != shape_key(rhombus(45.1), interner).key


@given(st.integers(0, 10_000))
def test_lattice_noise_never_parts_equal_shapes(seed):
    """Corners that are a few ticks off, as far as a junction is wide at most, are the same shape."""
    rng = random.Random(seed)
    interner = Interner()
    plain = shape_key(outline(SCALENE), interner)
    for _ in range(10):
        noisy = Outline.through(
            Point(p.x + rng.randint(-8, 8), p.y + rng.randint(-8, 8))
            for p in outline(turned(SCALENE, rng.uniform(0, 360))).corners
        )
        assert shape_key(noisy, interner).key == plain.key


def test_corners_on_a_straight_run_do_not_count():
    ring = outline([(0, 0), (1, 0), (2, 0), (2, 2), (0, 2), (0, 1)])
    assert len(without_idle_corners(ring).edges) == 4
    interner = Interner()
    assert shape_key(ring, interner).key == shape_key(outline([(0, 0), (2, 0), (2, 2), (0, 2)]), interner).key


def pie(clockwise_first):
    a, b, c = from_inches(0, 0), from_inches(2, 0), from_inches(0, 2)
    ring = Outline((Edge(a, b), Edge(b, c, Arc(a, False)), Edge(c, a)))
    return ring.reversed() if clockwise_first else ring


def test_arcs_count_by_how_they_bulge():
    interner = Interner()
    a, b, c = from_inches(0, 0), from_inches(2, 0), from_inches(0, 2)
    bulging = shape_key(pie(False), interner)
    flat = shape_key(outline([(0, 0), (2, 0), (0, 2)]), interner)
    hollow = shape_key(Outline((Edge(a, b), Edge(b, c, Arc(from_inches(2, 2), True)), Edge(c, a))), interner)
    assert len({bulging.key, flat.key, hollow.key}) == 3
    assert bulging.symmetric
    assert shape_key(pie(True).reversed(), interner).key == bulging.key


def test_labels_tell_edges_apart():
    interner = Interner()
    rhombus = outline([(0, 0), (2, 0), (3.2, 1.6), (1.2, 1.6)])
    along, across = ("a", "", "b", ""), ("", "a", "", "b")
    first, second = shape_key(rhombus, interner, along), shape_key(rhombus, interner, across)
    assert first.key == second.mirror
    assert first.key != second.key
    assert shape_key(rhombus, interner, ("b", "", "a", "")).key == first.key


@given(st.lists(st.integers(0, 3), min_size=1, max_size=12))
def test_least_turn_is_the_least_of_all_turns(ring):
    start = least_turn(ring)
    assert ring[start:] + ring[:start] == min(ring[i:] + ring[:i] for i in range(len(ring)))
