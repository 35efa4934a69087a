"""The author's own lines win over everything, and what they cost is told."""

from dataclasses import replace

import pytest

from blocklang.block import PressFabricWish, PressWish, SpinSense, SpinWish
from blocklang.geometry import from_inches
from blocklang.pressing import PressingPreference, press
from tests.pressing.checker import Drawing, check
from tests.pressing.dissections import span, wishes
from tests.pressing.lattices import triangles
from tests.pressing.sewing import graph_of, sew, sew_rows
from tests.support import blocks

CENTRE = from_inches(1, 1)


def pressed(block, *wishes):
    assembly = sew(replace(block, wishes=wishes))
    pressing = press(assembly)
    check(assembly, pressing)
    assert pressing.proven
    return assembly, pressing


def toward(assembly, pressing, a, b):
    names = [patch.id for patch in assembly.graph.block.patches]
    pair = {names.index(a), names.index(b)}
    segments = {s.index for s in assembly.graph.seams if set(s.patches) == pair}
    return {None if p.toward is None else names[p.toward] for p in pressing.directions if p.segment in segments}


@pytest.mark.parametrize("side", ["r1c1", "r1c2", None])
def test_a_line_about_a_seam_is_followed(side):
    assembly, pressing = pressed(blocks.grid(2, 2), PressWish(("r1c1", "r1c2"), side, span(3)))
    assert toward(assembly, pressing, "r1c1", "r1c2") == {side}


def test_a_line_that_agrees_costs_nothing():
    _, pressing = pressed(blocks.grid(2, 2), PressWish(("r1c1", "r1c2"), "r1c1", span(3)))
    assert pressing.reasons == ()


def test_pressing_toward_the_light_is_told_and_still_locks():
    _, pressing = pressed(blocks.grid(2, 2), PressWish(("r1c1", "r1c2"), "r1c2", span(3)))
    assert pressing.locked == pressing.lockable
    (reason,) = pressing.reasons
    said = "With the line “press r1c1 r1c2 toward r1c2” (line 3), 1 seam is pressed against a preference."
    assert reason.text == said


def test_two_lines_that_keep_a_junction_from_locking_are_named():
    lines = PressWish(("r1c1", "r2c1"), "r2c1", span(3)), PressWish(("r1c2", "r2c2"), "r2c2", span(4))
    _, pressing = pressed(blocks.grid(2, 2), *lines)
    assert pressing.locked == ()
    about_lock, first, second = (reason.text for reason in pressing.reasons)
    assert about_lock == (
        "The seams do not lock where r1c1, r1c2, r2c1 and r2c2 meet: the lines “press r1c1 r2c1 toward r2c1” (line 3) "
        "and “press r1c2 r2c2 toward r2c2” (line 4) hold its seams so that they cannot. "
        "Leave out the line “press r1c1 r2c1 toward r2c1” (line 3), and they lock."
    )
    cost = "1 junction does not lock, 1 plain cross is not spun and 1 seam is pressed against a preference."
    assert first == f"With the line “press r1c1 r2c1 toward r2c1” (line 3), {cost}"
    cost = "1 junction does not lock and 1 plain cross is not spun."
    assert second == f"With the line “press r1c2 r2c2 toward r2c2” (line 4), {cost}"


def test_a_seam_pressed_open_does_not_lock():
    _, pressing = pressed(blocks.grid(2, 2), PressWish(("r1c1", "r2c1"), None, span(3)))
    assert pressing.lockable
    assert pressing.locked == ()
    assert pressing.spins == ()
    assert pressing.reasons[0].text == (
        "The seams do not lock where r1c1, r1c2, r2c1 and r2c2 meet: "
        "the seam between r1c1 and r2c1 is pressed open, as you ask. "
        "Without the line “press r1c1 r2c1 open” (line 3) they lock."
    )


def test_lines_that_pull_one_join_apart_clip_it():
    block = blocks.rectangles([(0, 1, 2, 2), (0, 0, 1, 1), (1, 0, 2, 1)], 2, 2)
    lines = PressWish(("p1", "p2"), "p1", span(3)), PressWish(("p1", "p3"), "p3", span(4))
    assembly, pressing = pressed(block, *lines)
    drawing = Drawing(assembly)
    assert drawing.costs({p.segment: p.toward for p in pressing.directions})[0] == 1
    assert all("1 join has to be clipped" in reason.text for reason in pressing.reasons)
    assert len(pressing.reasons) == 2


@pytest.mark.parametrize("sense", [SpinSense.CLOCKWISE, SpinSense.COUNTERCLOCKWISE])
def test_a_junction_is_spun_as_asked(sense):
    _, pressing = pressed(blocks.pinwheel(), SpinWish(from_inches(3, 3), sense, span(9)))
    assert [s.sense for s in pressing.spins] == [sense]


def test_a_junction_is_not_spun_if_the_author_says_so():
    _, pressing = pressed(blocks.grid(2, 2), SpinWish(CENTRE, SpinSense.NONE, span(9)))
    assert pressing.spins == ()
    assert pressing.locked == pressing.lockable


def test_a_tee_is_spun_if_the_author_says_so():
    block = blocks.rectangles([(0, 1, 2, 2), (0, 0, 1, 1), (1, 0, 2, 1)], 2, 2)
    _, pressing = pressed(block, SpinWish(CENTRE, SpinSense.CLOCKWISE, span(9)))
    assert [s.sense for s in pressing.spins] == [SpinSense.CLOCKWISE]


@pytest.mark.parametrize("away", [True, False])
def test_a_line_about_a_fabric_holds_wherever_it_meets_another(away):
    assembly, pressing = pressed(blocks.star(), PressFabricWish("fog", away, span(2)))
    patches = assembly.graph.block.patches
    for p in pressing.directions:
        fabrics = {patches[i].fabric for i in assembly.graph.segments[p.segment].patches}
        if "fog" in fabrics and len(fabrics) > 1:
            assert (patches[p.toward].fabric == "fog") != away


def test_contradictions_are_named_and_the_particular_line_is_followed():
    lines = PressFabricWish("fog", True, span(2)), PressWish(("r1c1", "r1c2"), "r1c2", span(3))
    assembly, pressing = pressed(blocks.grid(2, 2), *lines)
    assert toward(assembly, pressing, "r1c1", "r1c2") == {"r1c2"}
    assert toward(assembly, pressing, "r2c1", "r2c2") == {"r2c2"}
    assert pressing.reasons[0].text == (
        "The lines “press r1c1 r1c2 toward r1c2” (line 3) and “press away from fog” (line 2) contradict each other "
        "at the seam between r1c1 and r1c2; the first is followed."
    )


def test_spins_of_neighbours_in_one_sense_contradict_each_other():
    lines = [SpinWish(from_inches(x, 1), SpinSense.CLOCKWISE, span(x + 4)) for x in (1, 2)]
    _, pressing = pressed(blocks.grid(3, 2), *lines)
    assert pressing.reasons[0].text == (
        "The lines “spin clockwise” (line 5) and “spin clockwise” (line 6) contradict each other "
        "at the seam between r1c2 and r2c2; the first is followed and the second is left out."
    )


def test_units_of_a_step_are_pressed_alike_unless_a_lock_asks_otherwise():
    assembly = sew_rows(blocks.grid(5, 5), 5, 5)
    pressing = press(assembly)
    drawing = check(assembly, pressing)
    assert drawing.unlike({p.segment: p.toward for p in pressing.directions}) == 0


def test_a_preference_of_a_stranger_is_weighed():
    toward_coral = PressingPreference("up", "Press upward.", lambda graph, seam: 100.0)
    assembly = sew(blocks.hexagons(1))
    pressing = press(assembly, (toward_coral,))
    lefts = {s.index: s.left for s in assembly.graph.seams}
    assert all(p.toward == lefts[p.segment] for p in pressing.directions)


def test_a_preference_that_fails_is_named_and_left_out():
    broken = PressingPreference("broken", "Fails.", lambda graph, seam: 1 / 0)
    pressing = press(sew(blocks.grid(2, 2)), (broken,))
    assert [reason.text for reason in pressing.reasons] == ["The preference “broken” fails and is left out."]


def test_a_time_limit_of_nothing_is_honest():
    block = triangles(12, 12)
    assembly = sew(replace(block, wishes=wishes(graph_of(block), 1, 8)))
    pressing = press(assembly, time_limit=0.0)
    check(assembly, pressing)
    assert not pressing.proven
    assert pressing.gap > 0
