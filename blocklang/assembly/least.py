"""The least pivots and partial seams that a region can be sewn with, found and proven by an integer program.

Sewing orders and choices of closings without a ring of precedence are the same thing (docs/sewing-order.md), so
the program chooses one closing for each junction; rings are forbidden as they turn up.
"""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.assembly.closings import Closing
from blocklang.assembly.rings import rings
from blocklang.graph.values import PatchGraph

if TYPE_CHECKING:
    import highspy

#: So often a program is solved again with the rings that turned up; and so many nodes are searched each time.
_MOST_ROUNDS = 120
_MOST_NODES = 4000

Ways = dict[int, tuple[Closing, ...]]
#: Closings that cannot all hold, in this region or any other that holds their junctions.
Rings = dict[tuple[Closing, ...], None]


@dataclass(frozen=True, slots=True)
class Least:
    """The best closings found (None when none were), what they cost beyond what every order costs, and a true bound."""

    choice: dict[int, Closing] | None
    pivots: int
    partials: int
    fewest_pivots: int
    fewest_partials: int


def least(graph: PatchGraph, ways: Ways, known: Rings) -> Least:
    """Return the closings with the fewest pivots, then the fewest partial seams; rings that turn up become known."""
    if not all(ways.values()):
        return Least(None, 0, 0, 0, 0)
    first = {junction: options[0] for junction, options in ways.items()}
    found = rings(graph, first)
    if not found and not any(closing.pivots or closing.partials for closing in first.values()):
        return Least(first, 0, 0, 0, 0)
    program = _Program(ways)
    for ring in known:
        if all(closing in ways.get(closing.junction, ()) for closing in ring):
            program.forbid(ring)
    _forbid(program, known, found, first)
    return _search(graph, program, known)


def _forbid(program: "_Program", known: Rings, found: list[tuple[int, ...]], choice: dict[int, Closing]) -> None:
    for junctions in found:
        ring = tuple(choice[junction] for junction in junctions)
        known[ring] = None
        program.forbid(ring)


def _search(graph: PatchGraph, program: "_Program", known: Rings) -> Least:
    bound = 0
    for _ in range(_MOST_ROUNDS):
        solved = program.solve()
        if solved is None:
            return Least(None, 0, 0, 0, 0)
        choice, bound = solved
        found = rings(graph, choice)
        if not found:
            return _costed(program, choice, bound)
        _forbid(program, known, found, choice)
    return Least(None, 0, 0, bound // program.dear, 0)


def _costed(program: "_Program", choice: dict[int, Closing], bound: int) -> Least:
    pivots = sum(closing.pivots for closing in choice.values())
    partials = sum(closing.partials for closing in choice.values())
    fewest, rest = divmod(bound, program.dear)
    # With pivots to spare, fewer partial seams than the rest of the bound may go with more pivots.
    return Least(choice, pivots, partials, fewest, rest if pivots == fewest else 0)


@dataclass(slots=True)
class _Program:
    """One column for each way to close a junction that has several."""

    ways: Ways
    columns: dict[Closing, int] = field(default_factory=dict)
    solver: "highspy.Highs | None" = None

    @property
    def dear(self) -> int:
        """What a pivot costs, in partial seams."""
        return len(self.ways) + 1

    def forbid(self, together: tuple[Closing, ...]) -> None:
        """Add that not all of these closings hold."""
        solver = self._ready()
        columns = [self.columns[closing] for closing in together if closing in self.columns]
        solver.addRow(float("-inf"), len(columns) - 1.0, len(columns), columns, [1.0] * len(columns))

    def solve(self) -> tuple[dict[int, Closing], int] | None:
        """Return the cheapest choice and a true lower bound, or None when nothing fits."""
        import math

        solver = self._ready()
        solver.run()
        values = list(solver.getSolution().col_value)
        info = solver.getInfo()
        if len(values) != len(self.columns) or math.isinf(info.objective_function_value):
            return None
        return self._chosen(values), max(0, math.ceil(info.mip_dual_bound - 1e-6))

    def _chosen(self, values: list[float]) -> dict[int, Closing]:
        return {
            junction: max(options, key=lambda way: values[self.columns[way]]) if len(options) > 1 else options[0]
            for junction, options in self.ways.items()
        }

    def _ready(self) -> "highspy.Highs":
        if self.solver is None:
            self.solver = self._load()
        return self.solver

    def _load(self) -> "highspy.Highs":
        from blocklang.solver import silent_solver

        solver = silent_solver(max_nodes=_MOST_NODES)
        for options in self.ways.values():
            if len(options) > 1:
                first = len(self.columns)
                for way in options:
                    self.columns[way] = len(self.columns)
                    solver.addCol(float(way.pivots * self.dear + way.partials), 0.0, 1.0, 0, [], [])
                self._one_of(solver, list(range(first, len(self.columns))))
        return solver

    def _one_of(self, solver: "highspy.Highs", columns: list[int]) -> None:
        import highspy

        solver.addRow(1.0, 1.0, len(columns), columns, [1.0] * len(columns))
        for column in columns:
            solver.changeColIntegrality(column, highspy.HighsVarType.kInteger)
