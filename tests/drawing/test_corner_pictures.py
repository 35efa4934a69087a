"""The corner of a set-in seam from close by: both places where the needle turns, larger than the step shows them."""

import math

import pytest
from blocklang_drawing import Drawing, Path, Place, Window, draw_corner, draw_step, theme_for, to_svg

from blocklang.plan import PlanStep, SewingPlan
from tests.library.plans import plan_of

SET_IN = ("eight-pointed-star", "hexagon-flower-7", "tumbling-block", "attic-window", "four-pointed-star")


def corners(name: str) -> list[tuple[PlanStep, Drawing]]:
    plan = plan_of(name)
    theme = theme_for(plan.block.fabrics)
    found = [(step, draw_corner(plan, step, theme)) for step in plan.steps]
    assert {step.number for step, corner in found if corner is not None} == set(turning(plan))
    return [(step, corner) for step, corner in found if corner is not None]


def turning(plan: SewingPlan) -> list[int]:
    return [step.number for step in plan.steps if any(join.pivots and len(join.units) > 1 for join in step.joins)]


def inside(corner: Drawing) -> Window:
    (window,) = (shape for shape in corner.shapes if isinstance(shape, Window))
    return window


def lozenges(window: Window) -> list[Place]:
    """Return the middles of the open lozenges of pivots: four corners, filled with paper, with a line."""
    found = []
    for shape in window.shapes:
        if isinstance(shape, Path) and shape.paint.fill and shape.paint.stroke and len(shape.trails) == 1:
            trail = shape.trails[0]
            places = [trail.start, *(stretch.end for stretch in trail.stretches)]
            found.append((sum(x for x, _ in places) / len(places), sum(y for _, y in places) / len(places)))
    return found


@pytest.mark.parametrize("name", SET_IN)
def test_both_places_where_the_needle_turns_are_seen(name: str) -> None:
    found = corners(name)
    assert found
    for step, corner in found:
        window = inside(corner)
        first_join = next(join for join in step.joins if join.pivots)
        seen = [
            (x, y)
            for x, y in lozenges(window)
            if window.onto[0] < x < window.onto[0] + window.width
            and window.onto[1] < y < window.onto[1] + window.height
        ]
        assert len(seen) >= 2
        assert len(lozenges(window)) == 2 * len(first_join.pivots)


@pytest.mark.parametrize("name", SET_IN)
def test_it_is_larger_than_the_picture_of_the_step(name: str) -> None:
    """By the distance of the same two places on both drawings."""
    plan = plan_of(name)
    theme = theme_for(plan.block.fabrics)
    for step, corner in corners(name):
        far = sorted(lozenges(inside(corner)))
        near = sorted(lozenges(Window((0, 0), 0, 0, (0, 0), draw_step(plan, step, theme).shapes)))
        apart = min(math.dist(a, b) for a in far for b in far if a != b)
        in_step = min(math.dist(a, b) for a in near for b in near if a != b)
        assert apart > 1.2 * in_step


def test_black_and_white_is_the_same_every_time() -> None:
    plan = plan_of("eight-pointed-star")
    theme = theme_for(plan.block.fabrics, black_and_white=True)
    drawn = [draw_corner(plan, plan.steps[1], theme) for _ in range(2)]
    assert drawn[0] is not None
    assert drawn[1] is not None
    assert to_svg(drawn[0]) == to_svg(drawn[1])
