"""The choice as an integer programme, one rank after the other."""

from __future__ import annotations

from typing import Any

import highspy

from witnessmark.engines.mixed import Quiet
from witnessmark.engines.pick import Group, PickProblem, worth


class PickModel:
    """Items first, then one column a group. Each `improve` keeps what the one before it reached."""

    def __init__(self, problem: PickProblem, able: list[int]) -> None:
        self.problem = problem
        self.able = able
        self.chosen: list[int] = []
        self._column = {item: c for c, item in enumerate(able)}
        self._rows: list[tuple[dict[int, int], int]] = []
        self._fill()
        self._solver = self._started()

    def improve(self, weights: list[tuple[int, int]], nodes: int) -> bool:
        """Maximise one weighted sum of figures; tell whether nothing better exists."""
        costs = self._costs(dict(weights))
        columns = list(range(len(costs)))
        self._solver.changeColsCost(len(columns), columns, [float(c) for c in costs])
        self._solver.setOptionValue("mip_max_nodes", nodes)
        self._solver.run()
        proven = bool(self._solver.getModelStatus() == highspy.HighsModelStatus.kOptimal)
        before = self._sum(weights, self.chosen)
        found = self._read()
        if found is None or self._sum(weights, found) < before:
            found, proven = self.chosen, False
        self.chosen = found
        least = float(self._sum(weights, found))
        priced = [c for c in columns if costs[c]]
        self._solver.addRow(least, highspy.kHighsInf, len(priced), priced, [float(costs[c]) for c in priced])
        return proven

    # ---- the model

    def _fill(self) -> None:
        """Rows of the form: a sum of columns is at most a number."""
        problem = self.problem
        self._at_most({c: problem.items[i].minutes for i, c in self._column.items()}, problem.capacity)
        for resource, stock in enumerate(problem.stocks):
            self._at_most({c: self._used(i, resource) for i, c in self._column.items()}, stock)
        for rule in problem.rules:
            if rule.then not in rule.if_all and all(i in self._column for i in rule.if_all):
                row = {self._column[i]: 1 for i in rule.if_all}
                if rule.then in self._column:
                    row[self._column[rule.then]] = -1
                self._at_most(row, len(rule.if_all) - 1)
        for number, group in enumerate(problem.groups):
            self._group(len(self.able) + number, group)

    def _used(self, item: int, resource: int) -> int:
        return sum(amount for r, amount in self.problem.items[item].uses if r == resource)

    def _group(self, column: int, group: Group) -> None:
        """The group's own column may be 1 only where the group is left safe."""
        for opening, closing in group.pairs:
            if opening == closing or (opening is not None and opening not in self._column):
                continue
            row = {column: 1}
            if closing in self._column:
                row[self._column[closing]] = -1
            if opening is not None:
                row[self._column[opening]] = 1
            self._at_most(row, 1 if opening is not None else 0)

    def _at_most(self, row: dict[int, int], most: int) -> None:
        row = {c: a for c, a in row.items() if a}
        if sum(a for a in row.values() if a > 0) > most:
            self._rows.append((row, most))

    def _started(self) -> Any:
        lp = highspy.HighsLp()
        count = len(self.able) + len(self.problem.groups)
        lp.num_col_, lp.num_row_ = count, len(self._rows)
        lp.sense_ = highspy.ObjSense.kMaximize
        lp.col_cost_ = [0.0] * count
        lp.col_lower_, lp.col_upper_ = [0.0] * count, [1.0] * count
        lp.integrality_ = [highspy.HighsVarType.kInteger] * count
        lp.row_lower_ = [-highspy.kHighsInf] * len(self._rows)
        lp.row_upper_ = [float(most) for _, most in self._rows]
        matrix = lp.a_matrix_
        matrix.format_ = highspy.MatrixFormat.kRowwise
        starts = [0]
        for row, _ in self._rows:
            starts.append(starts[-1] + len(row))
        matrix.start_ = starts
        matrix.index_ = [c for row, _ in self._rows for c in row]
        matrix.value_ = [float(a) for row, _ in self._rows for a in row.values()]
        solver: Any = Quiet()  # type: ignore[no-untyped-call]
        options = {"output_flag": False, "threads": 1, "mip_rel_gap": 0.0, "mip_abs_gap": 0.5}
        for option, value in options.items():
            solver.setOptionValue(option, value)
        solver.passModel(lp)
        return solver

    # ---- figures

    def _costs(self, weights: dict[int, int]) -> list[int]:
        items = []
        for item in self.able:
            one = self.problem.items[item]
            ranks = sum(weights.get(r, 0) * v for r, v in enumerate(one.values))
            items.append(ranks - weights.get(-1, 0) * one.minutes)
        return items + [weights.get(-2, 0)] * len(self.problem.groups)

    def _sum(self, weights: list[tuple[int, int]], chosen: list[int]) -> int:
        reached = worth(self.problem, chosen, proven=True)
        figures = {-1: -reached.minutes, -2: reached.safe} | dict(enumerate(reached.values))
        return sum(weight * figures[figure] for figure, weight in weights)

    def _read(self) -> list[int] | None:
        """The solver's choice rounded to integers, if it keeps every row exactly."""
        solution = self._solver.getSolution()
        if not solution.value_valid:
            return None
        values = [1 if v > 0.5 else 0 for v in list(solution.col_value)]
        kept = all(sum(a * values[c] for c, a in row.items()) <= most for row, most in self._rows)
        return [item for item, c in self._column.items() if values[c]] if kept else None
