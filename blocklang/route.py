"""The route of a block through the program: text, syntax, block, graph, assembly, pressing, cutting, plan.

Every stage gives a value and its diagnostics; the route stops at the first stage that has no value to hand on.
Stages are imported when they are reached, so that checking a file loads no solver.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from blocklang.diagnostics import Diagnostic, Severity, SourceText

if TYPE_CHECKING:
    from collections.abc import Callable

    from blocklang.block import Block
    from blocklang.cutting.methods import CuttingMethod
    from blocklang.graph import PatchGraph
    from blocklang.hooks import Check
    from blocklang.language import Cell, Finder, Overrides
    from blocklang.plan import PlanOptions, SewingPlan
    from blocklang.pressing.preferences import PressingPreference


@dataclass(frozen=True, slots=True)
class Drafted:
    """A block as drawn; `block` is None when the file has errors."""

    block: "Block | None"
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class Checked:
    """A block whose patches fit together; `graph` is None when the file has errors."""

    graph: "PatchGraph | None"
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class Planned:
    """The whole plan; `plan` is None when the file has errors."""

    plan: "SewingPlan | None"
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class Techniques:
    """What plugins add to planning."""

    cutting_methods: "tuple[CuttingMethod, ...]" = ()
    pressing_preferences: "tuple[PressingPreference, ...]" = ()
    checks: "tuple[Check, ...]" = ()


def read(path: Path) -> SourceText | tuple[Diagnostic, ...]:
    """Read a block file."""
    from blocklang.language import read_source

    return read_source(path)


def draft(
    source: SourceText, overrides: "Overrides", finder: "Finder", more_cells: "Callable[[], tuple[Cell, ...]]"
) -> Drafted:
    """Work out what a source text draws; `more_cells` is asked only when a cell is met that is not built in."""
    from blocklang.language import evaluate, parse

    parsed = parse(source)
    if parsed.tree is None:
        return Drafted(None, parsed.diagnostics)
    evaluated = evaluate(parsed.tree, overrides=overrides, finder=finder, more_cells=more_cells)
    return Drafted(evaluated.block, parsed.diagnostics + evaluated.diagnostics)


def check(drafted: Drafted) -> Checked:
    """Find out how the patches of a drafted block meet."""
    if drafted.block is None or has_errors(drafted.diagnostics):
        return Checked(None, drafted.diagnostics)
    from blocklang.graph import build_graph

    graphed = build_graph(drafted.block)
    return Checked(graphed.graph, drafted.diagnostics + graphed.diagnostics)


def plan(checked: Checked, options: "PlanOptions", techniques: Techniques) -> Planned:
    """Plan the sewing of a checked block."""
    if checked.graph is None or has_errors(checked.diagnostics):
        return Planned(None, checked.diagnostics)
    from blocklang.assembly import assemble

    assembled = assemble(checked.graph)
    diagnostics = checked.diagnostics + assembled.diagnostics
    if assembled.assembly is None or has_errors(diagnostics):
        return Planned(None, diagnostics)
    from blocklang.calling import Watched
    from blocklang.cutting import METHODS, cut, with_offers
    from blocklang.plan import make_plan
    from blocklang.pressing import DEFAULTS, press
    from blocklang.thickness import layer_counter

    preferences = (*DEFAULTS, *techniques.pressing_preferences)
    layers = layer_counter(assembled.assembly)
    pressing = press(assembled.assembly, preferences, techniques=options.techniques, layers=layers)
    diagnostics += pressing.diagnostics
    watched = Watched()
    methods = (*METHODS, *map(watched.method, techniques.cutting_methods))
    cutting = with_offers(cut(checked.graph, options.cutting, methods), assembled.assembly, methods)
    diagnostics += tuple(watched.diagnostics)
    return _held_against(make_plan(assembled.assembly, pressing, cutting, diagnostics), techniques.checks)


def has_errors(diagnostics: tuple[Diagnostic, ...]) -> bool:
    """Say whether one of them is an error."""
    return any(diagnostic.severity is Severity.ERROR for diagnostic in diagnostics)


def _held_against(made: "SewingPlan", checks: "tuple[Check, ...]") -> Planned:
    if not checks:
        return Planned(made, made.diagnostics)
    from dataclasses import replace

    from blocklang.calling import run_checks

    diagnostics = made.diagnostics + run_checks(checks, made)
    return Planned(replace(made, diagnostics=diagnostics), diagnostics)
