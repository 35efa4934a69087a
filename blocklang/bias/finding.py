"""Which edges are on the bias, gathered into one warning for each kind of patch."""

import math
from collections.abc import Iterator, Sequence
from typing import Final

from blocklang.bias import words
from blocklang.bias.grain import grain_headings, off_grain
from blocklang.bias.values import Bias, BiasKind, BiasWarning
from blocklang.cutting.finished import Finished, finished_patches
from blocklang.cutting.values import Cutting
from blocklang.geometry import Edge
from blocklang.graph.values import PatchGraph

#: An edge further off the threads than this stretches: cloth cut at t to its threads gives as sin(2t) squared, and at
#: ten degrees that is an eighth of what the true bias gives.
ON_THE_BIAS: Final = math.radians(10)


def find_bias(graph: PatchGraph, cutting: Cutting) -> Bias:
    """Return every edge that is cut on the bias, and a warning for each kind of patch that has any."""
    patches = finished_patches(graph)
    grain = grain_headings(graph, patches, cutting)
    edges = {patch.patch: _bias_edges(patch, grain[patch.patch]) for patch in patches}
    sides = tuple(
        sorted((segment, p) for p, found in edges.items() for edge in found for segment in patches[p].segments[edge])
    )
    return Bias(grain, sides, tuple(_warnings(graph, cutting, patches, edges)))


def _bias_edges(patch: Finished, grain: float | None) -> tuple[int, ...]:
    if grain is None:
        return ()
    return tuple(place for place, edge in enumerate(patch.outline.edges) if _is_on_bias(edge, grain))


def _is_on_bias(edge: Edge, grain: float) -> bool:
    """Tell whether an edge leaves the threads; a curve does as soon as some of it does."""
    if edge.arc is None:
        return off_grain(edge.departs(), grain) > ON_THE_BIAS
    return (
        abs(edge.sweep()) > 2 * ON_THE_BIAS
        or max(off_grain(edge.departs(), grain), off_grain(edge.arrives(), grain)) > ON_THE_BIAS
    )


def _warnings(
    graph: PatchGraph, cutting: Cutting, patches: Sequence[Finished], edges: dict[int, tuple[int, ...]]
) -> Iterator[BiasWarning]:
    for kind in (BiasKind.OUTSIDE, BiasKind.SEAM):
        groups: dict[tuple[str, words.Edges], list[int]] = {}
        for piece in cutting.pieces:
            for patch in piece.patches:
                found = _of_kind(graph, patches[patch], edges[patch], kind)
                if found:
                    which = words.which_edges(patches[patch].outline, found, piece.method)
                    groups.setdefault((piece.name, which), []).append(patch)
        for (name, which), members in groups.items():
            yield BiasWarning(
                kind,
                tuple(sorted(members)),
                _segments(graph, patches, members, edges, kind),
                words.say_warning(kind, name, which, len(members)),
            )


def _of_kind(graph: PatchGraph, patch: Finished, edges: tuple[int, ...], kind: BiasKind) -> tuple[int, ...]:
    return tuple(edge for edge in edges if _segments_of(graph, patch, edge, kind))


def _segments_of(graph: PatchGraph, patch: Finished, edge: int, kind: BiasKind) -> tuple[int, ...]:
    return tuple(s for s in patch.segments[edge] if graph.segments[s].is_seam == (kind is BiasKind.SEAM))


def _segments(
    graph: PatchGraph,
    patches: Sequence[Finished],
    members: list[int],
    edges: dict[int, tuple[int, ...]],
    kind: BiasKind,
) -> tuple[int, ...]:
    found = {s for p in members for edge in edges[p] for s in _segments_of(graph, patches[p], edge, kind)}
    return tuple(sorted(found))
