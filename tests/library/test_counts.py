"""The library's blocks against counts that this project did not make, or made by hand from the geometry."""

from collections.abc import Iterator

import pytest
from shapely import STRtree
from shapely.geometry import Polygon

from blocklang.assembly import JoinKind
from blocklang.geometry import to_inches
from tests.library.expected import EXPECTED
from tests.library.plans import NAMES, assembly_of, graph_of


def test_every_block_has_its_expected_numbers() -> None:
    assert sorted(EXPECTED) == sorted(NAMES)
    assert len(NAMES) >= 60


@pytest.mark.parametrize("name", NAMES)
def test_patches_and_set_in_partial_and_curved_seams(name: str) -> None:
    assembly = assembly_of(name)
    curved = sum(join.kind is JoinKind.CURVED for join in assembly.joins)
    found = len(graph_of(name).block.patches), assembly.pivots.count, assembly.partials.count, curved
    assert found == EXPECTED[name][:4]
    assert assembly.pivots.proven and assembly.partials.proven


def _side_by_side(shapes: list[Polygon]) -> Iterator[tuple[int, int]]:
    """Pairs that share more than a corner, by a way of its own: the length of one's border within a hair of the other."""
    tree = STRtree(shapes)
    for first, shape in enumerate(shapes):
        near = shape.boundary.buffer(2e-3)
        for second in tree.query(near):
            if second > first and near.intersection(shapes[second].boundary).length > 0.05:
                yield first, second


@pytest.mark.parametrize("name", [name for name in NAMES if name != "large-star"])
def test_the_counted_seams_are_pairs_of_patches_side_by_side(name: str) -> None:
    block = graph_of(name).block
    assert block.counts is not None, "every file of the library counts its patches and seams"
    shapes = [Polygon(map(to_inches, patch.outline.chords())) for patch in block.patches]
    assert (len(shapes), len(list(_side_by_side(shapes)))) == (block.counts.patches, block.counts.seams)
