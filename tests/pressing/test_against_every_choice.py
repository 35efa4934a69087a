"""Small random blocks with contradictory lines: no other choice of directions is better."""

import itertools
import random
from dataclasses import replace

import pytest

from blocklang.pressing import DEFAULTS, press
from blocklang.pressing.lines import follow
from blocklang.pressing.preferences import set_in_preference
from tests.pressing import dissections
from tests.pressing.checker import Drawing, check
from tests.pressing.sewing import graph_of, sew
from tests.support import blocks

MOST_SEAMS = 12


def small_assembly(seed: int):
    """A random block with random lines; often some joins of one length are told as one step."""
    chance = random.Random(seed)
    block = blocks.grid(3, 2 + seed % 2) if seed % 4 == 0 else dissections.rectangles(seed, chance.randrange(3, 8))
    graph = graph_of(block)
    wishes = dissections.wishes(graph, seed, chance.randrange(5), chance.randrange(3))
    assembly = sew(replace(block, wishes=wishes))
    lengths: dict[int, list[tuple[int]]] = {}
    for number, join in enumerate(assembly.joins):
        lengths.setdefault(len(join.path), []).append((number,))
    alike = tuple(tuple(joins) for joins in lengths.values() if len(joins) > 1)
    return sew(replace(block, wishes=wishes), alike) if chance.random() < 0.7 else assembly


def all_choices(assembly):
    """Every choice of directions that follows the author's lines."""
    settled = {s.segment: s.left for s in follow(assembly.graph).settled}
    sides = [
        (seam.left, seam.right) if seam.index not in settled else (seam.left if settled[seam.index] else seam.right,)
        for seam in assembly.graph.seams
    ]
    for choice in itertools.product(*sides):
        yield dict(zip((seam.index for seam in assembly.graph.seams), choice, strict=True))


def cost(assembly, drawing: Drawing, toward):
    seams = assembly.graph.seams
    preferences = (*DEFAULTS, set_in_preference(assembly))
    weights = {s.index: sum(p.weigh(assembly.graph, s) for p in preferences) for s in seams}
    lost = sum(max(0.0, w if toward[s.index] == s.right else -w) for s in seams for w in [weights[s.index]])
    return (*drawing.costs(toward), lost)


@pytest.mark.parametrize("seed", range(160))
def test_no_other_choice_is_better(seed):
    assembly = small_assembly(seed)
    if len(assembly.graph.seams) > MOST_SEAMS:
        pytest.skip("too many choices to try them all")
    pressing = press(assembly)
    drawing = check(assembly, pressing)
    chosen = {p.segment: p.toward for p in pressing.directions}
    best = min(cost(assembly, drawing, choice) for choice in all_choices(assembly))
    assert cost(assembly, drawing, chosen) == best
    assert pressing.proven
    assert pressing.gap == 0.0


def test_the_random_blocks_are_hard_enough():
    """Among them are some that lose locks, some that clip and some that need a search."""
    costs = []
    for seed in range(160):
        assembly = small_assembly(seed)
        pressing = press(assembly)
        drawing = check(assembly, pressing)
        costs.append(drawing.costs({p.segment: p.toward for p in pressing.directions}))
    assert all(any(cost[rank] for cost in costs) for rank in (0, 1, 3, 4))
