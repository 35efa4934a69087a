"""What the plan claims about locks is there in its directions, for library blocks and generated ones."""

import random

import pytest

from blocklang.cli.walking import Walk
from blocklang.language import Overrides
from blocklang.pressing import press
from tests.pressing import dissections
from tests.pressing.checker import check
from tests.pressing.from_json import locks_in
from tests.support.generated import any_block
from tests.support.marking import marks_of
from tests.support.route import assembly_of, json_of

NAMES = sorted(Walk().library.everything())


@pytest.mark.parametrize("name", NAMES)
def test_locks_in_the_json_of_a_library_block(name):
    block = Walk().draft(name, Overrides()).block
    assert block is not None
    plan = json_of(block)
    found = locks_in(plan)
    claimed = {j["id"]: j["locked"] for j in plan["junctions"] if j["lockable"]}
    assert found == claimed
    assert plan["pressing"]["lockable"] == len(claimed)
    assert plan["pressing"]["locked"] == sum(claimed.values())
    assert plan["pressing"]["proven"]


def generated(seed: int):
    """Mostly small rectangles, where crosses are common; every fifth a star, a flower, curves or many pieces."""
    return any_block(seed) if seed % 5 == 0 else dissections.rectangles(seed, 3 + seed % 9, 4)


@pytest.mark.parametrize("chunk", [pytest.param(n, marks=marks_of(n, 0, 5)) for n in range(20)])
def test_locks_of_generated_blocks(chunk):
    """Two thousand blocks in all."""
    for seed in range(chunk * 100, chunk * 100 + 100):
        assembly = assembly_of(generated(seed))
        pressing = press(assembly)
        check(assembly, pressing)
        assert pressing.proven, seed


@pytest.mark.parametrize("seed", random.Random(7).sample(range(2000), 24))
def test_locks_in_the_json_of_a_generated_block(seed):
    plan = json_of(any_block(seed))
    assert locks_in(plan) == {j["id"]: j["locked"] for j in plan["junctions"] if j["lockable"]}
