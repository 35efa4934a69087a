"""Cores: units without a straight cut and without a free set-in piece, taken apart with the fewest partial seams."""

from blocklang.assembly.closings import closings
from blocklang.assembly.demands import Demands
from blocklang.assembly.least import Least, Rings, Ways, least
from blocklang.assembly.opening import openings
from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Ground, Region, Survey
from blocklang.assembly.rings import last_pieces, pieces
from blocklang.assembly.splits import Split, SplitKind
from blocklang.assembly.wholes import runs_between

#: So many short openings are held against the fewest partial seams before any that is known to do is taken.
_TRIED = 8


class Cores:
    """Solves cores exactly, and adds up what they cost at least."""

    def __init__(self, ground: Ground, demands: Demands) -> None:
        """Keep the graph; settle where the author's partial seams are left open."""
        self.ground = ground
        self.demands = demands
        self.half_open: frozenset[int] = frozenset()
        self.fewest_pivots = 0
        self.fewest_partials = 0
        self._known: dict[Region, tuple[Least, Ways]] = {}
        self._rings: Rings = {}
        self._solved: set[int] = set()  # patches of cores whose cost is added up already
        for junctions in demands.half_open:
            self._leave_open(junctions)

    def least(self, survey: Survey) -> tuple[Least, Ways]:
        """Return the least that a region costs beyond what every order costs, and the ways to close its junctions."""
        if survey.region not in self._known:
            ways = closings(self.ground, survey, self.demands)
            for junction in self.half_open & ways.keys():
                ways[junction] = tuple(way for way in ways[junction] if way.partials)
            self._known[survey.region] = least(self.ground.graph, ways, self._rings), ways
        return self._known[survey.region]

    def split(self, survey: Survey, labels: dict[int, int]) -> Split | None:
        """Return a last join that keeps the rest as cheap as it can be; None when none is found."""
        answer, ways = self.least(survey)
        if survey.region.patches[0] not in self._solved:
            self.fewest_pivots += answer.fewest_pivots
            self.fewest_partials += answer.fewest_partials
        self._solved.update(survey.region.patches)
        if answer.choice is None:
            return None
        return self._short_opening(survey, answer, ways, labels) or self._last_join(survey, answer, labels)

    def _short_opening(self, survey: Survey, answer: Least, ways: Ways, labels: dict[int, int]) -> Split | None:
        if not answer.partials:
            return None
        for split in openings(self.ground, survey, answer, ways)[:_TRIED]:
            rest, _ = self.least(self.ground.survey(split.parts[0]))
            as_cheap = (rest.pivots, rest.partials) == (answer.pivots, answer.partials - 1)
            if rest.choice is not None and as_cheap and runs_between(self.ground.graph, labels, split.closing):
                return split
        return None

    def _last_join(self, survey: Survey, answer: Least, labels: dict[int, int]) -> Split | None:
        """Return the last join of the order that the closings stand for, the shortest when there are several."""
        assert answer.choice is not None
        graph, joins = self.ground.graph, pieces(survey.seams, answer.choice)
        lasts = [join for join in last_pieces(graph, joins, answer.choice) if runs_between(graph, labels, join)]
        splits = [split for join in sorted(lasts, key=len) if (split := self._as_split(survey, join)) is not None]
        return min(splits, key=lambda split: split.kind is SplitKind.CLOSING) if splits else None

    def _as_split(self, survey: Survey, join: list[int]) -> Split | None:
        parts = self.ground.parts(survey, join)
        region = survey.region
        if len(parts) == 2:
            return Split(SplitKind.ROW, tuple(self.ground.part(region, part) for part in parts), Why.ONLY_WAY)
        first = self.ground.graph.segments[join[0]]
        ends = [end for end in self._ends(join) if end not in survey.edge]
        if len(parts) > 2 or not ends:
            return None
        ordered = join if ends[0] in (first.start, first.end) else join[::-1]
        opened = Region(region.patches, region.open.union(join))
        return Split(SplitKind.CLOSING, (opened,), Why.RING, tuple(ordered), ends[0])

    def _ends(self, join: list[int]) -> list[int]:
        """Return the junctions at the two ends of a join."""
        count: dict[int, int] = {}
        for index in join:
            segment = self.ground.graph.segments[index]
            for junction in (segment.start, segment.end):
                count[junction] = count.get(junction, 0) + 1
        return sorted(junction for junction, times in count.items() if times == 1)

    def _leave_open(self, junctions: frozenset[int]) -> None:
        """Choose the one of some junctions that is cheapest to leave open, for the whole block."""
        whole = self.ground.survey(Region(tuple(range(len(self.ground.graph.sides)))))
        settled, best = self.half_open, None
        for junction in sorted(junctions):
            self._known.clear()
            self.half_open = settled | {junction}
            answer, _ = self.least(whole)
            cost = (answer.choice is None, answer.pivots, answer.partials, junction)
            best = min(best or cost, cost)
        self._known.clear()
        self.half_open = settled if best is None else settled | {best[-1]}
