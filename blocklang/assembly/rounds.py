"""Rings: a piece set into a round hole along a seam that meets itself, and the ring that is closed before that."""

from blocklang.assembly.opening import full
from blocklang.assembly.permission import Permission
from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.splits import Split, SplitKind
from blocklang.assembly.straight import in_a_row


class RoundCuts:
    """Finds seams that run round and meet themselves, and straight seams across a ring."""

    def __init__(self, ground: Ground, permission: Permission) -> None:
        """Keep what every choice needs."""
        self.ground = ground
        self.permission = permission
        self._rows: dict[Region, Split] = {}  # how a ring that has been opened comes apart

    def planned(self, region: Region) -> Split | None:
        """Return how the pieces of a ring come together before it is closed."""
        return self._rows.get(region)

    def best(self, survey: Survey, labels: dict[int, int]) -> Split | None:
        """Return the outermost seam that runs round without a corner, or else what closes a ring; None without either."""
        chains = [c for c in self.ground.chains(survey) if self.permission.allows(c.segments, labels)]
        round_seams = [chain for chain in chains if _meets_itself(survey, chain)]
        return self._parted(survey, round_seams) or self._opened(survey, chains)

    def _parted(self, survey: Survey, chains: list[Chain]) -> Split | None:
        for chain in sorted(chains, key=self._length, reverse=True):
            parts = self.ground.parts(survey, chain.segments)
            if len(parts) == 2:
                regions = tuple(self.ground.part(survey.region, part) for part in parts)
                return Split(SplitKind.ROW, regions, Why.ROUND_A_BODY)
        return None

    def _opened(self, survey: Survey, chains: list[Chain]) -> Split | None:
        """A straight seam from edge to edge that leaves the region in one piece lies across a ring."""
        across = [chain for chain in chains if full(survey, chain) and not _meets_itself(survey, chain)]
        for chain in sorted(across, key=self._length):
            if len(self.ground.parts(survey, chain.segments)) == 1:
                region = Region(survey.region.patches, survey.region.open.union(chain.segments))
                self._plan_row(region, [other for other in across if other is not chain])
                return Split(SplitKind.RING, (region,), Why.ROUND_A_BODY, chain.segments, chain.junctions[0])
        return None

    def _plan_row(self, opened: Region, across: list[Chain]) -> None:
        """Take the pieces between the seams across a ring as one row, where they lie so."""
        parts = self.ground.parts(self.ground.survey(opened), (index for chain in across for index in chain.segments))
        place = {patch: number for number, part in enumerate(parts) for patch in part}
        sides = (self.ground.graph.segments[chain.segments[0]].patches for chain in across)
        order = in_a_row([(place[left], place[right]) for left, right in sides], len(parts)) if across else None
        if order is not None and len(parts) == len(across) + 1:
            regions = tuple(self.ground.part(opened, parts[number]) for number in order)
            self._rows[opened] = Split(SplitKind.ROW, regions, Why.ROUND_A_BODY)

    def _length(self, chain: Chain) -> int:
        return round(sum(self.ground.graph.segments[index].edge.length() for index in chain.segments))


def _meets_itself(survey: Survey, chain: Chain) -> bool:
    return chain.junctions[0] == chain.junctions[-1] and chain.junctions[0] not in survey.edge
