"""Layouts of orders: sound, as short as can be where that is said, and never longer than a plain packer's."""

import random

import pytest
from shapely import STRtree, box, unary_union

from blocklang.cloth import Layout, Order, in_order, lay_out, straight_way
from tests.cloth.orders import WIDTH, boxes_of, cloth_order, first_fit_decreasing, least_length, small_order
from tests.support.marking import marks_of


def random_order(seed: int) -> Order:
    """Return an order of one to five kinds on 40 in of cloth."""
    rng = random.Random(seed)
    kinds = rng.randint(1, 5)
    ways = []
    for kind in range(kinds):
        high, long = rng.randint(8, 80), rng.randint(8, 320)
        ways.append(straight_way(kind, high, long, 320))
        if rng.random() < 0.3:
            ways.append(straight_way(kind, long, high, 320))
    return Order(320, in_order(ways), tuple(rng.randint(1, 40) for _ in range(kinds)))


def check_sound(order: Order, layout: Layout) -> None:
    """Hold a layout against its order: every shape once, none on another, none beyond the cloth."""
    shapes = boxes_of(order, layout)
    counts = [0] * len(order.wanted)
    for kind, *_ in shapes:
        counts[kind] += 1
    assert tuple(counts) == order.wanted
    rectangles = [box(left, top, right, low) for _, left, top, right, low in shapes]
    cloth = box(0, 0, order.width, layout.length)
    assert unary_union(rectangles).area == pytest.approx(sum(shape.area for shape in rectangles))
    assert all(cloth.covers(shape) for shape in rectangles)
    first, second = STRtree(rectangles).query(rectangles, predicate="overlaps")
    assert len(first) == len(second) == 0
    assert layout.length == sum(filling.height * times for filling, times in layout.strips)
    assert all(order.ways[place].height <= filling.height for filling, _ in layout.strips for place, _ in filling.runs)
    assert layout.relaxed <= layout.bound <= layout.length


@pytest.mark.parametrize("seed", range(0, 1000, 10))
def test_a_layout_cuts_every_shape_once_and_none_on_another(seed: int) -> None:
    order = random_order(seed)
    check_sound(order, lay_out(order))


@pytest.mark.parametrize("tens", [pytest.param(n, marks=marks_of(n, 0, 3)) for n in range(10)])
def test_a_thousand_layouts_are_sound(tens: int) -> None:
    for seed in range(tens * 100, tens * 100 + 100):
        order = random_order(seed)
        check_sound(order, lay_out(order))


@pytest.mark.parametrize("tens", range(12))
def test_small_layouts_against_every_way_to_cut(tens: int) -> None:
    for seed in range(tens * 10, tens * 10 + 10):
        order = small_order(seed)
        layout = lay_out(order)
        least = least_length(order)
        assert layout.bound <= least <= layout.length, seed
        assert layout.length == least, seed


def test_most_small_layouts_are_proven() -> None:
    proven = [lay_out(small_order(seed)).proven for seed in range(120)]
    assert sum(proven) >= 118


@pytest.mark.parametrize("seed", range(60))
def test_never_longer_than_first_fit_decreasing(seed: int) -> None:
    rng = random.Random(seed)
    kinds = rng.randint(1, 6)
    ways = [straight_way(kind, rng.randint(8, 80), rng.randint(8, 200), 320) for kind in range(kinds)]
    order = Order(320, in_order(ways), tuple(rng.randint(1, 60) for _ in range(kinds)))
    assert lay_out(order).length <= first_fit_decreasing(order)


@pytest.mark.slow
def test_fifteen_orders_of_cloth_are_near_the_bound() -> None:
    over = []
    for seed in range(1, 16):
        order = cloth_order(seed)
        layout = lay_out(order)
        check_sound(order, layout)
        assert layout.length <= first_fit_decreasing(order)
        over.append(layout.length / layout.bound - 1)
    assert sum(over) / len(over) <= 0.005


def test_a_layout_repeats() -> None:
    assert lay_out(cloth_order(5)) == lay_out(cloth_order(5))


def test_nothing_wanted_takes_nothing() -> None:
    order = Order(WIDTH, in_order([straight_way(0, 8, 8, WIDTH)]), (0,))
    assert lay_out(order) == Layout((), 0, lay_out(order).relaxed, 0)
    assert lay_out(order).proven


def test_turning_lets_a_long_shape_lie_along_the_cloth() -> None:
    ways = in_order([straight_way(0, 20, 400, 320), straight_way(0, 400, 20, 320)])
    layout = lay_out(Order(320, ways, (3,)))
    assert layout.length == 400 and layout.proven


def test_many_kinds_stay_quick_and_near_the_bound() -> None:
    rng = random.Random(7)
    ways = [straight_way(kind, rng.randrange(10, 80), rng.randrange(10, 100), 320) for kind in range(60)]
    order = Order(320, in_order(ways), tuple(rng.randint(1, 60) for _ in range(60)))
    layout = lay_out(order)
    check_sound(order, layout)
    assert layout.length <= layout.bound * 1.02
