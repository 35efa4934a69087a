"""How the junctions of a region may be closed: which seams are sewn last there, and at what cost."""

import math
from dataclasses import dataclass
from itertools import combinations

from blocklang.assembly.demands import Demands
from blocklang.assembly.regions import Ground, Survey
from blocklang.graph.values import Junction


@dataclass(frozen=True, slots=True)
class Closing:
    """One way to close a junction: the seams in `last` are sewn after all others that meet there.

    Two are one join that runs on through the junction; one is a partial seam, finished from the junction on.
    `pivots` are those that not every order needs.
    """

    junction: int
    last: tuple[int, ...]
    pivots: int = 0

    @property
    def partials(self) -> int:
        """1 when a partial seam is finished from here."""
        return int(len(self.last) == 1)


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
    on = {end.segment: end.straight_on for end in junction.ends}
    pairs = [(min(pair), max(pair)) for pair in combinations(last, 2)]
    through = [pair for pair in pairs if junction.always_pivots or on[pair[0]] == pair[1]]
    free = [Closing(junction.index, pair) for pair in through]
    if junction.always_pivots:
        return tuple(free)
    seams = [] if junction.index in demands.held else [seam for seam in last if on[seam] is not None]
    half = [Closing(junction.index, (seam,)) for seam in seams]
    bent = [Closing(junction.index, pair, 1) for pair in pairs if pair not in through] if early else []
    return (*free, *half, *bent)
