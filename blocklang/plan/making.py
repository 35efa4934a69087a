"""Gathering what the stages found into one plan."""

from blocklang.assembly.values import Assembly, Join, JoinKind, Step, Travelled
from blocklang.block import SpinSense
from blocklang.cutting.values import Cutting
from blocklang.diagnostics import Diagnostic
from blocklang.geometry import Point
from blocklang.plan.explaining import (
    curve_of,
    joins_at,
    locks_of,
    needle_of,
    order_costs,
    spins_of,
    stops_of,
    travelled_edge,
)
from blocklang.plan.labels import patch_labels
from blocklang.plan.names import instances, junction_names, unit_names
from blocklang.plan.outlines import borders_of, measure_of, outlines_of
from blocklang.plan.titles import step_title
from blocklang.plan.values import PlanJoin, PlanNeedle, PlanStep, PlanUnit, SewingPlan
from blocklang.plan.versions import versions_of
from blocklang.pressing.values import Pressing


def make_plan(
    assembly: Assembly, pressing: Pressing, cutting: Cutting, diagnostics: tuple[Diagnostic, ...]
) -> SewingPlan:
    """Return the plan of a block from the results of all stages."""
    names = unit_names(assembly)
    units = _units(assembly, names)
    labels = patch_labels(assembly.graph.block, cutting)
    teller = _Teller(assembly, pressing, names, units, labels)
    steps = tuple(teller.step(number, step) for number, step in enumerate(assembly.steps, 1))
    graph, order = assembly.graph, order_costs(assembly, steps)
    return SewingPlan(
        graph.block, graph, assembly, pressing, cutting, units, steps, order, junction_names(graph), labels, diagnostics
    )


def _units(assembly: Assembly, names: tuple[str, ...]) -> tuple[PlanUnit, ...]:
    graph = assembly.graph
    borders = borders_of(assembly)
    units = []
    for name, patches, border in zip(names, assembly.unit_patches, borders, strict=True):
        outline, *holes = outlines_of(graph, frozenset(patches), border)
        measures = None if holes else measure_of(outline, graph.block.seam_allowance)
        units.append(PlanUnit(name, patches, outline, measures))
    return tuple(units)


#: Joins that can be fed through the machine one after the other: nothing is turned or set in.
_CHAINED = (JoinKind.STRAIGHT, JoinKind.CURVED)


class _Teller:
    """Tells steps and joins by name."""

    def __init__(
        self,
        assembly: Assembly,
        pressing: Pressing,
        names: tuple[str, ...],
        units: tuple[PlanUnit, ...],
        labels: tuple[str, ...],
    ) -> None:
        self.assembly = assembly
        self.pressing = pressing
        self.names = names
        self.units = units
        self.labels = labels
        self.pressed = {direction.segment: direction for direction in pressing.directions}
        self.locked = frozenset(pressing.locked)
        self.spins: dict[int, SpinSense] = {
            s.junction: s.sense for s in pressing.spins if s.sense is not SpinSense.NONE
        }
        self.joins_at = joins_at(assembly)
        self.step_of = {join: place for place, step in enumerate(assembly.steps, 1) for join in step.joins}

    def step(self, number: int, step: Step) -> PlanStep:
        made = instances(step)
        return PlanStep(
            number=number,
            title=step_title(self.assembly, step, self.names, self.labels),
            kind=step.kind,
            times=step.times,
            joins=tuple(self.join(index) for one in made for index in one),
            makes=tuple(self.names[unit] for unit in step.makes),
            measures=self.units[step.makes[0]].measures,
            chained=step.times > 1 and all(self.assembly.joins[index].kind in _CHAINED for index in made[0]),
            needle=self.needle(made[0]),
            why=step.why,
            versions=versions_of(self.assembly, self.pressing, self.pressed, made, self.names),
        )

    def needle(self, joins: tuple[int, ...]) -> PlanNeedle:
        handled = [self.units[unit] for index in joins for unit in self.assembly.joins[index].units]
        return needle_of(handled, self.assembly.graph.block.seam_allowance)

    def join(self, index: int) -> PlanJoin:
        join = self.assembly.joins[index]
        junctions = self.assembly.graph.junctions
        return PlanJoin(
            units=tuple(self.names[unit] for unit in join.units),
            makes=self.names[join.makes],
            path=path_points(self.assembly, join),
            start_stops=join.start_stops,
            end_stops=join.end_stops,
            pivots=tuple(junctions[pivot].at for pivot in join.pivots),
            press=tuple(self.pressed[step.segment] for step in join.path),
            index=index,
            stops=stops_of(self.assembly, join, self.joins_at, self.step_of, self.names),
            locks=locks_of(self.assembly, join, self.joins_at, self.step_of, self.locked),
            spins=spins_of(self.assembly, index, self.joins_at, self.step_of, self.spins),
            curve=curve_of(self.assembly, join, self.names),
        )


def path_points(assembly: Assembly, join: Join) -> tuple[Point, ...]:
    """Return the seam line of a join as points no further than a thousandth of an inch from it."""
    pieces = [travelled_points(assembly, step) for step in join.path]
    return pieces[0][:1] + tuple(point for piece in pieces for point in piece[1:])


def travelled_points(assembly: Assembly, step: Travelled) -> tuple[Point, ...]:
    """Return one segment of a path as points, in the direction of travel."""
    return travelled_edge(assembly, step).chords()
