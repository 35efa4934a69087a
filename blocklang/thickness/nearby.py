"""How thick one junction becomes, from what meets there alone: for asking again and again while directions change."""

import math
from functools import lru_cache

from blocklang.assembly.values import Assembly, Join
from blocklang.graph.values import OUTSIDE, PatchGraph, Segment, SegmentEnd
from blocklang.thickness.lying import Lies
from blocklang.thickness.measuring import fold, measure
from blocklang.thickness.meetings import LocalJoin, Meeting
from blocklang.thickness.round_block import round_block


class Nearby:
    """The junctions of a sewing order, each ready to be asked how thick it becomes."""

    def __init__(self, assembly: Assembly) -> None:
        """Look up which joins pass each junction."""
        self._assembly = assembly
        graph = assembly.graph
        self._joins: list[list[int]] = [[] for _ in graph.junctions]
        for number, join in enumerate(assembly.joins):
            for junction in dict.fromkeys(j for step in join.path for j in _ends(graph.segments[step.segment])):
                self._joins[junction].append(number)
        self._meetings: dict[int, Meeting] = {}

    def layers(self, junction: int, lies: Lies) -> int:
        """Return the most layers within an allowance of a junction, as if the patches there were large.

        Only the directions of the seams at that junction are looked at, and whether it is spun.
        """
        meeting = self._meetings.get(junction)
        if meeting is None:
            meeting = self._meetings[junction] = self._meeting(junction)
        graph = self._assembly.graph
        senses = tuple(_sense(graph, end, lies) for end in _ends_round(graph, junction))
        return _layers(meeting, senses, junction in lies.spun)

    def _meeting(self, junction: int) -> Meeting:
        graph = self._assembly.graph
        ends = _ends_round(graph, junction)
        place = {end.segment: index for index, end in enumerate(ends)}
        wedges = [_wedge_patch(graph, end) for end in ends]
        joins = tuple(
            found
            for number in self._joins[junction]
            if (found := self._local(self._assembly.joins[number], junction, place, wedges)) is not None
        )
        first = ends[0].heading
        return Meeting(
            tuple(round((end.heading - first) % math.tau, 4) for end in ends),
            tuple(None if end.straight_on is None else place[end.straight_on] for end in ends),
            OUTSIDE in wedges,
            joins,
        )

    def _local(self, join: Join, junction: int, place: dict[int, int], wedges: list[int]) -> LocalJoin | None:
        graph = self._assembly.graph
        arrives = leaves = None
        stops = False
        for number, step in enumerate(join.path):
            segment = graph.segments[step.segment]
            start, end = (segment.start, segment.end) if step.forward else (segment.end, segment.start)
            if end == junction:
                arrives = place[step.segment]
                stops |= number == len(join.path) - 1 and join.end_stops
            if start == junction:
                leaves = place[step.segment]
                stops |= number == 0 and join.start_stops
        units = tuple(
            tuple(w for w, patch in enumerate(wedges) if patch in self._assembly.unit_patches[unit])
            for unit in join.units
        )
        return LocalJoin(join.kind, arrives, leaves, stops, units)


def _ends(segment: Segment) -> tuple[int, int]:
    return segment.start, segment.end


def _ends_round(graph: PatchGraph, junction: int) -> tuple[SegmentEnd, ...]:
    """Return the ends at a junction so that what lies outside of the block comes last."""
    ends = graph.junctions[junction].ends
    outside = next((place for place, end in enumerate(ends) if _wedge_patch(graph, end) == OUTSIDE), len(ends) - 1)
    return ends[outside + 1 :] + ends[: outside + 1]


def _wedge_patch(graph: PatchGraph, end: SegmentEnd) -> int:
    """Return the patch counterclockwise of a seam end."""
    segment = graph.segments[end.segment]
    return segment.left if end.at_start else segment.right


def _sense(graph: PatchGraph, end: SegmentEnd, lies: Lies) -> int:
    """Return 1 when the allowance lies counterclockwise of a seam end, -1 clockwise, 0 open or no seam."""
    toward = lies.toward.get(end.segment)
    if toward is None:
        return 0
    return 1 if toward == _wedge_patch(graph, end) else -1


@lru_cache(maxsize=16384)
def _layers(meeting: Meeting, senses: tuple[int, ...], spun: bool) -> int:
    assembly = round_block(meeting)
    count = len(meeting.headings)
    toward: dict[int, int | None] = {
        end: None if senses[end] == 0 else end if senses[end] > 0 else (end - 1) % count
        for end in range(count)
        if assembly.graph.segments[end].is_seam
    }
    lies = Lies(toward, frozenset({0} if spun else ()))
    folded = fold(assembly, lies)
    return measure(assembly.graph, folded).piles[0].layers


def layers_at(assembly: Assembly, junction: int, lies: Lies) -> int:
    """Return the most layers within an allowance of one junction; for many questions keep a `Nearby`."""
    return Nearby(assembly).layers(junction, lies)
