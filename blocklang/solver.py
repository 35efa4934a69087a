"""The integer-programming solver, set so that it prints nothing and answers the same every time."""

from typing import TYPE_CHECKING

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
