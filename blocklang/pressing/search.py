"""Finding the best directions for a part whose ties disagree."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from blocklang.pressing.cores import least_broken
from blocklang.pressing.costs import costs_of
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import follow_most, tied_to_settled
from blocklang.pressing.program import write_program
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question
from blocklang.pressing.solving import least_cost, solve, value_of
from blocklang.pressing.tables import least
from blocklang.pressing.tying import Doubtful, Tied, tie_locks, tie_what_is_sure
from blocklang.pressing.weighing import scales_of, tables_of, tables_of_rules


@dataclass(frozen=True, slots=True)
class Answer:
    """Directions for the seams of a part, and what could not be ruled out: 0.0 when they are proven best."""

    left: tuple[bool, ...]
    gap: float


def search(question: Question, deadline: float | None) -> Answer:
    """Search a disputed part; `deadline` is on the monotonic clock, in seconds.

    Tables are exact and quick where each seam is tied to few others, as in most blocks; the solver takes the rest.
    """
    tied = tie_what_is_sure(question)
    loose = tied_to_settled(question)
    found = [follow_most(question)]
    if tied is not None:
        left = _by_tables(question, tied.forest)
        if left is not None and _supposed_rightly(question, tied, left, 0):
            return Answer(left, 0.0)
        found += [left] if left is not None else []
    left = _by_tables(question, loose)
    if left is not None:
        return Answer(left, 0.0)
    return _with_solver(question, tied, found, deadline)


def _with_solver(
    question: Question, tied: Tied | None, found: list[tuple[bool, ...]], deadline: float | None
) -> Answer:
    """Ask the solver; where it proves nothing, the best of what was found by other ways is as good as its own."""
    if tied is not None:
        answer = _by_solver(question, tied.forest, False, deadline)
        if answer is not None and not answer.gap and _supposed_rightly(question, tied, answer.left, 0):
            return answer
    loose, locks = tied_to_settled(question), tie_locks(question)
    left = _by_tables(question, locks.forest)
    if left is not None:
        clips = least_cost(write_program(question, loose, True), Rank.CLIPS, deadline)
        if clips is not None and _supposed_rightly(question, locks, left, clips):
            return Answer(left, 0.0)
        found.append(left)
    answer = _by_solver(question, loose, True, deadline)
    if answer is not None and not answer.gap:
        return answer
    if answer is not None:
        found.append(answer.left)
    best = min(found, key=lambda one: costs_of(question, one, question.seams))
    return Answer(best, answer.gap if answer is not None and math.isfinite(answer.gap) else _all_of(question, best))


def _by_tables(question: Question, forest: ParityForest) -> tuple[bool, ...] | None:
    answers = least(tables_of(question, forest, scales_of(question)))
    if answers is None:
        return None
    fixed, fixed_differs = forest.find(len(question.graph.segments))
    answers[fixed] = not fixed_differs
    left = [True] * len(question.graph.segments)
    for seam in question.seams:
        head, differs = forest.find(seam)
        left[seam] = answers[head] ^ differs
    return tuple(left)


def _supposed_rightly(question: Question, tied: Tied, left: Sequence[bool], clips: int) -> bool:
    """Tell whether a choice loses no more than it must; the quick count of that first, then the exact one."""
    costs = costs_of(question, left, question.seams)
    return costs[Rank.CLIPS] == clips and all(
        _loses_the_least(question, tied, rank, costs[rank]) for rank in tied.ranks if rank is not Rank.CLIPS
    )


def _loses_the_least(question: Question, tied: Tied, rank: Rank, cost: int) -> bool:
    groups = [group for group in tied.doubtful if group.rank is rank]
    if cost == tied.doomed[rank] + sum(least_broken(group.rules, group.above) for group in groups):
        return True
    exact = [_least_lost(question, group) for group in groups]
    return None not in exact and cost == tied.doomed[rank] + sum(lost for lost in exact if lost is not None)


def _least_lost(question: Question, group: Doubtful) -> int | None:
    """Return the least weight of broken rules in a group, with the ranks above it and nothing else to mind."""
    tables = tables_of_rules(group.rules, question, group.above)
    answers = least(tables)
    if answers is None:
        return None
    return sum(t.costs[int("0" + "".join(str(int(answers[c])) for c in t.scope), 2)] for t in tables)


def _by_solver(question: Question, forest: ParityForest, clips: bool, deadline: float | None) -> Answer | None:
    program = write_program(question, forest, clips)
    run = solve(program, deadline)
    if run is None:
        return None
    left = [True] * len(question.graph.segments)
    for seam in question.seams:
        left[seam] = value_of(program.literals[seam], run.columns) > 0.5
    return Answer(tuple(left), run.gap)


def _all_of(question: Question, left: tuple[bool, ...]) -> float:
    """Return all that a choice loses at the first rank at which it loses anything: none of it is ruled out."""
    return float(next((cost for cost in costs_of(question, left, question.seams) if cost), 1))
