"""Patches as they are finished, each edge with the seams along it."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.geometry import Edge, Outline
from blocklang.geometry.congruence import runs_on
from blocklang.graph import OUTSIDE, PatchGraph, Segment


@dataclass(frozen=True, slots=True)
class Finished:
    """A patch as it is finished, without corners on a straight run.

    For each edge of `outline`: the seam segments along it in order, whether all of it lies on the outside of the
    block, and the junction that it starts at.
    """

    patch: int
    outline: Outline
    segments: tuple[tuple[int, ...], ...]
    outside: tuple[bool, ...]
    corners: tuple[int, ...]

    @property
    def outside_edges(self) -> tuple[int, ...]:
        """The edges that lie on the outside of the block."""
        return tuple(index for index, outside in enumerate(self.outside) if outside)


@dataclass(frozen=True, slots=True)
class _Side:
    edge: Edge
    segment: Segment
    corner: int


def finished_patches(graph: PatchGraph) -> tuple[Finished, ...]:
    """Return the patches of a block by index."""
    return tuple(_finished(graph, patch) for patch in range(len(graph.sides)))


def across(graph: PatchGraph, segment: int, patch: int) -> int:
    """Return the patch on the other side of a segment, or `OUTSIDE`."""
    left, right = graph.segments[segment].patches
    return right if left == patch else left


def _finished(graph: PatchGraph, patch: int) -> Finished:
    runs = list(_runs([_side(graph.segments[index], on_left) for index, on_left in graph.sides[patch]]))
    edges = tuple(Edge(run[0].edge.start, run[-1].edge.end, run[0].edge.arc) for run in runs)
    return Finished(
        patch,
        Outline(edges),
        tuple(tuple(side.segment.index for side in run) for run in runs),
        tuple(all(OUTSIDE in side.segment.patches for side in run) for run in runs),
        tuple(run[0].corner for run in runs),
    )


def _side(segment: Segment, on_left: bool) -> _Side:
    if on_left:
        return _Side(segment.edge, segment, segment.start)
    return _Side(segment.edge.reversed(), segment, segment.end)


def _runs(sides: list[_Side]) -> Iterator[list[_Side]]:
    """Yield the sides gathered into straight runs."""
    bends = [i for i, side in enumerate(sides) if not runs_on(sides[i - 1].edge, side.edge)]
    if len(bends) < 2:
        bends = list(range(len(sides)))
    turned = sides[bends[0] :] + sides[: bends[0]]
    stops = [bend - bends[0] for bend in bends] + [len(sides)]
    for start, stop in zip(stops, stops[1:], strict=False):
        yield turned[start:stop]
