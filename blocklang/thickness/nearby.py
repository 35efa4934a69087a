"""How thick one junction becomes, from what meets there alone: for asking again and again while directions change."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from blocklang.assembly.values import Assembly, Count, Join, JoinKind, Travelled
from blocklang.block import Block, LengthUnit
from blocklang.geometry import Edge, Outline, Point
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph.values import OUTSIDE, Junction, JunctionKind, PatchGraph, Segment, SegmentEnd
from blocklang.thickness.lying import Lies

#: The round block that is sewn instead is this large, in allowances: its own edge is out of reach.
_RADIUS = 8
_ALLOWANCE = TICKS_PER_INCH // 4
#: A stretch of its edge turns by no more than this (radians).
_BEND = math.pi / 4


@dataclass(frozen=True, slots=True)
class LocalJoin:
    """What a join does at a junction: seam ends by place, `on` where it arrives first, and the wedges of its units."""

    kind: JoinKind
    first: int | None
    last: int | None
    stops: bool
    units: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Meeting:
    """What meets at a junction: seam ends by heading, counterclockwise, and the joins there in order.

    Wedge w lies between end w and the next; at the edge of the block the last wedge lies outside. `straight` pairs
    ends in line.
    """

    headings: tuple[float, ...]
    straight: tuple[int | None, ...]
    at_edge: bool
    joins: tuple[LocalJoin, ...]


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
    from blocklang.thickness.measuring import fold, measure

    assembly = _round_block(meeting)
    count = len(meeting.headings)
    toward: dict[int, int | None] = {
        end: None if senses[end] == 0 else end if senses[end] > 0 else (end - 1) % count
        for end in range(count)
        if assembly.graph.segments[end].is_seam
    }
    lies = Lies(toward, frozenset({0} if spun else ()))
    folded = fold(assembly, lies)
    return measure(assembly.graph, folded).piles[0].layers


def _round_block(meeting: Meeting) -> Assembly:
    """Return the sewing of a round block that has nothing but the junction, as number 0, in its middle."""
    graph = _round_graph(meeting)
    count = len(meeting.headings)
    units: list[tuple[int, ...]] = [(wedge,) for wedge in range(count - meeting.at_edge)]
    joins: list[Join] = []
    for local in meeting.joins:
        path = []
        if local.first is not None:
            path.append(Travelled(local.first, False))
        if local.last is not None:
            path.append(Travelled(local.last, True))
        numbers = []
        for unit in local.units:
            numbers.append(len(units))
            units.append(unit)
        starts = local.first is None and local.stops
        ends = local.last is None and local.stops
        joins.append(Join(local.kind, tuple(numbers), len(units), tuple(path), starts, ends, ()))
        units.append(tuple(sorted(wedge for unit in local.units for wedge in unit)))
    none = Count(0, 0, False)
    return Assembly(graph, tuple(joins), (), tuple(units), (), none, none)


def _round_graph(meeting: Meeting) -> PatchGraph:
    count, radius = len(meeting.headings), _RADIUS * _ALLOWANCE
    centre = Point(radius, radius)
    spots = [centre, *(_on(centre, radius, heading) for heading in meeting.headings)]
    segments: list[Segment] = []
    wedges = count - meeting.at_edge
    for end in range(count):
        left, right = (wedge if wedge < wedges else OUTSIDE for wedge in (end, (end - 1) % count))
        segments.append(Segment(end, Edge(centre, spots[end + 1]), 0, end + 1, left, right))
    sides: list[tuple[tuple[int, bool], ...]] = []
    for wedge in range(wedges):
        rim = list(_rim(meeting, wedge, centre, spots, segments))
        sides.append(((wedge, True), *((index, True) for index in rim), ((wedge + 1) % count, False)))
    junctions = tuple(_junction(meeting, segments, index, at) for index, at in enumerate(spots))
    outline = Outline.through(spots[1:])
    block = Block("", LengthUnit.INCH, outline, _ALLOWANCE, (), ())
    return PatchGraph(block, junctions, tuple(segments), tuple(sides))


def _rim(meeting: Meeting, wedge: int, centre: Point, spots: list[Point], segments: list[Segment]) -> Iterator[int]:
    """Add the edge of the round block along a wedge, in stretches that turn little, and yield their numbers."""
    count = len(meeting.headings)
    here, start = meeting.headings[wedge], wedge + 1
    turn = (meeting.headings[(wedge + 1) % count] - here) % math.tau or math.tau
    steps = max(1, math.ceil(turn / _BEND))
    for step in range(1, steps + 1):
        if step == steps:
            end = (wedge + 1) % count + 1
        else:
            spots.append(_on(centre, _RADIUS * _ALLOWANCE, here + turn * step / steps))
            end = len(spots) - 1
        index = len(segments)
        segments.append(Segment(index, Edge(spots[start], spots[end]), start, end, wedge, OUTSIDE))
        yield index
        start = end


def _on(centre: Point, radius: float, heading: float) -> Point:
    return Point(round(centre.x + radius * math.cos(heading)), round(centre.y + radius * math.sin(heading)))


def _junction(meeting: Meeting, segments: list[Segment], index: int, at: Point) -> Junction:
    ends = []
    for segment in segments:
        if index in (segment.start, segment.end):
            starts = segment.start == index
            edge = segment.edge if starts else segment.edge.reversed()
            on = meeting.straight[segment.index] if index == 0 else None
            ends.append(SegmentEnd(segment.index, starts, edge.departs(), on))
    return Junction(index, at, JunctionKind.MANY if index == 0 else JunctionKind.EDGE, tuple(ends))


def layers_at(assembly: Assembly, junction: int, lies: Lies) -> int:
    """Return the most layers within an allowance of one junction; for many questions keep a `Nearby`."""
    return Nearby(assembly).layers(junction, lies)
