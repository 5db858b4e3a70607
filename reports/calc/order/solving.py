"""The one room that knows the solver."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import highspy
import numpy as np

from reports.calc.order.model import Model

# Half a cent: two orders nearer than that cost the same.
SAME_MONEY = 0.005
SECONDS = 20.0


@dataclass(frozen=True, slots=True)
class Solved:
    """Values by column, what no solution can cost less than, and whether it is best."""

    values: tuple[float, ...]
    bound: float
    is_best: bool

    def __getitem__(self, column: int) -> float:
        return self.values[column]


def solve(
    model: Model,
    *,
    costs: Sequence[float] | None = None,
    seconds: float = SECONDS,
    start: Mapping[int, float] | None = None,
) -> Solved | None:
    """Return the least-cost values, or None where there are none.

    ``costs`` stand in place of the columns' own. Past ``seconds`` the best found so
    far is returned with its bound. ``start`` are values to begin from, by column.
    Branch and cut over whole numbers ([HIGHS]_).
    """
    solver = highspy.Highs()  # type: ignore[no-untyped-call]
    for name, value in _options(seconds):
        solver.setOptionValue(name, value)
    solver.passModel(_table(model, costs))
    if start:
        places = np.array(list(start), dtype=np.int32)
        solver.setSolution(len(start), places, np.array(list(start.values())))
    _run(solver)
    if _found_nothing_in_time(solver):
        # Late is better than a word that nothing covers it: the first that is found.
        solver.setOptionValue("time_limit", seconds + SECONDS)
        solver.setOptionValue("mip_max_improving_sols", 1)
        _run(solver)
    info = solver.getInfo()
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return None
    values = tuple(float(one) for one in solver.getSolution().col_value)
    best = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    bound = info.mip_dual_bound if abs(info.mip_dual_bound) < highspy.kHighsInf else 0.0
    return Solved(_rounded(model, values), float(bound), best)


def _run(solver: highspy.Highs) -> None:
    solver.run()


def _found_nothing_in_time(solver: highspy.Highs) -> bool:
    found = solver.getInfo().primal_solution_status
    feasible = found == highspy.SolutionStatus.kSolutionStatusFeasible
    late = solver.getModelStatus() == highspy.HighsModelStatus.kTimeLimit
    return late and not feasible


def _options(seconds: float) -> list[tuple[str, bool | float | str]]:
    return [
        ("output_flag", False),
        ("threads", 1),
        ("random_seed", 0),
        ("time_limit", seconds),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", SAME_MONEY),
    ]


def _table(model: Model, costs: Sequence[float] | None) -> highspy.HighsLp:
    table = highspy.HighsLp()
    table.num_col_, table.num_row_ = len(model.columns), len(model.rows)
    own = [column.cost for column in model.columns]
    table.col_cost_ = np.array(own if costs is None else costs, dtype=float)
    table.col_lower_ = np.array([column.low for column in model.columns], dtype=float)
    table.col_upper_ = np.array([column.high for column in model.columns], dtype=float)
    table.row_lower_ = np.array([row.low for row in model.rows], dtype=float)
    table.row_upper_ = np.array([row.high for row in model.rows], dtype=float)
    whole, part = highspy.HighsVarType.kInteger, highspy.HighsVarType.kContinuous
    table.integrality_ = [whole if column.whole else part for column in model.columns]
    table.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lengths = [len(row.terms) for row in model.rows]
    table.a_matrix_.start_ = np.concatenate([[0], np.cumsum(lengths)]).astype(np.int32)
    terms = [term for row in model.rows for term in row.terms]
    table.a_matrix_.index_ = np.array([place for place, _ in terms], dtype=np.int32)
    table.a_matrix_.value_ = np.array([value for _, value in terms], dtype=float)
    return table


def _rounded(model: Model, values: tuple[float, ...]) -> tuple[float, ...]:
    pairs = zip(model.columns, values, strict=True)
    return tuple(float(round(x)) if column.whole else x for column, x in pairs)
