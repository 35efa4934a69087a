"""Every plan, sewn again join by join by a checker that shares no code with the planner."""

import pytest

from blocklang.block import Block
from tests.support import blocks
from tests.support.generated import any_block
from tests.support.replay import replay
from tests.support.route import json_of


@pytest.mark.parametrize(
    "block",
    [
        blocks.grid(4, 3),
        blocks.whirl(),
        blocks.pinwheel(),
        blocks.star(),
        blocks.star(14, 2),
        blocks.hexagons(2),
        blocks.drunkards_path(4),
    ],
    ids=lambda block: block.name if isinstance(block, Block) else "",
)
def test_a_known_block_replays(block: Block) -> None:
    replay(json_of(block))


@pytest.mark.parametrize("seed", range(150))
def test_a_generated_block_replays(seed: int) -> None:
    replay(json_of(any_block(seed)))


def test_the_replay_notices_a_wrong_stop() -> None:
    plan = json_of(blocks.star())
    plan["steps"][0]["joins"][0]["end"] = "raw-edge"
    with pytest.raises(AssertionError, match="the angle says stop"):
        replay(plan)


def test_the_replay_notices_a_missing_pivot() -> None:
    plan = json_of(blocks.star())
    plan["steps"][1]["joins"][0]["pivots"] = []
    with pytest.raises(AssertionError, match="bends at"):
        replay(plan)


def test_the_replay_notices_a_wrong_measure() -> None:
    plan = json_of(blocks.grid(2, 2))
    plan["steps"][0]["measures"] = [2.5, 1.25]
    with pytest.raises(AssertionError):
        replay(plan)
