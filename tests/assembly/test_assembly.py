"""Sewing orders: the taught ones, the least possible ones, and outside counts."""

import random
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


def test_pairs_of_names_are_told_apart() -> None:
    assembly = assembly_of(blocks.star(30, 9))
    classes = [assembly.unit_class[unit] for step in assembly.steps for unit in step.makes[:1]]
    assert all(a != b for a, b in combinations(classes, 2))
