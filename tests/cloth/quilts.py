"""Cutting lists of library blocks, so many copies of each, for the tests of plans."""

from functools import cache

from blocklang import route
from blocklang.block import Block
from blocklang.cli.walking import Walk
from blocklang.cutting import Cutting, CuttingOptions, cut
from blocklang.graph import PatchGraph
from blocklang.language import Overrides

#: Ten quilts of 12 to 100 blocks.
QUILTS = (
    ("churn-dash", 12),
    ("shoo-fly", 20),
    ("ohio-star", 30),
    ("bears-paw", 12),
    ("sawtooth-star", 42),
    ("log-cabin", 48),
    ("friendship-star", 56),
    ("nine-patch", 63),
    ("eight-pointed-star", 80),
    ("flying-geese", 100),
)


@cache
def library_graph(name: str) -> PatchGraph:
    """Return the graph of a library block."""
    checked = route.check(Walk().draft(name, Overrides()))
    assert checked.graph is not None, checked.diagnostics
    return checked.graph


def quilt(name: str, copies: int = 1, **options: object) -> tuple[Block, Cutting]:
    """Return a library block with the cutting list of so many of it."""
    graph = library_graph(name)
    return graph.block, cut(graph, CuttingOptions(copies=copies, **options))
