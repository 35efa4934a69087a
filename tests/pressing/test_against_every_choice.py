"""Small random blocks with contradictory lines: no other choice of directions is better."""

import random
from dataclasses import replace

import pytest

from blocklang.pressing import press
from blocklang.pressing.lines import follow
from tests.pressing import dissections
from tests.pressing.checker import check
from tests.pressing.every_choice import EveryChoice
from tests.pressing.sewing import graph_of, sew
from tests.support import blocks

MOST_SEAMS = 14


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


def lost(assembly, pressing, drawing) -> tuple[int, ...]:
    """What a pressing loses at each rank, by the drawing."""
    toward = {p.segment: p.toward for p in pressing.directions}
    every = EveryChoice(
        assembly, {s: None if to is None else to == assembly.graph.segments[s].left for s, to in toward.items()}
    )
    assert every.best[:5] == drawing.costs(toward)
    return every.best


@pytest.mark.parametrize("chunk", range(20))
def test_no_other_choice_is_better(chunk):
    """At least five hundred blocks in all."""
    tried = 0
    for seed in range(chunk * 40, chunk * 40 + 40):
        assembly = small_assembly(seed)
        if len(assembly.graph.seams) > MOST_SEAMS:
            continue
        tried += 1
        pressing = press(assembly)
        drawing = check(assembly, pressing)
        settled = {s.segment: s.left for s in follow(assembly.graph).settled}
        assert lost(assembly, pressing, drawing) == EveryChoice(assembly, settled).best, seed
        assert pressing.proven, seed
        assert pressing.gap == 0.0
    assert tried >= 25


def test_the_random_blocks_are_hard_enough():
    """Among them are some that lose locks, some that clip, some that are pressed unlike and some that are not spun."""
    costs = []
    for assembly in map(small_assembly, range(60)):
        pressing = press(assembly)
        costs.append(check(assembly, pressing).costs({p.segment: p.toward for p in pressing.directions}))
    assert all(any(cost[rank] for cost in costs) for rank in (0, 1, 3, 4))
