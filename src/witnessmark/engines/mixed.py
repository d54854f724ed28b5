"""An integer programme in plain lists, and the one place where the solver behind it is spoken to.

Whoever builds a model fills a `Programme` with columns and rows and calls `solve`. What comes back is
only ever taken as a proposal: the caller rounds it, checks it in integers and works the cost out again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf, isfinite
from typing import Any

import highspy
from msgspec import Struct


class Quiet(highspy.Highs):
    """The solver without callbacks: nobody listens, and setting them up prints to standard output."""

    def enableCallbacks(self) -> None:
        """Leave them off."""


class Solved(Struct, frozen=True, kw_only=True):
    """A proposal.

    values  a number for each column, () where none was found
    bound   no answer costs less
    proven  the proposal costs no more than any other
    nodes   how many branches were looked into
    """

    values: tuple[float, ...]
    bound: float
    proven: bool
    nodes: int


class Programme:
    """Columns with a cost and limits; rows that hold a sum of columns between two numbers; least cost."""

    def __init__(self) -> None:
        self.costs: list[float] = []
        self.lower: list[float] = []
        self.upper: list[float] = []
        self.whole: list[bool] = []
        self.rows: list[tuple[float, float, dict[int, float]]] = []

    def column(self, cost: float = 0, *, upper: float = 1, lower: float = 0, whole: bool = True) -> int:
        """A new column; its number."""
        self.costs.append(cost)
        self.lower.append(lower)
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.costs) - 1

    def at_least(self, least: float, row: Mapping[int, float]) -> None:
        self.rows.append((least, inf, dict(row)))

    def at_most(self, most: float, row: Mapping[int, float]) -> None:
        self.rows.append((-inf, most, dict(row)))

    def exactly(self, number: float, row: Mapping[int, float]) -> None:
        self.rows.append((number, number, dict(row)))

    def solve(
        self,
        *,
        nodes: int | None = None,
        seconds: float | None = None,
        gap: float = 0.5,
        hint: Sequence[float] = (),
        known: float = inf,
        seed: int = 0,
    ) -> Solved:
        """Solve it.

        nodes, seconds  where to stop; by nodes the same run gives the same answer
        gap             how far from the best a proposal may be and still count as proven
        hint            a whole answer known already; known: its cost
        """
        solver: Any = Quiet()  # type: ignore[no-untyped-call]
        for option, value in self._options(nodes, seconds, gap, seed).items():
            solver.setOptionValue(option, value)
        solver.passModel(self._model())
        if len(hint):
            solution = highspy.HighsSolution()
            solution.col_value = [float(v) for v in hint]
            solver.setSolution(solution)
        solver.run()
        return self._read(solver, known)

    @staticmethod
    def _options(nodes: int | None, seconds: float | None, gap: float, seed: int) -> dict[str, Any]:
        options: dict[str, Any] = {
            "output_flag": False,
            "threads": 1,
            "random_seed": seed,
            "mip_rel_gap": 0.0,
            "mip_abs_gap": gap,
        }
        if nodes is not None:
            options["mip_max_nodes"] = nodes
        if seconds is not None:
            options["time_limit"] = max(0.01, seconds)
        return options

    def _model(self) -> Any:
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.costs), len(self.rows)
        lp.sense_ = highspy.ObjSense.kMinimize
        lp.col_cost_ = [float(c) for c in self.costs]
        lp.col_lower_ = [float(v) for v in self.lower]
        lp.col_upper_ = [float(v) for v in self.upper]
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if whole else kinds.kContinuous for whole in self.whole]
        lp.row_lower_ = [float(low) for low, _, _ in self.rows]
        lp.row_upper_ = [float(high) for _, high, _ in self.rows]
        matrix = lp.a_matrix_
        matrix.format_ = highspy.MatrixFormat.kRowwise
        starts = [0]
        for _, _, row in self.rows:
            starts.append(starts[-1] + len(row))
        matrix.start_ = starts
        matrix.index_ = [c for _, _, row in self.rows for c in row]
        matrix.value_ = [float(a) for _, _, row in self.rows for a in row.values()]
        return lp

    def _read(self, solver: Any, known: float) -> Solved:
        info, solution = solver.getInfo(), solver.getSolution()
        proven = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
        found = bool(solution.value_valid) and len(solution.col_value) == len(self.costs)
        whole = any(self.whole)
        bound = float(info.mip_dual_bound if whole else info.objective_function_value)
        return Solved(
            values=tuple(solution.col_value) if found else (),
            bound=min(bound, known) if isfinite(bound) else -inf,
            proven=bool(proven),
            nodes=max(0, int(info.mip_node_count)) if whole else 0,
        )
