"""Rows and columns of a solver's program, by their amounts."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import highspy


def add_column(solver: "highspy.Highs", cost: float, most: float, rows: Sequence[tuple[int, float]]) -> None:
    """Add a column from nothing to `most`, with its amounts in rows."""
    import numpy as np

    places = np.array([row for row, _ in rows], dtype=np.int32)
    amounts = np.array([amount for _, amount in rows], dtype=np.float64)
    solver.addCol(cost, 0.0, most, len(rows), places, amounts)


def add_row(solver: "highspy.Highs", low: float, high: float) -> None:
    """Add a row that nothing is in yet."""
    import numpy as np

    solver.addRow(low, high, 0, np.array([], dtype=np.int32), np.array([], dtype=np.float64))


def only_whole(solver: "highspy.Highs", size: int) -> None:
    """Make all columns whole numbers."""
    import highspy
    import numpy as np

    kinds = np.array([highspy.HighsVarType.kInteger] * size)
    solver.changeColsIntegrality(size, np.arange(size, dtype=np.int32), kinds)
