"""A round block that has one junction in its middle and nothing else, and how it is sewn."""

import math
from collections.abc import Iterator

from blocklang.assembly.values import Assembly, Count, Join, Travelled
from blocklang.block import Block, LengthUnit
from blocklang.geometry import Edge, Outline, Point
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph.values import OUTSIDE, Junction, JunctionKind, PatchGraph, Segment, SegmentEnd
from blocklang.thickness.meetings import Meeting

#: The block is this large, in allowances: its own edge is out of reach.
_RADIUS = 8
_ALLOWANCE = TICKS_PER_INCH // 4
#: A stretch of its edge turns by no more than this (radians).
_BEND = math.pi / 4


def round_block(meeting: Meeting) -> Assembly:
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
