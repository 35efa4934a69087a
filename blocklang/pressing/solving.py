"""Solving a program rank after rank; the solver is loaded only here."""

import math
import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.pressing.program import CONSTANT, Program, Sum
from blocklang.pressing.ranks import Rank

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


def least_cost(program: Program, rank: Rank, deadline: float | None) -> int | None:
    """Return the least that a program can cost at one rank, alone; None when that is not proven."""
    cost = program.costs.get(rank, {})
    if not program.upper or not cost:
        return cost.get(CONSTANT, 0)
    run = Run(program, _load(program))
    free = {column: factor for column, factor in cost.items() if column != CONSTANT}
    return round(value_of(cost, run.columns)) if _improve(run, free, deadline) else None


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
    solver = _silent_solver()
    for option, value in (
        ("output_flag", False),
        ("threads", 1),
        ("parallel", "off"),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 0.9),
        ("mip_max_nodes", max(20, _MOST_WORK // (len(program.upper) + 1))),
    ):
        solver.setOptionValue(option, value)
    solver.passModel(_model(program))
    return solver


def _silent_solver() -> "highspy.Highs":
    import highspy

    class Silent(highspy.Highs):
        """A solver that prints nothing: standard output belongs to results, and its greeting comes that early."""

        def enableCallbacks(self) -> None:  # noqa: N802 - the solver's own name
            """Fall silent before the greeting."""
            self.silent()
            super().enableCallbacks()  # type: ignore[no-untyped-call]

    return Silent()  # type: ignore[no-untyped-call]


def _model(program: Program) -> "highspy.HighsLp":
    import highspy

    rows = [(low, math.inf, row) for low, row in program.rows] + [(0, 0.0, row) for row in program.equal]
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(program.upper), len(rows)
    lp.col_cost_ = [0.0] * len(program.upper)
    lp.col_lower_ = [0.0] * len(program.upper)
    lp.col_upper_ = [float(upper) for upper in program.upper]
    lp.row_lower_ = [low - row.get(CONSTANT, 0) for low, _, row in rows]
    lp.row_upper_ = [high - row.get(CONSTANT, 0) for _, high, row in rows]
    starts, indices, values = [0], [], []
    for _, _, row in rows:
        columns = sorted(column for column in row if column != CONSTANT)
        indices += columns
        values += [float(row[column]) for column in columns]
        starts.append(len(indices))
    matrix = lp.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kRowwise
    matrix.start_, matrix.index_, matrix.value_ = starts, indices, values
    kinds = {True: highspy.HighsVarType.kInteger, False: highspy.HighsVarType.kContinuous}
    lp.integrality_ = [kinds[whole] for whole in program.whole]
    return lp


def value_of(one: Sum, columns: list[float]) -> float:
    """Return what a sum comes to."""
    return sum(factor * (1.0 if column == CONSTANT else columns[column]) for column, factor in one.items())
