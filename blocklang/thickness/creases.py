"""The creases of a join: straight or round stretches along which allowances are folded to one side."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from blocklang.assembly.values import Assembly, Join, JoinKind
from blocklang.geometry import Edge
from blocklang.geometry.congruence import runs_on
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph
from blocklang.thickness.lying import Lies


class CreaseEnd(Enum):
    """What becomes of the allowances where a crease ends."""

    RAW = "raw"  # the crease goes on to the raw edge through all that lies there
    FREE = "free"  # a stop, a pivot or a spun centre: each patch is folded by itself, other seams are kept clear
    CUT = "cut"  # the allowances are clipped there, or the rest of the seam is sewn later


@dataclass(frozen=True, slots=True)
class Crease:
    """One fold line, travelled so that `left` patches lie on its left; `toward_left` is None when pressed open.

    `junctions` are those along it, both ends first and last (-1 where it ends half-way along a seam).
    """

    edge: Edge
    left: tuple[int, ...]
    right: tuple[int, ...]
    toward_left: bool | None
    junctions: tuple[int, ...]
    ends: tuple[CreaseEnd, CreaseEnd]

    def mirrored(self) -> "Crease":
        """Return the crease travelled the other way."""
        toward = None if self.toward_left is None else not self.toward_left
        return Crease(
            self.edge.reversed(), self.right[::-1], self.left[::-1], toward, self.junctions[::-1], self.ends[::-1]
        )

    def is_free_at(self, junction: int) -> bool:
        """Tell whether other seams are kept clear at a junction."""
        return any(at == junction and end is CreaseEnd.FREE for at, end in zip(self._tips, self.ends, strict=True))

    @property
    def _tips(self) -> tuple[int, int]:
        return self.junctions[0], self.junctions[-1]


def halves_left_open(assembly: Assembly) -> dict[int, int]:
    """Return, for each seam segment that a partial seam leaves half sewn, the junction at its open end."""
    open_at: dict[int, int] = {}
    partly = {
        step.segment
        for join in assembly.joins
        if join.kind is JoinKind.PARTIAL
        for step in (join.path[0], join.path[-1])
    }
    for join in assembly.joins:
        if join.kind is JoinKind.PARTIAL_FINISH:
            junction = _start(assembly.graph, join.path[0].segment, join.path[0].forward)
            before = _straight_on(assembly.graph, junction, join.path[0].segment)
            if before in partly:
                open_at[before] = junction
    return open_at


def creases_of(assembly: Assembly, join: Join, lies: Lies, open_at: dict[int, int]) -> tuple[Crease, ...]:
    """Return the creases of a join in order along its path; a half-sewn segment counts half to each of its joins."""
    stretches = list(_stretches(assembly.graph, join, lies, open_at))
    creases: list[Crease] = []
    for stretch in stretches:
        longer = _joined(creases[-1], stretch, lies.spun) if creases else None
        if longer is None:
            creases.append(stretch)
        else:
            creases[-1] = longer
    return tuple(_between(creases, place, lies.spun) for place in range(len(creases)))


def _stretches(graph: PatchGraph, join: Join, lies: Lies, open_at: dict[int, int]) -> Iterator[Crease]:
    """Yield a crease for each segment of the path."""
    path = join.path
    if join.kind is JoinKind.PARTIAL_FINISH:
        junction = _start(graph, path[0].segment, path[0].forward)
        before = _straight_on(graph, junction, path[0].segment)
        if before is not None and open_at.get(before) == junction:
            whole = _stretch(graph, before, graph.segments[before].end == junction, lies)
            half = Edge(whole.edge.middle(), whole.edge.end, whole.edge.arc)
            yield replace(whole, edge=half, junctions=(-1, junction))
    last = len(path) - 1
    for place, step in enumerate(path):
        whole = _stretch(graph, step.segment, step.forward, lies)
        ends = [
            CreaseEnd.FREE if stops or whole.junctions[side] in lies.spun else CreaseEnd.RAW
            for side, stops in ((0, join.start_stops and place == 0), (1, join.end_stops and place == last))
        ]
        if join.kind is JoinKind.PARTIAL and step.segment in open_at:
            yield _first_half(replace(whole, ends=(ends[0], ends[1])), open_at[step.segment])
        else:
            yield replace(whole, ends=(ends[0], ends[1]))


def _first_half(whole: Crease, open_end: int) -> Crease:
    middle, edge = whole.edge.middle(), whole.edge
    if whole.junctions[1] == open_end:
        ends, junctions = (whole.ends[0], CreaseEnd.CUT), (whole.junctions[0], -1)
        return replace(whole, edge=Edge(edge.start, middle, edge.arc), ends=ends, junctions=junctions)
    ends, junctions = (CreaseEnd.CUT, whole.ends[1]), (-1, whole.junctions[1])
    return replace(whole, edge=Edge(middle, edge.end, edge.arc), ends=ends, junctions=junctions)


def _stretch(graph: PatchGraph, index: int, forward: bool, lies: Lies) -> Crease:
    segment = graph.segments[index]
    left, right = segment.patches if forward else (segment.right, segment.left)
    toward = lies.toward[index]
    return Crease(
        segment.edge if forward else segment.edge.reversed(),
        (left,),
        (right,),
        None if toward is None else toward == left,
        (segment.start, segment.end) if forward else (segment.end, segment.start),
        (CreaseEnd.CUT, CreaseEnd.RAW),
    )


def _joined(before: Crease, after: Crease, spun: frozenset[int]) -> Crease | None:
    """Return one crease for two that run on into each other and are pressed to one side."""
    if before.toward_left != after.toward_left or after.junctions[0] in spun or not runs_on(before.edge, after.edge):
        return None
    return Crease(
        Edge(before.edge.start, after.edge.end, before.edge.arc),
        before.left + after.left,
        before.right + after.right,
        before.toward_left,
        before.junctions + after.junctions[1:],
        (before.ends[0], after.ends[1]),
    )


def _between(creases: Sequence[Crease], place: int, spun: frozenset[int]) -> Crease:
    """Return a crease with its inner ends settled: free at a pivot or a spun centre, else clipped."""
    here = creases[place]
    first, last = here.ends
    if place > 0:
        first = _inner_end(creases[place - 1], here, spun)
    if place < len(creases) - 1:
        last = _inner_end(here, creases[place + 1], spun)
    return replace(here, ends=(first, last))


def _inner_end(before: Crease, after: Crease, spun: frozenset[int]) -> CreaseEnd:
    turn = math.remainder(after.edge.departs() - before.edge.arrives(), math.tau)
    if after.junctions[0] in spun or abs(turn) > STRAIGHT_ANGLE:
        return CreaseEnd.FREE
    return CreaseEnd.CUT


def _start(graph: PatchGraph, segment: int, forward: bool) -> int:
    return graph.segments[segment].start if forward else graph.segments[segment].end


def _straight_on(graph: PatchGraph, junction: int, segment: int) -> int | None:
    return next(end.straight_on for end in graph.junctions[junction].ends if end.segment == segment)
