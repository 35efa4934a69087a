"""Where the tips of a patch are trimmed, so that they meet the raw edges of the neighbours they are sewn to."""

import math
from collections.abc import Sequence

from blocklang.cutting.finished import Finished, across
from blocklang.cutting.offsetting import Limit
from blocklang.geometry.outlines import inside_angle
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph import OUTSIDE, PatchGraph


def tip_limits(
    graph: PatchGraph, patches: Sequence[Finished], patch: int, distances: Sequence[Sequence[float]]
) -> tuple[tuple[Limit, ...], ...]:
    """Return, for each corner of a patch, the lines that its tip is trimmed along.

    A tip is a corner under a right angle. It is trimmed along the raw edge of each neighbour there, where that edge
    goes on past the corner; `distances[p]` says how far the edges of patch p lie inside its raw edges, in ticks.
    """
    here = patches[patch]
    angles = here.outline.angles()
    return tuple(
        _limits(graph, patches, here, corner, angles[corner], distances)
        if angles[corner] < math.pi / 2 - STRAIGHT_ANGLE
        else ()
        for corner in range(len(angles))
    )


def _limits(
    graph: PatchGraph,
    patches: Sequence[Finished],
    here: Finished,
    corner: int,
    angle: float,
    distances: Sequence[Sequence[float]],
) -> tuple[Limit, ...]:
    junction = here.corners[corner]
    before = across(graph, here.segments[corner - 1][-1], here.patch)
    after = across(graph, here.segments[corner][0], here.patch)
    found: list[Limit] = []
    for neighbour, leaves in ((before, False), (after, True)):
        if neighbour != OUTSIDE:
            limit = _limit(patches[neighbour], junction, angle, leaves, distances[neighbour])
            found.extend([limit] if limit and not any(limit.on(other) for other in found) else [])
    return tuple(found)


def _limit(neighbour: Finished, junction: int, angle: float, leaves: bool, distances: Sequence[float]) -> Limit | None:
    """Return the raw edge of a neighbour that leaves (or reaches) a junction, unless a patch would stick over it."""
    if junction not in neighbour.corners:
        return None
    corner = neighbour.corners.index(junction)
    edges = neighbour.outline.edges
    if angle + inside_angle(edges[corner - 1], edges[corner]) > math.pi + STRAIGHT_ANGLE:
        return None
    if not leaves:
        corner = (corner - 1) % len(edges)
    edge = edges[corner]
    heading = edge.departs() if leaves else edge.arrives()
    at, by = edge.start if leaves else edge.end, distances[corner]
    return Limit((at.x + math.sin(heading) * by, at.y - math.cos(heading) * by), heading)
