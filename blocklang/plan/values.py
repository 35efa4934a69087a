"""The sewing plan as frozen values."""

from dataclasses import dataclass

from blocklang.assembly.values import Assembly, JoinKind
from blocklang.block import Block
from blocklang.cutting.values import Cutting, CuttingOptions
from blocklang.diagnostics import Diagnostic
from blocklang.geometry import Outline, Point
from blocklang.graph.values import PatchGraph
from blocklang.pressing.values import Pressed, Pressing


@dataclass(frozen=True, slots=True)
class PlanOptions:
    """What may be chosen about a plan beyond the block file."""

    cutting: CuttingOptions = CuttingOptions()


@dataclass(frozen=True, slots=True)
class PlanUnit:
    """A unit by name: a lone patch has its own id, anything else a letter and number ("unit A.1", "unit A.2").

    `outlines` has one finished outline a patch; `outline` is the unit's own; `measures` the unfinished width and
    height in ticks along its straight sides when it is a rectangle (even a turned one), else None.
    """

    name: str
    patches: tuple[int, ...]
    outline: Outline
    measures: tuple[int, int] | None


@dataclass(frozen=True, slots=True)
class PlanJoin:
    """A join as people are told it; `path` is finished seam line, chorded, `press` what is pressed after it."""

    units: tuple[str, ...]
    makes: str
    path: tuple[Point, ...]
    start_stops: bool
    end_stops: bool
    pivots: tuple[Point, ...]
    press: tuple[Pressed, ...]
    index: int  # in Assembly.joins


@dataclass(frozen=True, slots=True)
class PlanStep:
    """One numbered step: what is joined, how many times, and what comes out."""

    number: int
    title: str
    kind: JoinKind
    times: int
    joins: tuple[PlanJoin, ...]
    makes: tuple[str, ...]  # the finished unit of each time
    measures: tuple[int, int] | None


@dataclass(frozen=True, slots=True)
class SewingPlan:
    """The whole plan; `units` are in order of making, lone patches first."""

    block: Block
    graph: PatchGraph
    assembly: Assembly
    pressing: Pressing
    cutting: Cutting
    units: tuple[PlanUnit, ...]
    steps: tuple[PlanStep, ...]
    junction_names: tuple[str, ...]
    diagnostics: tuple[Diagnostic, ...]

    def unit(self, name: str) -> PlanUnit:
        """Return the unit of that name."""
        return next(unit for unit in self.units if unit.name == name)
