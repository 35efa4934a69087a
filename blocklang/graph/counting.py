"""The author's count of patches and seams, held against those that there are."""

from blocklang.diagnostics import Diagnostic, Severity
from blocklang.graph.values import PatchGraph


def count_seams(graph: PatchGraph) -> int:
    """Return how many pairs of patches lie side by side."""
    return len({frozenset(segment.patches) for segment in graph.seams})


def miscounted(graph: PatchGraph) -> tuple[Diagnostic, ...]:
    """Return an error when the file's count differs from the block."""
    said = graph.block.counts
    patches, seams = len(graph.block.patches), count_seams(graph) if said else 0
    if said is None or (said.patches, said.seams) == (patches, seams):
        return ()
    found = f"The block has {_told(patches, seams)}, and this line says {_told(said.patches, said.seams)}."
    advice = "Look for a patch that is missing or drawn in two, or correct the line."
    return (Diagnostic("counts-differ", Severity.ERROR, "The count does not agree", found, advice, said.span),)


def _told(patches: int, seams: int) -> str:
    return f"{patches:,} {'patch' if patches == 1 else 'patches'} and {seams:,} {'seam' if seams == 1 else 'seams'}"
