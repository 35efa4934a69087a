"""Sewing the finished sections to one another: straight joins wherever there are any, then the fewest set-in ones."""

from collections.abc import Iterator
from itertools import combinations

from blocklang.foundation.values import SectionJoin
from blocklang.graph.values import PatchGraph

#: Sections with no straight join between them are sewn by the best order while they are no more than these.
_MOST_COMPARED = 8

Group = tuple[int, ...]
Cost = tuple[int, int]


class Joiner:
    """Finds how the sections of one division are joined; `owner` gives the section of each patch."""

    def __init__(self, graph: PatchGraph, owner: tuple[int, ...]) -> None:
        """Index what is left to sew."""
        self._graph = graph
        self._owner = owner
        self._straight_on = {
            (end.segment, junction.index): end.straight_on for junction in graph.junctions for end in junction.ends
        }
        self._cut = tuple(s.index for s in graph.seams if owner[s.left] != owner[s.right])
        self._between_two: dict[tuple[int, int], list[int]] = {}
        self._near: dict[int, set[int]] = {place: set() for place in owner}
        for index in self._cut:
            a, b = self._sides(index)
            self._between_two.setdefault((min(a, b), max(a, b)), []).append(index)
            self._near[a].add(b)
            self._near[b].add(a)
        self._whole: dict[Group, bool] = {}
        self._best: dict[Group, tuple[Cost, tuple[SectionJoin, ...]] | None] = {}

    def joins(self) -> tuple[SectionJoin, ...] | None:
        """Return the joins in order, or None when no order was found."""
        return self._sewn(tuple(sorted(set(self._owner))))

    def _sewn(self, group: Group) -> tuple[SectionJoin, ...] | None:
        if len(group) == 1:
            return ()
        straight = self._straight_split(group)
        if straight is not None:
            return self._both(straight)
        if len(group) <= _MOST_COMPARED:
            best = self._compared(group)
            return None if best is None else best[1]
        peeled = min(
            self._peels(group), key=lambda join: (len(join.pivots), len(join.segments), join.second), default=None
        )
        return None if peeled is None else self._both(peeled)

    def _both(self, join: SectionJoin) -> tuple[SectionJoin, ...] | None:
        first, second = self._sewn(join.first), self._sewn(join.second)
        return None if first is None or second is None else (*first, *second, join)

    def _compared(self, group: Group) -> tuple[Cost, tuple[SectionJoin, ...]] | None:
        """Return the joins of a few sections with the fewest set-in joins, then pivots, of all orders."""
        if len(group) == 1:
            return (0, 0), ()
        if group not in self._best:
            ways = (self._way(join) for join in self._splits(group))
            self._best[group] = min((way for way in ways if way is not None), key=lambda way: way[0], default=None)
        return self._best[group]

    def _way(self, join: SectionJoin) -> tuple[Cost, tuple[SectionJoin, ...]] | None:
        first, second = self._compared(join.first), self._compared(join.second)
        if first is None or second is None:
            return None
        set_in = first[0][0] + second[0][0] + join.is_set_in
        pivots = first[0][1] + second[0][1] + len(join.pivots)
        return (set_in, pivots), (*first[1], *second[1], join)

    def _splits(self, group: Group) -> Iterator[SectionJoin]:
        for size in range(1, len(group) // 2 + 1):
            for second in combinations(group, size):
                first = tuple(place for place in group if place not in second)
                join = self._join(first, second)
                if join is not None:
                    yield join

    def _peels(self, group: Group) -> Iterator[SectionJoin]:
        for place in group:
            join = self._join(tuple(other for other in group if other != place), (place,))
            if join is not None:
                yield join

    def _join(self, first: Group, second: Group) -> SectionJoin | None:
        """Return the join of two groups, or None when one falls apart or they do not meet along one path."""
        if not self._holds_together(first) or not self._holds_together(second):
            return None
        pairs = ((min(a, b), max(a, b)) for a in first for b in second)
        shared = sorted(index for pair in pairs for index in self._between_two.get(pair, ()))
        return self._told(first, second, shared)

    def _told(self, first: Group, second: Group, shared: list[int]) -> SectionJoin | None:
        path = self._in_order(shared)
        if path is None:
            return None
        inner = [j for a, b in zip(path, path[1:], strict=False) if (j := self._between(a, b)) is not None]
        pairs = zip(path, path[1:], inner, strict=False)
        pivots = tuple(j for a, b, j in pairs if self._straight_on.get((a, j)) != b)
        curved = any(self._graph.segments[index].edge.arc for index in path)
        return SectionJoin(first, second, path, pivots, curved)

    def _meets(self, index: int, there: set[int], here: set[int]) -> bool:
        left, right = self._sides(index)
        return (left in there and right in here) or (left in here and right in there)

    def _in_order(self, shared: list[int]) -> tuple[int, ...] | None:
        at: dict[int, list[int]] = {}
        for index in shared:
            for junction in (self._graph.segments[index].start, self._graph.segments[index].end):
                at.setdefault(junction, []).append(index)
        ends = sorted(junction for junction, touching in at.items() if len(touching) == 1)
        if len(ends) != 2 or any(len(touching) > 2 for touching in at.values()):
            return None
        here, path = ends[0], [at[ends[0]][0]]
        while (here := self._graph.segments[path[-1]].other_end(here)) != ends[1]:
            path.append(next(index for index in at[here] if index != path[-1]))
        return tuple(path) if len(path) == len(shared) else None

    def _between(self, a: int, b: int) -> int | None:
        first, second = self._graph.segments[a], self._graph.segments[b]
        return next((j for j in (first.start, first.end) if j in (second.start, second.end)), None)

    def _holds_together(self, group: Group) -> bool:
        if group not in self._whole:
            left, waiting = set(group[1:]), [group[0]]
            while waiting and left:
                fresh = self._near[waiting.pop()] & left
                left -= fresh
                waiting.extend(fresh)
            self._whole[group] = not left
        return self._whole[group]

    def _sides(self, index: int) -> tuple[int, int]:
        left, right = self._graph.segments[index].patches
        return self._owner[left], self._owner[right]

    def _flood(self, group: Group, closed: frozenset[int], start: int) -> set[int]:
        members = set(group)
        near: dict[int, set[int]] = {place: set() for place in group}
        for index in self._cut:
            left, right = self._sides(index)
            if index not in closed and left in members and right in members:
                near[left].add(right)
                near[right].add(left)
        reached, waiting = {start}, [start]
        while waiting:
            fresh = near[waiting.pop()] - reached
            reached |= fresh
            waiting.extend(fresh)
        return reached

    def _straight_split(self, group: Group) -> SectionJoin | None:
        """Return the straight join right across that parts a group most evenly; taking one is always safe."""
        members = set(group)
        inside = {index for index in self._cut if self._within(index, members)}
        found: list[tuple[int, int, SectionJoin]] = []
        done: set[int] = set()
        for index in sorted(inside):
            if index in done:
                continue
            chain = self._chain(index, inside)
            done.update(chain)
            first = self._flood(group, frozenset(chain), group[0])
            if len(first) < len(group):
                second = tuple(place for place in group if place not in first)
                join = self._told(tuple(sorted(first)), second, chain) if self._holds_together(second) else None
                if join is not None and not join.pivots and self._is_all(join, inside):
                    found.append((abs(len(first) - len(second)), index, join))
        return min(found, key=lambda one: one[:2])[2] if found else None

    def _is_all(self, join: SectionJoin, inside: set[int]) -> bool:
        there, here = set(join.first), set(join.second)
        return sum(self._meets(index, there, here) for index in inside) == len(join.segments)

    def _within(self, index: int, members: set[int]) -> bool:
        return all(self._owner[patch] in members for patch in self._graph.segments[index].patches)

    def _chain(self, index: int, inside: set[int]) -> list[int]:
        """Return the seam segments that run straight on from one, both ways, as far as they are to be sewn."""
        chain = [index]
        for junction in (self._graph.segments[index].start, self._graph.segments[index].end):
            here, at = index, junction
            while (following := self._straight_on.get((here, at))) in inside and following not in chain:
                assert following is not None
                chain.append(following)
                here, at = following, self._graph.segments[following].other_end(at)
        return chain


def join_sections(graph: PatchGraph, owner: tuple[int, ...]) -> tuple[SectionJoin, ...] | None:
    """Return the joins that sew sections together, in order, or None when no order was found."""
    return Joiner(graph, owner).joins()
