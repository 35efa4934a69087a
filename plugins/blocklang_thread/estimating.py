"""How far is sewn in each step, in how many stitches, and about how much thread that takes; lengths in inches.

All of it is an estimate. The numbers are common practice among people who sew, from memory and not from a standard: how
much thread a stitch takes depends on its length, on the tension and on how thick the cloth is.
"""

import math
from dataclasses import dataclass

from blocklang.geometry import TICKS_PER_INCH
from blocklang.plan import PlanJoin, PlanStep, SewingPlan

MILLIMETRES_PER_INCH = 25.4
#: Thread left hanging where a seam begins and where it ends, of each of the two threads (common practice: 2 to 4 in).
THREAD_END = 3.0
THREADS = 2
#: Stitches sewn on nothing between two units that are chain-pieced (common practice: a few stitches).
CHAIN = 0.5


@dataclass(frozen=True, slots=True)
class Sewing:
    """How it is sewn: the length of a stitch in millimetres, and the inches of thread for an inch of seam."""

    stitch: float
    factor: float

    @property
    def stitches_per_inch(self) -> float:
        """How many stitches an inch has."""
        return MILLIMETRES_PER_INCH / self.stitch


@dataclass(frozen=True, slots=True)
class StepThread:
    """What one step takes for all copies: its seams, how far is sewn, the stitches, and the inches of thread."""

    number: int
    title: str
    seams: int
    length: float
    stitches: int
    thread: float


@dataclass(frozen=True, slots=True)
class Estimate:
    """What all steps take for all copies."""

    sewing: Sewing
    copies: int
    steps: tuple[StepThread, ...]

    @property
    def total(self) -> StepThread:
        """All steps together."""
        steps = self.steps
        return StepThread(
            0,
            "",
            sum(step.seams for step in steps),
            sum(step.length for step in steps),
            sum(step.stitches for step in steps),
            sum(step.thread for step in steps),
        )


def estimate(plan: SewingPlan, sewing: Sewing, copies: int) -> Estimate:
    """Return what every step of a plan takes when so many blocks are made."""
    return Estimate(sewing, copies, tuple(_step(plan, step, sewing, copies) for step in plan.steps))


def _step(plan: SewingPlan, step: PlanStep, sewing: Sewing, copies: int) -> StepThread:
    lengths = [sewn_length(plan, join) for join in step.joins]
    seams, length = len(lengths) * copies, sum(lengths) * copies
    stitches = sum(math.ceil(inches * sewing.stitches_per_inch) for inches in lengths) * copies
    begun = 1 if step.chained else seams  # a chain has two ends, however long it is
    thread = sewing.factor * (length + CHAIN * (seams - begun)) + begun * 2 * THREADS * THREAD_END
    return StepThread(step.number, step.title, seams, length, stitches, thread)


def sewn_length(plan: SewingPlan, join: PlanJoin) -> float:
    """Return how far the needle goes: the finished seam, and an allowance at each end that runs to the raw edge."""
    segments = plan.graph.segments
    ticks = sum(segments[part.segment].edge.length() for part in plan.assembly.joins[join.index].path)
    to_the_edge = (not join.start_stops) + (not join.end_stops)
    return (ticks + to_the_edge * plan.block.seam_allowance) / TICKS_PER_INCH
