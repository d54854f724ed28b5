"""The same problem for an exact solver; the only file that knows how that one is spoken to."""

from __future__ import annotations

from bisect import bisect_right
from typing import Any

import numpy as np
from ortools.sat.python import cp_model

from witnessmark.engines.schedule_axis import Axis
from witnessmark.engines.schedule_bound import Bounds
from witnessmark.engines.schedule_kernel import (
    boundary_until,
    cell_from,
    clock_at_end,
    earliest,
    last_of,
)
from witnessmark.engines.schedule_tails import in_order_of_links

Array = Any

# From so many activities on the solver's own simplifying costs more time than it saves.
MANY = 500


def solved(
    axis: Axis, bounds: Bounds, start: Array, flag: Array, allowed: Any, seed: int
) -> tuple[tuple[Array, Array] | None, int]:
    """Begin cells and set-ups of a schedule, if one was found, and a bound that is as good or better.

    start, flag  the schedule that serves as a hint
    allowed      `exact`, `seconds` and `workers` of what is allowed
    """
    model = _Exact(axis, bounds, start, flag)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = allowed.workers
    solver.parameters.random_seed = seed
    solver.parameters.cp_model_presolve = len(start) < MANY
    if allowed.seconds is not None:
        solver.parameters.max_time_in_seconds = max(0.01, allowed.seconds())
    else:
        solver.parameters.max_deterministic_time = allowed.exact
    status = solver.solve(model.model)
    bound = max(bounds.value, int(np.ceil(solver.best_objective_bound - 1e-6)))
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, bounds.value if status != cp_model.INFEASIBLE else model.hinted
    begun = np.array([solver.value(s) for s in model.start], dtype=np.int64)
    set_up = np.array([n in model.own and solver.value(model.own[n]) > 0 for n in range(len(begun))])
    return (begun, set_up), bound


class _Exact:
    """Begin cells as variables; the clock as steps of the axis."""

    def __init__(self, axis: Axis, bounds: Bounds, start: Array, flag: Array) -> None:
        self.axis = axis
        self.model = cp_model.CpModel()
        count = len(axis.length)
        head, end = np.zeros(count, dtype=np.int64), np.zeros(count, dtype=np.int64)
        earliest(axis, np.array(in_order_of_links(axis)), head, end)
        self.horizon = self._horizon(start, flag)
        self.start = [self._begin(n, int(head[n])) for n in range(count)]
        self.length: list[Any] = [int(v) for v in axis.length]
        self.own: dict[int, Any] = {}
        self.lags: dict[int, list[tuple[int, int, bool]]] = {}
        self._set_ups(flag)
        self.end = [self._end(n) for n in range(count)]
        self._resources()
        self._links()
        self.hinted = 0
        self._targets(bounds, start, flag)
        for n in range(count):
            self.model.add_hint(self.start[n], int(start[n]))

    def _horizon(self, start: Array, flag: Array) -> int:
        """Boundary beyond which no better schedule reaches: far enough for the last target to fall behind."""
        axis = self.axis
        length = axis.length + np.where(flag, axis.set_up[axis.group], 0)
        last = int((start + length).max())
        return last if len(axis.weight) == 1 else min(len(axis.session), last + last // 4 + 1)

    def _begin(self, number: int, head: int) -> Any:
        """Cells an activity may begin in: in one go, those that leave it room in their session."""
        axis, length = self.axis, int(self.axis.length[number])
        spans: list[list[int]] = []
        needs = axis.demand[number]
        for session in range(len(axis.opens)):
            opens, closes = int(axis.opens[session]), min(int(axis.closes[session]), self.horizon)
            if opens >= self.horizon or bool((axis.free[opens] < needs).any()):
                continue
            high = closes - length if axis.one[number] else closes - 1
            if high >= max(opens, head):
                spans.append([max(opens, head), min(high, self.horizon - length)])
        spans = [s for s in spans if s[0] <= s[1]]
        domain = cp_model.Domain.from_intervals(spans)
        return self.model.new_int_var_from_domain(domain, f"s{number}")

    def _end(self, number: int) -> Any:
        """Where an activity ends: a variable of its own where its length is one."""
        if number not in self.own:
            return self.start[number] + self.length[number]
        end = self.model.new_int_var(0, self.horizon, f"e{number}")
        self.model.add(end == self.start[number] + self.length[number])
        return end

    def _set_ups(self, flag: Array) -> None:
        """Lengths with set-ups: none where another of the group was set up before in the same session."""
        axis = self.axis
        for group, cells in enumerate(axis.set_up[:-1].tolist()):
            members = np.flatnonzero(axis.group == group).tolist()
            if not cells or not members:
                continue
            where = {n: self.model.new_int_var(0, len(axis.opens) - 1, f"k{n}") for n in members}
            own = {n: self.model.new_bool_var(f"u{n}") for n in members}
            self.own |= own
            for n in members:
                self._in_session(n, where[n])
                shares = []
                for other in members:
                    if other != n:
                        shared = self.model.new_bool_var(f"h{n}/{other}")
                        self.model.add(where[other] == where[n]).only_enforce_if(shared)
                        self.model.add(self.start[other] + cells <= self.start[n]).only_enforce_if(shared)
                        self.model.add_implication(shared, own[other])
                        shares.append(shared)
                self.model.add_bool_or([own[n], *shares])
                self.length[n] = int(axis.length[n]) + cells * own[n]
                self.model.add_hint(own[n], bool(flag[n]))
                if axis.one[n]:
                    closes = self.model.new_int_var(0, int(axis.closes[-1]), f"z{n}")
                    self.model.add_element(where[n], [int(c) for c in axis.closes], closes)
                    self.model.add(self.start[n] + self.length[n] <= closes)

    def _in_session(self, number: int, where: Any) -> None:
        axis = self.axis
        opens = self.model.new_int_var(0, int(axis.opens[-1]), f"o{number}")
        closes = self.model.new_int_var(0, int(axis.closes[-1]), f"c{number}")
        self.model.add_element(where, [int(c) for c in axis.opens], opens)
        self.model.add_element(where, [int(c) for c in axis.closes], closes)
        self.model.add(self.start[number] >= opens)
        self.model.add(self.start[number] < closes)

    def _resources(self) -> None:
        axis = self.axis
        whole = [
            self.model.new_interval_var(s, d, e, f"i{n}")
            for n, (s, d, e) in enumerate(zip(self.start, self.length, self.end, strict=True))
        ]
        for r in range(axis.free.shape[1]):
            taking = [n for n in range(len(whole)) if axis.demand[n, r]]
            most = int(axis.free[:, r].max())
            blocks = self._blocks(r, most)
            if not taking:
                continue
            if most == 1 and all(axis.demand[n, r] == 1 for n in taking):
                self.model.add_no_overlap([whole[n] for n in taking] + [block for block, _ in blocks])
                continue
            self.model.add_cumulative(
                [whole[n] for n in taking] + [block for block, _ in blocks],
                [int(axis.demand[n, r]) for n in taking] + [height for _, height in blocks],
                most,
            )

    def _blocks(self, resource: int, most: int) -> list[tuple[Any, int]]:
        """Stretches of sessions in which there is less than the most of a resource."""
        axis = self.axis
        found: list[tuple[Any, int]] = []
        begun, height = 0, 0
        for session in range(len(axis.opens) + 1):
            opens = int(axis.opens[session]) if session < len(axis.opens) else int(axis.closes[-1])
            now = most - int(axis.free[opens, resource]) if session < len(axis.opens) else -1
            if now != height:
                if height > 0 and opens > begun:
                    block = self.model.new_fixed_size_interval_var(begun, opens - begun, f"b{begun}")
                    found.append((block, height))
                begun, height = opens, now
        return found

    def _links(self) -> None:
        axis = self.axis
        for before in range(len(self.start)):
            for k in range(int(axis.then_at[before]), int(axis.then_at[before + 1])):
                then, lag = int(axis.then[k]), int(axis.then_lag[k])
                if lag:
                    self._lag(before, then, lag)
                else:
                    self.model.add(self.start[then] >= self.end[before])

    def _lag(self, before: int, then: int, lag: int) -> None:
        """The earliest begin after a lag is a step function of the end, with slopes inside sessions."""
        pieces = self._pieces(int(self.axis.length[before]), lag)
        literals = [self._from(self.end[before], first, f"{before}/{then}") for first, _, _ in pieces]
        for n, (_, cell, slope) in enumerate(pieces):
            on = [literals[n]]
            if slope:
                on += [literals[n + 1].Not()] if n + 1 < len(pieces) else []
                self.model.add(self.start[then] >= self.end[before] + cell).only_enforce_if(on)
            else:
                self.model.add(self.start[then] >= cell).only_enforce_if(on)

    def _pieces(self, lowest: int, lag: int) -> list[tuple[int, int, bool]]:
        """(first boundary, cell or distance, whether it rises with the boundary) from a boundary on."""
        if lag not in self.lags:
            self.lags[lag] = self._all_pieces(lag)
        whole = self.lags[lag]
        at = max(0, bisect_right(whole, lowest, key=lambda piece: piece[0]) - 1)
        return [(max(lowest, first), cell, slope) for first, cell, slope in whole[at:]]

    def _all_pieces(self, lag: int) -> list[tuple[int, int, bool]]:
        axis = self.axis
        found: list[tuple[int, int, bool]] = []
        previous = -1
        for boundary in range(1, self.horizon + 1):
            minute = clock_at_end(boundary, axis.session, axis.opens, axis.clock, axis.unit) + lag
            cell = int(cell_from(minute, axis.opens, axis.closes, axis.clock, axis.unit))
            rises = previous >= 0 and cell == previous + 1
            if rises and not (found[-1][2] and found[-1][1] == cell - boundary):
                found.append((boundary, cell - boundary, True))
            elif not rises and (cell != previous or found[-1][2]):
                found.append((boundary, cell, False))
            previous = cell
        return found

    def _from(self, boundary: Any, first: int, name: str) -> Any:
        """A literal: the boundary lies at `first` or later."""
        literal = self.model.new_bool_var(f"l{name}/{first}")
        self.model.add(boundary >= first).only_enforce_if(literal)
        self.model.add(boundary < first).only_enforce_if(literal.Not())
        return literal

    def _targets(self, bounds: Bounds, start: Array, flag: Array) -> None:
        """Clock minutes of the targets: cells since the first session and the gaps passed on the way."""
        axis = self.axis
        hint_end = start + axis.length + np.where(flag, axis.set_up[axis.group], 0)
        total: Any = 0
        for target in range(len(axis.weight)):
            least = self._least(bounds.targets[target])
            last = self.model.new_int_var(least, self.horizon, f"t{target}")
            for k in range(int(axis.aim_at[target]), int(axis.aim_at[target + 1])):
                self.model.add(last >= self.end[int(axis.aim[k])])
            minute: Any = last * axis.unit + int(axis.clock[0])
            for session in range(1, len(axis.opens)):
                opens = int(axis.opens[session])
                if opens >= self.horizon:
                    break
                gap = int(axis.clock[session]) - self._clock(opens)
                late = 1 if opens < least else self._from(last, opens + 1, f"t{target}")
                minute = minute + gap * late
            reached = int(last_of(axis, target, hint_end))
            self.model.add_hint(last, reached)
            weight = int(axis.weight[target])
            self.hinted += weight * self._clock(reached)
            total = total + weight * minute
        self.model.add(total >= bounds.value)
        self.model.add(total <= self.hinted)
        self.model.minimize(total)

    def _least(self, minute: int) -> int:
        """The first boundary that ends at a clock minute or later."""
        axis = self.axis
        boundary = int(boundary_until(minute, axis.opens, axis.closes, axis.clock, axis.unit))
        return boundary if boundary and self._clock(boundary) >= minute else boundary + 1

    def _clock(self, boundary: int) -> int:
        """The clock minute of an end."""
        axis = self.axis
        return int(clock_at_end(boundary, axis.session, axis.opens, axis.clock, axis.unit))
