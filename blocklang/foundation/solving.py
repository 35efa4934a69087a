"""Whole-number programs for dividing a block: choose sets, count cut seams; the solver is loaded only here."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.solver import Row, model, silent_solver

if TYPE_CHECKING:
    import highspy

#: A search ends after so many nodes times columns, the same on every machine; never after a time.
MOST_WORK = 1_000_000
_FEWEST_NODES = 5
_SLACK = 1e-6
_NO_END = 2**31 - 1


@dataclass(slots=True)
class Program:
    """Columns from 0 to 1 with costs, and rows that hold sums of them between two bounds; the least cost is sought."""

    costs: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)

    def column(self, cost: float = 0.0, whole: bool = True) -> int:
        """Add a column and return its place."""
        self.costs.append(cost)
        self.whole.append(whole)
        return len(self.costs) - 1

    def row(self, low: float, high: float, terms: dict[int, float]) -> None:
        """Hold a sum of columns between two bounds."""
        self.rows.append((low, high, terms))


@dataclass(frozen=True, slots=True)
class Solution:
    """The columns chosen (none when nothing was found), and what no choice can cost less than."""

    chosen: tuple[int, ...]
    found: bool
    cost: float
    bound: float


def minimise(program: Program, start: Sequence[int] = (), work: int = MOST_WORK, gap: float = 0.99) -> Solution:
    """Return the best choice that a counted search finds.

    `start` is a choice known to keep every row. The search may end when nothing can be cheaper by more than `gap`: with
    whole costs less than 1 is as good as nothing.
    """
    import highspy

    solver = _loaded(program)
    solver.setOptionValue("mip_abs_gap", gap)
    solver.setOptionValue("mip_max_nodes", max(_FEWEST_NODES, work // (len(program.costs) + 1)))
    if start:
        known = highspy.HighsSolution()
        known.col_value = [float(column in set(start)) for column in range(len(program.costs))]
        solver.setSolution(known)
        solver.setOptionValue("presolve", "off")  # presolving a known start can lead to a wrong "optimal" (HiGHS 1.16)
    solver.run()
    return _told(solver, program)


def _told(solver: "highspy.Highs", program: Program) -> Solution:
    import highspy

    info = solver.getInfo()
    values = list(solver.getSolution().col_value)
    status = solver.getModelStatus()
    found = len(values) == len(program.costs) and info.primal_solution_status == highspy.kSolutionStatusFeasible
    if status == highspy.HighsModelStatus.kInfeasible or not found:
        return Solution((), False, math.inf, -math.inf if status != highspy.HighsModelStatus.kInfeasible else math.inf)
    chosen = tuple(place for place, value in enumerate(values) if value > 0.5)
    cost = math.fsum(program.costs[place] for place in chosen)
    return Solution(chosen, True, cost, min(cost, info.mip_dual_bound))


def rounded_up(bound: float) -> int:
    """Return the least whole number that a bound allows."""
    return math.ceil(bound - _SLACK)


def _loaded(program: Program) -> "highspy.Highs":
    solver = silent_solver(_NO_END)
    solver.setOptionValue("mip_abs_gap", _SLACK)
    solver.passModel(model(program.costs, [1.0] * len(program.costs), program.whole, program.rows))
    return solver
