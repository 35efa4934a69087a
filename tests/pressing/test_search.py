"""The ways of searching, each held against trying everything."""

import itertools
import random
from dataclasses import replace

import pytest

from blocklang.pressing.clusters import clipped, clusters_of
from blocklang.pressing.cores import least_broken
from blocklang.pressing.costs import costs_of
from blocklang.pressing.directing import decide
from blocklang.pressing.lines import follow
from blocklang.pressing.long_tables import settle_all
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.parts import follow_ties, tied_to_settled
from blocklang.pressing.preferences import DEFAULTS
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Rule, Tie, ask
from blocklang.pressing.search import _by_solver, by_tables, search
from blocklang.pressing.tables import Table, _order, _settle_all, least
from tests.pressing.dissections import wishes
from tests.pressing.sewing import sew_rows
from tests.pressing.test_against_every_choice import small_assembly
from tests.support.blocks import grid


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


def contradictory_grid(seed: int):
    """A grid with many lines, some of them about spins."""
    chance = random.Random(seed)
    side = chance.randrange(4, 8)
    plain = sew_rows(grid(side, side), side, side)
    said = wishes(plain.graph, seed, chance.randrange(2, side * side), chance.randrange(4))
    return sew_rows(replace(plain.graph.block, wishes=said), side, side)


@pytest.mark.parametrize("chunk", range(4))
def test_what_is_looked_at_apart_comes_to_the_same_as_everything_at_once(chunk):
    """Clips and locks in clusters, what is sure in them tied: the costs are those of one table of the whole."""
    clusters = compared = 0
    for seed in range(chunk * 25, chunk * 25 + 25):
        assembly = contradictory_grid(seed)
        for part in follow_ties(ask(assembly, DEFAULTS, follow(assembly.graph))).disputed:
            whole = by_tables(part, tied_to_settled(part))
            if whole is None:
                continue
            answer = search(part, None)
            assert answer.gap == 0.0
            assert costs_of(part, answer.left, part.seams) == costs_of(part, whole, part.seams), seed
            compared += 1
            clusters += bool(clusters_of(part, clipped(part, whole)))
    assert compared >= 15
    assert clusters >= 1


def test_long_tables_come_to_the_same_as_lists():
    chance = random.Random(5)
    scopes = [tuple(chance.sample(range(14), chance.randrange(1, 6))) for _ in range(30)]
    tables = [Table(scope, [chance.randrange(99) for _ in range(2 ** len(scope))]) for scope in scopes]
    order, _ = _order(tables)
    assert settle_all(order, tables) == _settle_all(order, tables)
