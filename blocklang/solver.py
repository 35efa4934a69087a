"""The integer-programming solver, set so that it prints nothing and answers the same every time."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

#: A sum of columns with their factors, held between two bounds.
Row = tuple[float, float, dict[int, float]]

if TYPE_CHECKING:
    import highspy


def silent_solver(max_nodes: int) -> "highspy.Highs":
    """Return a solver on one thread that ends after a number of nodes, never by the clock."""
    import highspy

    class Silent(highspy.Highs):
        """Falls silent before its greeting: standard output belongs to results."""

        def enableCallbacks(self) -> None:  # noqa: N802 - the solver's own name
            """Fall silent first."""
            self.silent()
            super().enableCallbacks()  # type: ignore[no-untyped-call]

    solver = Silent()  # type: ignore[no-untyped-call]
    for option, value in (
        ("output_flag", False),
        ("threads", 1),
        ("parallel", "off"),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 0.9),
        ("mip_max_nodes", max_nodes),
    ):
        solver.setOptionValue(option, value)
    return solver


def model(
    costs: Sequence[float], upper: Sequence[float], whole: Sequence[bool], rows: Sequence[Row]
) -> "highspy.HighsLp":
    """Return a program for the solver: the least cost of columns from 0 up, whole ones among them, that keep all rows."""
    import highspy

    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(costs), len(rows)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = list(costs), [0.0] * len(costs), list(upper)
    lp.row_lower_ = [low for low, _, _ in rows]
    lp.row_upper_ = [high for _, high, _ in rows]
    starts, indices, values = [0], [], []
    for _, _, terms in rows:
        columns = sorted(terms)
        indices += columns
        values += [terms[column] for column in columns]
        starts.append(len(indices))
    matrix = lp.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kRowwise
    matrix.start_, matrix.index_, matrix.value_ = starts, indices, values
    kinds = {True: highspy.HighsVarType.kInteger, False: highspy.HighsVarType.kContinuous}
    lp.integrality_ = [kinds[one] for one in whole]
    return lp
