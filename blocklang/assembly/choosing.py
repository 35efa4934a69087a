"""Choosing how a unit comes apart, the same way for equal units."""

import math
from dataclasses import replace

from blocklang.assembly.bent import BentCuts
from blocklang.assembly.cores import Cores
from blocklang.assembly.demands import Demands
from blocklang.assembly.likeness import Key, Likeness
from blocklang.assembly.opening import full
from blocklang.assembly.permission import Permission
from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Chain, Ground, Region, Survey
from blocklang.assembly.rounds import RoundCuts
from blocklang.assembly.splits import Split
from blocklang.assembly.straight import StraightCuts
from blocklang.assembly.wholes import Wholes
from blocklang.block import RowsWish
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph


class Chooser:
    """Takes units apart, last join first; remembers one answer for each kind of unit."""

    def __init__(self, graph: PatchGraph, demands: Demands) -> None:
        """Measure the graph once."""
        self.ground = Ground(graph)
        self.likeness = Likeness(graph)
        self.wholes = Wholes(graph, demands)
        self.cores = Cores(self.ground, demands)
        columns = next((wish.columns for wish in graph.block.wishes if isinstance(wish, RowsWish)), None)
        self._straight = StraightCuts(self.ground, self.likeness, columns)
        self._permission = Permission(self.ground, demands, self.cores.half_open)
        self._bent = BentCuts(self.ground, self.likeness, self._permission)
        self._rounds = RoundCuts(self.ground, self._permission)
        self._asked = demands.early.keys() | self.cores.half_open
        self._known: dict[Key, tuple[Split, tuple[int, ...]]] = {}

    def split(self, region: Region) -> Split | None:
        """Return how a region of two patches or more comes apart; None when no order of joins can make it."""
        if region.open or self._is_asked(region):
            return self._choose(region)
        key, order = self.likeness.key(region.patches)
        labels = self.wholes.all(region)
        self._straight.made.add(key)
        named = (*key, *(labels.get(patch, -1) for patch in order))
        if named not in self._known:
            chosen = self._choose(region)
            if chosen is None or chosen.closing:
                return chosen
            self._known[named] = chosen, order
        return _moved(*self._known[named], order) if self._known[named][1] != order else self._known[named][0]

    def _is_asked(self, region: Region) -> bool:
        """Tell whether the author says something about a junction of a region: then it is like no other."""
        if not self._asked:
            return False
        graph = self.ground.graph
        sides = (graph.segments[index] for patch in region.patches for index, _ in graph.sides[patch])
        return any(side.start in self._asked or side.end in self._asked for side in sides)

    def _choose(self, region: Region) -> Split | None:
        survey = self.ground.survey(region)
        named, kept = self.wholes.named(region), self.wholes.all(region)
        return (
            self._rounds.planned(region)
            or (self._cut(survey, kept, Why.FINISHED_UNITS) if kept != named else None)
            or self._cut(survey, named, self._asked_for(survey, named))
            or self._rounds.best(survey, named)
            or self._bent.best(survey, named, dear=False)
            or self.cores.split(survey, named)
            or self._bent.best(survey, named, dear=True)
        )

    def _asked_for(self, survey: Survey, named: dict[int, int]) -> Why | None:
        """Tell whether the author's units rule out a cut that would have been taken."""
        if not named:
            return None
        free, held = self._cut(survey, {}, None), self._cut(survey, named, None)
        return Why.ASKED if free != held else None

    def _cut(self, survey: Survey, labels: dict[int, int], why: Why | None) -> Split | None:
        """Take a straight cut if there is one that keeps together what `labels` number alike."""
        chains = self.ground.chains(survey)
        cuts = [c for c in chains if full(survey, c) and self._permission.allows(c.segments, labels)]
        notched = [c for c in cuts if self._from_a_notch(survey, c)]
        split = self._straight.best(survey, notched or cuts) if cuts else None
        why = why or (Why.FINISHED_UNITS if 0 < len(notched) < len(cuts) else None)
        return replace(split, why=why) if split is not None and why is not None else split

    def _from_a_notch(self, survey: Survey, chain: Chain) -> bool:
        """Tell whether a cut starts in an inner corner of the unit: there two units meet that were made alone."""
        ends = (chain.junctions[0], chain.junctions[-1])
        return any(self.ground.angle(end, survey.members) > math.pi + STRAIGHT_ANGLE for end in ends)


def _moved(split: Split, order: tuple[int, ...], onto: tuple[int, ...]) -> Split:
    """Carry a split from one unit over to an equal one, patch for patch."""
    to = dict(zip(order, onto, strict=True))
    if split.closing:
        raise AssertionError("a half-open seam is chosen afresh for each unit")
    parts = (Region(tuple(sorted(to[patch] for patch in part.patches)), part.open) for part in split.parts)
    return Split(split.kind, tuple(parts), split.why)
