"""Tying what is sure to be kept, so that a search has fewer choices left."""

from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import tie_all, tied_to_settled
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule


@dataclass(frozen=True, slots=True)
class Tied:
    """Segments tied on the supposition that nothing is clipped and no more is lost than `doubtful` locks ask for.

    The supposition is right if a best choice under it clips nothing and loses no more locks than the doubtful groups
    must, each looked at alone: then no choice anywhere does better, and every one as good keeps these ties.
    """

    forest: ParityForest
    doubtful: tuple[tuple[Rule, ...], ...]


def tie_locks(question: Question) -> Tied:
    """Tie only the locks, group by group; for a part in which some join must be clipped."""
    forest = tied_to_settled(question)
    return Tied(forest, _tie_locks(question, forest))


def tie_what_is_sure(question: Question) -> Tied | None:
    """Tie rank after rank while all ties agree, the locks group by group; None when a join must be clipped."""
    forest = tied_to_settled(question)
    if not _tie_rank(question, forest, Rank.CLIPS):
        return None
    doubtful = _tie_locks(question, forest)
    rank = Rank.CENTRES
    while not doubtful and rank < Rank.PREFERENCES:
        trial = forest.copy()
        if not _tie_rank(question, trial, rank):
            break
        forest, rank = trial, Rank(rank + 1)
    return Tied(forest, doubtful)


def _tie_rank(question: Question, forest: ParityForest, rank: Rank) -> bool:
    return _tie_group(forest, _of_rank(question, rank))


def _tie_group(forest: ParityForest, rules: Iterable[Rule]) -> bool:
    agrees = True
    for rule in rules:
        agrees &= tie_all(forest, rule)
    return agrees


def _of_rank(question: Question, rank: Rank) -> list[Rule]:
    return [rule for rule in question.rules if rule.rank is rank and not rule.instead]


def _tie_locks(question: Question, forest: ParityForest) -> tuple[tuple[Rule, ...], ...]:
    """Tie the groups of locks that agree, and return the others; groups meet only in what is settled already."""
    groups = list(_groups(question, forest, _of_rank(question, Rank.LOCKS)))
    trial = forest.copy()
    agree = [_tie_group(trial, group) for group in groups]
    for group, agrees in zip(groups, agree, strict=True):
        if agrees:
            _tie_group(forest, group)
    return tuple(group for group, agrees in zip(groups, agree, strict=True) if not agrees)


def _groups(question: Question, forest: ParityForest, rules: list[Rule]) -> list[tuple[Rule, ...]]:
    fixed = forest.find(len(question.graph.segments))[0]
    linked = ParityForest(len(question.graph.segments) + 1)
    firsts: list[int | None] = []
    for rule in rules:
        heads = [head for tie in rule.ties for head in (forest.find(tie.one)[0], forest.find(tie.other)[0])]
        free = [head for head in heads if head != fixed]
        for head in free:
            linked.tie(free[0], head, False)
        firsts.append(free[0] if free else None)
    groups: dict[int, list[Rule]] = {}
    for place, (rule, first) in enumerate(zip(rules, firsts, strict=True)):
        groups.setdefault(-1 - place if first is None else linked.find(first)[0], []).append(rule)
    return [tuple(group) for group in groups.values()]
