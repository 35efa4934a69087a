"""What the author's lines ask of the order, said as how junctions may be closed and which patches stay together."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from blocklang.block import FirstWish, PartialWish, SetInWish, StopWish, Wish
from blocklang.geometry.points import same_point
from blocklang.graph.values import PatchGraph


@dataclass(frozen=True, slots=True)
class Demands:
    """What every join has to respect.

    `early[j]` are the seams that must be sewn before junction j is closed; at a junction of `held` nothing is left
    half open; one junction of each set of `half_open` must be. `wholes` are units that are finished before they meet
    anything else, the smallest last.
    """

    early: dict[int, frozenset[int]]
    held: frozenset[int]
    half_open: tuple[frozenset[int], ...]
    wholes: tuple[tuple[str, frozenset[int]], ...]

    def __bool__(self) -> bool:
        """Whether anything is asked at all."""
        return bool(self.early or self.half_open or self.wholes)


FREE = Demands({}, frozenset(), (), ())


def demands_of(graph: PatchGraph, wishes: Iterable[Wish]) -> Demands:
    """Return what some of a block's wishes ask."""
    reader = _Reader(graph)
    for wish in wishes:
        reader.read(wish)
    wholes = tuple(sorted(reader.wholes, key=lambda whole: -len(whole[1])))
    early = {junction: frozenset(seams) for junction, seams in sorted(reader.early.items()) if seams}
    return Demands(early, frozenset(reader.held), tuple(reader.half_open), wholes)


def has_demand(wish: Wish) -> bool:
    """Tell whether a wish is about the order at all."""
    return isinstance(wish, (StopWish, SetInWish, FirstWish, PartialWish))


class _Reader:
    """Gathers what each wish asks."""

    def __init__(self, graph: PatchGraph) -> None:
        self.graph = graph
        self.place = {patch.id: index for index, patch in enumerate(graph.block.patches)}
        self.early: dict[int, set[int]] = {}
        self.held: set[int] = set()
        self.half_open: list[frozenset[int]] = []
        self.wholes: list[tuple[str, frozenset[int]]] = []

    def read(self, wish: Wish) -> None:
        match wish:
            case StopWish(patches=(a, b), at=at):
                self._stop(self.seam(a, b), next(j.index for j in self.graph.junctions if same_point(j.at, at)))
            case SetInWish(patch=patch, between=between):
                self._set_in(self.place[patch], {self.place[name] for name in between})
            case FirstWish(name=name, patches=patches):
                self._whole(name, frozenset(self.place[patch] for patch in patches))
            case PartialWish(patches=(a, b)):
                self.half_open.append(frozenset(self._along(self.seam(a, b))))

    def seam(self, a: str, b: str) -> set[int]:
        pair = {self.place[a], self.place[b]}
        return {segment.index for segment in self.graph.seams if set(segment.patches) == pair}

    def _stop(self, seam: set[int], junction: int) -> None:
        """A seam stops where others close the junction; where one runs straight through, it stops by itself or not."""
        if self.graph.junctions[junction].always_pivots:
            self.early.setdefault(junction, set()).update(seam)

    def _set_in(self, patch: int, between: set[int]) -> None:
        """The patch comes last at each of its corners from the first of its neighbours to the last."""
        for junction, before, after in self._corners(patch, between):
            others = {end.segment for end in self.graph.junctions[junction].ends} - {before, after}
            self.early.setdefault(junction, set()).update(others)
            self.held.add(junction)

    def _corners(self, patch: int, between: set[int]) -> list[tuple[int, int, int]]:
        ring = self.graph.sides[patch]
        beside = [self._other(*side) in between for side in ring]
        count = len(ring)
        together = [i for i in range(count) if beside[i] and beside[i - 1]]
        if not together and sum(beside) > 1:
            together = _shortest_way(beside)
        corners = [(self._start(*ring[i]), ring[i - 1][0], ring[i][0]) for i in together]
        return [corner for corner in corners if self.graph.junctions[corner[0]].is_inner]

    def _other(self, index: int, on_left: bool) -> int:
        segment = self.graph.segments[index]
        return segment.right if on_left else segment.left

    def _start(self, index: int, on_left: bool) -> int:
        segment = self.graph.segments[index]
        return segment.start if on_left else segment.end

    def _whole(self, name: str, patches: frozenset[int]) -> None:
        self.wholes.append((name, patches))
        for segment in self.graph.seams:
            inside = [side in patches for side in segment.patches]
            for junction in (segment.start, segment.end) if all(inside) else ():
                if self.graph.junctions[junction].is_inner and not self._within(junction, patches):
                    self.early.setdefault(junction, set()).add(segment.index)

    def _within(self, junction: int, patches: frozenset[int]) -> bool:
        ends = self.graph.junctions[junction].ends
        return all(side in patches for end in ends for side in self.graph.segments[end.segment].patches)

    def _along(self, seam: set[int]) -> set[int]:
        """Return the junctions that the straight run of a seam passes."""
        passed: set[int] = set()
        waiting = sorted(seam)
        seen = set(waiting)
        while waiting:
            index = waiting.pop()
            segment = self.graph.segments[index]
            for junction in (segment.start, segment.end):
                on = next(e.straight_on for e in self.graph.junctions[junction].ends if e.segment == index)
                if on is not None and self.graph.junctions[junction].is_inner:
                    passed.add(junction)
                    if on not in seen:
                        seen.add(on)
                        waiting.append(on)
        return passed


def _shortest_way(beside: list[bool]) -> list[int]:
    """Return the places passed on the shorter way round from the first neighbour to the last."""
    count = len(beside)
    places = [i for i in range(count) if beside[i]]
    ways = []
    for first, last in (pair for one, other in combinations(places, 2) for pair in ((one, other), (other, one))):
        ways.append([(first + step) % count for step in range(1, (last - first) % count + 1)])
    return min(ways, key=lambda way: (len(way), way))
