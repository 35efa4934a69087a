"""From a patch graph to its cutting list."""

from blocklang.cutting.finished import finished_patches
from blocklang.cutting.grain import edges_on_grain
from blocklang.cutting.lines import lines_of, to_cut
from blocklang.cutting.methods import METHODS, CuttingMethod, in_order
from blocklang.cutting.needs import needs_of, runs_of
from blocklang.cutting.notes import notes_of
from blocklang.cutting.pieces import laid_pieces
from blocklang.cutting.values import Cutting, CuttingOptions
from blocklang.geometry import TICKS_PER_INCH
from blocklang.geometry.congruence import Interner
from blocklang.graph import PatchGraph


def cut(
    graph: PatchGraph, options: CuttingOptions = CuttingOptions(), methods: tuple[CuttingMethod, ...] = METHODS
) -> Cutting:
    """Return how the patches of a block are cut.

    `methods` are asked by priority; a patch that none of them claims is cut round a template.
    """
    interner = Interner()
    patches = finished_patches(graph)
    shapes = tuple(interner.shape(patch.outline, ()) for patch in patches)
    grain = edges_on_grain(graph, patches, shapes)
    larger = to_cut(graph, patches, grain, float(options.oversize) * TICKS_PER_INCH, interner)
    lines = lines_of(graph, larger, in_order(methods), options, interner)
    laid, sets = laid_pieces(graph, patches, lines, options)
    return Cutting(
        options,
        graph.block.seam_allowance / TICKS_PER_INCH,
        tuple(item.piece for item in laid),
        sets,
        needs_of(graph.block, laid, sets, options),
        notes_of(graph, laid, sets, options),
        runs_of(laid),
    )
