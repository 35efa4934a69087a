"""Tying what is sure to be kept, so that a search has fewer choices left."""

from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import tie_all, tied_to_settled
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule


@dataclass(frozen=True, slots=True)
class Doubtful:
    """Rules of one rank whose ties disagree, and the ties of the ranks above them."""

    rules: tuple[Rule, ...]
    above: ParityForest

    @property
    def rank(self) -> Rank:
        """The rank of all the rules."""
        return self.rules[0].rank


@dataclass(frozen=True, slots=True)
class Tied:
    """Segments tied on the supposition that no rank loses more than it must.

    `doubtful` are groups of rules, at the locks or the likenesses, whose ties disagree; `doomed` counts for each rank
    what the ties above it break anyhow. The supposition is right if a best choice under it loses at each of `ranks`
    exactly that, and what the doubtful groups must lose, each looked at alone: then no choice anywhere does better,
    and every one as good keeps these ties.
    """

    forest: ParityForest
    doubtful: tuple[Doubtful, ...]
    doomed: tuple[int, ...]
    ranks: tuple[Rank, ...]


def tie_locks(question: Question) -> Tied:
    """Tie only the locks, group by group; for a part in which some join must be clipped."""
    forest = tied_to_settled(question)
    doubtful = _tie_groups(question, forest, _of_rank(question, Rank.LOCKS))
    return Tied(forest, doubtful, (0,) * len(Rank), (Rank.LOCKS,))


def tie_what_is_sure(question: Question) -> Tied | None:
    """Tie rank after rank, locks and likenesses group by group; None when a join must be clipped.

    A rule below the locks that the ties above it already break is lost whatever is chosen.
    """
    forest = tied_to_settled(question)
    if not _tie_group(forest, _of_rank(question, Rank.CLIPS)):
        return None
    doubtful = _tie_groups(question, forest, _of_rank(question, Rank.LOCKS))
    doomed, ranks = [0] * len(Rank), [Rank.CLIPS, Rank.LOCKS]
    for rank in (Rank.CENTRES, Rank.LIKENESS, Rank.CROSSES):
        if any(group.rank is Rank.LOCKS for group in doubtful):
            break
        rules = _of_rank(question, rank)
        open_rules = [rule for rule in rules if forest.fits(rule.ties)]
        if rank is Rank.LIKENESS:
            doubtful += _tie_groups(question, forest, open_rules)
        else:
            trial = forest.copy()
            if not _tie_group(trial, open_rules):
                break
            forest = trial
        doomed[rank] = sum(rule.weight for rule in rules) - sum(rule.weight for rule in open_rules)
        ranks.append(rank)
    return Tied(forest, doubtful, tuple(doomed), tuple(ranks))


def _tie_group(forest: ParityForest, rules: Iterable[Rule]) -> bool:
    agrees = True
    for rule in rules:
        agrees &= tie_all(forest, rule)
    return agrees


def _of_rank(question: Question, rank: Rank) -> list[Rule]:
    return [rule for rule in question.rules if rule.rank is rank and not rule.instead]


def _tie_groups(question: Question, forest: ParityForest, rules: list[Rule]) -> tuple[Doubtful, ...]:
    """Tie the groups of rules that agree, and return the others; groups meet only in what is settled already."""
    groups = _groups(question, forest, rules)
    trial = forest.copy()
    agree = [_tie_group(trial, group) for group in groups]
    for group, agrees in zip(groups, agree, strict=True):
        if agrees:
            _tie_group(forest, group)
    return tuple(Doubtful(group, forest) for group, agrees in zip(groups, agree, strict=True) if not agrees)


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
