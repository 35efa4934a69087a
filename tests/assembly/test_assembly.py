"""Sewing orders: the taught ones, the least possible ones, and outside counts."""

import random
from collections.abc import Iterator
from itertools import combinations

import pytest

from blocklang.assembly import Assembly, JoinKind
from blocklang.block import Block
from tests.support import blocks
from tests.support.generated import any_block, boxes
from tests.support.route import assembly_of


def _told(assembly: Assembly) -> list[tuple[str, int, set[str]]]:
    names = [patch.name for patch in assembly.graph.block.patches]
    return [(str(s.kind), s.times, {names[p] for p in assembly.unit_patches[s.makes[0]]}) for s in assembly.steps]


def test_the_eight_pointed_star_is_sewn_as_it_is_taught() -> None:
    """Pairs, a corner set into each, halves, the centre seam stopping at both ends, then the sides: common practice."""
    assembly = assembly_of(blocks.star())
    assert _told(assembly) == [
        ("straight", 4, {"diamond"}),
        ("set-in", 4, {"diamond", "corner"}),
        ("straight", 2, {"diamond", "corner"}),
        ("straight", 1, {"diamond", "corner"}),
        ("set-in", 1, {"diamond", "corner", "side"}),
    ]
    centre = assembly.joins[assembly.steps[3].joins[0]]
    assert (centre.start_stops, centre.end_stops, centre.pivots) == (True, True, ())
    assert (assembly.pivots.count, assembly.pivots.minimum, assembly.pivots.proven) == (8, 8, True)


def test_a_large_star_is_sewn_in_rows_then_points_then_like_the_small_one() -> None:
    """Nine rows of three kinds, a point, then the five steps of the small star."""
    assembly = assembly_of(blocks.star(30, 9))
    assert [(str(step.kind), step.times) for step in assembly.steps] == [
        *[("straight", 24)] * 3,
        ("straight", 8),
        ("straight", 4),
        ("set-in", 4),
        ("straight", 2),
        ("straight", 1),
        ("set-in", 1),
    ]


@pytest.mark.parametrize(
    ("block", "pivots", "partials", "curved"),
    [
        (blocks.grid(3, 3), 0, 0, 0),
        (blocks.pinwheel(), 0, 0, 0),
        (blocks.whirl(), 0, 1, 0),
        (blocks.star(), 8, 0, 0),
        (blocks.star(14, 2), 8, 0, 0),
        (blocks.hexagons(1), 6, 0, 0),
        (blocks.hexagons(2), 24, 0, 0),
        (blocks.hexagons(3), 54, 0, 0),
        (blocks.drunkards_path(4), 0, 0, 16),
    ],
)
def test_counts_of_set_in_partial_and_curved_seams(block: Block, pivots: int, partials: int, curved: int) -> None:
    """Own geometry: a flower of n rings has 6n^2 Y-junctions; a star 8; a whirl one partial seam."""
    assembly = assembly_of(block)
    assert (assembly.pivots.count, assembly.partials.count) == (pivots, partials)
    assert assembly.pivots.proven and assembly.partials.proven
    assert sum(join.kind is JoinKind.CURVED for join in assembly.joins) == curved


@pytest.mark.parametrize("seed", range(120))
def test_orders_end_with_one_unit_and_bend_only_where_they_must(seed: int) -> None:
    assembly = assembly_of(any_block(seed))
    closing = sum(join.kind is JoinKind.PARTIAL_FINISH for join in assembly.joins)
    assert len(assembly.joins) - closing == len(assembly.graph.block.patches) - 1
    assert assembly.unit_patches[-1] == tuple(range(len(assembly.graph.block.patches)))
    assert assembly.pivots.count >= assembly.pivots.minimum
    assert assembly.pivots.proven == (assembly.pivots.count == assembly.pivots.minimum)
    assert assembly.partials.proven <= (assembly.partials.count == assembly.partials.minimum)


@pytest.mark.parametrize("seed", range(40))
def test_what_was_cut_straight_is_sewn_straight(seed: int) -> None:
    assembly = assembly_of(boxes(random.Random(seed), 5, whirls=False))
    assert {join.kind for join in assembly.joins} <= {JoinKind.STRAIGHT}


def test_mirror_images_are_never_one_step() -> None:
    left = blocks.patch("left", "deep", [(0, 0), (1, 0), (0, 2)])
    left_ground = blocks.patch("ground.1", "fog", [(1, 0), (1, 2), (0, 2)])
    right = blocks.patch("right", "deep", [(2, 0), (2, 2), (1, 0)])
    right_ground = blocks.patch("ground.2", "fog", [(1, 0), (2, 2), (1, 2)])
    assembly = assembly_of(blocks.block([left, left_ground, right, right_ground], blocks.square(2)))
    assert [step.times for step in assembly.steps] == [1, 1, 1]


def test_the_same_order_whatever_the_order_of_the_patches() -> None:
    block = blocks.star()
    turned = Block(block.name, block.unit, block.outline, block.seam_allowance, block.fabrics, block.patches[::-1])
    assert [(s.kind, s.times) for s in assembly_of(turned).steps] == [
        (s.kind, s.times) for s in assembly_of(block).steps
    ]


Layout = tuple[tuple[int, int, int, int], ...]


def _layouts(count: int) -> list[Layout]:
    """Return one layout of each kind of `count` rectangles in a square, no four meeting at a point."""
    found: dict[object, Layout] = {}
    for layout in _tilings(count):
        found.setdefault(_order_type(layout), layout)
    return list(found.values())


def _tilings(count: int) -> Iterator[Layout]:
    """Fill grids with rectangles: a generic layout has n - 1 inner lines, each at its own place."""
    for wide in range(1, count + 1):
        yield from _fillings(count, wide, count + 1 - wide)


def _fillings(count: int, wide: int, high_most: int) -> Iterator[Layout]:

    def fill(boxes_so_far: list[tuple[int, int, int, int]], covered: frozenset[tuple[int, int]]) -> Iterator[Layout]:
        free = next(((x, y) for y in range(high_most) for x in range(wide) if (x, y) not in covered), None)
        if free is None:
            if len(boxes_so_far) == count:
                yield tuple(boxes_so_far)
            return
        if len(boxes_so_far) == count:
            return
        x, y = free
        for right in range(x + 1, wide + 1):
            if (right - 1, y) in covered:
                break
            for high in range(y + 1, high_most + 1):
                cells = {(i, j) for i in range(x, right) for j in range(y, high)}
                if not cells & covered:
                    yield from fill([*boxes_so_far, (x, y, right, high)], covered | cells)

    yield from fill([], frozenset())


def _order_type(layout: Layout) -> object:
    """Name a layout by which rectangle lies left of, and which below, which; None for layouts with a cross."""
    corners = [(x, y) for a, b, c, d in layout for x, y in ((a, b), (c, b), (c, d), (a, d))]
    crosses = {corner for corner in corners if corners.count(corner) == 4}
    if crosses:
        return None
    order = sorted(range(len(layout)), key=lambda i: layout[i])
    left, below = _relations(layout)
    rank = _canonical(layout, left, below)
    pairs = [(rank[i], rank[j], (i, j) in left, (i, j) in below) for i in order for j in order if i != j]
    return tuple(sorted(pairs))


def _relations(layout: Layout) -> tuple[set[tuple[int, int]], set[tuple[int, int]]]:
    """Which rectangles lie on the two sides of one inner line: sliding along a line changes nothing for sewing."""
    left, below = set(), set()
    for i, a in enumerate(layout):
        for j, b in enumerate(layout):
            if a[2] == b[0] and _one_line([(c[1], c[3]) for c in layout if a[2] in (c[0], c[2])], a[1], b[1]):
                left.add((i, j))
            if a[3] == b[1] and _one_line([(c[0], c[2]) for c in layout if a[3] in (c[1], c[3])], a[0], b[0]):
                below.add((i, j))
    return _closed(left, len(layout)), _closed(below, len(layout))


def _one_line(pieces: list[tuple[int, int]], a: int, b: int) -> bool:
    """Whether the pieces of a line reach from a to b without a break."""
    low, high = min(a, b), max(a, b)
    return all(any(start <= at and at + 1 <= end for start, end in pieces) for at in range(low, high))


def _closed(relation: set[tuple[int, int]], count: int) -> set[tuple[int, int]]:
    closed = set(relation)
    for k in range(count):
        closed |= {(i, j) for i in range(count) for j in range(count) if (i, k) in closed and (k, j) in closed}
    return closed


def _canonical(layout: Layout, left: set[tuple[int, int]], below: set[tuple[int, int]]) -> dict[int, int]:
    """Number rectangles from the lower left: every two are related by exactly one of left-of and below."""
    count = len(layout)
    before = {(i, j) for i, j in left | below}
    return {i: sum((j, i) in before for j in range(count)) for i in range(count)}


@pytest.mark.parametrize(
    ("count", "layouts", "straight"), [(1, 1, 1), (2, 2, 2), (3, 6, 6), (4, 22, 22), (5, 92, 90), (6, 422, 394)]
)
def test_how_many_layouts_of_rectangles_can_be_sewn_straight(count: int, layouts: int, straight: int) -> None:
    """All layouts of n rectangles: the Baxter numbers; sewn straight: the large Schroeder numbers.

    Source: Ackerman, Barequet, Pinter, "On the number of rectangulations of a planar point set", SODA 2004.
    """
    found = [layout for layout in _layouts(count) if _order_type(layout) is not None]
    assert len(found) == layouts
    orders = [assembly_of(_drawn(one)) for one in found]
    assert sum(order.partials.count == 0 and order.pivots.count == 0 for order in orders) == straight
    assert all(order.partials.proven and order.pivots.proven for order in orders)


def _drawn(layout: Layout) -> Block:
    boxes = [(float(a), float(b), float(c), float(d)) for a, b, c, d in layout]
    return blocks.rectangles(boxes, max(box[2] for box in boxes), max(box[3] for box in boxes))


def test_pairs_of_names_are_told_apart() -> None:
    assembly = assembly_of(blocks.star(30, 9))
    classes = [assembly.unit_class[unit] for step in assembly.steps for unit in step.makes[:1]]
    assert all(a != b for a, b in combinations(classes, 2))
