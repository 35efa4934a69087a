"""From a patch graph to a sewing order, with what is proven about it."""

from dataclasses import dataclass, replace

from blocklang.assembly.author import unmet_wishes
from blocklang.assembly.choosing import Chooser
from blocklang.assembly.contradictions import Counting, clashing_units, costly_lines, impossible_lines
from blocklang.assembly.demands import Demands, demands_of
from blocklang.assembly.joining import Sewing, sew
from blocklang.assembly.steps import steps_of
from blocklang.assembly.values import Assembly, Count, Join, JoinKind, Step
from blocklang.block import Wish
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.graph.values import PatchGraph


@dataclass(frozen=True, slots=True)
class Assembled:
    """The sewing order, or None with the diagnostics that say why not."""

    assembly: Assembly | None
    diagnostics: tuple[Diagnostic, ...]


def assemble(graph: PatchGraph) -> Assembled:
    """Find a sewing order with few set-in seams, in the order that a teacher would choose, as the author asks."""
    wishes = graph.block.wishes
    clashes = clashing_units(wishes)
    if clashes:
        return Assembled(None, clashes)
    demands = demands_of(graph, wishes)
    assembly = _in_order(graph, demands)
    if assembly is None:
        return Assembled(None, impossible_lines(wishes, _count_with(graph)) or (_no_order(graph),))
    unmet = unmet_wishes(graph, assembly.joins, assembly.unit_patches)
    costs = costly_lines(wishes, _count_of(assembly), _count_with(graph)) if demands and not unmet else ()
    return Assembled(assembly, unmet + costs)


def _in_order(graph: PatchGraph, demands: Demands) -> Assembly | None:
    chooser = Chooser(graph, demands)
    sewing = sew(chooser)
    if sewing is None:
        return None
    ordered = _in_step_order(sewing, steps_of(sewing, chooser), len(graph.block.patches))
    joins, steps, units = ordered
    pivots, partials = _counts(graph, joins, chooser)
    return Assembly(graph, joins, steps, units, _classes(steps, joins, chooser), pivots, partials)


def _count_with(graph: PatchGraph) -> Counting:
    def count(wishes: tuple[Wish, ...]) -> tuple[int, int] | None:
        assembly = _in_order(graph, demands_of(graph, wishes))
        return None if assembly is None else _count_of(assembly)

    return count


def _count_of(assembly: Assembly) -> tuple[int, int]:
    return assembly.pivots.count, assembly.partials.count


def _no_order(graph: PatchGraph) -> Diagnostic:
    found = f"No order of joins was found that sews {graph.block.name} together along connected seams."
    advice = "Look for a patch that is held on two sides that do not meet, and cut it in two."
    return Diagnostic("no-order", Severity.ERROR, "The block cannot be sewn as drawn", found, advice, graph.block.span)


Ordered = tuple[tuple[Join, ...], tuple[Step, ...], tuple[tuple[int, ...], ...]]


def _in_step_order(sewing: Sewing, steps: tuple[Step, ...], patches: int) -> Ordered:
    """Renumber joins and units so that they follow the steps."""
    order = [index for step in steps for index in step.joins]
    new_join = {old: new for new, old in enumerate(order)}
    new_unit = {old + patches: new + patches for old, new in new_join.items()}
    new_unit.update({patch: patch for patch in range(patches)})
    joins = tuple(
        replace(j, units=tuple(new_unit[unit] for unit in j.units), makes=new_unit[j.makes])
        for j in (sewing.joins[index] for index in order)
    )
    renumbered = tuple(
        replace(s, joins=tuple(new_join[i] for i in s.joins), makes=tuple(new_unit[u] for u in s.makes)) for s in steps
    )
    units = tuple(sewing.units[:patches]) + tuple(sewing.units[index + patches] for index in order)
    return joins, renumbered, units


def _counts(graph: PatchGraph, joins: tuple[Join, ...], chooser: Chooser) -> tuple[Count, Count]:
    """Count pivots and partial seams against the least: what every order needs, and what the cores need beside."""
    pivots = sum(len(join.pivots) for join in joins)
    fewest = sum(j.is_inner and j.always_pivots for j in graph.junctions) + chooser.cores.fewest_pivots
    partials = sum(join.kind is JoinKind.PARTIAL_FINISH for join in joins)
    rings = chooser.cores.fewest_partials
    proven = pivots == fewest
    return Count(pivots, fewest, proven), Count(partials, rings, proven and partials == rings)


def _classes(steps: tuple[Step, ...], joins: tuple[Join, ...], chooser: Chooser) -> tuple[int, ...]:
    """Patches are classed by their likeness, made units by the step that makes them and how far it has come."""
    numbers: dict[object, int] = {}
    kinds = [numbers.setdefault(patch.kind, len(numbers)) for patch in chooser.likeness.patches]
    kinds.extend(0 for _ in joins)
    for place, step in enumerate(steps):
        size = len(step.joins) // step.times
        for number, join in enumerate(step.joins):
            kinds[joins[join].makes] = numbers.setdefault((place, number % size), len(numbers))
    return tuple(kinds)
