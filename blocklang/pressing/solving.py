"""Solving a program rank after rank; the solver is loaded only here."""

import math
import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.pressing.program import CONSTANT, Program, Sum
from blocklang.pressing.ranks import Rank
from blocklang.solver import Row, model, silent_solver

if TYPE_CHECKING:
    import highspy

#: Without a time limit a search still ends, after so much work (nodes times columns), the same on every machine.
_MOST_WORK = 300_000
#: A program with more columns is not solved for the last two ranks unless a time limit says how long that may take.
_LARGE = 2_500
_SLACK = 1e-6


@dataclass(slots=True)
class Run:
    """A program on its way through the solver, rank by rank."""

    program: Program
    solver: "highspy.Highs | None"
    columns: list[float] = field(default_factory=list)
    gap: float = 0.0


def solve(program: Program, deadline: float | None) -> Run | None:
    """Return the run, or None when the program has no solution at all (or none was found in time)."""
    if not program.upper:
        return Run(program, None) if _nothing_open(program) else None
    run = Run(program, _load(program))
    for rank in Rank:
        cost = {column: factor for column, factor in program.costs.get(rank, {}).items() if column != CONSTANT}
        if not cost and (run.columns or rank is not Rank.PREFERENCES):
            continue
        if deadline is None and len(program.upper) > _LARGE and rank >= Rank.CROSSES and run.columns:
            run.gap = max(1.0, value_of(program.costs[rank], run.columns))
            return run
        if not _improve(run, cost, deadline):
            return run if run.columns else None
    return run


def _nothing_open(program: Program) -> bool:
    """Tell whether a program without columns, in which the author settles everything, keeps its own rows."""
    return all(row.get(CONSTANT, 0) >= low for low, row in program.rows) and not any(program.equal)


def _improve(run: Run, cost: Sum, deadline: float | None) -> bool:
    """Find the least cost and hold it from here on; return whether it is proven."""
    import highspy

    solver = run.solver
    assert solver is not None
    size = len(run.program.upper)
    for column in range(size):
        solver.changeColCost(column, float(cost.get(column, 0)))
    if deadline is not None:
        solver.setOptionValue("time_limit", solver.getRunTime() + max(0.0, deadline - time.monotonic()))
    solver.run()
    if solver.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return False
    info = solver.getInfo()
    proven = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    values = list(solver.getSolution().col_value)
    if math.isinf(info.objective_function_value) or len(values) != size:
        run.gap = run.gap or math.inf
        return False
    run.columns = [float(round(v)) if whole else v for v, whole in zip(values, run.program.whole, strict=True)]
    if not proven:
        run.gap = max(1.0, float(round(info.objective_function_value) - math.ceil(info.mip_dual_bound - _SLACK)))
        return False
    best = round(info.objective_function_value)
    columns = sorted(cost)
    solver.addRow(-highspy.kHighsInf, best + 0.5, len(columns), columns, [float(cost[c]) for c in columns])
    return True


def _load(program: Program) -> "highspy.Highs":
    solver = silent_solver(max(20, _MOST_WORK // (len(program.upper) + 1)))
    size = len(program.upper)
    solver.passModel(model([0.0] * size, list(map(float, program.upper)), program.whole, _rows(program)))
    return solver


def _rows(program: Program) -> list[Row]:
    rows = [(low, math.inf, row) for low, row in program.rows] + [(0, 0.0, row) for row in program.equal]
    return [
        (
            low - row.get(CONSTANT, 0),
            high - row.get(CONSTANT, 0),
            {column: float(factor) for column, factor in row.items() if column != CONSTANT},
        )
        for low, high, row in rows
    ]


def value_of(one: Sum, columns: list[float]) -> float:
    """Return what a sum comes to."""
    return sum(factor * (1.0 if column == CONSTANT else columns[column]) for column, factor in one.items())
