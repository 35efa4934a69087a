"""Which edges are on the bias, and what is said about them."""

import math
from dataclasses import replace

import pytest

from blocklang.bias import Bias, BiasKind, find_bias
from blocklang.block import Block
from blocklang.cutting import cut
from tests.sheets.plans import named_plan
from tests.support import blocks
from tests.support.route import graph_of


def bias_of(block: Block) -> Bias:
    """Return what is on the bias in a block."""
    graph = graph_of(block)
    return find_bias(graph, cut(graph))


def said(bias: Bias, kind: BiasKind) -> list[str]:
    """Return the sentences of one kind."""
    return [warning.sentence for warning in bias.warnings if warning.kind is kind]


def half_squares() -> Block:
    """Return a square of two triangles."""
    a = blocks.patch("a.1", "fog", [(0, 0), (4, 0), (0, 4)])
    return blocks.block([a, blocks.patch("a.2", "deep", [(4, 0), (4, 4), (0, 4)])], blocks.square(4))


def test_squares_have_nothing_on_the_bias() -> None:
    bias = bias_of(blocks.grid(3, 3))
    assert bias.sides == () and bias.warnings == ()
    assert all(grain is not None for grain in bias.grain)


def test_squares_on_point_are_cut_on_the_grain_all_the_same() -> None:
    middle = blocks.patch("middle", "deep", [(3, 0), (6, 3), (3, 6), (0, 3)])
    around = [[(0, 0), (3, 0), (0, 3)], [(6, 0), (6, 3), (3, 0)], [(6, 6), (3, 6), (6, 3)], [(0, 6), (0, 3), (3, 6)]]
    corners = [blocks.patch(f"corner.{k}", "fog", ring) for k, ring in enumerate(around, 1)]
    bias = bias_of(blocks.block([middle, *corners], blocks.square(6)))
    # The corners have their legs outside and on the grain, so it is their long side that stretches; the square's do not.
    assert {patch for _, patch in bias.sides} == {1, 2, 3, 4}
    assert said(bias, BiasKind.SEAM) == [
        "The long side of each of the 4 corner patches is on the bias. Press there, do not slide the iron."
    ]


def test_two_half_square_triangles_meet_along_their_long_sides() -> None:
    bias = bias_of(half_squares())
    (warning,) = bias.warnings
    assert warning.kind is BiasKind.SEAM
    assert warning.patches == (0, 1)
    assert len(warning.segments) == 1 and len(bias.sides) == 2


def test_eight_diamonds_are_one_sentence() -> None:
    bias = bias_of(blocks.star())
    diamonds = [warning for warning in bias.warnings if "diamond" in warning.sentence]
    assert len(diamonds) == 1
    assert len(diamonds[0].patches) == 8
    assert diamonds[0].sentence.startswith("Two sides of each of the 8 diamond patches are on the bias.")
    # Cut alike, each has two sides on the grain and two on the bias, side by side in the star.
    assert len(diamonds[0].segments) == 16


def test_all_diamonds_have_their_grain_along_the_same_side() -> None:
    block = blocks.star()
    graph = graph_of(block)
    bias = find_bias(graph, cut(graph))
    turns = set()
    for index, patch in enumerate(block.patches):
        if patch.name == "diamond":
            tip = math.radians(45 * (int(patch.id.split(".")[1]) - 1))
            assert bias.grain[index] is not None
            turns.add(round(math.degrees((bias.grain[index] - tip) % math.pi), 3) % 180)
    assert len(turns) == 1 and turns < {0.0, 45.0}


def test_a_strip_set_has_its_grain_along_the_strips() -> None:
    plan = named_plan("striped-star")
    bias = find_bias(plan.graph, plan.cutting)
    for index, patch in enumerate(plan.block.patches):
        if patch.stripes is not None:
            (ax, ay), (bx, by) = patch.stripes.start, patch.stripes.end
            grain = bias.grain[index]
            assert grain is not None
            assert abs(math.remainder(grain - math.atan2(by - ay, bx - ax), math.pi)) < 1e-3


def test_hexagons_need_stay_stitching_on_the_outside() -> None:
    bias = bias_of(blocks.hexagons(1))
    (sentence,) = said(bias, BiasKind.OUTSIDE)
    assert sentence == (
        "Two sides of each of the 6 hex patches are on the bias, on the outside of the block. "
        "Stay-stitch the edges inside the seam allowance before you sew, and do not stretch the block."
    )
    assert [warning.kind for warning in bias.outside] == [BiasKind.OUTSIDE]
    assert not any(bias_of(b).outside for b in (blocks.star(), blocks.pinwheel(), half_squares()))


def test_curved_edges_are_on_the_bias() -> None:
    bias = bias_of(blocks.drunkards_path(2))
    assert len(bias.sides) == 2 * 4
    assert all("curved edge" in warning.sentence for warning in bias.warnings)


def test_the_warnings_of_a_step_are_those_of_its_seams() -> None:
    plan = named_plan("star")
    bias = find_bias(plan.graph, plan.cutting)
    for join in plan.assembly.joins:
        segments = {step.segment for step in join.path}
        sewn = {s for s, _ in bias.sides} & segments
        about = bias.about(segments)
        assert sewn == {s for warning in about for s in warning.segments} & segments
        assert all(warning.kind is BiasKind.SEAM for warning in about)
    assert bias.about(()) == ()


@pytest.mark.parametrize(("slant", "stretches"), [(0.5, False), (1.5, True)])
def test_a_side_a_little_off_the_grain_does_not_count(slant: float, stretches: bool) -> None:
    # A seam that leaves the upright by 5 degrees in a block 6 in high, and one by 14.
    left = blocks.patch("left", "fog", [(0, 0), (3, 0), (3 + slant, 6), (0, 6)])
    right = blocks.patch("right", "deep", [(3, 0), (7, 0), (7, 6), (3 + slant, 6)])
    bias = bias_of(blocks.block([left, right], blocks.square(7, 6)))
    assert bool(bias.sides) is stretches


def test_names_with_letters_and_single_patches_read_well() -> None:
    from blocklang.bias.words import counted

    assert counted("roof", 1) == "the roof patch"
    assert counted("diamond", 8) == "each of the 8 diamond patches"
    assert counted("half-square triangle B", 4) == "each of the 4 half-square triangles B"
    assert counted("patch A", 16) == "each of the 16 patches A"


def test_a_way_of_cutting_that_is_not_known_says_nothing() -> None:
    graph = graph_of(half_squares())
    cutting = cut(graph)
    pieces = tuple(replace(piece, method="torn") for piece in cutting.pieces)
    bias = find_bias(graph, replace(cutting, pieces=pieces))
    assert bias.grain == (None, None) and bias.warnings == ()
