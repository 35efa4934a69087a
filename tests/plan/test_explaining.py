"""What a plan says about its own order: why a seam stops, what goes in there, what is under the needle, how curves lie."""

import math
from itertools import pairwise

import pytest

from blocklang.assembly import JoinKind, Why
from blocklang.cli.plan_text import plan_to_text
from blocklang.cli.why_text import why_lines
from blocklang.geometry import TICKS_PER_INCH
from blocklang.plan import PlanStep, SewingPlan
from tests.support import blocks
from tests.support.generated import any_block
from tests.support.route import plan_of


def _stops(step: PlanStep) -> list[tuple[str, int, bool]]:
    return [(stop.unit.partition(".")[0], stop.step, stop.resumes) for stop in step.joins[0].stops]


def test_every_stop_of_the_star_says_what_goes_in_there() -> None:
    steps = plan_of(blocks.star()).steps
    assert [_stops(step) for step in steps] == [
        [("corner", 2, False)],
        [],
        [("side", 5, False)],
        [("side", 5, False), ("side", 5, False)],
        [],
    ]


def test_a_partial_seam_says_where_it_is_taken_up_again() -> None:
    plan = plan_of(blocks.whirl())
    begun = next(step for step in plan.steps if step.kind is JoinKind.PARTIAL)
    finished = next(step for step in plan.steps if step.kind is JoinKind.PARTIAL_FINISH)
    assert [(stop.unit, stop.step, stop.resumes) for stop in begun.joins[0].stops] == [("", finished.number, True)]
    assert begun.joins[0].stops[0].at == finished.joins[0].path[0]


@pytest.mark.parametrize("seed", range(40))
def test_what_goes_in_at_a_stop_is_sewn_there_in_that_step_and_not_before(seed: int) -> None:
    plan = plan_of(any_block(seed))
    for step in plan.steps:
        for stop in (stop for join in step.joins for stop in join.stops):
            there = [join for join in plan.steps[stop.step - 1].joins if stop.at in join.path]
            assert stop.step > step.number or step.times > 1 or len(step.joins) > 1
            assert any(stop.unit in join.units for join in there) if stop.unit else there


def test_quarter_points_lie_on_the_curve_a_quarter_apart() -> None:
    plan = plan_of(blocks.drunkards_path(2))
    curves = [join.curve for step in plan.steps for join in step.joins if join.curve is not None]
    assert len(curves) == 4
    for curve in curves:
        pie = plan.unit(curve.convex).outline
        arc = next(edge for edge in pie.edges if edge.arc is not None)
        assert arc.arc is not None
        turns = [math.atan2(m.y - arc.arc.centre.y, m.x - arc.arc.centre.x) for m in curve.marks]
        for mark in curve.marks:
            reach = math.hypot(mark.x - arc.arc.centre.x, mark.y - arc.arc.centre.y)
            assert reach == pytest.approx(arc.radius(), abs=2)
        steps = [(b - a + math.pi) % math.tau - math.pi for a, b in pairwise(turns)]
        assert [abs(step) for step in steps] == pytest.approx([math.pi / 8] * 2, abs=1e-4)


def test_the_pie_curves_outward() -> None:
    plan = plan_of(blocks.drunkards_path(2))
    for join in (join for step in plan.steps for join in step.joins if join.curve is not None):
        assert join.curve is not None
        assert plan.unit(join.curve.convex).outline.area() < plan.unit(join.curve.concave).outline.area()


def test_only_equal_straight_seams_are_chain_pieced() -> None:
    steps = plan_of(blocks.star()).steps
    assert [(step.times, step.chained) for step in steps] == [(4, True), (4, False), (2, True), (1, False), (1, False)]


def test_the_largest_piece_under_the_needle_is_the_star_without_its_last_side() -> None:
    last = plan_of(blocks.star(12)).steps[-1]
    assert last.needle.patches == 15
    assert last.needle.size[0] == pytest.approx(12.5 * TICKS_PER_INCH, abs=2)


def _told(plan: SewingPlan) -> str:
    return plan_to_text(plan, why=True)


def test_why_this_order_is_told_for_every_step() -> None:
    plan = plan_of(blocks.star())
    text = _told(plan)
    assert text.count("Why: ") == len(plan.steps)
    assert "corner.1 goes in there in step 2" in text or "corner.2 goes in there in step 2" in text
    assert "The largest piece that is set in has 1 patch." in text


def test_each_reason_has_its_own_sentence() -> None:
    from dataclasses import replace

    step = plan_of(blocks.star()).steps[0]
    said = [next(iter(why_lines(replace(step, why=why)))) for why in Why]
    assert len(set(said)) == len(Why) and all(line.endswith(".") for line in said)


def test_what_locks_later_is_closed_then() -> None:
    plan = plan_of(blocks.grid(3, 3))
    assert plan.pressing.locked
    told = {lock.junction for step in plan.steps for join in step.joins for lock in join.locks}
    assert told == set(plan.pressing.locked)
    for lock in (lock for step in plan.steps for join in step.joins for lock in join.locks):
        closing = [join for join in plan.steps[lock.step - 1].joins if lock.at in join.path[1:-1]]
        assert closing


def test_a_spun_centre_names_the_steps_whose_stitches_are_undone() -> None:
    plan = plan_of(blocks.star())
    centre = next(step for step in plan.steps if any(join.spins for join in step.joins))
    (spin,) = centre.joins[0].spins
    assert (centre.number, spin.undone) == (4, (1, 3))
    assert spin.sense == plan.pressing.spins[0].sense
