"""The outline and the measure of every unit."""

import math

from blocklang.assembly.values import Assembly
from blocklang.geometry import Edge, Outline
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph

Borders = tuple[frozenset[int], ...]


def borders_of(assembly: Assembly) -> Borders:
    """Return the segments round each unit: what its two parts have round them, without what they share."""
    graph = assembly.graph
    borders = [frozenset(index for index, _ in ring) for ring in graph.sides]
    for join in assembly.joins:
        border = borders[join.units[0]]
        for other in join.units[1:]:
            border ^= borders[other]
        borders.append(border)
    return tuple(borders)


def outlines_of(graph: PatchGraph, patches: frozenset[int], border: frozenset[int]) -> tuple[Outline, ...]:
    """Return the finished outline of a unit, counterclockwise, its straight sides whole; then the holes of a ring."""
    leaving: dict[int, list[tuple[int, Edge]]] = {}
    for index in sorted(border):
        segment = graph.segments[index]
        forward = segment.left in patches
        start, end = (segment.start, segment.end) if forward else (segment.end, segment.start)
        leaving.setdefault(start, []).append((end, segment.edge if forward else segment.edge.reversed()))
    loops = [Outline(_whole_sides(_loop(leaving, first))) for first in sorted(leaving) if leaving[first]]
    return tuple(sorted(loops, key=lambda loop: -loop.area()))


def _loop(leaving: dict[int, list[tuple[int, Edge]]], here: int) -> list[Edge]:
    edges: list[Edge] = []
    while leaving.get(here):
        here, edge = leaving[here].pop()
        edges.append(edge)
    return edges


def _whole_sides(edges: list[Edge]) -> tuple[Edge, ...]:
    whole: list[Edge] = []
    for edge in edges:
        if whole and _runs_on(whole[-1], edge):
            whole[-1] = Edge(whole[-1].start, edge.end)
        else:
            whole.append(edge)
    if len(whole) > 2 and _runs_on(whole[-1], whole[0]):
        whole[0] = Edge(whole[-1].start, whole[0].end)
        whole.pop()
    return tuple(whole)


def _runs_on(a: Edge, b: Edge) -> bool:
    if a.arc or b.arc:
        return False
    return abs(math.remainder(b.departs() - a.arrives(), math.tau)) <= STRAIGHT_ANGLE


def measure_of(outline: Outline, seam_allowance: int) -> tuple[int, int] | None:
    """Return the unfinished width and height of a rectangle, even a turned one; None for any other shape."""
    edges = outline.edges
    if len(edges) != 4 or any(edge.arc for edge in edges):
        return None
    if any(abs(angle - math.pi / 2) > STRAIGHT_ANGLE for angle in outline.angles()):
        return None
    level = min(range(2), key=lambda place: round(abs(math.sin(edges[place].departs())), 3))
    width, height = edges[level].length(), edges[1 - level].length()
    return round(width) + 2 * seam_allowance, round(height) + 2 * seam_allowance
