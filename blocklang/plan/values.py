"""The sewing plan as frozen values."""

from dataclasses import dataclass

from blocklang.assembly.preferences import Why
from blocklang.assembly.values import Assembly, JoinKind
from blocklang.block import Block, SpinSense
from blocklang.cutting.values import Cutting, CuttingOptions
from blocklang.diagnostics import Diagnostic
from blocklang.geometry import Outline, Point
from blocklang.graph.values import PatchGraph
from blocklang.pressing.values import Pressed, Pressing


@dataclass(frozen=True, slots=True)
class PlanOptions:
    """What may be chosen about a plan beyond the block file."""

    cutting: CuttingOptions = CuttingOptions()
    techniques: tuple[str, ...] = ()  # by name, as plugins offer them


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
class PlanStop:
    """Where a seam stops short: `unit` goes in there in step number `step`; "" when a partial seam is finished then.

    `resumes` says that it is this same seam that is finished.
    """

    at: Point
    junction: int
    step: int
    unit: str
    resumes: bool = False


@dataclass(frozen=True, slots=True)
class PlanLock:
    """A junction at the end of a seam where its allowance will lock with others, and the step in which it does."""

    at: Point
    junction: int
    step: int


@dataclass(frozen=True, slots=True)
class PlanSpin:
    """A junction that a join closes and that is spun; `sense` is seen from the front.

    `undone` are the steps in which the seams were sewn whose stitches in the allowance are undone there.
    """

    at: Point
    junction: int
    sense: SpinSense
    undone: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class PlanCurve:
    """A curved seam: the unit that curves outward, the one that curves inward, the quarter points of each arc."""

    convex: str
    concave: str
    marks: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class PlanVersion:
    """The units of a step that are pressed alike: as the first unit of the step, the opposite way seam by seam, or else.

    The letter is that of the version of a placed block where the units lie in copies of one.
    """

    letter: str
    makes: tuple[str, ...]
    as_first: bool
    opposite: bool


@dataclass(frozen=True, slots=True)
class PlanNeedle:
    """The largest unit handled in a step, how many patches it has, and its unfinished width and height in ticks."""

    unit: str
    patches: int
    size: tuple[int, int]


@dataclass(frozen=True, slots=True)
class OrderCosts:
    """What an order costs beside pivots and partial seams.

    `largest_set_in` is the most patches in a piece that is set in, `different_steps` counts steps that make something
    new, `awkward_units` those of them that make no rectangle and so cannot be measured along two sides.
    """

    largest_set_in: int
    different_steps: int
    awkward_units: int


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
    stops: tuple[PlanStop, ...] = ()
    locks: tuple[PlanLock, ...] = ()
    spins: tuple[PlanSpin, ...] = ()
    curve: PlanCurve | None = None


@dataclass(frozen=True, slots=True)
class PlanStep:
    """One numbered step: what is joined, how many times, and what comes out.

    `chained` says that its seams can be chain-pieced; `why` in what this way is better than the next best.
    """

    number: int
    title: str
    kind: JoinKind
    times: int
    joins: tuple[PlanJoin, ...]
    makes: tuple[str, ...]  # the finished unit of each time
    measures: tuple[int, int] | None
    chained: bool
    needle: PlanNeedle
    why: Why
    versions: tuple[PlanVersion, ...] = ()  # none when all are pressed alike


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
    order: OrderCosts
    junction_names: tuple[str, ...]
    labels: tuple[str, ...]  # what to call each patch, as the cutting list does
    diagnostics: tuple[Diagnostic, ...]

    def unit(self, name: str) -> PlanUnit:
        """Return the unit of that name."""
        return next(unit for unit in self.units if unit.name == name)
