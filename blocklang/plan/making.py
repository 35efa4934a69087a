"""Gathering what the stages found into one plan."""

from blocklang.assembly.values import Assembly, Join, Step, Travelled
from blocklang.cutting.values import Cutting
from blocklang.diagnostics import Diagnostic
from blocklang.geometry import Point
from blocklang.plan.names import instances, junction_names, step_title, unit_names
from blocklang.plan.outlines import borders_of, measure_of, outline_of
from blocklang.plan.values import PlanJoin, PlanStep, PlanUnit, SewingPlan
from blocklang.pressing.values import Pressed, Pressing


def make_plan(
    assembly: Assembly, pressing: Pressing, cutting: Cutting, diagnostics: tuple[Diagnostic, ...]
) -> SewingPlan:
    """Return the plan of a block from the results of all stages."""
    names = unit_names(assembly)
    units = _units(assembly, names)
    pressed = {direction.segment: direction for direction in pressing.directions}
    steps = tuple(_step(assembly, number, step, names, units, pressed) for number, step in enumerate(assembly.steps, 1))
    graph = assembly.graph
    return SewingPlan(graph.block, graph, assembly, pressing, cutting, units, steps, junction_names(graph), diagnostics)


def _units(assembly: Assembly, names: tuple[str, ...]) -> tuple[PlanUnit, ...]:
    graph = assembly.graph
    borders = borders_of(assembly)
    units = []
    for name, patches, border in zip(names, assembly.unit_patches, borders, strict=True):
        outline = outline_of(graph, frozenset(patches), border)
        units.append(PlanUnit(name, patches, outline, measure_of(outline, graph.block.seam_allowance)))
    return tuple(units)


def _step(
    assembly: Assembly,
    number: int,
    step: Step,
    names: tuple[str, ...],
    units: tuple[PlanUnit, ...],
    pressed: dict[int, Pressed],
) -> PlanStep:
    joins = tuple(_join(assembly, index, names, pressed) for one in instances(step) for index in one)
    made = tuple(names[unit] for unit in step.makes)
    title = step_title(assembly, step, names)
    return PlanStep(number, title, step.kind, step.times, joins, made, units[step.makes[0]].measures)


def _join(assembly: Assembly, index: int, names: tuple[str, ...], pressed: dict[int, Pressed]) -> PlanJoin:
    join = assembly.joins[index]
    junctions = assembly.graph.junctions
    return PlanJoin(
        units=tuple(names[unit] for unit in join.units),
        makes=names[join.makes],
        path=path_points(assembly, join),
        start_stops=join.start_stops,
        end_stops=join.end_stops,
        pivots=tuple(junctions[pivot].at for pivot in join.pivots),
        press=tuple(pressed[step.segment] for step in join.path),
        index=index,
    )


def path_points(assembly: Assembly, join: Join) -> tuple[Point, ...]:
    """Return the seam line of a join as points no further than a thousandth of an inch from it."""
    pieces = [travelled_points(assembly, step) for step in join.path]
    return pieces[0][:1] + tuple(point for piece in pieces for point in piece[1:])


def travelled_points(assembly: Assembly, step: Travelled) -> tuple[Point, ...]:
    """Return one segment of a path as points, in the direction of travel."""
    edge = assembly.graph.segments[step.segment].edge
    return edge.chords() if step.forward else edge.reversed().chords()
