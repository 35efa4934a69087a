"""A disputed part as tables of costs, all ranks in one number."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import count
from math import gcd

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie
from blocklang.pressing.tables import Answers, Table

#: A rule about more segments than this is cut up into pairs, joined by the choice to break the rule; only a join that
#: stays on its side unless its junction is spun cannot be cut up.
_WHOLE = 8

#: A literal: a choice, and whether it is turned round; the choice `SETTLED` is always "yes".
Literal = tuple[int, bool]
SETTLED = -1

#: Ties between choices, each with whether they differ.
Ties = tuple[tuple[int, int, bool], ...]


def scales_of(question: Question) -> tuple[int, ...]:
    """Return what one unit of each rank counts: more than everything below it together."""
    totals = [sum(rule.weight for rule in question.rules if rule.rank is rank) for rank in Rank]
    scale = 2 + 2 * sum(abs(question.weights[seam]) for seam in question.seams) // _divisor(question)
    scales = [1]
    for rank in reversed(list(Rank)[: Rank.PREFERENCES]):
        scales.append(scale)
        scale *= totals[rank] + 1
    return tuple(reversed(scales))


def tables_of(question: Question, forest: ParityForest, scales: tuple[int, ...]) -> list[Table]:
    """Return the tables of a part; choices are the heads of the forest's groups."""
    literals = _literals(question, forest, question.seams)
    return [*_tables(question, literals, question.rules, scales), *_preferences(question, literals)]


def tables_of_rules(rules: Sequence[Rule], question: Question, forest: ParityForest) -> list[Table]:
    """Return the tables that add up the weight of broken rules, and nothing else."""
    return list(_tables(question, _literals(question, forest, seams_of(rules)), rules, (1,) * len(Rank)))


def left_from(seams: Iterable[int], question: Question, forest: ParityForest, answers: Answers) -> tuple[bool, ...]:
    """Return the directions of seams by answers for the heads of a forest's groups; "no" where there is none."""
    left = [True] * len(question.graph.segments)
    for seam, (choice, turned) in _literals(question, forest, seams).items():
        left[seam] = (choice == SETTLED or answers.get(choice, False)) ^ turned
    return tuple(left)


def seams_of(rules: Iterable[Rule]) -> tuple[int, ...]:
    """Return the segments that rules are about, each once."""
    ends = (end for rule in rules for tie in (*rule.ties, *rule.instead) for end in tie[:2])
    return tuple(dict.fromkeys(ends))


def _tables(
    question: Question, literals: dict[int, Literal], rules: Iterable[Rule], scales: tuple[int, ...]
) -> Iterator[Table]:
    """Yield the tables of rules; those that come down to the same ties are one."""
    costs: dict[tuple[Ties | None, Ties | None], int] = {}
    for rule in rules:
        ties = _open_ties(rule.ties, literals)
        instead = _open_ties(rule.instead, literals) if rule.instead else None
        if ties != () and instead != ():
            costs[ties, instead] = costs.get((ties, instead), 0) + rule.weight * scales[rule.rank]
    fresh = count(2 * len(question.graph.segments))
    for (ties, instead), cost in costs.items():
        yield from _tables_of_rule(ties, instead, cost, fresh)


def _literals(question: Question, forest: ParityForest, seams: Iterable[int]) -> dict[int, Literal]:
    fixed, fixed_differs = forest.find(len(question.graph.segments))
    found = {}
    for seam in seams:
        head, differs = forest.find(seam)
        found[seam] = (SETTLED, differs ^ fixed_differs) if head == fixed else (head, differs)
    return found


def _tables_of_rule(ties: Ties | None, instead: Ties | None, cost: int, fresh: "count[int]") -> Iterator[Table]:
    if len(_scope(ties or (), instead or ())) <= _WHOLE or instead is not None or ties is None:
        yield _whole(ties, instead, cost)
        return
    broken = next(fresh)
    yield Table((broken,), [0, cost])
    for tie in ties:
        pair = _whole((tie,), None, cost)
        yield Table((broken, *pair.scope), pair.costs + [0] * len(pair.costs))


def _open_ties(ties: tuple[Tie, ...], literals: dict[int, Literal]) -> Ties | None:
    """Return the ties between choices that are still open, none twice; None when one of them cannot hold."""
    found: dict[tuple[int, int, bool], None] = {}
    for one, other, differ in ties:
        (a, a_turned), (b, b_turned) = literals[one], literals[other]
        apart = differ ^ a_turned ^ b_turned
        if a == b:
            if apart:
                return None
            continue
        found[min(a, b), max(a, b), apart] = None
    return tuple(sorted(found))


def _scope(*ties: Ties) -> tuple[int, ...]:
    return tuple(sorted({choice for group in ties for a, b, _ in group for choice in (a, b)} - {SETTLED}))


def _whole(ties: Ties | None, instead: Ties | None, cost: int) -> Table:
    """Return one table for a whole rule, by the pattern of its ties."""
    scope = _scope(ties or (), instead or ())
    names = {choice: number for number, choice in enumerate(scope)} | {SETTLED: SETTLED}

    def renamed(group: Ties | None) -> Ties | None:
        return None if group is None else tuple((names[a], names[b], apart) for a, b, apart in group)

    return Table(scope, [cost * lost for lost in _pattern(len(scope), renamed(ties), renamed(instead))])


@lru_cache(maxsize=4096)
def _pattern(size: int, ties: Ties | None, instead: Ties | None) -> tuple[int, ...]:
    def answer(index: int, choice: int) -> int:
        return 1 if choice == SETTLED else index >> (size - 1 - choice) & 1

    def keeps(index: int, group: Ties | None) -> bool:
        return group is not None and all((answer(index, a) != answer(index, b)) == apart for a, b, apart in group)

    return tuple(int(not keeps(index, ties) and not keeps(index, instead)) for index in range(1 << size))


def _divisor(question: Question) -> int:
    return gcd(*(question.weights[seam] for seam in question.seams)) or 1


def _preferences(question: Question, literals: dict[int, Literal]) -> Iterator[Table]:
    """Yield the gains as costs, doubled, and one for the first segment's own choice, which breaks a draw."""
    divisor = _divisor(question)
    gains: dict[int, int] = {}
    for seam in question.seams:
        choice, turned = literals[seam]
        gain = 2 * (question.weights[seam] // divisor)
        gains[choice] = gains.get(choice, 0) + (-gain if turned else gain)
    first = question.seams[0]
    choice, turned = literals[first]
    gains[choice] += 1 if question.first_choice[first] != turned else -1
    yield from (Table((choice,), [max(0, gain), max(0, -gain)]) for choice, gain in gains.items() if choice != SETTLED)
