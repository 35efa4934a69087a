"""Whole plans of the tests' own blocks, made stage by stage."""

from functools import cache

from blocklang.assembly import assemble
from blocklang.block import Block, Patch, Stripes
from blocklang.cutting import cut
from blocklang.graph import build_graph
from blocklang.plan import SewingPlan, make_plan
from blocklang.pressing import press
from tests.support import blocks


def plan_of(block: Block) -> SewingPlan:
    """Return the plan of a block."""
    graphed = build_graph(block)
    assert graphed.graph is not None, graphed.diagnostics
    assembled = assemble(graphed.graph)
    assert assembled.assembly is not None, assembled.diagnostics
    return make_plan(assembled.assembly, press(assembled.assembly), cut(graphed.graph), ())


@cache
def named_plan(name: str) -> SewingPlan:
    """Return the plan of one of the blocks that the tests of pictures and sheets share."""
    return plan_of(
        {
            "four-patch": lambda: blocks.grid(2, 2, 3.0),
            "row-of-nine": lambda: blocks.grid(9, 3, 2.0),
            "pinwheel": blocks.pinwheel,
            "star": blocks.star,
            "whirl": blocks.whirl,
            "path": blocks.drunkards_path,
            "flower": lambda: blocks.hexagons(1),
            "striped-star": striped_star,
        }[name]()
    )


NAMES = ("four-patch", "row-of-nine", "pinwheel", "star", "whirl", "path", "flower", "striped-star")


def striped_star() -> Block:
    """Return the eight-pointed star with every diamond cut from a strip set of three."""
    from dataclasses import replace

    plain = blocks.star()
    return replace(plain, name="Harbour Light", patches=tuple(map(_striped, plain.patches)))


def _striped(patch: Patch) -> Patch:
    from dataclasses import replace

    if patch.name != "diamond":
        return patch
    edge = min(patch.outline.edges, key=lambda edge: abs(edge.start.x - 4324320) + abs(edge.start.y - 4324320))
    return replace(patch, stripes=Stripes(("deep", "coral", "fog"), edge.start, edge.end))
