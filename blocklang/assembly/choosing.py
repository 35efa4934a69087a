"""Choosing how a unit comes apart, the same way for equal units."""

import math

from blocklang.assembly.bent import BentCuts
from blocklang.assembly.likeness import Key, Likeness
from blocklang.assembly.opening import full, half_open
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.splits import Split
from blocklang.assembly.straight import StraightCuts
from blocklang.block import FirstWish, RowsWish
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph


class Chooser:
    """Takes units apart, last join first; remembers one answer for each kind of unit."""

    def __init__(self, graph: PatchGraph) -> None:
        """Measure the graph once."""
        self.ground = Ground(graph)
        self.likeness = Likeness(graph)
        columns = any(isinstance(wish, RowsWish) and wish.columns for wish in graph.block.wishes)
        self._straight = StraightCuts(self.ground, self.likeness, columns)
        self._bent = BentCuts(self.ground, self.likeness)
        self._groups = _groups(graph)
        self._places: dict[str, int] = {}
        for patch in range(len(self._groups)):
            if self._groups[patch]:
                self._places.setdefault(self.group_of(patch), patch)
        self._known: dict[Key, tuple[Split, tuple[int, ...]]] = {}

    def split(self, region: Region) -> Split | None:
        """Return how a region of two patches or more comes apart; None when no order of joins can make it."""
        if region.open:
            return self._choose(region)
        key, order = self.likeness.key(region.patches)
        labels = self._labels(region)
        self._straight.made.add(key)
        named = (*key, *(labels.get(patch, -1) for patch in order))
        if named not in self._known:
            chosen = self._choose(region)
            if chosen is None or chosen.closing:
                return chosen
            self._known[named] = chosen, order
        return _moved(*self._known[named], order) if self._known[named][1] != order else self._known[named][0]

    def group_of(self, patch: int) -> str:
        """Return the placed block or named unit that a patch belongs to, the outermost; "" when none."""
        return self._groups[patch][0] if self._groups[patch] else ""

    def group_place(self, name: str) -> int:
        """Return where a placed block comes in the file; what belongs to none comes after all of them."""
        return self._places.get(name, len(self._groups))

    def _choose(self, region: Region) -> Split | None:
        survey = self.ground.survey(region)
        labels = self._labels(region)
        if labels:
            found = self._cut(survey, labels)
            if found is not None:
                return found
        return (
            self._cut(survey, {})
            or half_open(self.ground, survey, self.ground.chains(survey))
            or self._bent.best(survey, dear=True)
        )

    def _cut(self, survey: Survey, labels: dict[int, int]) -> Split | None:
        """Take a straight cut if there is one, otherwise set in what costs nothing; `labels` keep units whole."""
        cuts = [c for c in self.ground.chains(survey) if full(survey, c) and self._keeps(c, labels)]
        cuts = [c for c in cuts if self._from_a_notch(survey, c)] or cuts
        split = self._straight.best(survey, cuts) if cuts else None
        return split or (None if labels else self._bent.best(survey, dear=False))

    def _from_a_notch(self, survey: Survey, chain: Chain) -> bool:
        """Tell whether a cut starts in an inner corner of the unit: there two units meet that were made alone."""
        ends = (chain.junctions[0], chain.junctions[-1])
        return any(self.ground.angle(end, survey.members) > math.pi + STRAIGHT_ANGLE for end in ends)

    def _keeps(self, chain: Chain, labels: dict[int, int]) -> bool:
        """Tell whether a cut runs between named units all along."""
        if not labels:
            return True
        sides = (self.ground.graph.segments[index].patches for index in chain.segments)
        return all(labels[a] != labels[b] for a, b in sides)

    def _labels(self, region: Region) -> dict[int, int]:
        """Return a number for each patch, equal within what must stay one unit; empty when nothing must."""
        names = [self._groups[patch] for patch in region.patches]
        depth = _shared_depth(names)
        keys = [
            name[: depth + 1] if len(name) > depth else (patch,)
            for name, patch in zip(names, region.patches, strict=True)
        ]
        numbers: dict[object, int] = {}
        labels = {p: numbers.setdefault(key, len(numbers)) for p, key in zip(region.patches, keys, strict=True)}
        return labels if 1 < len(numbers) < len(keys) else {}


def _moved(split: Split, order: tuple[int, ...], onto: tuple[int, ...]) -> Split:
    """Carry a split from one unit over to an equal one, patch for patch."""
    to = dict(zip(order, onto, strict=True))
    if split.closing:
        raise AssertionError("a half-open seam is chosen afresh for each unit")
    parts = (Region(tuple(sorted(to[patch] for patch in part.patches)), part.open) for part in split.parts)
    return Split(split.kind, tuple(parts))


def _groups(graph: PatchGraph) -> tuple[tuple[str, ...], ...]:
    names = [patch.group for patch in graph.block.patches]
    place = {patch.id: index for index, patch in enumerate(graph.block.patches)}
    for wish in graph.block.wishes:
        if isinstance(wish, FirstWish):
            for patch in wish.patches:
                if wish.name not in names[place[patch]]:
                    names[place[patch]] = (*names[place[patch]], wish.name)
    return tuple(names)


def _shared_depth(names: list[tuple[str, ...]]) -> int:
    first, depth = names[0], 0
    while depth < len(first) and all(len(name) > depth and name[depth] == first[depth] for name in names):
        depth += 1
    return depth
