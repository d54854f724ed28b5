"""One rule of work run through drawn futures: decide on what is planned, then see what it takes.

In each session, first what stands half done, then (with a helper) what takes two pairs of hands, then
everything in its order: an operation is begun where what comes before it is done, its things are here,
and the minutes *planned* for it still fit. Only then are the minutes drawn for it looked at.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from witnessmark.engines.compiled import compiled, inlined
from witnessmark.engines.dispatch_model import (
    ASKS,
    BEFORE,
    BOUND_AT,
    DRY,
    HANDS,
    LONG,
    MORE,
    NEEDS_AT,
    PLANNED,
    SPELL,
    THEN_AT,
    WHOLE,
    Futures,
    Run,
    Sessions,
    Work,
)
from witnessmark.engines.first_that_fits import NOTHING, empty_row, first_from, put

# What is left of an operation is never planned under this part of the whole: half done is seldom nearly done.
LEAST_PART = 5

_ENDLESS = 1 << 30
_UNTOUCHED, _HALF_DONE, _TURNED_UP, _DONE = 0, 1, 2, 3

# Rows of `room`, a column an operation; compiled loops are quick on few arrays and slow on many.
# Minutes it still takes, minutes planned for it now, the clock before which it cannot be gone on with,
# its stage, how many of what comes before it are not done, the session in which it must be done;
# then three lists of numbers: half done, waiting for a clock, to be done at once.
_TAKES, _GUESS, _FREE, _STAGE, _UNDONE, _MUST, _BEGUN, _WAITING, _FORCED = range(9)

# Places of `now`: minutes left of the session; how many operations are undone, half done, waiting, forced.
_LEFT, _ALL_UNDONE, _ALL_BEGUN, _ALL_WAITING, _ALL_FORCED = range(5)


@inlined
def _offer(each: Any, room: Any, now: Any, alone: Any, two: Any, i: int, clock: int, s: int) -> None:
    """What comes before an operation is done: it is forced, could be begun, or waits for a clock."""
    if room[_MUST, i] == s and s >= 0:
        room[_FORCED, now[_ALL_FORCED]] = i
        now[_ALL_FORCED] += 1
    elif room[_FREE, i] > clock:
        room[_WAITING, now[_ALL_WAITING]] = i
        now[_ALL_WAITING] += 1
    elif each[HANDS, i] > 1:
        put(two, i, each[ASKS, i])
    else:
        put(alone, i, each[ASKS, i])


@compiled
def _lay_out(
    each: Any, needs: Any, taken: Any, arrival: Any, room: Any, now: Any, alone: Any, two: Any, done_in: Any
) -> None:
    """Everything undone, at the start of a future."""
    now[:] = 0
    now[_ALL_UNDONE] = len(taken)
    alone[:] = NOTHING
    two[:] = NOTHING
    for i in range(len(taken)):
        done_in[i] = -1
        room[_TAKES, i] = taken[i]
        room[_GUESS, i] = each[PLANNED, i]
        room[_STAGE, i] = _UNTOUCHED
        room[_MUST, i] = -1
        room[_UNDONE, i] = each[BEFORE, i]
        free = 0
        for k in range(each[NEEDS_AT, i], each[NEEDS_AT, i + 1]):
            free = max(free, arrival[needs[k]])
        room[_FREE, i] = free
        if each[BEFORE, i] == 0:
            _offer(each, room, now, alone, two, i, -1, -1)


@inlined
def _work_on(each: Any, room: Any, now: Any, i: int, most: int, ends: bool) -> bool:
    """Spend the minutes it takes, as far as the session goes; whether it, or what it turned up, is over."""
    time = min(room[_TAKES, i], most)
    if not ends:
        time = min(time, now[_LEFT])
    now[_LEFT] = max(0, now[_LEFT] - time)
    room[_TAKES, i] -= time
    room[_GUESS, i] = max(room[_GUESS, i] - time, each[PLANNED, i] // LEAST_PART, 1)
    return bool(room[_TAKES, i] == 0)


@inlined
def _stand(room: Any, now: Any, i: int, stage: int) -> None:
    """Leave an operation half done."""
    if room[_STAGE, i] == _UNTOUCHED:
        room[_BEGUN, now[_ALL_BEGUN]] = i
        now[_ALL_BEGUN] += 1
    room[_STAGE, i] = stage


@inlined
def _is_over(
    each: Any, then: Any, bound: Any, room: Any, now: Any, alone: Any, two: Any, i: int, s: int, clock: int
) -> None:
    """An operation is done: what is bound to it must follow, what comes after it may."""
    room[_STAGE, i] = _DONE
    now[_ALL_UNDONE] -= 1
    for k in range(each[BOUND_AT, i], each[BOUND_AT, i + 1]):
        room[_MUST, bound[k]] = s
    for k in range(each[THEN_AT, i], each[THEN_AT, i + 1]):
        j = then[0, k]
        room[_UNDONE, j] -= 1
        room[_FREE, j] = max(room[_FREE, j], clock + then[1, k])
        if room[_UNDONE, j] == 0:
            _offer(each, room, now, alone, two, j, clock, s)


@inlined
def _go_on(
    each: Any, then: Any, bound: Any, room: Any, now: Any, alone: Any, two: Any,
    ends_at: int, extra: int, wait: int, s: int, i: int, most: int, forced: bool,
) -> bool:  # fmt: skip
    """Give an operation the minutes it takes; what it turns up is dealt with at once where it can be."""
    ends = forced or (each[WHOLE, i] > 0 and room[_STAGE, i] != _TURNED_UP)
    over = _work_on(each, room, now, i, most, ends)
    if over and room[_STAGE, i] != _TURNED_UP and extra > 0:
        _stand(room, now, i, _TURNED_UP)
        room[_TAKES, i] = extra
        room[_GUESS, i] = each[MORE, i]
        room[_FREE, i] = ends_at - now[_LEFT] + wait
        over = False
        if wait == 0 and each[MORE, i] <= now[_LEFT]:
            over = _work_on(each, room, now, i, _ENDLESS, False)
    elif not over:
        _stand(room, now, i, max(room[_STAGE, i], _HALF_DONE))
    if over:
        _is_over(each, then, bound, room, now, alone, two, i, s, ends_at - now[_LEFT])
    return over


@inlined
def _pick(now: Any, alone: Any, two: Any, at: int, helped: bool, only_two: bool) -> int:
    """The first operation from `at` on that could be begun and fits; -1 where there is none."""
    found = first_from(two, at, now[_LEFT]) if helped else -1
    if not only_two:
        other = first_from(alone, at, now[_LEFT])
        if found < 0 or 0 <= other < found:
            found = other
    return found


@inlined
def _take(each: Any, room: Any, now: Any, alone: Any, two: Any, i: int, full: int) -> int:
    """Take an operation up; minutes it is given: all it takes, or a spell of a long one; 0: not now."""
    if each[LONG, i] and full >= room[_GUESS, i] > now[_LEFT]:
        return 0
    if each[HANDS, i] > 1:
        put(two, i, NOTHING)
    else:
        put(alone, i, NOTHING)
    return SPELL if each[LONG, i] and room[_GUESS, i] > full else _ENDLESS


@inlined
def _take_half_done(each: Any, room: Any, now: Any, i: int, full: int, clock: int, helped: bool) -> int:
    """Minutes something half done is given now; 0 where it waits, or what is planned for it does not fit."""
    if room[_FREE, i] > clock or (each[HANDS, i] > 1 and not helped):
        return 0
    if each[LONG, i] and room[_GUESS, i] > full:
        return SPELL if now[_LEFT] >= SPELL else 0
    return _ENDLESS if min(room[_GUESS, i], full) <= now[_LEFT] else 0


@inlined
def _clear(each: Any, room: Any, now: Any, alone: Any, two: Any, clock: int) -> None:
    """Before a session: forget what is done of the half done, offer what has come."""
    kept = 0
    for k in range(now[_ALL_BEGUN]):
        if room[_STAGE, room[_BEGUN, k]] != _DONE:
            room[_BEGUN, kept] = room[_BEGUN, k]
            kept += 1
    now[_ALL_BEGUN] = kept
    waiting = now[_ALL_WAITING]
    now[_ALL_WAITING] = 0
    now[_ALL_FORCED] = 0
    for k in range(waiting):
        _offer(each, room, now, alone, two, room[_WAITING, k], clock, -1)


@inlined
def _session(
    each: Any, then: Any, bound: Any, room: Any, now: Any, alone: Any, two: Any, start: int, full: int,
    extra: Any, wait: Any, helped: bool, dry: bool, s: int, done_in: Any, done_at: Any,
) -> None:  # fmt: skip
    """One session that takes place: what is half done, what takes two, then everything in its order."""
    now[_LEFT] = full
    half = now[_ALL_BEGUN]
    turn, at = 0, 0
    while True:
        forced = now[_ALL_FORCED] > 0
        if forced:
            now[_ALL_FORCED] -= 1
            i, most = room[_FORCED, now[_ALL_FORCED]], _ENDLESS
        elif turn == 0 and at < half:
            i = room[_BEGUN, at]
            at += 1
            most = _take_half_done(each, room, now, i, full, start + full - now[_LEFT], helped)
        elif turn == 0:
            turn, at = (1 if helped else 2), 0
            continue
        else:
            i = _pick(now, alone, two, at, helped, turn == 1)
            if i < 0 and turn == 2:
                return
            if i < 0:
                turn, at = 2, 0
                continue
            at = i + 1
            most = _take(each, room, now, alone, two, i, full) if dry or not each[DRY, i] else 0
        if most > 0 and _go_on(
            each, then, bound, room, now, alone, two, start + full, extra[i], wait[i], s, i, most, forced
        ):
            done_in[i] = s
            done_at[i] = full - now[_LEFT]


@compiled
def _every(
    each: Any, then: Any, needs: Any, bound: Any, sessions: Any, futures: Any, room: Any, now: Any,
    alone: Any, two: Any, done_in: Any, done_at: Any,
) -> None:  # fmt: skip
    """All futures, one after another, in the same room."""
    for f in range(len(done_in)):
        _lay_out(each, needs, futures.taken[f], futures.arrival[f], room, now, alone, two, done_in[f])
        for s in range(len(sessions.starts)):
            if now[_ALL_UNDONE] == 0:
                break
            if futures.held[f, s]:
                _clear(each, room, now, alone, two, sessions.starts[s])
                _session(
                    each, then, bound, room, now, alone, two, sessions.starts[s], sessions.lengths[s],
                    futures.extra[f], futures.wait[f], futures.helped[f, s] > 0, futures.dry[f, s] > 0,
                    s, done_in[f], done_at[f],
                )  # fmt: skip


def run(work: Work, sessions: Sessions, futures: Futures) -> Run:
    """Run every future; the work is the same, what is drawn differs.

    >>> from witnessmark.engines.dispatch_model import even, work_of
    >>> work = work_of([{"planned": 50}, {"planned": 30, "before": [0]}, {"planned": 20}])
    >>> weekly = Sessions(np.array([0, 10080], dtype=np.int32), np.array([60, 60], dtype=np.int32))
    >>> run(work, weekly, even(work, 2)).session.tolist()
    [[0, 1, 1]]
    """
    shape = futures.taken.shape
    answer = Run(np.full(shape, -1, dtype=np.int16), np.zeros(shape, dtype=np.int16))
    room = np.zeros((9, shape[1] + 1), dtype=np.int32)
    alone, two = empty_row(shape[1]), empty_row(shape[1])
    _every(
        work.each, work.then, work.needs, work.bound, sessions, futures, room, np.zeros(5, dtype=np.int32),
        alone, two, answer.session, answer.minute,
    )  # fmt: skip
    return answer
