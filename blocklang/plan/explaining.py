"""Why seams stop where they do, what is under the needle, how curves meet, and what the whole order costs."""

from blocklang.assembly.values import Assembly, Join, JoinKind, Travelled
from blocklang.block import SpinSense
from blocklang.geometry import Edge, Point
from blocklang.plan.values import OrderCosts, PlanCurve, PlanLock, PlanNeedle, PlanSpin, PlanStep, PlanStop, PlanUnit


def joins_at(assembly: Assembly) -> dict[int, list[int]]:
    """Return, for each junction that a seam touches, the joins that do, in order; after the last nothing is open."""
    found: dict[int, list[int]] = {}
    for index, join in enumerate(assembly.joins):
        for junction in touched(assembly, join):
            found.setdefault(junction, []).append(index)
    return found


def stops_of(
    assembly: Assembly, join: Join, joins: dict[int, list[int]], step_of: dict[int, int], names: tuple[str, ...]
) -> tuple[PlanStop, ...]:
    """Return where a seam stops short, start first, and what goes in there later."""
    ends = ((join.start_stops, join.path[0], True), (join.end_stops, join.path[-1], False))
    found = []
    for stops, travelled, at_start in ends:
        junction = _end(assembly, travelled, at_start)
        later = assembly.joins[joins[junction][-1]]
        if stops and later is not join and join.kind is not JoinKind.PARTIAL_FINISH:
            smaller = min(later.units, key=lambda unit: (len(assembly.unit_patches[unit]), unit))
            finished = later.kind is JoinKind.PARTIAL_FINISH
            found.append(
                PlanStop(
                    at=assembly.graph.junctions[junction].at,
                    junction=junction,
                    step=step_of[joins[junction][-1]],
                    unit="" if finished else names[smaller],
                    resumes=finished and join.kind is JoinKind.PARTIAL,
                )
            )
    return tuple(found)


def _end(assembly: Assembly, step: Travelled, at_start: bool) -> int:
    segment = assembly.graph.segments[step.segment]
    return segment.start if step.forward is at_start else segment.end


def touched(assembly: Assembly, join: Join) -> tuple[int, ...]:
    """Return the junctions along a join, its ends included."""
    segments = (assembly.graph.segments[step.segment] for step in join.path)
    return tuple(dict.fromkeys(junction for segment in segments for junction in (segment.start, segment.end)))


def locks_of(
    assembly: Assembly, join: Join, joins: dict[int, list[int]], step_of: dict[int, int], locked: frozenset[int]
) -> tuple[PlanLock, ...]:
    """Return where the allowance of a seam locks with others in a later join."""
    later = [j for j in touched(assembly, join) if j in locked and assembly.joins[joins[j][-1]] is not join]
    return tuple(PlanLock(assembly.graph.junctions[j].at, j, step_of[joins[j][-1]]) for j in later)


def spins_of(
    assembly: Assembly, index: int, joins: dict[int, list[int]], step_of: dict[int, int], spins: dict[int, SpinSense]
) -> tuple[PlanSpin, ...]:
    """Return the junctions that a join closes and that are spun."""
    join = assembly.joins[index]
    closed = [j for j in touched(assembly, join) if joins[j][-1] == index and j in spins]
    return tuple(
        PlanSpin(
            assembly.graph.junctions[j].at, j, spins[j], tuple(sorted({step_of[earlier] for earlier in joins[j][:-1]}))
        )
        for j in sorted(closed)
    )


def curve_of(assembly: Assembly, join: Join, names: tuple[str, ...]) -> PlanCurve | None:
    """Return which unit curves outward and the quarter points of each arc; None where the seam has no arc."""
    edges = [travelled_edge(assembly, step) for step in join.path]
    arcs = [edge for edge in edges if edge.arc is not None]
    if not arcs or len(join.units) < 2:
        return None
    left_bulges = sum(edge.sweep() for edge in arcs) > 0  # turning left: the middle of the circle is on the left
    convex, concave = join.units if left_bulges else join.units[::-1]
    marks = tuple(point for edge in arcs for point in _quarters(edge))
    return PlanCurve(names[convex], names[concave], marks)


def travelled_edge(assembly: Assembly, step: Travelled) -> Edge:
    """Return the edge of a seam in the direction of travel."""
    edge = assembly.graph.segments[step.segment].edge
    return edge if step.forward else edge.reversed()


def _quarters(edge: Edge) -> tuple[Point, ...]:
    places = (edge.at(part / 4) for part in (1, 2, 3))
    return tuple(Point(round(x), round(y)) for x, y in places)


def needle_of(handled: list[PlanUnit], allowance: int) -> PlanNeedle:
    """Return the largest of some units, with the width and height it takes up on the table."""
    largest = max(handled, key=lambda unit: len(unit.patches))
    left, low, right, high = largest.outline.bounds()
    size = largest.measures or (right - left + 2 * allowance, high - low + 2 * allowance)
    return PlanNeedle(largest.name, len(largest.patches), size)


def order_costs(assembly: Assembly, steps: tuple[PlanStep, ...]) -> OrderCosts:
    """Return what the whole order costs beside pivots and partial seams."""
    sizes = [
        min(len(assembly.unit_patches[unit]) for unit in join.units)
        for join in assembly.joins
        if join.pivots and len(join.units) > 1
    ]
    made = [step for step in steps if step.kind is not JoinKind.PARTIAL_FINISH]
    return OrderCosts(max(sizes, default=0), len(made), sum(step.measures is None for step in made))
