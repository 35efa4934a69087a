"""Straight cuts right through a unit: always safe to take, since an order for the whole restricts to each side."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from blocklang.assembly.likeness import Key, Likeness
from blocklang.assembly.preferences import RowCost, Why, why_best
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.splits import Split, SplitKind
from blocklang.geometry.marks import Marks

#: Rows of up to this many parts are also tried as rows of rows.
_GROUPED = 9
#: Rows of up to this many parts are taken together in every way.
_SHORT = 5


class StraightCuts:
    """Chooses among a unit's straight cuts; `columns` is what the author asks for, None when nothing."""

    def __init__(self, ground: Ground, likeness: Likeness, columns: bool | None) -> None:
        """Keep what every choice needs."""
        self.ground = ground
        self.likeness = likeness
        self.columns = columns
        self.made: set[Key] = set()  # what other parts of the block are made of already
        self._headings = Marks(2e-3)
        self._whole = Region(())

    def best(self, survey: Survey, cuts: list[Chain]) -> Split | None:
        """Return the split along the best family of cuts, or None when there is no cut."""
        self._whole = survey.region
        around = self._around(survey, cuts) if len(cuts) > 2 and self.columns is None else None
        if around is not None:
            return around
        scored = [scored for family in self._families(cuts) for scored in self._rows(survey, family)]
        if not scored:
            return None
        return replace(min(scored, key=lambda pair: pair[0])[1], why=why_best([cost for cost, _ in scored]))

    def _families(self, cuts: list[Chain]) -> Iterator[list[Chain]]:
        families: dict[int, list[Chain]] = {}
        for number, cut in enumerate(cuts):
            heading = self._heading(cut)
            families.setdefault(-1 - number if heading is None else heading, []).append(cut)
        yield from families.values()

    def _heading(self, cut: Chain) -> int | None:
        edges = [self.ground.graph.segments[index].edge for index in cut.segments]
        if any(edge.arc for edge in edges):
            return None
        heading = edges[0].departs() % math.pi
        return self._headings.number(0.0 if math.pi - heading < 1e-3 else heading)

    def _rows(self, survey: Survey, family: list[Chain]) -> Iterator[tuple[RowCost, Split]]:
        """Yield the whole family as one row, and rows of rows, where that works; otherwise each cut alone."""
        row = self._row(survey, family)
        if row is not None:
            for sizes in _groupings(len(row.parts)) if len(row.parts) <= _GROUPED else [(1,) * len(row.parts)]:
                yield self._score(row, sizes, family), self._grouped(row, sizes)
            return
        for cut in family:
            alone = self._row(survey, [cut])
            if alone is not None:
                yield self._score(alone, (1, 1), [cut]), alone

    def _grouped(self, row: Split, sizes: tuple[int, ...]) -> Split:
        return Split(SplitKind.ROW, tuple(self._together(group) for group in _runs(row.parts, sizes)), Why.ONLY_WAY)

    def _row(self, survey: Survey, family: list[Chain]) -> Split | None:
        parts = self.ground.parts(survey, (index for cut in family for index in cut.segments))
        if len(parts) != len(family) + 1:
            return None
        order = in_a_row(self._borders(parts, family), len(parts))
        if order is None:
            return None
        regions = tuple(self.ground.part(survey.region, parts[place]) for place in order)
        return Split(SplitKind.ROW, self._from_the_left(regions), Why.ONLY_WAY)

    def _borders(self, parts: list[tuple[int, ...]], family: list[Chain]) -> list[tuple[int, int]]:
        """Return, for each cut, the two parts that it separates."""
        part_of = {patch: place for place, part in enumerate(parts) for patch in part}
        segments = self.ground.graph.segments
        return [(part_of[segments[c.segments[0]].left], part_of[segments[c.segments[0]].right]) for c in family]

    def _from_the_left(self, regions: tuple[Region, ...]) -> tuple[Region, ...]:
        """Turn a row so that it reads from the left, or from the top."""
        first, last = (self._middle(region) for region in (regions[0], regions[-1]))
        across = last[0] - first[0]
        level = abs(across) > abs(last[1] - first[1]) * 0.5
        backwards = across < 0 if level else last[1] > first[1]
        return regions[::-1] if backwards else regions

    def _middle(self, region: Region) -> tuple[float, float]:
        likes = [self.likeness.patches[patch] for patch in region.patches]
        return sum(like.x for like in likes) / len(likes), sum(like.y for like in likes) / len(likes)

    def _score(self, row: Split, sizes: tuple[int, ...], family: list[Chain]) -> RowCost:
        """Measure a row by what quilters prefer."""
        heading = self.ground.graph.segments[family[0].segments[0]].edge.departs()
        groups = _runs(row.parts, sizes)
        units = [self._together(group) for group in groups]
        upright = abs(math.cos(heading)) < 0.5
        return RowCost(
            against_author=int(self.columns is not None and upright is not self.columns),
            awkward=int(any(not self._is_rectangle(unit, heading) for unit in units if len(unit.patches) > 1)),
            new_kinds=self._new_units(units, groups),
            parts=-len(row.parts),
            joins=len(units),
            columns=int(upright),
        )

    def _new_units(self, units: list[Region], groups: list[tuple[Region, ...]]) -> int:
        """Count the different units that must be made for a row and are not made elsewhere anyway."""
        keyed = {self.likeness.key(unit.patches)[0]: group for unit, group in zip(units, groups, strict=True)}
        inner = (part for group in keyed.values() if len(group) > 1 for part in group)
        made = {self.likeness.key(part.patches)[0] for part in inner if len(part.patches) > 1}
        made.update(key for key in keyed if len(key) > 1)
        return len(made - self.made)

    def _together(self, group: tuple[Region, ...]) -> Region:
        if len(group) == 1:
            return group[0]
        return self.ground.part(self._whole, tuple(sorted(patch for part in group for patch in part.patches)))

    def _is_rectangle(self, region: Region, heading: float) -> bool:
        cos, sin = math.cos(heading), math.sin(heading)
        corners = [c for patch in region.patches for c in self.ground.graph.block.patches[patch].outline.chords()]
        along = [c.x * cos + c.y * sin for c in corners]
        across = [c.y * cos - c.x * sin for c in corners]
        box = (max(along) - min(along)) * (max(across) - min(across))
        return sum(self.ground.areas[patch] for patch in region.patches) > box * 0.9999

    def _around(self, survey: Survey, cuts: list[Chain]) -> Split | None:
        """Return equal parts sewn round one body, when the cuts part it so."""
        passed = [junction for cut in cuts for junction in cut.inner]
        if len(passed) > len(set(passed)):
            return None
        parts = self.ground.parts(survey, (index for cut in cuts for index in cut.segments))
        if len(parts) != len(cuts) + 1:
            return None
        return self._equal_leaves(survey, parts, self._borders(parts, cuts))

    def _equal_leaves(
        self, survey: Survey, parts: list[tuple[int, ...]], borders: list[tuple[int, int]]
    ) -> Split | None:
        degree = [sum(place in border for border in borders) for place in range(len(parts))]
        if max(degree) < len(borders):
            return None
        body = degree.index(max(degree))
        alike: dict[object, list[tuple[int, ...]]] = {}
        for place, part in enumerate(parts):
            if place != body:
                alike.setdefault(self.likeness.key(part)[0], []).append(part)
        leaves = max(alike.values(), key=lambda group: (len(group), -len(group[0])))
        return around(self.ground, survey.region, leaves, Why.ROUND_A_BODY) if len(leaves) > 2 else None


def around(ground: Ground, region: Region, leaves: list[tuple[int, ...]], why: Why) -> Split:
    """Return the split of a region into a body and what is sewn to it."""
    gone = {patch for leaf in leaves for patch in leaf}
    body = tuple(patch for patch in region.patches if patch not in gone)
    return Split(SplitKind.AROUND, tuple(ground.part(region, part) for part in (body, *leaves)), why)


def _groupings(count: int) -> Iterator[tuple[int, ...]]:
    """Yield ways to take a row of parts together, one by one first: all of them for short rows, even ones for long."""
    yield (1,) * count
    if count <= _SHORT:
        yield from (sizes for sizes in _sums(count) if 1 < len(sizes) < count)
        return
    for first in range(1, count // 2 + 1):
        middle = count - 2 * first
        yield from [(first, first)] if middle == 0 else [(first, *(1,) * middle, first), (first, middle, first)]
    yield from ((size,) * (count // size) for size in range(2, count // 2 + 1) if count % size == 0)


def _sums(count: int) -> Iterator[tuple[int, ...]]:
    """Yield the ways to write a number as a sum, order minded, those that read the same from both ends first."""
    sums = [(first, *rest) for first in range(1, count) for rest in _sums(count - first)]
    yield from sorted([*sums, (count,)], key=lambda one: (one != one[::-1], one))


def _runs(parts: tuple[Region, ...], sizes: tuple[int, ...]) -> list[tuple[Region, ...]]:
    starts = [sum(sizes[:place]) for place in range(len(sizes))]
    return [parts[start : start + size] for start, size in zip(starts, sizes, strict=True)]


def in_a_row(borders: Iterable[tuple[int, int]], count: int) -> list[int] | None:
    """Return the parts in the order in which they lie side by side, or None when they do not lie in one row."""
    beside: list[list[int]] = [[] for _ in range(count)]
    for a, b in borders:
        beside[a].append(b)
        beside[b].append(a)
    ends = [place for place in range(count) if len(beside[place]) == 1]
    if len(ends) != 2 or any(len(near) > 2 for near in beside):
        return None
    order, here, before = [ends[0]], ends[0], -1
    while len(order) < count:
        here, before = next(place for place in beside[here] if place != before), here
        order.append(here)
    return order
