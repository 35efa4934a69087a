"""The plans of random blocks, through cutting and JSON and back, sewn again with shapely."""

import pytest

from tests.oracle.replaying import replay
from tests.oracle.scraps import scrap
from tests.support.marking import marks_of
from tests.support.route import json_of

CHUNK = 50


@pytest.mark.parametrize("chunk", [pytest.param(n, marks=marks_of(n, 2, 4)) for n in range(10)])
def test_the_plans_of_random_blocks_replay(chunk: int) -> None:
    for seed in range(chunk * CHUNK, (chunk + 1) * CHUNK):
        replay(json_of(scrap(seed)))


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(16))
def test_the_plans_of_larger_random_blocks_replay(seed: int) -> None:
    replay(json_of(scrap(seed, 20 + 2 * seed)))
