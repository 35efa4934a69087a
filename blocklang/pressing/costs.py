"""What a choice of directions costs, rank by rank."""

from collections.abc import Iterable, Sequence

from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie

#: One cost for each rank, in the order of `Rank`; choices are compared like words in a dictionary.
Costs = tuple[int, ...]


def holds(ties: Iterable[Tie], left: Sequence[bool]) -> bool:
    """Tell whether all ties hold."""
    return all((left[one] != left[other]) == differ for one, other, differ in ties)


def kept(rule: Rule, left: Sequence[bool]) -> bool:
    """Tell whether a rule is kept."""
    return holds(rule.ties, left) or (bool(rule.instead) and holds(rule.instead, left))


def costs_of(question: Question, left: Sequence[bool], seams: Iterable[int] | None = None) -> Costs:
    """Return what a choice costs; `left[s]` tells whether segment s is pressed toward its left patch."""
    costs = [0] * len(Rank)
    for rule in question.rules:
        if not kept(rule, left):
            costs[rule.rank] += rule.weight
    costs[Rank.PREFERENCES] = sum(against(question, seam, left) for seam in seams or question.seams)
    return tuple(costs)


def against(question: Question, seam: int, left: Sequence[bool]) -> int:
    """Return what pressing a segment that way loses to its preferences."""
    weight = question.weights[seam]
    return abs(weight) if weight and (weight > 0) != left[seam] else 0
