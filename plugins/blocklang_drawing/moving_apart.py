"""How far each unit of a step is moved from where it lies in the block: straight away from the seam that joins it."""

import math
from itertools import pairwise

from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang.plan import PlanJoin, SewingPlan
from blocklang_drawing.contacts import Contact
from blocklang_drawing.shapes import Place

#: A row is drawn out along itself unless its seams lie flatter to it than this cosine.
STEEPEST = 0.5


def move_apart(
    plan: SewingPlan,
    joins: tuple[PlanJoin, ...],
    parts: list[tuple[int, ...]],
    contacts: tuple[Contact, ...],
) -> list[Place]:
    """Return the move of each unit (ticks); `parts` holds the patches of each."""
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
        clear = max(gap, _clearance(plan.graph) / _flattest(plan.graph, touching, away))
        shift = _shift(touching, moves, away, along, clear)
        open_x, open_y = _open_side(plan.graph, touching, parts, first, second)
        shift = (shift[0] + open_x * gap, shift[1] + open_y * gap)
        if join.path[0] == join.path[-1]:
            shift = (_beside(plan.graph, [parts[i] for i in first], [parts[i] for i in second]) + gap, 0.0)
        for index in second:
            moves[index] = (moves[index][0] + shift[0], moves[index][1] + shift[1])
        both = first | second
        for index in both:
            together[index] = both
    return moves


def _clearance(graph: PatchGraph) -> float:
    return 2 * graph.block.seam_allowance + 0.2 * TICKS_PER_INCH


def _flattest(graph: PatchGraph, touching: list[Contact], away: Place) -> float:
    # How much of a move leads straight away from the seam segment that is least square to it.
    across = (_across(graph, contact.segment, contact.forward) for contact in touching)
    return max(STEEPEST / 2, min(x * away[0] + y * away[1] for x, y in across))


def _across(graph: PatchGraph, segment: int, forward: bool) -> Place:
    edge = graph.segments[segment].edge
    x, y = _unit(edge.end.y - edge.start.y, edge.start.x - edge.end.x)  # to the right of the edge
    return (x, y) if forward else (-x, -y)


def _open_side(
    graph: PatchGraph, touching: list[Contact], parts: list[tuple[int, ...]], first: set[int], second: set[int]
) -> Place:
    # Where units lie side by side without being sewn yet (the rest of a partial seam), they also move apart there.
    sewn = {contact.segment for contact in touching}
    left, right = ({patch for index in group for patch in parts[index]} for group in (first, second))
    apart = [
        _across(graph, segment.index, segment.left in left)
        for segment in graph.segments
        if ((segment.left in left and segment.right in right) or (segment.right in left and segment.left in right))
        and segment.index not in sewn
    ]
    if not apart:
        return 0.0, 0.0
    return _unit(sum(x for x, _ in apart), sum(y for _, y in apart))


def _gap(graph: PatchGraph, parts: list[tuple[int, ...]]) -> float:
    corners = [p for part in parts for patch in part for p in graph.block.patches[patch].outline.corners]
    across = max(p.x for p in corners) - min(p.x for p in corners)
    up = max(p.y for p in corners) - min(p.y for p in corners)
    return 2 * graph.block.seam_allowance + max(0.3 * TICKS_PER_INCH, 0.08 * max(across, up))


def _beside(graph: PatchGraph, first: list[tuple[int, ...]], second: list[tuple[int, ...]]) -> float:
    # One unit surrounds the other, so no way out is free: the second is laid to the right of the first.
    right = max(graph.block.patches[patch].outline.bounds()[2] for part in first for patch in part)
    left = min(graph.block.patches[patch].outline.bounds()[0] for part in second for patch in part)
    return float(right - left)


def _away(graph: PatchGraph, join: PlanJoin, first: list[tuple[int, ...]], second: list[tuple[int, ...]]) -> Place:
    start, end = join.path[0], join.path[-1]
    x, y = end.y - start.y, start.x - end.x  # to the right of the path: where the second unit lies
    walked = sum(math.dist(a, b) for a, b in pairwise(join.path))
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
