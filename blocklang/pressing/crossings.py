"""Where a join passes straight through a junction, and which seams arrive at it there."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.assembly.values import Assembly, Join, JoinKind
from blocklang.graph.values import Junction, PatchGraph, SegmentEnd
from blocklang.pressing.ranks import SPIN_SEAMS


@dataclass(frozen=True, slots=True)
class Crossing:
    """A join passing straight through a junction.

    `through` are the join's own two segment ends; `arriving` the other seams' ends that are sewn by then;
    `later` those that are not; `both_sides` whether seams arrive on both sides, so that they can lock.
    """

    junction: int
    through: tuple[SegmentEnd, SegmentEnd]
    arriving: tuple[SegmentEnd, ...]
    later: tuple[SegmentEnd, ...]
    both_sides: bool

    @property
    def ends(self) -> tuple[SegmentEnd, ...]:
        """All seams of the junction, the join's own first."""
        return self.through + self.arriving + self.later

    @property
    def can_spin(self) -> bool:
        """Whether the junction locks and has seams enough to be worth spinning."""
        return self.both_sides and len(self.ends) >= SPIN_SEAMS


def crossings_of(assembly: Assembly) -> tuple[Crossing, ...]:
    """Return every straight pass through an inner junction; at most one for each junction has seams on both sides."""
    sewn = {step.segment: number for number, join in enumerate(assembly.joins) for step in join.path}
    found = [
        _crossing(assembly.graph.junctions[junction], before, after, number, sewn)
        for number, join in enumerate(assembly.joins)
        for junction, before, after in _passes(assembly, join, sewn)
    ]
    last = {crossing.junction: place for place, crossing in enumerate(found) if crossing.both_sides}
    return tuple(c if last.get(c.junction) == place else _one_sided(c) for place, c in enumerate(found))


def sense(end: SegmentEnd, left: bool) -> bool:
    """Return whether an allowance lies counterclockwise of its seam, seen from the junction at that end."""
    return left == end.at_start


def _passes(assembly: Assembly, join: Join, sewn: dict[int, int]) -> Iterator[tuple[int, int, int]]:
    """Yield the junction and the two segments of each straight pass.

    A join that comes back to where it starts passes there too, and so does a partial seam where it is finished.
    """
    graph = assembly.graph
    following = (*join.path[1:], join.path[0]) if len(join.path) > 2 else join.path[1:]
    for before, after in zip(join.path, following, strict=False):
        segment = graph.segments[before.segment]
        junction = segment.end if before.forward else segment.start
        if graph.junctions[junction].is_inner and _in_line(graph, junction, before.segment) == after.segment:
            yield junction, before.segment, after.segment
    if join.kind is JoinKind.PARTIAL_FINISH:
        yield from _finished(assembly, join, sewn)


def _finished(assembly: Assembly, join: Join, sewn: dict[int, int]) -> Iterator[tuple[int, int, int]]:
    graph = assembly.graph
    first, last = join.path[0], join.path[-1]
    start, end = graph.segments[first.segment], graph.segments[last.segment]
    junctions = (start.start if first.forward else start.end, end.end if last.forward else end.start)
    for junction, own in zip(junctions, (first.segment, last.segment), strict=True):
        other = _in_line(graph, junction, own) if graph.junctions[junction].is_inner else None
        if other in sewn and assembly.joins[sewn[other]].kind is JoinKind.PARTIAL:
            yield junction, other, own


def _in_line(graph: PatchGraph, junction: int, segment: int) -> int | None:
    return next(end.straight_on for end in graph.junctions[junction].ends if end.segment == segment)


def _crossing(junction: Junction, before: int, after: int, number: int, sewn: dict[int, int]) -> Crossing:
    ends = junction.ends
    low, high = sorted(place for place, end in enumerate(ends) if end.segment in (before, after))
    arriving = tuple(
        (place, end)
        for place, end in enumerate(ends)
        if place not in (low, high) and sewn.get(end.segment, number) < number
    )
    inside = sum(low < place < high for place, _ in arriving)
    later = tuple(
        end for place, end in enumerate(ends) if place not in (low, high) and sewn.get(end.segment, number) >= number
    )
    both = 0 < inside < len(arriving)
    return Crossing(junction.index, (ends[low], ends[high]), tuple(end for _, end in arriving), later, both)


def _one_sided(c: Crossing) -> Crossing:
    return Crossing(c.junction, c.through, c.arriving, c.later, False)
