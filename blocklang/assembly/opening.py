"""Partial seams: which straight run to leave half open when strips run round in a ring."""

from collections.abc import Iterator

from blocklang.assembly.precedence import breakers, last_ring
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.splits import Split, SplitKind


def half_open(ground: Ground, survey: Survey, chains: list[Chain]) -> Split | None:
    """Return the split that leaves a run half open, so that the ring that comes last is broken; None without a ring.

    In that ring every run ends on another of the ring or on the edge of the unit, so what is left open reaches the
    edge and can be finished last.
    """
    before = _precedence(ground, survey, chains)
    ring = last_ring(before)
    for candidates in (breakers(before, ring), ring) if ring else ():
        ways = sorted(way for number in candidates for way in _ways(ground, survey, chains, number, set(ring)))
        if ways:
            _, rest = ways[0]
            region = Region(survey.region.patches, survey.region.open.union(rest))
            return Split(SplitKind.CLOSING, (region,), rest)
    return None


def _precedence(ground: Ground, survey: Survey, chains: list[Chain]) -> dict[int, set[int]]:
    """A run that ends on the side of another is sewn before it."""
    number_of = {segment: number for number, chain in enumerate(chains) for segment in chain.segments}
    before: dict[int, set[int]] = {}
    for number, chain in enumerate(chains):
        for junction in (chain.junctions[0], chain.junctions[-1]):
            if junction not in survey.edge:
                before.setdefault(number, set()).update(_through(ground, survey, junction, number_of) - {number})
    return before


def _through(ground: Ground, survey: Survey, junction: int, number_of: dict[int, int]) -> set[int]:
    """Return the runs that pass straight through a junction."""
    ends = ground.graph.junctions[junction].ends
    return {number_of[e.segment] for e in ends if e.segment in survey.seams and e.straight_on in survey.seams}


def _ways(
    ground: Ground, survey: Survey, chains: list[Chain], number: int, ring: set[int]
) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Yield what may be left open of one run: from where the first of the ring meets it to the edge."""
    chain = chains[number]
    feet = {end for n in ring if n != number for end in (chains[n].junctions[0], chains[n].junctions[-1])}
    for one in (chain, Chain(chain.segments[::-1], chain.junctions[::-1])):
        if one.junctions[-1] in survey.edge and one.junctions[0] not in survey.edge:
            place = next((place for place in range(1, len(one.segments)) if one.junctions[place] in feet), None)
            if place is not None:
                rest = one.segments[place:]
                yield round(sum(ground.graph.segments[index].edge.length() for index in rest)), rest


def full(survey: Survey, chain: Chain) -> bool:
    """Tell whether a chain runs from edge to edge of a region."""
    return chain.junctions[0] in survey.edge and chain.junctions[-1] in survey.edge
