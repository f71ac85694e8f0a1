"""What solves an optimisation model in floating point: HiGHS, which takes long to load."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import highspy

__all__ = ["Row", "solved"]

_FEASIBLE = int(highspy.SolutionStatus.kSolutionStatusFeasible)


_OPTIONS = (
    ("output_flag", False), ("threads", 1), ("random_seed", 0), ("mip_rel_gap", 0.0),
    ("mip_abs_gap", 0.5), ("mip_feasibility_tolerance", 1e-9), ("mip_max_nodes", 400),
)  # fmt: skip

Row = tuple[Mapping[int, int], int | None, int | None]
"""A sum of variables with their factors, and the numbers it must lie between."""


class _Silent(highspy.Highs):
    """HiGHS without callbacks: setting them up would print a greeting."""

    def enableCallbacks(self) -> None:  # noqa: N802
        """None are wanted."""


def solved(
    variables: Sequence[tuple[int, int, int]], rows: Sequence[Row]
) -> tuple[Sequence[float], float] | None:
    """Solve a model in whole numbers.

    Parameters
    ----------
    variables
        The least and the greatest value of each, and what each unit of it costs.
    rows
        What must hold.

    Returns
    -------
    The best values that were found, to be checked, and what no solution costs less than; None
    when there is no solution.
    """
    solver = _Silent()  # type: ignore[no-untyped-call]
    for name, value in _OPTIONS:
        solver.setOptionValue(name, value)
    for low, high, cost in variables:
        if low > high:
            return None
        solver.addCol(cost, low, high, 0, [], [])
    for column in range(len(variables)):
        solver.changeColIntegrality(column, highspy.HighsVarType.kInteger)
    for terms, least, most in rows:
        solver.addRow(
            -highspy.kHighsInf if least is None else least,
            highspy.kHighsInf if most is None else most,
            len(terms), list(terms), list(terms.values()),
        )  # fmt: skip
    solver.run()
    if solver.getInfo().primal_solution_status != _FEASIBLE:
        return None
    return solver.getSolution().col_value, solver.getInfo().mip_dual_bound
