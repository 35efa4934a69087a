"""A disputed part as an integer program: one 0/1 column for each group of tied segments."""

from dataclasses import dataclass, field
from math import gcd

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie

#: Columns with their factors, and a constant under `CONSTANT`.
Sum = dict[int, int]
CONSTANT = -1


@dataclass(slots=True)
class Program:
    """Columns between 0 and 1, rows `low <= sum <= high`, and what each rank costs as a sum of columns."""

    upper: list[int] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[tuple[int, Sum]] = field(default_factory=list)  # sum >= low
    equal: list[Sum] = field(default_factory=list)  # sum == 0
    costs: dict[Rank, Sum] = field(default_factory=dict)
    literals: dict[int, Sum] = field(default_factory=dict)  # by segment: 1 when pressed to its left

    def column(self, whole: bool = False) -> int:
        """Add a column and return its number."""
        self.upper.append(1)
        self.whole.append(whole)
        return len(self.upper) - 1

    def at_least(self, low: int, *sums: Sum) -> None:
        """Add a row: the sums together are at least `low`."""
        self.rows.append((low, total(*sums)))


def total(*sums: Sum) -> Sum:
    """Add sums up."""
    result: Sum = {}
    for one in sums:
        for column, factor in one.items():
            result[column] = result.get(column, 0) + factor
    return {column: factor for column, factor in result.items() if factor}


def times(factor: int, one: Sum) -> Sum:
    """Multiply a sum."""
    return {column: factor * value for column, value in one.items()}


def complement(one: Sum) -> Sum:
    """Return one minus a sum."""
    return total({CONSTANT: 1}, times(-1, one))


def write_program(question: Question, forest: ParityForest, clips: bool) -> Program:
    """Write the program of a part, with the ties of a forest held; nothing is clipped unless `clips`."""
    program = Program()
    _literals(program, question, forest)
    spun: dict[int, tuple[Sum, Sum]] = {}
    for rule in question.rules:
        if rule.rank is not Rank.CLIPS:
            _write_rule(program, rule, spun)
    for rule in question.rules:
        if rule.rank is Rank.CLIPS:
            _write_constancy(program, rule, spun.get(rule.junction) if rule.instead else None, clips)
    program.costs[Rank.PREFERENCES] = _preference_cost(program, question)
    return program


def _literals(program: Program, question: Question, forest: ParityForest) -> None:
    fixed, fixed_differs = forest.find(len(question.graph.segments))
    columns: dict[int, Sum] = {fixed: {CONSTANT: 0 if fixed_differs else 1}}
    for seam in question.seams:
        head, differs = forest.find(seam)
        if head not in columns:
            columns[head] = {program.column(whole=True): 1}
        program.literals[seam] = complement(columns[head]) if differs else total(columns[head])


def _write_rule(program: Program, rule: Rule, spun: dict[int, tuple[Sum, Sum]]) -> None:
    chains = [_all_or_none(program, chain) for chain in _chains(program, rule.ties)]
    if rule.rank in (Rank.CENTRES, Rank.CROSSES):
        spun[rule.junction] = chains[0]
    losses = [complement(total(*chain)) for chain in chains]
    losses = [loss for loss in losses if loss]
    if not losses:
        return
    if len(losses) > 1:
        column = program.column()
        for loss in losses:
            program.at_least(0, {column: 1}, times(-1, loss))
        losses = [{column: 1}]
    program.costs[rule.rank] = total(program.costs.get(rule.rank, {}), times(rule.weight, losses[0]))


def _chains(program: Program, ties: tuple[Tie, ...]) -> list[list[Sum]]:
    """Return the literals that should all be equal, one list for each chain of ties."""
    chains: list[list[Sum]] = []
    last, differs = -1, False
    for one, other, differ in ties:
        if one != last:
            chains.append([program.literals[one]])
            differs = False
        differs ^= differ
        literal = program.literals[other]
        chains[-1].append(complement(literal) if differs else literal)
        last = other
    return chains


def _all_or_none(program: Program, chain: list[Sum]) -> tuple[Sum, Sum]:
    """Return two sums: 1 when all literals are 1, and 1 when none of them is."""
    unlike = [one for place, one in enumerate(chain) if one not in chain[:place]]
    if len(unlike) == 1:
        return unlike[0], complement(unlike[0])
    if any(complement(one) in unlike for one in unlike):
        return {}, {}
    every: Sum = {} if {} in unlike else {program.column(): 1}
    none: Sum = {} if {CONSTANT: 1} in unlike else {program.column(): 1}
    for one in unlike:
        if every:
            program.at_least(0, one, times(-1, every))
        if none:
            program.at_least(0, complement(one), times(-1, none))
    return every, none


def _write_constancy(program: Program, rule: Rule, spun: tuple[Sum, Sum] | None, clips: bool) -> None:
    """A join stays on its side, unless the junction is spun, or unless it is clipped there."""
    (tie,) = rule.ties
    a, b = program.literals[tie.one], program.literals[tie.other]
    b = b if tie.differ else complement(b)  # so that a and b are alike when the join changes side
    every, none = spun or ({}, {})
    off = total(a, b, {CONSTANT: -1}, times(-1, every), none)
    if clips:
        up, down = {program.column(): 1}, {program.column(): 1}
        off = total(off, up, times(-1, down))
        program.costs[Rank.CLIPS] = total(program.costs.get(Rank.CLIPS, {}), up, down)
    if off:
        program.equal.append(off)


def _preference_cost(program: Program, question: Question) -> Sum:
    """Return the gains as costs, divided by what divides them all, doubled, and one for the first segment's choice."""
    divisor = gcd(*(question.weights[seam] for seam in question.seams)) or 1
    gains = [times(-2 * (question.weights[seam] // divisor), program.literals[seam]) for seam in question.seams]
    first = question.seams[0]
    own = program.literals[first]
    return total(*gains, own if not question.first_choice[first] else complement(own))
