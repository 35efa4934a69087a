"""Partial seams: which straight run to leave half open when strips run round in a ring."""

from collections.abc import Iterator

from blocklang.assembly.least import Least, Ways
from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.rings import rings
from blocklang.assembly.splits import Split, SplitKind


def openings(ground: Ground, survey: Survey, answer: Least, ways: Ways) -> list[Split]:
    """Return the splits that leave the end of a run half open, the shortest first.

    A run is left open from a junction in a ring of precedence to the edge of the region, so it can be finished last.
    """
    ringed = _in_rings(ground, answer, ways)
    found = sorted(way for chain in ground.chains(survey) for way in _ways(ground, survey, chain, ringed))
    return [_opened(survey, rest, junction) for _, rest, junction in found]


def _in_rings(ground: Ground, answer: Least, ways: Ways) -> set[int]:
    """Return the junctions of the rings that there are as soon as nothing is left open."""
    assert answer.choice is not None
    closed = {j: ways[j][0] if closing.partials else closing for j, closing in answer.choice.items()}
    found = {junction for ring in rings(ground.graph, closed) for junction in ring}
    return found | {junction for junction, closing in answer.choice.items() if closing.partials}


def _ways(ground: Ground, survey: Survey, chain: Chain, ringed: set[int]) -> Iterator[tuple[int, tuple[int, ...], int]]:
    for one in (chain, Chain(chain.segments[::-1], chain.junctions[::-1])):
        if one.junctions[-1] in survey.edge:
            for place in range(1, len(one.segments)):
                rest, junction = one.segments[place:], one.junctions[place]
                if junction in ringed and junction not in survey.edge:
                    yield round(sum(ground.graph.segments[index].edge.length() for index in rest)), rest, junction


def _opened(survey: Survey, rest: tuple[int, ...], junction: int) -> Split:
    region = Region(survey.region.patches, survey.region.open.union(rest))
    return Split(SplitKind.CLOSING, (region,), Why.RING, rest, junction)


def full(survey: Survey, chain: Chain) -> bool:
    """Tell whether a chain runs from edge to edge of a region."""
    return chain.junctions[0] in survey.edge and chain.junctions[-1] in survey.edge
