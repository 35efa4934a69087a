"""From a block to its patch graph, or to what keeps it from being one."""

from dataclasses import dataclass

from blocklang.block import Block
from blocklang.diagnostics import Diagnostic
from blocklang.graph.counting import miscounted
from blocklang.graph.crossing import crossed_corners
from blocklang.graph.faults import faults_of
from blocklang.graph.junctions import junctions_of, segments_of, sides_of
from blocklang.graph.matching import match_sides
from blocklang.graph.values import PatchGraph
from blocklang.graph.wishes import misplaced_wishes


@dataclass(frozen=True, slots=True)
class Graphed:
    """The graph, or None with the diagnostics that say why not."""

    graph: PatchGraph | None
    diagnostics: tuple[Diagnostic, ...]


def build_graph(block: Block) -> Graphed:
    """Build the patch graph of a block; every point of its outline must be covered by exactly one patch."""
    matched = match_sides(block)
    faults = faults_of(block, matched)
    if faults:
        return Graphed(None, faults)
    segments = segments_of(matched)
    graph = PatchGraph(block, junctions_of(segments), segments, sides_of(segments, len(block.patches)))
    misplaced = crossed_corners(graph) or misplaced_wishes(graph) + miscounted(graph)
    return Graphed(None if misplaced else graph, misplaced)
