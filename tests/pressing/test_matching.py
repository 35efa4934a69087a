"""Without single wishes, the least that pairs must lose is a minimum-weight matching of the odd faces (Kasteleyn; Hadlock)."""

import random
from types import SimpleNamespace

import networkx
import pytest

from blocklang.pressing.costs import costs_of
from blocklang.pressing.directing import decide
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie


def instance(seed: int):
    """A grid of things tied to their neighbours, each tie alike or unlike, with a weight; some ties are missing."""
    chance = random.Random(seed)
    columns, rows = chance.randrange(3, 7), chance.randrange(3, 6)
    ties = {}
    for row in range(rows):
        for column in range(columns):
            for step in ((0, 1), (1, 0)):
                other = row + step[0], column + step[1]
                if other[0] < rows and other[1] < columns and chance.random() < 0.95:
                    ties[(row, column), other] = (chance.random() < 0.4, chance.randrange(1, 6))
    return columns, rows, ties


def question_of(columns: int, rows: int, ties) -> Question:
    size = columns * rows
    rules = tuple(
        Rule(Rank.LIKENESS, weight, (Tie(a[0] * columns + a[1], b[0] * columns + b[1], differ),))
        for (a, b), (differ, weight) in ties.items()
    )
    graph = SimpleNamespace(segments=range(size))
    free = (0,) * size
    return Question(
        graph, tuple(range(size)), frozenset(), (), rules, free, (True,) * size, (), SimpleNamespace(lines=()), ()
    )


def least_by_matching(columns: int, rows: int, ties) -> int:
    """The odd faces, paired so that the ties crossed between them weigh least."""

    def face(row: int, column: int):
        return (row, column) if 0 <= row < rows - 1 and 0 <= column < columns - 1 else "outside"

    dual = networkx.Graph()
    for row in range(rows):
        for column in range(columns):
            for step in ((0, 1), (1, 0)):
                end = row + step[0], column + step[1]
                if end[0] < rows and end[1] < columns:
                    beside = (face(row - step[1], column - step[0]), face(row, column))
                    weight = ties.get(((row, column), end), (False, 0))[1]
                    if beside[0] != beside[1] and weight < dual.get_edge_data(*beside, {"weight": 9}).get("weight"):
                        dual.add_edge(*beside, weight=weight)
    odd = {}
    for ((row, column), end), (differ, _) in ties.items():
        step = end[0] - row, end[1] - column
        for one in (face(row - step[1], column - step[0]), face(row, column)):
            odd[one] = odd.get(one, False) ^ differ
    ends = [one for one, is_odd in odd.items() if is_odd]
    far = dict(networkx.all_pairs_dijkstra_path_length(dual))
    pairs = networkx.Graph()
    pairs.add_weighted_edges_from((a, b, far[a][b]) for i, a in enumerate(ends) for b in ends[:i])
    return sum(far[a][b] for a, b in networkx.min_weight_matching(pairs))


@pytest.mark.parametrize("chunk", range(8))
def test_the_least_loss_is_a_matching_of_odd_faces(chunk):
    for seed in range(chunk * 25, chunk * 25 + 25):
        columns, rows, ties = instance(seed)
        question = question_of(columns, rows, ties)
        answer = decide(question)
        assert answer.gap == 0.0
        assert costs_of(question, answer.left)[Rank.LIKENESS] == least_by_matching(columns, rows, ties), seed
