"""The shipped technique `hand-piecing`: asked for by name, it turns seams to one side and warns of open ones."""

from dataclasses import replace

import blocklang_hand_piecing as plugin
import pytest

from blocklang import extensions
from blocklang.block import PressWish
from blocklang.cutting import cut
from blocklang.plan import make_plan
from blocklang.pressing import DEFAULTS, press
from tests.pressing.checker import check
from tests.pressing.dissections import span
from tests.support import blocks
from tests.support.route import assembly_of

OFFERED = plugin.blocklang_pressing_preferences()


def pressed(block, techniques=("hand-piecing",)):
    assembly = assembly_of(block)
    pressing = press(assembly, (*DEFAULTS, *OFFERED), techniques=techniques)
    check(assembly, pressing)
    return assembly, pressing


def plan_of(block, techniques=("hand-piecing",)):
    assembly, pressing = pressed(block, techniques)
    return make_plan(assembly, pressing, cut(assembly.graph), ())


def test_it_is_found_among_the_plugins():
    offered = extensions.pressing_preferences(extensions.load_plugins())
    assert "hand-piecing" in {preference.name for preference in offered.items}


@pytest.mark.parametrize(
    "block", [blocks.grid(4, 4), blocks.star(), blocks.hexagons(1)], ids=["grid", "star", "flower"]
)
def test_nothing_changes_unless_it_is_asked_for(block):
    assembly, unasked = pressed(block, ())
    assert unasked == press(assembly)
    assert unasked.techniques == ()


def test_seams_with_nothing_else_to_decide_go_right_and_up():
    assembly, pressing = pressed(blocks.grid(4, 1))
    patches = assembly.graph.block.patches
    for p in pressing.directions:
        assert p.toward == max(assembly.graph.segments[p.segment].patches, key=lambda i: patches[i].outline.centroid())
    assembly, pressing = pressed(blocks.grid(1, 4))
    for p in pressing.directions:
        assert p.toward == max(assembly.graph.segments[p.segment].patches)


def test_locks_come_before_it():
    _assembly, pressing = pressed(blocks.grid(5, 5))
    assert pressing.locked == pressing.lockable
    assert len(pressing.spins) == 16


def test_the_plan_says_who_asked():
    _, pressing = pressed(blocks.grid(4, 1))
    assert [reason.text for reason in pressing.reasons] == [
        (
            "By “hand-piecing”, 2 seams go the other way than the colours ask: "
            "Press hand-sewn seams all to one side: to the right, and level ones upward."
        )
    ]
    assert pressing.techniques == ("hand-piecing",)


def test_an_open_seam_is_warned_of_only_when_it_is_asked_for():
    block = replace(blocks.grid(2, 2), wishes=(PressWish(("r1c1", "r1c2"), None, span(3)),))
    (found,) = plugin.find_open(plan_of(block))
    assert found.found.startswith("The seam between `r1c1` and `r1c2` is pressed open")
    assert plugin.find_open(plan_of(block, ())) == ()
    assert plugin.find_open(plan_of(blocks.grid(2, 2))) == ()
