"""The units of a step laid apart with a gap, each moved straight away from the seam that will join it."""

import math
from dataclasses import dataclass

from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang_drawing.placing import Placed, place_unit
from blocklang_drawing.shapes import Place

#: A row is drawn out along itself unless its seams lie flatter to it than this cosine.
STEEPEST = 0.5


@dataclass(frozen=True, slots=True)
class Contact:
    """One seam segment of a join, with the unit on its left and on its right, in the direction of the path."""

    join: int
    segment: int
    forward: bool
    left: int
    right: int


@dataclass(frozen=True, slots=True)
class LaidApart:
    """The units of one making of a step, in order of joining, and where they touch once sewn."""

    units: tuple[Placed, ...]
    contacts: tuple[Contact, ...]
    joins: tuple[PlanJoin, ...]


def lay_apart(plan: SewingPlan, step: PlanStep) -> LaidApart:
    """Lay apart the units that the first making of a step joins."""
    joins = step.joins[: len(step.joins) // max(step.times, 1)]
    patches = {unit.name: unit.patches for unit in plan.units}
    names = _parts(joins)
    owner = {patch: index for index, name in enumerate(names) for patch in patches[name]}
    contacts = tuple(contact for join in joins for contact in _contacts(plan, join, owner))
    moves = _moves(plan, joins, [patches[name] for name in names], contacts)
    units = tuple(place_unit(plan.graph, name, patches[name], moves[index]) for index, name in enumerate(names))
    return LaidApart(units, contacts, joins)


def _parts(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    made: set[str] = set()
    parts: dict[str, None] = {}
    for join in joins:
        parts.update((name, None) for name in join.units if name not in made)
        made.add(join.makes)
    return tuple(parts)


def _contacts(plan: SewingPlan, join: PlanJoin, owner: dict[int, int]) -> list[Contact]:
    found = []
    for travelled in plan.assembly.joins[join.index].path:
        segment = plan.graph.segments[travelled.segment]
        left, right = segment.patches if travelled.forward else (segment.right, segment.left)
        found.append(Contact(join.index, travelled.segment, travelled.forward, owner[left], owner[right]))
    return found


def _moves(
    plan: SewingPlan,
    joins: tuple[PlanJoin, ...],
    parts: list[tuple[int, ...]],
    contacts: tuple[Contact, ...],
) -> list[Place]:
    moves: list[Place] = [(0.0, 0.0)] * len(parts)
    gap = _gap(plan.graph, parts)
    together = [{index} for index in range(len(parts))]
    for join in joins:
        touching = [contact for contact in contacts if contact.join == join.index]
        if len(join.units) < 2 or not touching:
            continue
        first, second = together[touching[0].left], together[touching[0].right]
        away = _away(plan.graph, join, [parts[i] for i in sorted(first)], [parts[i] for i in sorted(second)])
        along = away if len(joins) == 1 or join.pivots else _axis(plan.graph, parts, touching[0], away)
        shift = _shift(touching, moves, away, along, gap)
        for index in second:
            moves[index] = (moves[index][0] + shift[0], moves[index][1] + shift[1])
        both = first | second
        for index in both:
            together[index] = both
    return moves


def _gap(graph: PatchGraph, parts: list[tuple[int, ...]]) -> float:
    corners = [p for part in parts for patch in part for p in graph.block.patches[patch].outline.corners]
    across = max(p.x for p in corners) - min(p.x for p in corners)
    up = max(p.y for p in corners) - min(p.y for p in corners)
    return 2 * graph.block.seam_allowance + max(0.3 * TICKS_PER_INCH, 0.08 * max(across, up))


def _away(graph: PatchGraph, join: PlanJoin, first: list[tuple[int, ...]], second: list[tuple[int, ...]]) -> Place:
    start, end = join.path[0], join.path[-1]
    x, y = end.y - start.y, start.x - end.x  # to the right of the path: where the second unit lies
    walked = sum(math.dist(a, b) for a, b in zip(join.path, join.path[1:], strict=False))
    if math.hypot(x, y) > walked / 4:
        return _unit(x, y)
    (ax, ay), (bx, by) = _middle(graph, first), _middle(graph, second)
    return _unit(bx - ax, by - ay)


def _axis(graph: PatchGraph, parts: list[tuple[int, ...]], contact: Contact, away: Place) -> Place:
    # A row of slanted pieces is drawn out along the row, not square to its seams.
    (ax, ay), (bx, by) = (_middle(graph, [parts[index]]) for index in (contact.left, contact.right))
    x, y = _unit(bx - ax, by - ay)
    return (x, y) if x * away[0] + y * away[1] > STEEPEST else away


def _shift(touching: list[Contact], moves: list[Place], away: Place, along: Place, gap: float) -> Place:
    apart = [
        (moves[contact.left][0] - moves[contact.right][0], moves[contact.left][1] - moves[contact.right][1])
        for contact in touching
    ]
    needed = max(x * away[0] + y * away[1] for x, y in apart)
    sideways = sum(x * -away[1] + y * away[0] for x, y in apart) / len(apart)
    further = gap / (along[0] * away[0] + along[1] * away[1])
    return (
        away[0] * needed - away[1] * sideways + along[0] * further,
        away[1] * needed + away[0] * sideways + along[1] * further,
    )


def _middle(graph: PatchGraph, parts: list[tuple[int, ...]]) -> Place:
    outlines = [graph.block.patches[patch].outline for part in parts for patch in part]
    weights = [abs(outline.area()) for outline in outlines]
    middles = [outline.centroid() for outline in outlines]
    whole = sum(weights) or 1.0
    return (
        sum(x * weight for (x, _), weight in zip(middles, weights, strict=True)) / whole,
        sum(y * weight for (_, y), weight in zip(middles, weights, strict=True)) / whole,
    )


def _unit(x: float, y: float) -> Place:
    length = math.hypot(x, y)
    return (x / length, y / length) if length else (1.0, 0.0)
