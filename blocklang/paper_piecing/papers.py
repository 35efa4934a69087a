"""Which papers a block needs: equal patches share one."""

from blocklang.cutting.offsetting import offset
from blocklang.geometry.congruence import Interner, shape_key, without_idle_corners
from blocklang.graph.values import PatchGraph
from blocklang.paper_piecing.values import PaperShape


def papers_of(graph: PatchGraph) -> tuple[PaperShape, ...]:
    """Return the papers, in the order in which the file first draws them."""
    interner = Interner()
    found: dict[int, list[int]] = {}
    for index, patch in enumerate(graph.block.patches):
        found.setdefault(shape_key(patch.outline, interner).either_way_up, []).append(index)
    return tuple(_shape(graph, tuple(patches)) for patches in found.values())


def _shape(graph: PatchGraph, patches: tuple[int, ...]) -> PaperShape:
    outline = without_idle_corners(graph.block.patches[patches[0]].outline)
    fabric = offset(outline, [float(graph.block.seam_allowance)] * len(outline.edges)).outline
    return PaperShape(outline, fabric, patches, any(edge.arc is not None for edge in outline.edges))
