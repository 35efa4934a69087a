"""The ways of searching, each held against trying everything."""

import itertools
import random

import pytest

from blocklang.pressing.cores import least_broken
from blocklang.pressing.costs import costs_of
from blocklang.pressing.directing import decide
from blocklang.pressing.lines import follow
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import follow_ties, tied_to_settled
from blocklang.pressing.preferences import DEFAULTS
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Rule, Tie, ask
from blocklang.pressing.search import _by_solver, by_tables
from blocklang.pressing.tables import Table, least
from tests.pressing.test_against_every_choice import small_assembly


@pytest.mark.parametrize("seed", range(20))
def test_tables_find_the_least_sum(seed):
    chance = random.Random(seed)
    scopes = [tuple(chance.sample(range(8), chance.randrange(1, 4))) for _ in range(9)]
    tables = [Table(scope, [chance.randrange(9) for _ in range(2 ** len(scope))]) for scope in scopes]

    def total(answers):
        return sum(t.costs[int("".join(str(int(answers[c])) for c in t.scope), 2)] for t in tables)

    best = min(total(choice) for choice in itertools.product((False, True), repeat=8))
    found = least(tables)
    assert found is not None
    assert total(found) == best


def test_tables_that_get_too_long_are_not_tried():
    pairs = [Table(pair, [0, 1, 1, 0]) for pair in itertools.combinations(range(24), 2)]
    assert least(pairs) is None


@pytest.mark.parametrize("seed", range(30))
def test_no_choice_breaks_less_than_the_quick_count(seed):
    chance = random.Random(seed)
    rules = tuple(
        Rule(Rank.LIKENESS, chance.randrange(1, 4), (Tie(*chance.sample(range(6), 2), chance.random() < 0.5),))
        for _ in range(12)
    )
    best = min(
        sum(r.weight for r in rules if any((left[t.one] != left[t.other]) != t.differ for t in r.ties))
        for left in itertools.product((False, True), repeat=6)
    )
    assert least_broken(rules, ParityForest(6)) <= best
    assert (least_broken(rules, ParityForest(6)) == 0) == (best == 0)


@pytest.mark.parametrize("seed", range(0, 60, 3))
def test_tables_and_solver_agree(seed):
    assembly = small_assembly(seed)
    question = ask(assembly, DEFAULTS, follow(assembly.graph))
    for part in follow_ties(question).disputed:
        forest = tied_to_settled(part)
        tabled, by_solver = by_tables(part, forest), _by_solver(part, forest, True, None)
        assert tabled is not None
        assert by_solver is not None
        assert by_solver.gap == 0.0
        costs = costs_of(part, tabled, part.seams)
        assert costs == costs_of(part, by_solver.left, part.seams)
        assert costs == costs_of(part, decide(question).left, part.seams)


def test_the_solver_prints_nothing(capfd):
    assembly = small_assembly(3)
    question = ask(assembly, DEFAULTS, follow(assembly.graph))
    for part in follow_ties(question).disputed:
        _by_solver(part, tied_to_settled(part), True, None)
    assert capfd.readouterr() == ("", "")
