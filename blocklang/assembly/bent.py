"""Bent cuts: what is set into a notch."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from blocklang.assembly.likeness import Likeness
from blocklang.assembly.permission import Permission
from blocklang.assembly.preferences import SetInCost, why_best
from blocklang.assembly.regions import Ground, Survey
from blocklang.assembly.splits import Split
from blocklang.assembly.straight import around
from blocklang.graph.values import OUTSIDE

_MOST_BENDS = 4
_MOST_PATHS = 400


@dataclass(frozen=True, slots=True)
class SetIn:
    """A part that may be set in last: its patches, its bends, those that cost more than they must, its free edges."""

    part: tuple[int, ...]
    bends: int
    dear: int
    outer: int


class BentCuts:
    """Finds what can be set in to finish a unit."""

    def __init__(self, ground: Ground, likeness: Likeness, permission: Permission) -> None:
        """Keep what every choice needs."""
        self.ground = ground
        self.likeness = likeness
        self.permission = permission
        self._labels: dict[int, int] = {}

    def best(self, survey: Survey, labels: dict[int, int], dear: bool) -> Split | None:
        """Return the set-in that bends only where every order must (when `dear`, the least besides)."""
        self._labels = labels
        patches = [found for patch in survey.region.patches if (found := self._one_patch(survey, patch))]
        free = [found for found in patches if not found.dear]
        if free:
            return self._all_alike(survey, free)
        units = list(self._units(survey))
        if units:
            return self._all_alike(survey, units)
        return self._all_alike(survey, patches, one=True) if dear and patches else None

    def _one_patch(self, survey: Survey, patch: int) -> SetIn | None:
        """Return a single patch as a set-in, if its seams inside the unit are one path with a bend."""
        ring = self.ground.graph.sides[patch]
        sewn = [index in survey.seams for index, _ in ring]
        starts = [i for i, inside in enumerate(sewn) if inside and not sewn[i - 1]]
        if len(starts) != 1:
            return None
        path = [ring[(starts[0] + i) % len(ring)] for i in range(sum(sewn))]
        inner = [self._arrival(index, on_left) for index, on_left in path[:-1]]
        if any(junction in survey.edge for junction in inner) or not self._allows([index for index, _ in path]):
            return None
        turns = [j for j, (a, b) in zip(inner, pairwise(path), strict=True) if self._bends(a[0], b[0], j)]
        dear = sum(not self.ground.graph.junctions[junction].always_pivots for junction in turns)
        outer = sum(OUTSIDE in self.ground.graph.segments[index].patches for index, _ in ring)
        return SetIn((patch,), len(turns), dear, outer)

    def _allows(self, path: list[int]) -> bool:
        return self.permission.allows(path, self._labels)

    def _arrival(self, index: int, on_left: bool) -> int:
        segment = self.ground.graph.segments[index]
        return segment.end if on_left else segment.start

    def _bends(self, a: int, b: int, junction: int) -> bool:
        return self.ground.on[a].get(junction) != b

    def _all_alike(self, survey: Survey, found: list[SetIn], one: bool = False) -> Split:
        """Return the cheapest kind of set-in, as many equal ones at once as do not touch each other."""
        alike: dict[object, list[SetIn]] = {}
        for item in found:
            alike.setdefault((self.likeness.key(item.part)[0], item.bends, item.dear, item.outer), []).append(item)
        groups = [(self._cost(items, len(survey.members)), items) for items in alike.values()]
        group = min(groups, key=lambda pair: pair[0])[1]
        chosen: list[tuple[int, ...]] = []
        taken: set[int] = set()
        for item in group[: 1 if one else None]:
            if not taken.intersection(item.part) and not self._touches(survey, item.part, taken):
                chosen.append(item.part)
                taken.update(item.part)
        return around(self.ground, survey.region, chosen, why_best([cost for cost, _ in groups]))

    def _cost(self, items: list[SetIn], size: int) -> SetInCost:
        """Measure equal set-ins by what quilters prefer."""
        first = items[0]
        smaller = min(len(first.part), size - len(first.part))
        return SetInCost(
            spare_pivots=first.dear,
            size=smaller - 1,
            bends=first.bends,
            inside=int(first.outer == 0),
            outside_edges=first.outer,
            count=-len(items),
            place=first.part[0],
        )

    def _touches(self, survey: Survey, part: tuple[int, ...], taken: set[int]) -> bool:
        sides = (self.ground.graph.segments[index] for patch in part for index, _ in self.ground.graph.sides[patch])
        return any(s.index in survey.seams and (s.left in taken or s.right in taken) for s in sides)

    def _units(self, survey: Survey) -> Iterator[SetIn]:
        """Yield units cut off by a path that bends only at junctions that always pivot."""
        budget = [_MOST_PATHS]
        seen: set[tuple[int, ...]] = set()
        for junction in sorted(survey.edge):
            for segment, path_end, walked in self._arms(survey, junction, None):
                for path, bends in self._paths(survey, [segment, *walked], path_end, {junction, path_end}, 0, budget):
                    if not self._allows(path):
                        continue
                    parts = self.ground.parts(survey, path)
                    part = min(parts, key=lambda p: (len(p), p))
                    if len(parts) == 2 and part not in seen:
                        seen.add(part)
                        yield SetIn(part, bends, 0, 0)

    def _arms(self, survey: Survey, junction: int, came: int | None) -> Iterator[tuple[int, int, list[int]]]:
        for end in self.ground.graph.junctions[junction].ends:
            if end.segment in survey.seams and end.segment != came:
                first = self.ground.graph.segments[end.segment].other_end(junction)
                walked, passed = self.ground.follow(survey, end.segment, first)
                yield end.segment, (passed[-1] if passed else first), walked

    def _paths(
        self, survey: Survey, path: list[int], here: int, been: set[int], bends: int, budget: list[int]
    ) -> Iterator[tuple[list[int], int]]:
        budget[0] -= 1
        if here in survey.edge:
            if bends:
                yield path, bends
            return
        if bends == _MOST_BENDS or budget[0] < 0 or not self.ground.graph.junctions[here].always_pivots:
            return
        for segment, end, walked in self._arms(survey, here, path[-1]):
            if end not in been:
                longer = [*path, segment, *walked]
                yield from self._paths(survey, longer, end, been | {end}, bends + 1, budget)
