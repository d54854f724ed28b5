"""Compiled loops that lay activities on the axis of work, one after the other, forwards or backwards.

All of them lie in this file: what is kept on disk is renewed when the file changes, and only then.
"""

# mypy: disable-error-code="no-any-return"

from __future__ import annotations

from typing import Any

import numpy as np

from witnessmark.engines.compiled import compiled
from witnessmark.engines.schedule_axis import Axis

Array = Any

NEVER = 1 << 60


@compiled
def clock_at_start(cell: int, session: Array, opens: Array, clock: Array, unit: int) -> int:
    """The clock minute at which a cell begins."""
    where = session[cell]
    return clock[where] + (cell - opens[where]) * unit


@compiled
def clock_at_end(boundary: int, session: Array, opens: Array, clock: Array, unit: int) -> int:
    """The clock minute of a boundary where something ends: in the session before it."""
    where = session[boundary - 1]
    return clock[where] + (boundary - opens[where]) * unit


@compiled
def cell_from(minute: int, opens: Array, closes: Array, clock: Array, unit: int) -> int:
    """The first cell that begins at a clock minute or later; beyond the last where there is none."""
    low, high = 0, len(clock)
    while low < high:
        middle = (low + high) // 2
        if clock[middle] + (closes[middle] - opens[middle]) * unit > minute:
            high = middle
        else:
            low = middle + 1
    if low == len(clock):
        return closes[-1]
    if minute <= clock[low]:
        return opens[low]
    return opens[low] + (minute - clock[low] + unit - 1) // unit


@compiled
def boundary_until(minute: int, opens: Array, closes: Array, clock: Array, unit: int) -> int:
    """The last boundary at which something ends at a clock minute or sooner."""
    low, high = 0, len(clock)
    while low < high:
        middle = (low + high) // 2
        if clock[middle] < minute:
            low = middle + 1
        else:
            high = middle
    if low == 0:
        return 0
    return min(closes[low - 1], opens[low - 1] + (minute - clock[low - 1]) // unit)


@compiled
def last_blocked(free: Array, demand: Array, first: int, last: int) -> int:
    """The last cell of a stretch in which something of a demand is not there; -1: none."""
    for cell in range(last - 1, first - 1, -1):
        for r in range(len(demand)):
            if free[cell, r] < demand[r]:
                return cell
    return -1


@compiled
def first_blocked(free: Array, demand: Array, first: int, last: int) -> int:
    """The first cell of a stretch in which something of a demand is not there; -1: none."""
    for cell in range(first, last):
        for r in range(len(demand)):
            if free[cell, r] < demand[r]:
                return cell
    return -1


@compiled
def take(free: Array, demand: Array, first: int, last: int) -> None:
    """Take a demand from a stretch of cells."""
    for r in range(len(demand)):
        if demand[r]:
            for cell in range(first, last):
                free[cell, r] -= demand[r]


@compiled
def skipped(cell: int, skip: Array, free: Array) -> int:
    """The first cell from here on where the first resource is not used up; what was learned is kept."""
    at = cell
    while at < len(free) and free[at, 0] <= 0:
        at = max(at + 1, skip[at])
    while cell < at:
        after = max(cell + 1, skip[cell])
        skip[cell] = at
        cell = after
    return at


@compiled
def forwards(axis: Axis, order: Array, join: Array, start: Array, end: Array, flag: Array) -> bool:
    """Lay activities down in an order, each as early as it goes; False where the sessions run out.

    A link's earlier end must come first in the order. Where `join` says so, an activity waits for a
    session in which its group was set up already, if there is one.
    """
    unit, session, opens, closes, clock = axis.unit, axis.session, axis.opens, axis.closes, axis.clock
    before_at, before, before_lag = axis.before_at, axis.before, axis.before_lag
    group, set_up, demand, one = axis.group, axis.set_up, axis.demand, axis.one
    free = axis.free.copy()
    cells = len(free)
    skip = np.zeros(cells, dtype=np.int32)
    ready = np.full((len(set_up), len(clock)), NEVER)
    for number in order:
        cell = axis.first[number]
        for k in range(before_at[number], before_at[number + 1]):
            boundary = end[before[k]]
            if before_lag[k]:
                minute = clock_at_end(boundary, session, opens, clock, unit) + before_lag[k]
                boundary = cell_from(minute, opens, closes, clock, unit)
            cell = max(cell, boundary)
        length, mine, ahead = axis.length[number], demand[number], cell
        waits = join[number] and group[number] >= 0 and set_up[group[number]] > 0
        while True:
            if mine[0]:
                cell = skipped(cell, skip, free)
            if cell + axis.length[number] > cells:
                if not waits:
                    return False
                cell, waits = ahead, False
                continue
            if group[number] >= 0:
                length = axis.length[number]
                if ready[group[number], session[cell]] > cell:
                    if waits:
                        made = ready[group[number], session[cell]]
                        cell = made if made < closes[session[cell]] else closes[session[cell]]
                        continue
                    length += set_up[group[number]]
                if cell + length > cells:
                    return False
            if one[number] and cell + length > closes[session[cell]]:
                cell = closes[session[cell]]
                continue
            block = last_blocked(free, mine, cell, cell + length)
            if block < 0:
                break
            cell = block + 1
        start[number], end[number] = cell, cell + length
        flag[number] = length > axis.length[number]
        if flag[number]:
            made = cell + set_up[group[number]]
            ready[group[number], session[cell]] = min(ready[group[number], session[cell]], made)
        take(free, mine, cell, cell + length)
    return True


@compiled
def earliest(axis: Axis, order: Array, start: Array, end: Array) -> None:
    """Where each activity could begin and end at the earliest if it had all sessions to itself.

    Without set-ups, and not in the way of any other; beyond the last session it stands at its end.
    """
    unit, session, opens, closes, clock = axis.unit, axis.session, axis.opens, axis.closes, axis.clock
    cells = len(session)
    for number in order:
        cell = axis.first[number]
        for k in range(axis.before_at[number], axis.before_at[number + 1]):
            boundary = end[axis.before[k]]
            if axis.before_lag[k]:
                minute = clock_at_end(boundary, session, opens, clock, unit) + axis.before_lag[k]
                boundary = cell_from(minute, opens, closes, clock, unit)
            cell = max(cell, boundary)
        length = axis.length[number]
        while cell + length <= cells:
            if axis.one[number] and cell + length > closes[session[cell]]:
                cell = closes[session[cell]]
                continue
            block = last_blocked(axis.free, axis.demand[number], cell, cell + length)
            if block < 0:
                break
            cell = block + 1
        start[number], end[number] = min(cell, cells), min(cell + length, cells)


@compiled
def backwards(axis: Axis, order: Array, latest: Array, start: Array, end: Array, flag: Array) -> bool:
    """Lay activities down in an order, each as late as it goes and ending by its latest boundary.

    A link's later end must come first in the order. Set-ups stay where they were flagged.
    """
    unit, session, opens, closes, clock = axis.unit, axis.session, axis.opens, axis.closes, axis.clock
    then_at, then, then_lag, demand, one = axis.then_at, axis.then, axis.then_lag, axis.demand, axis.one
    free = axis.free.copy()
    for number in order:
        boundary = latest[number]
        for k in range(then_at[number], then_at[number + 1]):
            cell = start[then[k]]
            if then_lag[k]:
                minute = clock_at_start(cell, session, opens, clock, unit) - then_lag[k]
                cell = boundary_until(minute, opens, closes, clock, unit)
            boundary = min(boundary, cell)
        length, mine = axis.length[number], demand[number]
        if flag[number]:
            length += axis.set_up[axis.group[number]]
        while True:
            if boundary < length:
                return False
            if one[number] and boundary - length < opens[session[boundary - 1]]:
                boundary = opens[session[boundary - 1]]
                continue
            block = first_blocked(free, mine, boundary - length, boundary)
            if block < 0:
                break
            boundary = block
        start[number], end[number] = boundary - length, boundary
        take(free, mine, boundary - length, boundary)
    return True


@compiled
def value_of(axis: Axis, end: Array) -> int:
    """The sum over targets of weight times the clock minute at which the last of it ends."""
    total = 0
    for target in range(len(axis.weight)):
        last = last_of(axis, target, end)
        total += axis.weight[target] * clock_at_end(last, axis.session, axis.opens, axis.clock, axis.unit)
    return total


@compiled
def last_of(axis: Axis, target: int, end: Array) -> int:
    """The boundary at which a target is reached."""
    last = 0
    for k in range(axis.aim_at[target], axis.aim_at[target + 1]):
        last = max(last, end[axis.aim[k]])
    return last


@compiled
def latest_for_targets(axis: Axis, end: Array, latest: Array) -> None:
    """Boundaries that keep every target where it is: others may use the axis up to the last end."""
    latest[:] = end.max()
    for target in range(len(axis.weight)):
        last = last_of(axis, target, end)
        for k in range(axis.aim_at[target], axis.aim_at[target + 1]):
            latest[axis.aim[k]] = min(latest[axis.aim[k]], last)


@compiled
def improved(axis: Axis, order: Array, join: Array, start: Array, end: Array, flag: Array) -> int:
    """Lay out forwards, then push back and pull forward for as long as that helps; the value reached.

    `order` becomes the order of starts of the schedule left in `start`, `end`, `flag`; -1: no room.
    """
    if not forwards(axis, order, join, start, end, flag):
        return -1
    value = value_of(axis, end)
    count = len(order)
    latest = np.empty(count, dtype=np.int64)
    late_start, late_end = np.empty(count, dtype=np.int64), np.empty(count, dtype=np.int64)
    new_start, new_end = np.empty(count, dtype=np.int64), np.empty(count, dtype=np.int64)
    new_flag = flag.copy()
    while True:
        latest_for_targets(axis, end, latest)
        back = np.argsort(-end, kind="mergesort")
        if not backwards(axis, back, latest, late_start, late_end, flag):
            break
        ahead = np.argsort(late_start, kind="mergesort")
        if not forwards(axis, ahead, join, new_start, new_end, new_flag):
            break
        new = value_of(axis, new_end)
        if new >= value:
            break
        value = new
        start[:], end[:], flag[:] = new_start, new_end, new_flag
    order[:] = np.argsort(start, kind="mergesort")
    return value


@compiled
def drawn(state: Array, count: int) -> int:
    """A number from 0 up to a count, from a state that goes on (shifts and exclusive ors on 32 bits)."""
    x = state[0]
    x ^= (x << 13) & 0xFFFFFFFF
    x ^= x >> 17
    x ^= (x << 5) & 0xFFFFFFFF
    state[0] = x
    return (x >> 3) % count


@compiled
def moved(axis: Axis, order: Array, place: Array, state: Array, reach: int) -> None:
    """Move one activity, drawn by lot, up to so many places, between its links' other ends."""
    count = len(order)
    for k in range(count):
        place[order[k]] = k
    at = drawn(state, count)
    number = order[at]
    low, high = max(0, at - reach), min(count - 1, at + reach)
    for k in range(axis.before_at[number], axis.before_at[number + 1]):
        low = max(low, place[axis.before[k]] + 1)
    for k in range(axis.then_at[number], axis.then_at[number + 1]):
        high = min(high, place[axis.then[k]] - 1)
    to = low + drawn(state, high - low + 1)
    step = 1 if to > at else -1
    for k in range(at, to, step):
        order[k] = order[k + step]
    order[to] = number


@compiled
def held_up(axis: Axis, end: Array, state: Array) -> int:
    """One of the activities that make a target late: its last, or what that waited for, drawn by lot."""
    target = drawn(state, len(axis.weight))
    number = axis.aim[axis.aim_at[target]]
    for k in range(axis.aim_at[target], axis.aim_at[target + 1]):
        if end[axis.aim[k]] > end[number]:
            number = axis.aim[k]
    while drawn(state, 10) < 7:
        latest = -1
        for k in range(axis.before_at[number], axis.before_at[number + 1]):
            before = axis.before[k]
            if latest < 0 or end[before] + axis.before_lag[k] > end[latest]:
                latest = before
        if latest < 0:
            break
        number = latest
    return number


@compiled
def pulled(axis: Axis, order: Array, number: int, state: Array, marked: Array, kept: Array) -> None:
    """Move an activity forward in the order, with all between that it waits for."""
    at = 0
    while order[at] != number:
        at += 1
    to = at - drawn(state, at + 1)
    if drawn(state, 2):
        to = max(to, at - 1 - drawn(state, 1 + len(order) // 10))
    if to >= at:
        return
    marked[:] = False
    marked[number] = True
    for k in range(at - 1, to - 1, -1):
        for link in range(axis.then_at[order[k]], axis.then_at[order[k] + 1]):
            if marked[axis.then[link]]:
                marked[order[k]] = True
    first, rest = to, 0
    for k in range(to, at + 1):
        if marked[order[k]]:
            order[first] = order[k]
            first += 1
        else:
            kept[rest] = order[k]
            rest += 1
    for k in range(rest):
        order[first + k] = kept[k]


@compiled
def lateness(axis: Axis, end: Array, goals: Array) -> int:
    """How far the activities of targets lie behind the targets' goals, a sixteenth of the weighted minutes.

    A target is held up by many at once: moving one of them changes no value, but this.
    """
    total = 0
    for target in range(len(axis.weight)):
        late = 0
        for k in range(axis.aim_at[target], axis.aim_at[target + 1]):
            boundary = end[axis.aim[k]]
            where = axis.session[boundary - 1]
            late += max(0, axis.clock[where] + (boundary - axis.opens[where]) * axis.unit - goals[target])
        total += axis.weight[target] * late
    return total // 16


@compiled
def changed(axis: Axis, start: Array, stood: Array, price: int) -> int:
    """What it costs that activities begin in other sessions than they stood in; -1: in none that counts."""
    total = 0
    for number in range(len(start)):
        if stood[number] >= 0 and axis.session[start[number]] != stood[number]:
            total += price
    return total


@compiled
def anneal(
    axis: Axis,
    order: Array,
    join: Array,
    best: Array,
    best_join: Array,
    values: Array,
    goals: Array,
    stood: Array,
    price: int,
    state: Array,
    steps: int,
    hot: float,
    cold: float,
) -> None:
    """Move a few activities at a time and keep what is better, or by lot not much worse; cooling down.

    order, join           where it walks from, see `forwards`; left where it came to
    best, best_join       the best met
    values                of the first, with lateness if in sessions; of the best; both with cost of changes
    goals                 the clock minute before which no target is reached
    stood, price          the sessions of the plan that stood before, and what each change costs
    """
    count, flag = len(order), np.zeros(len(order), dtype=np.bool_)
    start, end = np.empty(count, dtype=np.int64), np.empty(count, dtype=np.int64)
    trial, place, trial_join = order.copy(), np.empty(count, dtype=np.int64), join.copy()
    shared = np.flatnonzero(axis.group >= 0)
    many, set_up = len(axis.clock) > 1, axis.set_up.max() > 0
    now, marked = np.empty(count, dtype=np.int64), np.empty(count, dtype=np.bool_)
    if many:
        trial[:] = order
        improved(axis, trial, join, start, now, flag)
    for step in range(steps):
        heat = hot * (cold / hot) ** (step / steps)
        trial[:], trial_join[:] = order, join
        if len(shared) and drawn(state, 4) == 0:
            flipped = shared[drawn(state, len(shared))]
            trial_join[flipped] = not trial_join[flipped]
        if many and drawn(state, 3):
            pulled(axis, trial, held_up(axis, now, state), state, marked, place)
        else:
            reach = count if drawn(state, 4) else max(1, count // 10)
            for _ in range(1 + drawn(state, 3)):
                moved(axis, trial, place, state, reach)
        if many and not set_up and drawn(state, 8):
            fits = forwards(axis, trial, trial_join, start, end, flag)
            value = value_of(axis, end) if fits else -1
        else:
            value = improved(axis, trial, trial_join, start, end, flag)
        if value < 0:
            continue
        value += changed(axis, start, stood, price)
        guide = value + lateness(axis, end, goals) if many else value
        worse = guide - values[0]
        if worse <= 0 or np.exp(-worse / heat) * 10_000 > drawn(state, 10_000):
            values[0] = guide
            order[:], join[:], now[:] = trial, trial_join, end
            if value < values[1]:
                values[1] = value
                best[:], best_join[:] = trial, trial_join
