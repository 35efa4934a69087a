"""The order over papers, replayed patch by patch, and held against counts from outside."""

import math

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, unary_union

from blocklang.block import Block, LengthUnit, Patch
from blocklang.geometry import Outline, Point
from blocklang.graph import OUTSIDE
from blocklang.paper_piecing import order_papers, papers_of
from tests.support import blocks
from tests.support.route import graph_of

BLOCKS = {
    "flower of 7": lambda: blocks.hexagons(1),
    "flower of 19": lambda: blocks.hexagons(2),
    "flower of 37": lambda: blocks.hexagons(3),
    "star": blocks.star,
    "large star": lambda: blocks.star(16, 4),
    "grid": lambda: blocks.grid(5, 4),
    "whirl": blocks.whirl,
    "path": blocks.drunkards_path,
    "pinwheel": blocks.pinwheel,
}


def replay(graph, order):
    """Sew the papers together in order and hold every rule; return the seams that were whip-stitched."""
    sewn, joined = [], set()
    for number, joining in enumerate(order.joinings):
        assert joining.patch not in joined
        shared = {
            seam.index
            for seam in graph.seams
            if joining.patch in seam.patches and (set(seam.patches) - {joining.patch}) <= joined
        }
        assert set(joining.edges) == shared, "all edges that it shares with the work, and no others"
        assert bool(shared) == bool(number), "only the first patch is joined to nothing"
        if shared:
            chain = nx.Graph()
            for edge in joining.edges:
                chain.add_edge(graph.segments[edge].start, graph.segments[edge].end)
            assert nx.is_connected(chain), "one chain"
            assert max(degree for _, degree in chain.degree) <= 2
            assert chain.number_of_edges() == chain.number_of_nodes() - 1, "an open one"
            for edge, following in zip(joining.edges, joining.edges[1:], strict=False):
                ends = [{graph.segments[e].start, graph.segments[e].end} for e in (edge, following)]
                assert ends[0] & ends[1], "edge after edge"
        sewn.extend(joining.edges)
        joined.add(joining.patch)
        assert is_disc(graph, joined), "the work never closes round a hole, nor hangs on a corner"
    assert joined == set(range(len(graph.sides)))
    return sewn


def is_disc(graph, patches):
    """Tell whether patches are one piece without a hole: their border is one ring that passes no junction twice."""
    border = nx.MultiGraph()
    for segment in graph.segments:
        if (segment.left in patches) != (segment.right in patches):
            border.add_edge(segment.start, segment.end)
    return nx.is_connected(border) and all(degree == 2 for _, degree in border.degree)


def checked(block):
    graph = graph_of(block)
    order = order_papers(graph)
    sewn = replay(graph, order)
    assert sorted(sewn) == [seam.index for seam in graph.seams], "every edge exactly once"
    assert order.edges == len(graph.seams)
    assert [each.number for each in order.rounds] == list(range(1, len(order.rounds) + 1))
    assert all(each.joinings for each in order.rounds)
    return graph, order


@pytest.mark.parametrize("name", BLOCKS)
def test_every_edge_is_sewn_once_and_every_patch_along_one_chain(name):
    checked(BLOCKS[name]())


@pytest.mark.parametrize("rings", [1, 2, 3, 4])
def test_a_field_of_hexagons_has_the_counts_of_the_formulas(rings):
    """1 + 3n(n+1) patches, 9n^2 + 3n touching pairs, 6n^2 points where three meet (own geometry)."""
    graph, order = checked(blocks.hexagons(rings))
    assert len(graph.sides) == 1 + 3 * rings * (rings + 1)
    assert order.edges == 9 * rings**2 + 3 * rings
    assert sum(junction.always_pivots for junction in graph.junctions) == 6 * rings**2
    assert [len(each.joinings) for each in order.rounds] == [1, *(6 * ring for ring in range(1, rings + 1))]


def test_a_round_of_hexagons_goes_on_round():
    """Every petal but the first also meets the petal before it; the last one meets the first too."""
    _, order = checked(blocks.hexagons(1))
    assert [len(joining.edges) for joining in order.joinings] == [0, 1, 2, 2, 2, 2, 3]
    patches = [joining.patch for joining in order.joinings]
    for before, joining in zip(patches[1:], order.joinings[2:], strict=False):
        assert before in joining.neighbours


def test_the_star_begins_with_the_diamonds_round_its_middle():
    graph, order = checked(blocks.star())
    names = [[graph.block.patches[j.patch].name for j in each.joinings] for each in order.rounds]
    assert names[0] == ["diamond"] * 8
    assert sorted(names[1]) == ["corner"] * 4 + ["side"] * 4


def test_work_is_folded_where_the_chain_turns_and_not_where_it_runs_straight():
    _, order = checked(blocks.hexagons(2))
    for joining in order.joinings:
        assert len(joining.folds) == max(len(joining.edges) - 1, 0)
    # The last bar lies along both middle patches: its chain runs straight from one to the other.
    _, order = checked(blocks.rectangles([(0, 1, 1, 2), (1, 1, 2, 2), (0, 0, 2, 1), (0, 2, 2, 3)], 2, 3))
    last = order.joinings[-1]
    assert (last.patch, len(last.edges), last.folds) == (3, 2, ())


def test_neighbours_are_the_patches_across_the_edges():
    graph, order = checked(blocks.hexagons(2))
    for joining in order.joinings:
        across = [set(graph.segments[edge].patches) - {joining.patch} for edge in joining.edges]
        assert OUTSIDE not in joining.neighbours
        assert list(joining.neighbours) == list(dict.fromkeys(patch for one in across for patch in one))


def test_the_order_is_the_same_every_time():
    assert order_papers(graph_of(blocks.hexagons(3))) == order_papers(graph_of(blocks.hexagons(3)))


@given(st.data())
@settings(max_examples=60, deadline=None)
def test_blocks_of_any_touching_cells_are_ordered(data):
    """Patches glued from the cells of a grid: L-shapes, notches, patches that meet in several places."""
    wide, high = data.draw(st.integers(2, 5)), data.draw(st.integers(2, 5))
    labels = {}
    for x in range(wide):
        for y in range(high):
            near = [labels[c] for c in ((x - 1, y), (x, y - 1)) if c in labels]
            labels[x, y] = data.draw(st.sampled_from([*near, (x, y)]))
    block = glued(labels, wide, high)
    if block is not None:
        checked(block)


def glued(labels, wide, high):
    """Return a block of the cells that are labelled alike; None where such a patch has a hole or pinches."""
    from tests.support.blocks import FABRICS, QUARTER

    step = 720720
    patches = []
    for number, label in enumerate(dict.fromkeys(labels.values())):
        cells = [
            Polygon([(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)]) for (x, y), own in labels.items() if own == label
        ]
        shape = unary_union(cells)
        if shape.geom_type != "Polygon" or shape.interiors:
            return None
        ring = [Point(round(x * step), round(y * step)) for x, y in shape.simplify(0).exterior.coords[:-1]]
        if len(set(ring)) < len(ring):
            return None
        patches.append(Patch(f"p{number + 1}", "p", "deep", Outline.through(ring)))
    outline = Outline.through(Point(x * step, y * step) for x, y in [(0, 0), (wide, 0), (wide, high), (0, high)])
    return Block("Glued", LengthUnit.INCH, outline, QUARTER, FABRICS, tuple(patches))


@pytest.mark.parametrize("name", BLOCKS)
def test_papers_are_the_finished_outlines(name):
    graph = graph_of(BLOCKS[name]())
    papers = papers_of(graph)
    assert sorted(patch for paper in papers for patch in paper.patches) == list(range(len(graph.sides)))
    for paper in papers:
        shape = Polygon(paper.outline.chords())
        first = Polygon(graph.block.patches[paper.patches[0]].outline.chords())
        assert shape.symmetric_difference(first).area < 1e-9 * first.area
        for patch in paper.patches:
            outline = graph.block.patches[patch].outline
            assert math.isclose(outline.area(), paper.outline.area(), rel_tol=1e-5)
            assert math.isclose(outline.perimeter(), paper.outline.perimeter(), rel_tol=1e-4)


def test_equal_papers_are_told_once_either_way_up():
    from tests.templates.test_templates import left_and_right

    assert [len(paper.patches) for paper in papers_of(graph_of(left_and_right()))] == [4]
    assert [len(paper.patches) for paper in papers_of(graph_of(blocks.hexagons(2)))] == [19]
    curved = papers_of(graph_of(blocks.drunkards_path()))
    assert [paper.curved for paper in curved] == [True, True]


@pytest.mark.slow
def test_every_library_block_can_be_pieced_over_papers():
    """Replayed patch by patch; the largest are left to the tests of generated stars."""
    from blocklang.cli.walking import Walk
    from blocklang.language import Overrides
    from tests.library import plans as library

    replayed = 0
    for name in library.NAMES:
        graph = Walk().check(name, Overrides()).graph
        if graph is not None and len(graph.sides) <= 120:
            sewn = replay(graph, order_papers(graph))
            assert sorted(sewn) == [seam.index for seam in graph.seams], name
            replayed += 1
    assert replayed > len(library.NAMES) / 2
