"""Equal units that are pressed in several ways are told apart, and nothing that is pressed unlike is told as alike."""

from typing import Any

import pytest

from blocklang.language import Overrides, decode_source, evaluate, parse
from blocklang.library import Library
from tests.library.plans import NAMES, json_of
from tests.support.route import json_of as json_of_block

LARGE = {"large-star"}


def _side(join: dict[str, Any], pressed: dict[str, Any], middles: dict[str, tuple[float, float]]) -> str:
    """Say on which side of a seam, as it is sewn, the patch lies that it is pressed toward; straight seams only."""
    if pressed["toward"] == "open":
        return "open"
    (x0, y0), (x1, y1) = pressed["path"][0], pressed["path"][-1]
    x, y = middles[pressed["toward"]]
    return "left" if (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) > 0 else "right"


def _ways(plan: dict[str, Any], step: dict[str, Any]) -> dict[str, tuple[str, ...]]:
    middles = {
        patch["id"]: (
            sum(x for x, _ in patch["outline"]) / len(patch["outline"]),
            sum(y for _, y in patch["outline"]) / len(patch["outline"]),
        )
        for patch in plan["patches"]
    }
    size = len(step["joins"]) // step["times"]
    found = {}
    for start in range(0, len(step["joins"]), size):
        joins = step["joins"][start : start + size]
        found[joins[-1]["makes"]] = tuple(_side(join, one, middles) for join in joins for one in join["press"])
    return found


def _check(plan: dict[str, Any]) -> int:
    several = 0
    for step in plan["steps"]:
        ways = _ways(plan, step)
        if not step["versions"]:
            assert len(set(ways.values())) == 1, f"step {step['number']} is pressed in several ways and does not say so"
            continue
        several += 1
        made = [unit for version in step["versions"] for unit in version["makes"]]
        assert sorted(made) == sorted(ways)
        groups = [{ways[unit] for unit in version["makes"]} for version in step["versions"]]
        assert all(len(group) == 1 for group in groups) and len(set.union(*groups)) == len(groups)
        letters = [version["letter"] for version in step["versions"]]
        assert len(set(letters)) == len(letters)
        assert [version["as_first"] for version in step["versions"]] == [True] + [False] * (len(letters) - 1)
    return several


@pytest.mark.parametrize("name", [name for name in NAMES if name not in LARGE])
def test_units_of_a_library_block_that_are_told_as_alike_are_pressed_alike(name: str) -> None:
    plan = json_of(name)
    if any("centre" in edge for patch in plan["patches"] for edge in patch["edges"]):
        pytest.skip("sides of curved seams are not told by a straight line")
    if any(len(patch["outline"]) > 4 for patch in plan["patches"]):
        pytest.skip("the middle of a bent patch may lie beyond its seam")
    _check(plan)


def test_copies_of_a_block_are_marked_and_laid_by_turns() -> None:
    text = (
        'block "Four"\nlanguage 1\nsize 18 in\nfabric fog background light #e8eef2\nfabric deep accent dark #1f3a5f\n'
    )
    for row in (0, 1):
        for column in (0, 1):
            text += f'place "nine-patch" as n{row}{column} at {column * 9}, {row * 9} size 9 in\n'
    source = decode_source("four.block", text.encode())
    assert not isinstance(source, tuple)
    tree = parse(source).tree
    assert tree is not None
    block = evaluate(tree, overrides=Overrides(), finder=Library(), more_cells=lambda: ()).block
    assert block is not None
    plan = json_of_block(block)
    assert _check(plan) >= 3
    (placed,) = plan["pressing"]["versions"]
    assert sorted((one["letter"], one["copies"]) for one in placed["versions"]) == [("A", 2), ("B", 2)]
    nine = next(step for step in plan["steps"] if step["times"] == 4 and step["measures"] == [9.5, 9.5])
    assert sorted((one["letter"], len(one["makes"])) for one in nine["versions"]) == [("A", 2), ("B", 2)]
