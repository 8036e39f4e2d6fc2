"""Linear programmes, some of their unknowns whole numbers: the only module that knows HiGHS."""

import importlib.util
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from studio.cloth.plan.convex import Array


class Programme(NamedTuple):
    """Minimise cost · v over least <= v <= most, subject to rows: low <= sum(values · v[columns]) <= high.

    The rows come as triples: (row, column, value), in any order.
    """

    cost: Array
    least: Array
    most: Array
    rows: NDArray[np.int32]
    columns: NDArray[np.int32]
    values: Array
    low: Array
    high: Array
    whole: NDArray[np.bool_] | None = None


class Answer(NamedTuple):
    """What was found: the unknowns (None where there is no answer, or none in time), and a true least of the cost."""

    unknowns: Array | None
    least: float
    impossible: bool


def present() -> bool:
    """Whether the solver is installed."""
    return importlib.util.find_spec("highspy") is not None


def solve(programme: Programme, seconds: float = 10.0) -> Answer:
    """Solve on one thread."""
    import highspy
    from highspy._core import _Highs  # the solver itself: the class around it greets on standard output

    p = programme
    order = np.argsort(p.rows, kind="stable")
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(p.cost), len(p.low)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = p.cost, p.least, p.most
    lp.row_lower_, lp.row_upper_ = p.low, p.high
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = np.searchsorted(p.rows[order], np.arange(len(p.low) + 1)).astype(np.int32)
    lp.a_matrix_.index_ = p.columns[order].astype(np.int32)
    lp.a_matrix_.value_ = p.values[order]
    if p.whole is not None:
        kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
        lp.integrality_ = [kinds[int(w)] for w in p.whole]
    highs = _Highs()
    for option, value in _OPTIONS.items():
        highs.setOptionValue(option, value)
    highs.setOptionValue("time_limit", seconds)
    highs.passModel(lp)
    highs.run()
    status, info = highs.getModelStatus(), highs.getInfo()
    impossible = status == highspy.HighsModelStatus.kInfeasible
    found = info.primal_solution_status == 2
    unknowns = np.array(highs.getSolution().col_value) if found else None
    if p.whole is not None:
        least = float(info.mip_dual_bound)
    else:
        least = float(info.objective_function_value) if status == highspy.HighsModelStatus.kOptimal else -np.inf
    return Answer(unknowns, least, impossible)


_OPTIONS: dict[str, bool | int | float | str] = {
    "output_flag": False,
    "threads": 1,
    "parallel": "off",
    "random_seed": 1,
    "primal_feasibility_tolerance": 1e-9,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 1e-6,
}
