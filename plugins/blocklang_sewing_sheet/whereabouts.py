"""Where things lie and which way seams are pressed, for a sheet without pictures: as the pieces lie in the block."""

import math
from collections.abc import Iterable
from enum import IntEnum
from itertools import groupby

from blocklang.geometry import Point
from blocklang.plan import PlanJoin, SewingPlan
from blocklang.pressing import Pressed

#: A seam whose ways across it add up to less than this part of its length runs round what it joins.
ROUND = 0.25


class Heading(IntEnum):
    """Eight ways across the block, seen from the front, counterclockwise from the right."""

    RIGHT = 0
    UPPER_RIGHT = 1
    UP = 2
    UPPER_LEFT = 3
    LEFT = 4
    LOWER_LEFT = 5
    DOWN = 6
    LOWER_RIGHT = 7


def heading_of(across: float, up: float) -> Heading | None:
    """Return the heading nearest to a direction; None where there is hardly any."""
    if math.hypot(across, up) < 1e-9:
        return None
    return Heading(round(math.atan2(up, across) / (math.pi / 4)) % 8)


def lies_from(plan: SewingPlan, join: PlanJoin) -> Heading | None:
    """Return where the second unit of a join lies, seen from the first; None where it lies all round, or is the same."""
    if len(join.units) < 2:
        return None
    travelled = plan.assembly.joins[join.index].path  # it runs so that the first unit lies on its left
    ways = [_across(plan, step.segment, to_left=not step.forward) for step in travelled]
    across, up = math.fsum(way[0] for way in ways), math.fsum(way[1] for way in ways)
    all_round = math.hypot(across, up) < ROUND * math.fsum(math.hypot(*way) for way in ways)
    return None if all_round else heading_of(across, up)


def pressed_ways(plan: SewingPlan, join: PlanJoin) -> tuple[Heading, ...]:
    """Return which way the allowance of a seam lies, along the seam, what is alike next to each other said once."""
    found = (heading_of(*_pressed_across(plan, item)) for item in _along(plan, join))
    return tuple(heading for heading, _ in groupby(found) if heading is not None)


def pressed_inward(plan: SewingPlan, join: PlanJoin) -> tuple[bool, ...]:
    """Return for a seam that runs round whether its allowance lies inward, what is alike next to each other once."""
    return tuple(inward for inward, _ in groupby(_is_inward(plan, join, item) for item in _along(plan, join)))


def starts_from(join: PlanJoin) -> Heading | None:
    """Return at which end a seam begins, seen from its middle."""
    return _end(join.path[0], join.path[-1])


def ends_at(join: PlanJoin) -> Heading | None:
    """Return at which end a seam ends, seen from its middle."""
    return _end(join.path[-1], join.path[0])


def length_of(path: Iterable[Point]) -> float:
    """Return how long a chorded path is, in ticks."""
    places = tuple(path)
    return math.fsum(math.dist((a.x, a.y), (b.x, b.y)) for a, b in zip(places, places[1:], strict=False))


def _end(at: Point, other: Point) -> Heading | None:
    return heading_of(at.x - other.x, at.y - other.y)


def _along(plan: SewingPlan, join: PlanJoin) -> list[Pressed]:
    """Return what is pressed to one side, in the order of the seam."""
    pressed = {item.segment: item for item in join.press if item.toward is not None}
    path = plan.assembly.joins[join.index].path
    return [pressed[step.segment] for step in path if step.segment in pressed]


def _pressed_across(plan: SewingPlan, item: Pressed) -> tuple[float, float]:
    return _across(plan, item.segment, to_left=plan.graph.segments[item.segment].left == item.toward)


def _is_inward(plan: SewingPlan, join: PlanJoin, item: Pressed) -> bool:
    edge = plan.graph.segments[item.segment].edge
    middle = [
        math.fsum(place) / (len(join.path) - 1) for place in zip(*((p.x, p.y) for p in join.path[1:]), strict=True)
    ]
    inward = (middle[0] - (edge.start.x + edge.end.x) / 2, middle[1] - (edge.start.y + edge.end.y) / 2)
    across = _pressed_across(plan, item)
    return across[0] * inward[0] + across[1] * inward[1] > 0


def _across(plan: SewingPlan, index: int, *, to_left: bool) -> tuple[float, float]:
    """Return a way straight across a seam segment, as long as the segment."""
    edge = plan.graph.segments[index].edge
    along = (edge.end.x - edge.start.x, edge.end.y - edge.start.y)
    return (-along[1], along[0]) if to_left else (along[1], -along[0])
