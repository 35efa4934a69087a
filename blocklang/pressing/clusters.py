"""Clips and locks that depend on each other, looked at apart from everything else."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from blocklang.pressing.costs import holds, kept
from blocklang.pressing.groups import groups_of, heads_of
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import tie_all, tied_to_settled
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule
from blocklang.pressing.tables import least
from blocklang.pressing.weighing import left_from, seams_of, tables_of_rules

#: After so many best choices of a cluster no more are looked for, and none of its rules is taken for sure.
_MOST_CHOICES = 24


@dataclass(frozen=True, slots=True)
class Cluster:
    """Rules about clips and locks; `places` are theirs in the question.

    `lost` is the least that any choice loses of them, locks counted by weight and a clip as more than all locks;
    `sure` are those that every choice that loses no more keeps.
    """

    places: frozenset[int]
    lost: int
    sure: tuple[Rule, ...]


def clip_weight(question: Question) -> int:
    """Return what a clip counts: more than all locks together."""
    return 1 + sum(rule.weight for rule in question.rules if rule.rank is Rank.LOCKS)


def clusters_of(question: Question, suspects: frozenset[int]) -> tuple[Cluster, ...] | None:
    """Return what hangs on suspected clips, and on clips that contradict each other; None when it is too much."""
    forest = tied_to_settled(question)
    places = _hanging_on(question, forest, suspects | _contradictory(question, forest))
    found = []
    where = {id(question.rules[place]): place for place in places}
    for group in groups_of(question, forest, [question.rules[place] for place in sorted(places)]):
        looked_at = _look_at(question, forest, group)
        if looked_at is None:
            return None
        found.append(Cluster(frozenset(where[id(rule)] for rule in group), *looked_at))
    return tuple(found)


def clipped(question: Question, left: Sequence[bool]) -> frozenset[int]:
    """Return the rules about clips on the stretches of joins that a choice clips, by place; a settled seam ends one."""
    broken = (place for place, rule in enumerate(question.rules) if rule.rank is Rank.CLIPS and not kept(rule, left))
    return _stretches(question, tuple(broken))


def spun_beside(question: Question, left: Sequence[bool], rules: Iterable[Rule]) -> frozenset[int]:
    """Return those on the stretches that change side at a spun junction which shares an open choice with some rules."""
    forest = tied_to_settled(question)
    fixed = forest.find(len(question.graph.segments))[0]
    heads = {head for rule in rules for head in heads_of(rule, forest)} - {fixed}
    turned = (
        place
        for place, rule in enumerate(question.rules)
        if rule.instead and not holds(rule.ties, left) and not heads.isdisjoint(heads_of(rule, forest))
    )
    return _stretches(question, tuple(turned))


def loss_of(question: Question, left: Sequence[bool], rules: Iterable[Rule]) -> int:
    """Return what a choice loses of some rules, a clip counted as more than all locks."""
    clip = clip_weight(question)
    return sum(rule.weight * (clip if rule.rank is Rank.CLIPS else 1) for rule in rules if not kept(rule, left))


def _stretches(question: Question, places: tuple[int, ...]) -> frozenset[int]:
    settled = {segment for segment, _ in question.settled}
    beside: dict[int, list[int]] = {}
    for place, rule in enumerate(question.rules):
        for end in rule.ties[0][:2] if rule.rank is Rank.CLIPS else ():
            beside.setdefault(end, []).append(place)
    found, waiting = set(places), list(places)
    while waiting:
        for end in question.rules[waiting.pop()].ties[0][:2]:
            fresh = [] if end in settled else [place for place in beside[end] if place not in found]
            found.update(fresh)
            waiting += fresh
    return frozenset(found)


def _contradictory(question: Question, forest: ParityForest) -> frozenset[int]:
    """Return the groups of clips without a spin to save them that cannot all be avoided, by place."""
    places = {id(rule): place for place, rule in enumerate(question.rules)}
    found: set[int] = set()
    clips = [rule for rule in question.rules if rule.rank is Rank.CLIPS and not rule.instead]
    for group in groups_of(question, forest, clips):
        trial = forest.copy()
        if not all(tie_all(trial, rule) for rule in group):
            found.update(places[id(rule)] for rule in group)
    return frozenset(found)


def _hanging_on(question: Question, forest: ParityForest, suspects: frozenset[int]) -> frozenset[int]:
    """Return the suspects, the groups of locks at their junctions, and the clips that those depend on."""
    fixed = forest.find(len(question.graph.segments))[0]
    found = set(suspects)
    for rank in (Rank.LOCKS, Rank.CLIPS) if suspects else ():
        heads = {head for place in found for head in heads_of(question.rules[place], forest)} - {fixed}
        rules = [rule for rule in question.rules if rule.rank is rank and not rule.instead]
        places = {id(rule): place for place, rule in enumerate(question.rules)}
        for group in groups_of(question, forest, rules):
            if any(head in heads for rule in group for head in heads_of(rule, forest)):
                found.update(places[id(rule)] for rule in group)
    return frozenset(found)


def _look_at(question: Question, forest: ParityForest, rules: tuple[Rule, ...]) -> tuple[int, tuple[Rule, ...]] | None:
    """Return what the rules must lose, and which are kept in every choice that loses no more."""
    clip, doubted = clip_weight(question), set[int]()
    counted = [rule.weight * (clip if rule.rank is Rank.CLIPS else 1) for rule in rules]
    for _ in range(_MOST_CHOICES):
        weighed = [
            replace(rule, weight=weight * (len(rules) + 1) - (place not in doubted))
            for place, (rule, weight) in enumerate(zip(rules, counted, strict=True))
        ]
        answers = least(tables_of_rules(weighed, question, forest))
        if answers is None:
            return None
        left = left_from(seams_of(rules), question, forest, answers)
        broken = {place for place, rule in enumerate(rules) if not kept(rule, left)}
        if broken <= doubted:
            sure = [rule for place, rule in enumerate(rules) if place not in doubted and not rule.instead]
            return sum(counted[place] for place in broken), tuple(sure)
        doubted |= broken
    return sum(counted[place] for place in broken), ()
