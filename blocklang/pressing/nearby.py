"""The seams near a junction, to be pressed anew with something changed, all others held as they are."""

from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass, replace

from blocklang.pressing.costs import kept
from blocklang.pressing.lines import PressingWish
from blocklang.pressing.parts import tied_to_settled
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, rules_at
from blocklang.pressing.search import by_tables

#: So many seams round a junction are pressed anew.
_NEARBY = 32


@dataclass(frozen=True, slots=True)
class Nearby:
    """The question about the seams near a junction; only those in `free` can be pressed another way."""

    question: Question
    free: frozenset[int]

    def opened(self, segment: int) -> "Nearby":
        """Press one seam open."""
        own, rules = self.question, []
        for rule in own.rules:
            instead = () if any(segment in tie[:2] for tie in rule.instead) else rule.instead
            if not any(segment in tie[:2] for tie in rule.ties):
                rules.append(replace(rule, instead=instead))
        seams = tuple(seam for seam in own.seams if seam != segment)
        settled = tuple((seam, left) for seam, left in own.settled if seam != segment)
        changed = replace(own, seams=seams, settled=settled, rules=tuple(rules), opened=own.opened | {segment})
        return Nearby(changed, self.free - {segment})

    def without(self, line: PressingWish) -> "Nearby":
        """Leave out an author's line about the sides of seams."""
        own = {s.segment for followed in self.question.lines.lines if followed.wish is line for s in followed.settles}
        kept_to = tuple((seam, left) for seam, left in self.question.settled if seam not in own & self.free)
        return Nearby(replace(self.question, settled=kept_to), self.free)

    def clipped(self, clip: Rule) -> "Nearby":
        """Clip a join."""
        rules = tuple(rule for rule in self.question.rules if rule is not clip)
        return Nearby(replace(self.question, rules=rules), self.free)

    def pressed(self) -> tuple[bool, ...] | None:
        """Press it anew in the best way; None when it cannot be said which that is."""
        return by_tables(self.question, tied_to_settled(self.question))

    def lost(self, left: Sequence[bool]) -> tuple[int, int]:
        """Return the clips, and the junctions where allowances lie on each other."""
        broken = [rule.rank for rule in self.question.rules if not kept(rule, left)]
        return broken.count(Rank.CLIPS), broken.count(Rank.LOCKS)


def only_locks(question: Question) -> Question:
    """Return the question about clips and locks alone."""
    return replace(question, rules=tuple(rule for rule in question.rules if rule.rank <= Rank.LOCKS))


Beside = dict[int, list[int]]


def rules_beside(question: Question) -> Beside:
    """Return, for each segment, the places of the rules that are about it."""
    beside: Beside = {}
    for place, rule in enumerate(question.rules):
        for end in ends_of(rule):
            beside.setdefault(end, []).append(place)
    return beside


def near(question: Question, start: Rule, left: Sequence[bool], beside: Beside | None = None) -> Nearby:
    """Return what is near a rule, with all other seams held as they are pressed now."""
    beside = rules_beside(question) if beside is None else beside
    settled = {segment for segment, _ in question.settled}
    free, waiting = set(ends_of(start)), deque(ends_of(start))
    while waiting and len(free) < _NEARBY:
        for place in beside[waiting.popleft()]:
            fresh = [end for end in ends_of(question.rules[place]) if end not in free]
            if len(free) + len(fresh) <= _NEARBY:
                free.update(fresh)
                waiting += fresh
    rules = tuple(question.rules[place] for place in sorted({place for end in free for place in beside[end]}))
    seams = tuple(sorted({end for rule in rules for end in ends_of(rule)}))
    held = tuple((seam, left[seam]) for seam in seams if seam in settled or seam not in free)
    return Nearby(replace(question, seams=seams, settled=held, rules=rules, alike=()), frozenset(free))


def not_opened(question: Question, segment: int) -> Question:
    """Return the question without the author's line that presses a seam open, as far as that seam goes."""
    opened = question.opened - {segment}
    about = tuple(c for c in question.crossings if any(end.segment == segment for end in c.ends))
    others = {crossing.junction for crossing in about}
    rules = [rule for rule in question.rules if rule.junction not in others]
    rules += (r for r in rules_at(about, dict(question.lines.spins), opened) if r.rank <= Rank.LOCKS)
    seams = tuple(sorted((*question.seams, segment)))
    return replace(question, opened=opened, seams=seams, rules=tuple(sorted(rules, key=lambda rule: rule.rank)))


def ends_of(rule: Rule) -> tuple[int, ...]:
    """Return the segments that a rule is about, each once."""
    return tuple(dict.fromkeys(end for tie in (*rule.ties, *rule.instead) for end in (tie.one, tie.other)))
