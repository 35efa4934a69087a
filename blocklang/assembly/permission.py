"""Whether a join respects what the author asks."""

from itertools import pairwise

from blocklang.assembly.demands import Demands
from blocklang.assembly.regions import Ground
from blocklang.assembly.wholes import runs_between


class Permission:
    """Looks at the seams of a join, in order along its path."""

    def __init__(self, ground: Ground, demands: Demands, open_junctions: frozenset[int]) -> None:
        """Keep the demands, and the junctions that are left half open."""
        self.graph = ground.graph
        self.demands = demands
        self.open_junctions = open_junctions

    def allows(self, path: list[int] | tuple[int, ...], labels: dict[int, int]) -> bool:
        """Tell whether a join may be the last one: it keeps units whole and closes each junction as asked."""
        if not runs_between(self.graph, labels, path):
            return False
        if not self.demands:
            return True
        return all(self._closes_well(one, other) for one, other in pairwise(path))

    def _closes_well(self, one: int, other: int) -> bool:
        a, b = self.graph.segments[one], self.graph.segments[other]
        for junction in {a.start, a.end} & {b.start, b.end}:
            early = self.demands.early.get(junction, frozenset())
            if junction in self.open_junctions or one in early or other in early:
                return False
        return True
