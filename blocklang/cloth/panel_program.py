"""Prices for a panel, from a linear program over its strips; any prices prove a bound, good ones a good bound."""

import math
from typing import TYPE_CHECKING

from blocklang.cloth.columns import add_column, add_row, only_whole
from blocklang.cloth.fillings import Shelf, weigh
from blocklang.cloth.values import Filling, Panel
from blocklang.solver import silent_solver

if TYPE_CHECKING:
    import highspy

#: Prices are whole multiples of one part in so many of the worth of one.
PARTS = 10**4
_WORTH_A_ROUND = PARTS // 1000
#: How long the whole strips that the search starts from are looked for.
_NODES = 200


def shelf_of(panel: Panel) -> Shelf:
    """Return what may lie in the strips of a panel."""
    most = (min(len(way.takes) - 1, panel.copies[way.kind]) for way in panel.ways)
    return Shelf(panel.width, panel.ways, tuple(most))


def price(panel: Panel) -> tuple[tuple[int, ...], tuple[Filling, ...]]:
    """Return the price of a shape of each kind, in parts, and whole strips that fill the panel well."""
    shelf = shelf_of(panel)
    solver = _started(panel)
    fillings: list[Filling] = []
    while True:
        solver.run()
        duals = [max(0, round(dual * PARTS)) for dual in solver.getSolution().row_dual]
        knapsack = weigh(shelf, [duals[way.kind] for way in panel.ways])
        fresh = [
            filling
            for height, top in shelf.tops()
            if knapsack.best(top) > duals[-1] * height + _WORTH_A_ROUND
            and (filling := knapsack.filling(height, top)) not in fillings
        ]
        if not fresh:
            break
        for filling in fresh:
            fillings.append(filling)
            add_column(solver, 0.0, float(panel.height // filling.height), _rows(panel, filling))
    return tuple(duals[:-1]), _whole_strips(solver, panel, fillings)


def worth_of(panel: Panel, strips: tuple[Filling, ...]) -> int:
    """Return what strips are worth, shapes above the number of copies counting nothing."""
    counts = [0] * len(panel.copies)
    for filling in strips:
        for place, count in filling.runs:
            counts[panel.ways[place].kind] += count
    return sum(w * min(n, most) for w, n, most in zip(panel.worth, counts, panel.copies, strict=True))


def _started(panel: Panel) -> "highspy.Highs":
    """Return a program with a column for each kind, and rows that say: cut no more of it than the strips hold."""
    import highspy

    solver = silent_solver(_NODES)
    solver.changeObjectiveSense(highspy.ObjSense.kMaximize)
    for _ in (*panel.copies, panel.height):
        add_row(solver, -math.inf, 0.0)
    solver.changeRowBounds(len(panel.copies), -math.inf, float(panel.height))
    for kind, (worth, copies) in enumerate(zip(panel.worth, panel.copies, strict=True)):
        add_column(solver, float(worth), float(copies), ((kind, 1.0),))
    return solver


def _rows(panel: Panel, filling: Filling) -> list[tuple[int, float]]:
    rows: dict[int, float] = {}
    for place, count in filling.runs:
        kind = panel.ways[place].kind
        rows[kind] = rows.get(kind, 0.0) - count
    return [*sorted(rows.items()), (len(panel.copies), float(filling.height))]


def _whole_strips(solver: "highspy.Highs", panel: Panel, fillings: list[Filling]) -> tuple[Filling, ...]:
    only_whole(solver, len(panel.copies) + len(fillings))
    solver.run()
    times = [round(value) for value in solver.getSolution().col_value[len(panel.copies) :]]
    strips = tuple(filling for filling, count in zip(fillings, times, strict=False) for _ in range(count))
    return strips if sum(filling.height for filling in strips) <= panel.height else ()
