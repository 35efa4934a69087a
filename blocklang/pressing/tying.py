"""Tying what is sure to be kept, so that a search has fewer choices left."""

from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.pressing.clusters import Cluster, clusters_of
from blocklang.pressing.groups import groups_of
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

    `doubtful` are groups of rules, at the locks or the likenesses, whose ties disagree; `clusters` hold clips and locks
    that depend on each other; `doomed` counts for each rank what the ties above it break anyhow. No two of them
    share a rule. The supposition is right if a best choice under it loses at each of `ranks` exactly that, and what
    the doubtful groups and the clusters must lose, each looked at alone: then no choice anywhere does better, and
    every one as good keeps these ties.
    """

    forest: ParityForest
    doubtful: tuple[Doubtful, ...]
    clusters: tuple[Cluster, ...]
    doomed: tuple[int, ...]
    ranks: tuple[Rank, ...]


def tie_what_is_sure(question: Question, suspects: frozenset[int]) -> Tied | None:
    """Tie rank after rank, locks and likenesses group by group; None when a cluster is too large to be looked at.

    `suspects` are places of rules about clips that may have to be broken, or that cost a lock if they are not. A rule
    below the locks that the ties above it already break is lost whatever is chosen.
    """
    clusters = clusters_of(question, suspects)
    if clusters is None:
        return None
    above = tied_to_settled(question)
    inside = {place for cluster in clusters for place in cluster.places}
    _tie_group(above, _of_rank(question, Rank.CLIPS, inside))
    forest = above.copy()
    _tie_group(forest, (rule for cluster in clusters for rule in cluster.sure))
    doubtful = _tie_groups(question, forest, _of_rank(question, Rank.LOCKS, inside), above)
    doomed, ranks = [0] * len(Rank), [Rank.LOCKS]
    for rank in (Rank.CENTRES, Rank.LIKENESS, Rank.CROSSES):
        if clusters or any(group.rank is Rank.LOCKS for group in doubtful):
            break
        rules = _of_rank(question, rank)
        open_rules = [rule for rule in rules if forest.fits(rule.ties)]
        if rank is Rank.LIKENESS:
            doubtful += _tie_groups(question, forest, open_rules, forest.copy())
        else:
            trial = forest.copy()
            if not _tie_group(trial, open_rules):
                break
            forest = trial
        doomed[rank] = sum(rule.weight for rule in rules) - sum(rule.weight for rule in open_rules)
        ranks.append(rank)
    return Tied(forest, doubtful, clusters, tuple(doomed), tuple(ranks))


def _tie_group(forest: ParityForest, rules: Iterable[Rule]) -> bool:
    agrees = True
    for rule in rules:
        agrees &= tie_all(forest, rule)
    return agrees


def _of_rank(question: Question, rank: Rank, but: Iterable[int] = ()) -> list[Rule]:
    left_out = frozenset(but)
    return [
        rule
        for place, rule in enumerate(question.rules)
        if rule.rank is rank and not rule.instead and place not in left_out
    ]


def _tie_groups(
    question: Question, forest: ParityForest, rules: list[Rule], above: ParityForest
) -> tuple[Doubtful, ...]:
    """Tie the groups of rules that agree, and return the others; groups meet only in what is settled already.

    What is sure in a cluster is tied, but does not stand above: a choice may give it up, and save in a group.
    """
    groups = groups_of(question, forest, rules)
    trial = forest.copy()
    agree = [_tie_group(trial, group) for group in groups]
    for group, agrees in zip(groups, agree, strict=True):
        if agrees:
            _tie_group(forest, group)
    return tuple(Doubtful(group, above) for group, agrees in zip(groups, agree, strict=True) if not agrees)
