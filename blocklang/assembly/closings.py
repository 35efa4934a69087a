"""How the junctions of a region may be closed: along which two seams the closing join runs, at what cost."""

import math
from dataclasses import dataclass
from itertools import combinations

from blocklang.assembly.demands import Demands
from blocklang.assembly.regions import Ground, Survey
from blocklang.graph.values import Junction

Pair = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Closing:
    """One way to close a junction: the join runs along a pair of seams, or none does and a seam is finished there.

    `pivots` are those that not every order needs, `partials` 1 when a seam is left half open there.
    """

    junction: int
    pair: Pair | None
    pivots: int
    partials: int


def closings(ground: Ground, survey: Survey, demands: Demands) -> dict[int, tuple[Closing, ...]]:
    """Return the ways to close each inner junction of a region, those that cost nothing first, level seams first."""
    segments = ground.graph.segments
    touched = {junction for index in survey.seams for junction in (segments[index].start, segments[index].end)}
    inner = sorted(touched - survey.edge)
    return {junction: _ways(ground.graph.junctions[junction], demands) for junction in inner}


def _ways(junction: Junction, demands: Demands) -> tuple[Closing, ...]:
    early = demands.early.get(junction.index, frozenset())
    level = {end.segment: abs(math.sin(end.heading)) for end in junction.ends}
    last = sorted((end.segment for end in junction.ends if end.segment not in early), key=lambda s: (level[s], s))
    straight = {tuple(sorted((e.segment, e.straight_on))) for e in junction.ends if e.straight_on is not None}
    pairs = [(min(pair), max(pair)) for pair in combinations(last, 2)]
    free = [Closing(junction.index, p, 0, 0) for p in pairs if junction.always_pivots or p in straight]
    if junction.always_pivots:
        return tuple(free)
    half = [] if junction.index in demands.held else [Closing(junction.index, None, 0, 1)]
    bent = [Closing(junction.index, p, 1, 0) for p in pairs if p not in straight] if early else []
    return (*free, *half, *bent)
