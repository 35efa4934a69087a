"""Where a patch is marked to be matched with its neighbours: the ends of its seams, and quarter points on curves."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from blocklang.cutting.curves import Place
from blocklang.geometry.congruence import SAME_LENGTH
from blocklang.graph import PatchGraph

QUARTERS = (0.25, 0.5, 0.75)


@dataclass(frozen=True, slots=True)
class MatchPoint:
    """A dot on the sewing line (ticks); `always` when every patch that the template is for is matched there."""

    at: Place
    always: bool


def match_points(graph: PatchGraph, patch: int) -> tuple[Place, ...]:
    """Return the match points of a patch in the block, in ticks.

    They are the ends of all segments round it and the quarter points of its curved seams; the neighbour across a seam
    has the same ones along it.
    """
    points: list[Place] = []
    for index, on_left in graph.sides[patch]:
        segment = graph.segments[index]
        points.append(segment.edge.start if on_left else segment.edge.end)
        if segment.edge.arc is not None and segment.is_seam:
            points.extend(segment.edge.at(quarter) for quarter in QUARTERS)
    return tuple(points)


def common_points(patches: Sequence[Sequence[Place]]) -> tuple[MatchPoint, ...]:
    """Return the match points of equal patches laid on each other, each once."""
    places: list[Place] = []
    counts: list[int] = []
    for points in patches:
        for point in points:
            known = next((i for i, place in enumerate(places) if math.dist(place, point) <= SAME_LENGTH), None)
            if known is None:
                places.append(point)
                counts.append(1)
            else:
                counts[known] += 1
    return tuple(MatchPoint(place, count >= len(patches)) for place, count in zip(places, counts, strict=True))
