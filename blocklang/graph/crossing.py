"""Edges that run across each other so close to a corner that they still seem to meet there and nowhere else."""

from collections.abc import Iterator

from blocklang.diagnostics import Diagnostic, Related, Severity
from blocklang.graph.places import say_place
from blocklang.graph.values import OUTSIDE, Junction, PatchGraph, SegmentEnd


def crossed_corners(graph: PatchGraph) -> tuple[Diagnostic, ...]:
    """Return what is wrong at corners where what lies beside one edge is not what lies beside the next.

    A line of the file is told once, however often it is repeated.
    """
    faults = (fault for junction in graph.junctions for fault in _crossed(graph, junction))
    told = {fault.span: fault for fault in reversed(tuple(faults))}
    return tuple(reversed(told.values()))


def _crossed(graph: PatchGraph, junction: Junction) -> Iterator[Diagnostic]:
    ends = junction.ends
    for end, following in zip(ends, (*ends[1:], ends[0]), strict=True):
        before, after = _beside(graph, end)[0], _beside(graph, following)[1]
        if before != after:
            yield _told(graph, junction, *sorted((before, after)))
            return


def _beside(graph: PatchGraph, end: SegmentEnd) -> tuple[int, int]:
    """Return what lies counterclockwise and what lies clockwise of an edge as it leaves its corner."""
    segment = graph.segments[end.segment]
    return (segment.left, segment.right) if end.at_start else (segment.right, segment.left)


def _told(graph: PatchGraph, junction: Junction, one: int, other: int) -> Diagnostic:
    patches = graph.block.patches
    name = "the edge of the block" if one == OUTSIDE else patches[one].id
    found = f"{patches[other].id} and {name} run across each other close to {say_place(junction.at, graph.block.unit)}."
    second = patches[one].span if one != OUTSIDE else None
    related = (Related(second, f"{name} is drawn here"),) if second and second != patches[other].span else ()
    return Diagnostic(
        "edges-cross",
        Severity.ERROR,
        "Two edges cross beside a corner",
        found,
        "Draw a flatter arc, or let both leave the corner further apart.",
        patches[other].span,
        related,
    )
