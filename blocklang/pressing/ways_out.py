"""The cheapest way out where a junction does not lock: each one is tried by pressing the seams near it anew."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang.pressing.copies import Copies, Copy, copies_of
from blocklang.pressing.costs import kept
from blocklang.pressing.lines import PressingWish, say_junction, say_line, say_seam
from blocklang.pressing.nearby import Nearby, ends_of, near, not_opened
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule
from blocklang.wording import Saying, say, say_number

#: So many ways are tried in all; junctions after that are told without one.
_MOST_TRIED = 100
#: Of the joins near a junction, so many are tried with a clip.
_MOST_CLIPS = 6


@dataclass(frozen=True, slots=True)
class WayOut:
    """A way out that was tried, and how it is said.

    `cost` counts junctions near by where allowances lie on each other, then clips, then junctions that do not lock;
    `others` are junctions that lock now and then do not.
    """

    cost: tuple[int, int, int]
    others: int
    said: Saying


@dataclass(slots=True)
class WaysOut:
    """The pressing as it is, to try other ones against."""

    question: Question  # about clips and locks alone
    left: Sequence[bool]
    tried: int = 0
    kinds: tuple[Copies, ...] | None = None

    def best(self, rule: Rule, lines: Sequence[PressingWish]) -> str:
        """Return a sentence on how a junction can lock, or at least lie flat; "" when nothing tried comes to that.

        To turn a copy costs nothing, to leave out a line less than an open seam, and that less than a clip: the first
        of these that takes no lock elsewhere is the cheapest, and where each takes some, the one that takes fewest.
        """
        if self.tried >= _MOST_TRIED:
            return ""
        turn = next(self._turns(rule), None)
        if turn is not None:
            return turn
        found: list[WayOut] = []
        for way in self._others(rule, near(self.question, rule, self.left), lines):
            if not way.others:
                return way.said
            found.append(way)
        return min(found, key=lambda way: way.cost).said if found else ""

    def without_open(self, line: PressingWish, segment: int, junction: int) -> str:
        """Return a sentence when a junction locks without a line that presses a seam open."""
        if self.tried >= _MOST_TRIED:
            return ""
        self.tried += 1
        question = not_opened(self.question, segment)
        rule = next(r for r in question.rules if r.rank is Rank.LOCKS and r.junction == junction)
        pressed = near(question, rule, self.left).pressed()
        locks = pressed and kept(rule, pressed)
        return say("Without the line {line} they lock.", line=say_line(line)) if locks else ""

    def _others(self, rule: Rule, place: Nearby, lines: Sequence[PressingWish]) -> Iterator[WayOut]:
        """Leave out a line, press a seam of the junction open, or clip a join near by."""
        graph = self.question.graph
        for line in lines:
            said = say("Leave out the line {line}", line=say_line(line))
            yield from self._try(rule, place, place.without(line), said)
        for segment in ends_of(rule):
            said = say("Press the seam between {patches} open", patches=say_seam(graph, graph.segments[segment]))
            yield from self._try(rule, place, place.opened(segment), said)
        for clip in place.question.rules:
            if clip.rank is Rank.CLIPS and kept(clip, self.left):
                there = clip.junction == rule.junction
                said = say("Clip the join there") if there else _say_clip(say_junction(graph, clip.junction))
                yield from self._try(rule, place, place.clipped(clip), said, 1)

    def _try(self, rule: Rule, before: Nearby, after: Nearby, said: Saying, clipped: int = 0) -> Iterator[WayOut]:
        """Press anew; yield the way when the junction locks then, or lies flat, and nothing else lies worse."""
        if self.tried >= _MOST_TRIED:
            return
        self.tried += 1
        pressed = after.pressed()
        if pressed is None:
            return
        flat = rule not in after.question.rules
        clips, lying = after.lost(pressed)
        clips_before, lying_before = before.lost(self.left)
        if (flat or kept(rule, pressed)) and lying < lying_before and clips <= clips_before:
            open_now = _locks(before) - _locks(after)
            others = max(0, lying + open_now - lying_before + (not flat))
            yield WayOut((lying, clips + clipped, lying + open_now), others, _say_way(said, flat, others))

    def _turns(self, rule: Rule) -> Iterator[str]:
        """Turn each copy that meets others there a quarter, pressed as it is, where the picture stays the same."""
        if self.kinds is None:
            self.kinds = copies_of(self.question.graph)
        ends = frozenset(ends_of(rule))
        for kind in self.kinds:
            for copy in kind.copies if kind.quarter else ():
                own = {slot.segment for slot in copy.slots}
                if self.tried < _MOST_TRIED and ends & own and not ends <= own:
                    yield from self._turn(rule, kind, copy)

    def _turn(self, rule: Rule, kind: Copies, copy: Copy) -> Iterator[str]:
        self.tried += 1
        turned = list(self.left)
        for slot, (there, changes) in zip(copy.slots, kind.quarter, strict=True):
            twin = copy.slots[there]
            turned[twin.segment] = (self.left[slot.segment] == slot.first_is_left) ^ changes == twin.first_is_left
        own = {slot.segment for slot in copy.slots}
        about = [r for r in self.question.rules if own.intersection(ends_of(r)) and not own.issuperset(ends_of(r))]
        before, after = ([r.rank for r in about if not kept(r, left)] for left in (self.left, turned))
        no_more_clips = after.count(Rank.CLIPS) <= before.count(Rank.CLIPS)
        if kept(rule, turned) and no_more_clips and after.count(Rank.LOCKS) < before.count(Rank.LOCKS):
            name = ".".join(copy.group)
            yield say("Turn {copy} a quarter, which does not change the picture, and they lock.", copy=name)


def _locks(place: Nearby) -> int:
    return sum(rule.rank is Rank.LOCKS for rule in place.question.rules)


def _say_clip(around: str) -> Saying:
    return say("Clip the join where {patches} meet", patches=around)


def _say_way(what: Saying, flat: bool, others: int) -> Saying:
    more = _say_others(others)
    if flat:
        return say("{advice}, and they lie flat there{more}.", advice=what, more=more)
    return say("{advice}, and they lock{more}.", advice=what, more=more)


def _say_others(others: int) -> str:
    if not others:
        return ""
    return say_number("; one other junction then does not lock", "; {count} other junctions then do not lock", others)
