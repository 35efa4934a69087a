"""Set-in blocks redrawn with straight seams: the tricks that quilters know, found from the geometry."""

import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union

from blocklang.assembly import straight_version
from blocklang.block import Block
from tests.library.plans import plan_of
from tests.support import blocks
from tests.support.route import assembly_of, graph_of


def _names(cut: tuple[str, ...]) -> list[str]:
    return sorted(name.partition(".")[0] for name in cut)


@pytest.mark.parametrize(
    ("name", "patches", "cut"),
    [
        # common practice: setting squares and triangles are cut in two, and the star falls into eight wedges
        ("eight-pointed-star", 24, ["corner"] * 4 + ["side"] * 4),
        # common practice: the lid of the box is cut from corner to corner
        ("tumbling-block", 4, ["lid"]),
        # own geometry: the cross falls into a wide bar and two short ones, as the block is drawn in strips (7 patches)
        ("double-irish-chain-b", 7, ["cross"]),
        # common practice: each mitre becomes a square corner with a triangle
        ("spools", 9, ["side"] * 2),
        # own geometry: the middle hexagon cut into six triangles, one for each petal
        ("hexagon-flower-7", 12, ["eye"]),
    ],
)
def test_known_tricks_are_found(name: str, patches: int, cut: list[str]) -> None:
    plan = plan_of(name)
    version = straight_version(plan.graph)
    assert version is not None
    assert (len(version.block.patches), _names(version.cut)) == (patches, cut)
    assembly = assembly_of(version.block)
    assert (assembly.pivots.count, assembly.partials.count) == (0, 0)
    assert len(assembly.joins) == patches - 1


@pytest.mark.parametrize("block", [blocks.star(), blocks.hexagons(1)])
def test_the_picture_stays_the_same(block: Block) -> None:
    """By shapely: each fabric covers what it covered before."""
    version = straight_version(graph_of(block))
    assert version is not None
    for fabric in {patch.fabric for patch in block.patches}:
        before, after = (
            unary_union([Polygon(p.outline.chords()) for p in b.patches if p.fabric == fabric]) for b in (block, version.block)
        )  # fmt: skip
        assert before.symmetric_difference(after).area < before.area * 1e-4


@pytest.mark.parametrize("block", [blocks.grid(3, 3), blocks.whirl(), blocks.drunkards_path(2)])
def test_nothing_is_advised_where_nothing_is_set_in(block: Block) -> None:
    assert straight_version(graph_of(block)) is None
