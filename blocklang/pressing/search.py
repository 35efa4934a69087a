"""Finding the best directions for a part whose ties disagree."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang.pressing.clusters import clip_weight, clipped, loss_of, spun_beside
from blocklang.pressing.cores import least_broken
from blocklang.pressing.costs import costs_of
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import follow_most, tied_to_settled
from blocklang.pressing.program import write_program
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule
from blocklang.pressing.solving import solve, value_of
from blocklang.pressing.tables import least
from blocklang.pressing.tying import Doubtful, Tied, tie_what_is_sure
from blocklang.pressing.weighing import left_from, scales_of, tables_of, tables_of_rules

#: So often what is taken for sure is put right and the search begun again.
_MOST_ROUNDS = 4

#: A part with more seams than this is not handed to the solver as a whole, unless a time limit says how long it may take.
LARGE = 500
#: Nor a part whose program has more columns than these, whatever is tied in it.
_MANY_COLUMNS = 1_000


@dataclass(frozen=True, slots=True)
class Answer:
    """Directions for the seams of a part, and what could not be ruled out: 0.0 when they are proven best."""

    left: tuple[bool, ...]
    gap: float


def search(question: Question, deadline: float | None, quickly: bool = False) -> Answer:
    """Search a disputed part; `deadline` is on the monotonic clock, in seconds.

    Tables are exact and quick where each seam is tied to few others, as in most blocks; the solver takes the rest,
    unless it has to go quickly.
    """
    found = [Answer(follow_most(question), math.inf)]
    tied, suspects = tie_what_is_sure(question, frozenset()), frozenset[int]()
    for _ in range(_MOST_ROUNDS):
        left = None if tied is None else by_tables(question, tied.forest)
        if tied is None or left is None:
            break
        found.append(Answer(left, _shortfall(question, tied, left)))
        if not found[-1].gap:
            return found[-1]
        more = suspects | clipped(question, left)
        if more == suspects:
            more |= spun_beside(question, left, _excessive(question, tied, left))
        if more == suspects:
            break
        suspects = more
        tied = tie_what_is_sure(question, suspects)
    left = by_tables(question, tied_to_settled(question))
    if left is not None:
        return Answer(left, 0.0)
    return _best_of(question, found) if quickly else _with_solver(question, tied, found, deadline)


def _with_solver(question: Question, tied: Tied | None, found: list[Answer], deadline: float | None) -> Answer:
    """Ask the solver; where it proves nothing, the best of what was found by other ways is as good as its own."""
    may_be_long = deadline is not None or len(question.seams) <= LARGE
    if tied is not None and (may_be_long or len(found) == 1):
        answer = _by_solver(question, tied.forest, bool(tied.clusters), deadline)
        if answer is not None:
            gap = answer.gap or _shortfall(question, tied, answer.left)
            found.append(Answer(answer.left, gap))
            if not gap:
                return found[-1]
    if not may_be_long:
        return _best_of(question, found)
    answer = _by_solver(question, tied_to_settled(question), True, deadline)
    if answer is not None and not answer.gap:
        return answer
    return _best_of(question, found + ([answer] if answer is not None else []))


def _best_of(question: Question, found: list[Answer]) -> Answer:
    best = min(found, key=lambda one: costs_of(question, one.left, question.seams))
    return best if math.isfinite(best.gap) else Answer(best.left, all_of(question, best.left))


def by_tables(question: Question, forest: ParityForest) -> tuple[bool, ...] | None:
    """Return the best choice that keeps the ties of a forest; None when the tables get too long."""
    answers = least(tables_of(question, forest, scales_of(question)))
    return None if answers is None else left_from(question.seams, question, forest, answers)


def _shortfall(question: Question, tied: Tied, left: Sequence[bool]) -> float:
    """Return what a choice loses more than it must, at the first rank where it does so or may do so; 0.0 if nowhere.

    A choice that loses no more than it must, by the quick count or else by the exact one, is the best there is.
    """
    costs = costs_of(question, left, question.seams)
    clip = clip_weight(question)
    together = clip * costs[Rank.CLIPS] + costs[Rank.LOCKS] - sum(cluster.lost for cluster in tied.clusters)
    for rank in tied.ranks:
        more = _more_than_least(question, tied, rank, together if rank is Rank.LOCKS else costs[rank])
        if more:
            return float(more if more < clip or rank is not Rank.LOCKS else -(-more // clip))
    return 0.0


def _more_than_least(question: Question, tied: Tied, rank: Rank, cost: int) -> int:
    groups = [group for group in tied.doubtful if group.rank is rank]
    more = cost - tied.doomed[rank] - sum(least_broken(group.rules, group.above) for group in groups)
    if not more:
        return 0
    exact = [_least_lost(question, group) for group in groups]
    return cost - tied.doomed[rank] - sum(lost for lost in exact if lost is not None)


def _excessive(question: Question, tied: Tied, left: Sequence[bool]) -> Iterator[Rule]:
    """Yield the rules about clips and locks that lose more than they must where they are looked at alone."""
    for cluster in tied.clusters:
        rules = [question.rules[place] for place in cluster.places]
        if loss_of(question, left, rules) > cluster.lost:
            yield from rules
    for group in tied.doubtful:
        if group.rank is Rank.LOCKS and loss_of(question, left, group.rules) > (_least_lost(question, group) or 0):
            yield from group.rules


def _least_lost(question: Question, group: Doubtful) -> int | None:
    """Return the least weight of broken rules in a group, with the ranks above it and nothing else to mind."""
    tables = tables_of_rules(group.rules, question, group.above)
    answers = least(tables)
    if answers is None:
        return None
    return sum(t.costs[int("0" + "".join(str(int(answers[c])) for c in t.scope), 2)] for t in tables)


def _by_solver(question: Question, forest: ParityForest, clips: bool, deadline: float | None) -> Answer | None:
    program = write_program(question, forest, clips)
    if deadline is None and len(program.upper) > _MANY_COLUMNS:
        return None
    run = solve(program, deadline)
    if run is None:
        return None
    left = [True] * len(question.graph.segments)
    for seam in question.seams:
        left[seam] = value_of(program.literals[seam], run.columns) > 0.5
    return Answer(tuple(left), run.gap)


def all_of(question: Question, left: tuple[bool, ...]) -> float:
    """Return all that a choice loses at the first rank at which it loses anything: none of it is ruled out."""
    return float(next((cost for cost in costs_of(question, left, question.seams) if cost), 1))
