"""Finding what holds a seam to its side: an author's line, or a ring of junctions that comes back the wrong way."""

from collections import deque
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from blocklang.pressing.costs import holds
from blocklang.pressing.lines import PressingWish
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie

_SPINS = (Rank.CENTRES, Rank.CROSSES)


@dataclass(frozen=True, slots=True)
class Holds:
    """The author's line that holds each segment to its side, by segment, where there is one."""

    by_segment: tuple[PressingWish | None, ...]

    def apart(self, ties: Iterable[Tie], left: Sequence[bool]) -> tuple[PressingWish, ...]:
        """Return the lines that hold apart the segments of ties that are broken, in file order."""
        ends = (end for tie in ties if not holds((tie,), left) for end in (tie.one, tie.other))
        found = {wish for end in ends if (wish := self.by_segment[end]) is not None}
        return tuple(sorted(found, key=lambda wish: (wish.span.position(), repr(wish))))


def holds_of(question: Question, left: Sequence[bool]) -> Holds:
    """Follow the ties that are kept from the seams that the author settles, the nearest line first."""
    found: list[PressingWish | None] = [None] * len(question.graph.segments)
    waiting: deque[int] = deque()
    for line in question.lines.lines:
        for settled in line.settles:
            found[settled.segment] = line.wish
            if settled.left is not None:
                waiting.append(settled.segment)
    beside = _beside(question.rules, left) if waiting else {}
    while waiting:
        segment = waiting.popleft()
        for other in beside.get(segment, ()):
            if found[other] is None:
                found[other] = found[segment]
                waiting.append(other)
    return Holds(tuple(found))


def _beside(rules: Iterable[Rule], left: Sequence[bool]) -> dict[int, list[int]]:
    beside: dict[int, list[int]] = {}
    for rule in rules:
        for tie in rule.ties:
            if holds((tie,), left):
                beside.setdefault(tie.one, []).append(tie.other)
                beside.setdefault(tie.other, []).append(tie.one)
    return beside


@dataclass(frozen=True, slots=True)
class Rings:
    """The ties of all locks and spins, for walking round; each leads to a segment, by a rule's junction."""

    beside: dict[int, tuple[tuple[int, bool, int], ...]]

    def through(self, rule: Rule, ends: Sequence[int]) -> tuple[int, ...]:
        """Return the junctions of a shortest odd ring that leaves a junction by one seam and comes back by another.

        The ring starts with the rule's own junction; it is empty when there is none.
        """
        own = _relative(rule)
        came: dict[tuple[int, bool], tuple[tuple[int, bool], int] | None] = {(ends[0], own[ends[0]]): None}
        waiting = deque(came)
        while waiting:
            here = waiting.popleft()
            if here[0] in own and here[1] != own[here[0]]:
                return (rule.junction, *_junctions_back(came, here))
            for other, differ, junction in self.beside.get(here[0], ()):
                there = (other, here[1] ^ differ)
                if junction != rule.junction and there not in came:
                    came[there] = (here, junction)
                    waiting.append(there)
        return ()


def rings_of(rules: Iterable[Rule], ranks: tuple[Rank, ...] = _SPINS) -> Rings:
    """Return the ties of all rules of some ranks, to look for odd rings in."""
    beside: dict[int, list[tuple[int, bool, int]]] = {}
    for rule in rules:
        if rule.rank in ranks:
            for one, other, differ in rule.ties:
                beside.setdefault(one, []).append((other, differ, rule.junction))
                beside.setdefault(other, []).append((one, differ, rule.junction))
    return Rings({segment: tuple(others) for segment, others in beside.items()})


def shortest_ring(rings: Rings, rule: Rule) -> tuple[int, ...]:
    """Return the shortest odd ring through a rule's junction, or none."""
    found = [ring for end in _relative(rule) if (ring := rings.through(rule, (end,)))]
    return min(found, key=len, default=())


def _relative(rule: Rule) -> dict[int, bool]:
    """Return whether each segment of a junction's rule differs in side from the first, when all lie one way round."""
    relative = {rule.ties[0].one: False}
    for one, other, differ in rule.ties:
        relative[other] = relative[one] ^ differ
    return relative


def _junctions_back(
    came: dict[tuple[int, bool], tuple[tuple[int, bool], int] | None], here: tuple[int, bool]
) -> tuple[int, ...]:
    junctions: list[int] = []
    step = came[here]
    while step is not None:
        here, junction = step
        if not junctions or junctions[-1] != junction:
            junctions.append(junction)
        step = came[here]
    return tuple(junctions)
