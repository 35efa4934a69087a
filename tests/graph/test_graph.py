"""The patch graph against shapely and networkx, and its faults."""

import random

import networkx
import pytest
from shapely import union_all
from shapely.geometry import Polygon

from blocklang.block import Block, PressWish, SpinSense, SpinWish, StopWish
from blocklang.diagnostics import SourceText, Span
from blocklang.geometry import from_inches
from blocklang.graph import OUTSIDE, JunctionKind, PatchGraph, build_graph
from tests.support import blocks
from tests.support.generated import any_block, boxes
from tests.support.route import graph_of

SPAN = Span(SourceText("test.block", "x"), 0, 1)


@pytest.mark.parametrize("seed", range(60))
def test_the_graph_is_the_planar_subdivision_that_networkx_and_shapely_see(seed: int) -> None:
    block = any_block(seed)
    graph = graph_of(block)
    _agrees_with_networkx(graph)
    _agrees_with_shapely(graph)


def _agrees_with_networkx(graph: PatchGraph) -> None:
    net = networkx.MultiGraph((segment.start, segment.end) for segment in graph.segments)
    assert networkx.check_planarity(networkx.Graph(net))[0]
    assert networkx.is_connected(net)
    assert net.number_of_nodes() - net.number_of_edges() + len(graph.block.patches) + 1 == 2


def _agrees_with_shapely(graph: PatchGraph) -> None:
    shapes = [Polygon(patch.outline.chords()) for patch in graph.block.patches]
    whole = Polygon(graph.block.outline.chords())
    assert (
        union_all([shape.buffer(40) for shape in shapes]).symmetric_difference(whole.buffer(40)).area
        < 1e-4 * whole.area
    )
    assert sum(shape.area for shape in shapes) == pytest.approx(whole.area, rel=1e-3)
    for segment in graph.seams:
        shared = shapes[segment.left].buffer(60).intersection(shapes[segment.right].buffer(60))
        assert shared.length > segment.edge.length()


def test_every_pair_of_patches_that_shapely_sees_touching_along_a_line_has_a_seam() -> None:
    block = boxes(random.Random(7), 5)
    graph = graph_of(block)
    shapes = [Polygon(patch.outline.chords()) for patch in block.patches]
    touching = {
        (i, j)
        for i, a in enumerate(shapes)
        for j, b in enumerate(shapes[:i])
        if a.buffer(40).intersection(b.buffer(40)).area > 40 * 40 * 8
    }
    assert touching == {(max(s.patches), min(s.patches)) for s in graph.seams}


@pytest.mark.parametrize(
    ("block", "kinds"),
    [
        (blocks.grid(3, 3), {JunctionKind.CROSS: 4}),
        (blocks.whirl(), {JunctionKind.TEE: 4}),
        (blocks.pinwheel(), {JunctionKind.MANY: 1}),
        (blocks.star(), {JunctionKind.Y: 8, JunctionKind.MANY: 1}),
        (blocks.hexagons(2), {JunctionKind.Y: 24}),
    ],
)
def test_kinds_of_inner_junctions(block: Block, kinds: dict[JunctionKind, int]) -> None:
    found = [junction.kind for junction in graph_of(block).junctions if junction.is_inner]
    assert {kind: found.count(kind) for kind in found} == kinds


def test_an_l_shaped_patch_has_an_inner_corner() -> None:
    ell = blocks.patch("ell", "fog", [(0, 0), (2, 0), (2, 1), (1, 1), (1, 2), (0, 2)])
    graph = graph_of(
        blocks.block([ell, blocks.patch("in", "deep", [(1, 1), (2, 1), (2, 2), (1, 2)])], blocks.square(2))
    )
    assert [junction.kind for junction in graph.junctions if junction.is_inner] == [JunctionKind.CORNER]


def _codes(block: Block) -> list[str]:
    graphed = build_graph(block)
    assert graphed.graph is None
    return [fault.code for fault in graphed.diagnostics]


def _halves(*corners: list[tuple[float, float]]) -> Block:
    return blocks.block([blocks.patch(f"p{i}", "fog", c) for i, c in enumerate(corners)], blocks.square(2))


LEFT = [(0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (0.0, 2.0)]
FAULTS = {
    "gap": [LEFT, [(1.2, 0), (2, 0), (2, 2), (1.2, 2)]],
    "overlap": [LEFT, [(0.8, 0), (2, 0), (2, 2), (0.8, 2)]],
    "sliver": [LEFT, [(1.01, 0), (2, 0), (2, 2), (1.01, 2)]],
    "outside-block": [LEFT, [(1, 0), (3, 0), (3, 2), (1, 2)]],
    "patch-surrounds": [[(0, 0), (2, 0), (2, 2), (0, 2)], [(0.5, 0.5), (1.5, 0.5), (1.5, 1.5), (0.5, 1.5)]],
}


@pytest.mark.parametrize("code", sorted(FAULTS))
def test_what_keeps_patches_from_tiling_is_named(code: str) -> None:
    assert _codes(_halves(*FAULTS[code]))[0] == code


def test_no_patches() -> None:
    assert _codes(blocks.block([], blocks.square(2))) == ["no-patches"]


@pytest.mark.parametrize(
    ("wish", "code"),
    [
        (PressWish(("p1", "p4"), "p1", SPAN), "no-such-seam"),
        (PressWish(("p1", "p2"), "p3", SPAN), "press-elsewhere"),
        (StopWish(("p1", "p2"), from_inches(2, 2), SPAN), "stop-elsewhere"),
        (StopWish(("p1", "p2"), from_inches(1, 0), SPAN), "stop-at-edge"),
        (SpinWish(from_inches(0.5, 0.5), SpinSense.CLOCKWISE, SPAN), "spin-nowhere"),
        (SpinWish(from_inches(1, 0), SpinSense.CLOCKWISE, SPAN), "spin-at-edge"),
    ],
)
def test_statements_about_seams_that_are_not_there(wish: PressWish | StopWish | SpinWish, code: str) -> None:
    quarters = [[(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)] for y in (0, 1) for x in (0, 1)]
    patches = [blocks.patch(f"p{i + 1}", "fog", c) for i, c in enumerate(quarters)]
    assert _codes(blocks.block(patches, blocks.square(2), wishes=(wish,))) == [code]


def test_the_outside_is_never_a_patch() -> None:
    graph = graph_of(blocks.star())
    rim = [segment for segment in graph.segments if not segment.is_seam]
    assert all((segment.left == OUTSIDE) != (segment.right == OUTSIDE) for segment in rim)
    assert sum(segment.edge.length() for segment in rim) == pytest.approx(graph.block.outline.perimeter())
