"""When each gate may be reached: the rule of the session sheet run through what may happen.

The plan's own last day is no forecast. Here the rule by which sessions are filled decides on what is
guessed, and only then sees what was drawn; so the answer is a band of sessions, never a day.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from math import ceil
from types import MappingProxyType
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from witnessmark.engines.dispatch import run
from witnessmark.engines.dispatch_model import Futures, Run, Sessions, Work, work_of
from witnessmark.jobs.findings import STARTS, beta_of, least
from witnessmark.jobs.operation import Operation
from witnessmark.plan.arrivals import Thing, awaited, lateness
from witnessmark.plan.attendance import attendance
from witnessmark.plan.coming import Coming
from witnessmark.plan.drivers import Driver, drivers_of, told_apart
from witnessmark.plan.estimate import FINDING, mean, planned
from witnessmark.plan.futures import Drawn, Odds, Source, draw
from witnessmark.plan.overrun import Overrun, owners_overrun
from witnessmark.plan.ranking import Ranked
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

SAMPLES = 10_000

# So many sessions ahead are looked at. What lies beyond is not told. Our choice.
HORIZON = 260

# An evening more each week, where one is asked about: its minutes, and after how many days. Our choice.
EVENING, EVENING_START, MIDWEEK = 120, 19 * 60, 4

HANDS, EVENINGS = "a second pair of hands every time", "an evening of two hours more each week"

WORK_SHARE = 2 / 3
_WORK = ("work", "prepare")
_NEVER = 1_000_000
NO_DELAYS: Mapping[str, int] = MappingProxyType({})

Spread = Callable[[Callable[[Any], Any], Iterable[Any]], Iterable[Any]]


class GateBand(Struct, frozen=True, kw_only=True):
    """When one gate may be reached.

    likely, high  the session by which it is, in one future of two, and in nine of ten; None beyond the
                  sessions looked at
    reached       the part of the futures in which it is reached at all within them, 0..1
    operations    how many hold it
    """

    gate: str
    likely: Coming | None
    high: Coming | None
    reached: float
    operations: int


class Bought(Struct, frozen=True, kw_only=True):
    """What would come of having more: how many weeks sooner the gate is reached, in nine of ten futures."""

    what: str
    weeks: int


class Outlook(Struct, frozen=True, kw_only=True):
    """The answer.

    today       the day it was asked
    gates       in the order asked for; drivers: of the last of them, what drives its band most
    bought      what more hands or hours would bring
    known       where the sessions are known from
    too_long    operations that ask for more than the usual session
    overrun     the owner's factor behind it
    """

    today: date
    gates: tuple[GateBand, ...]
    drivers: tuple[Driver, ...]
    bought: tuple[Bought, ...]
    known: str
    too_long: tuple[str, ...]
    overrun: Overrun
    samples: int
    sessions: int
    operations: int
    counted: int


class _Setting(Struct, frozen=True, kw_only=True):
    """What stays the same however often it is run."""

    operations: tuple[Operation, ...]
    rows: list[dict[str, Any]]
    work: Work
    things: tuple[tuple[Thing, int], ...]
    odds: Odds
    start: datetime
    wet: frozenset[date] = frozenset()


class _Part(Struct, frozen=True, kw_only=True):
    """Some of the futures: when each gate is reached, what may drive it, and the same with more to hand."""

    reached: dict[str, NDArray[np.int32]]
    told: dict[str, NDArray[np.generic]]
    more: dict[str, NDArray[np.int32]]


def outlook(
    state: State,
    order: Ranked,
    gates: Mapping[str, frozenset[str]],
    sessions: Sequence[Coming],
    known: str,
    *,
    now: datetime,
    sources: Sequence[Source],
    samples: int = SAMPLES,
    spread: Spread = map,
    delays: Mapping[str, int] = NO_DELAYS,
    wet: frozenset[date] = frozenset(),
) -> Outlook:
    """Run the rule through so many futures.

    order    the operations in the order they are rather done
    gates    for each gate the ids of the operations that hold it; the drivers are those of the last
    sources  of chance, one for each part of the futures; spread: runs the parts, one after another or at once
    delays   for ids of operations, days from now before which they cannot be begun
    wet      days on which no coat can go on
    """
    setting = replace(_setting(state, order, sessions, now, delays), wet=wet)
    count = max(1, -(-samples // len(sources)))
    work = [(n, source) for n, source in enumerate(sources)]
    parts = list(
        spread(lambda part: _part(setting, gates, sessions, part[1], count, first=part[0] == 0), work)
    )
    reached = {gate: np.concatenate([part.reached[gate] for part in parts]) for gate in gates}
    told = {says: np.concatenate([part.told[says] for part in parts]) for says in parts[0].told}
    last = list(gates)[-1]
    return Outlook(
        today=now.date(),
        gates=tuple(_band(gate, reached[gate], sessions, len(ids)) for gate, ids in gates.items()),
        drivers=drivers_of(told, reached[last]),
        bought=_bought(parts[0], last, sessions),
        known=known,
        too_long=_too_long(setting, sessions),
        overrun=setting.odds.overrun,
        samples=count * len(sources),
        sessions=len(sessions),
        operations=len(setting.operations),
        counted=attendance(state.calendar, state.supply.held, now.date()).counted,
    )


def _part(
    setting: _Setting,
    gates: Mapping[str, frozenset[str]],
    sessions: Sequence[Coming],
    source: Source,
    samples: int,
    *,
    first: bool,
) -> _Part:
    """One part of the futures; the first also asks what more hands and hours would bring."""
    helpers = [one.helper for one in sessions]
    drawn = draw(setting.operations, setting.things, helpers, setting.odds, source, samples=samples)
    drawn.futures.dry[:, [n for n, one in enumerate(sessions) if one.day in setting.wet]] = 0
    calendar = _calendar(sessions, setting.start)
    ran = run(setting.work, calendar, drawn.futures)
    reached = {gate: _reached(setting.operations, ids, ran) for gate, ids in gates.items()}
    told = dict(told_apart(setting.operations, setting.things, drawn))
    more = _with_more(setting, drawn, sessions, list(gates.values())[-1]) if first else {}
    return _Part(reached=reached, told=told, more=more)


# ---- the numbers


def _setting(
    state: State, order: Ranked, sessions: Sequence[Coming], now: datetime, delays: Mapping[str, int]
) -> _Setting:
    overrun = owners_overrun(state)
    start = datetime(now.year, now.month, now.day)
    things, waits = awaited(state, order.operations, now.date())
    things, waits = _delayed(things, waits, delays, now.date())
    days = [(thing, (thing.due - now.date()).days if thing.due else -1) for thing in things]
    usual = usual_minutes(sessions)
    came = attendance(state.calendar, state.supply.held, now.date())
    coats = coats_of(state, order.operations)
    rows = _rows(order, waits, overrun, usual, coats)
    return _Setting(
        operations=order.operations,
        rows=rows,
        work=work_of(rows, usual),
        things=tuple(days),
        odds=Odds(
            overrun=overrun,
            findings={sort: beta_of(state, sort) for sort in STARTS},
            least={sort: least(sort) for sort in STARTS},
            held=came.held,
            helped=came.helped,
            lateness=lateness(state.supply),
        ),
        start=start,
    )


def _delayed(
    things: tuple[Thing, ...], waits: Mapping[str, tuple[int, ...]], delays: Mapping[str, int], today: date
) -> tuple[tuple[Thing, ...], Mapping[str, tuple[int, ...]]]:
    """A delay is a thing that comes on its day for certain."""
    numbers = {days: len(things) + n for n, days in enumerate(dict.fromkeys(delays.values()))}
    more = tuple(Thing("", today + timedelta(days), sure=True) for days in numbers)
    longer = {id: (*waits.get(id, ()), numbers[days]) for id, days in delays.items()}
    return (*things, *more), {**waits, **longer}


def _rows(
    order: Ranked,
    waits: Mapping[str, tuple[int, ...]],
    overrun: Overrun,
    usual: int,
    coats: frozenset[str],
) -> list[dict[str, Any]]:
    """Operations as plain rows; what is bound to one asks its things and its hands of it as well."""
    number = {o.id: n for n, o in enumerate(order.operations)}
    every = {o.id: o for o in order.operations}
    more = max(1, round(mean(FINDING, most=usual or FINDING.high)))
    rows: list[dict[str, Any]] = []
    for operation in order.operations:
        bound = [b for b in order.bound[operation.id] if number[b] > number[operation.id]]
        together = [operation.id, *bound]
        minutes = max(1, ceil(planned(operation, overrun.factor, most=usual)))
        long = operation.put_down and operation.sort in _WORK
        rows.append(
            {
                "planned": minutes,
                "whole": not operation.put_down,
                "long": long and minutes > 0,
                "dry": bool(coats & set(together)),
                "hands": max(every[id].hands for id in together),
                "before": sorted(
                    {number[b] for id in together for b in order.before[id]} - {number[id] for id in together}
                ),
                "needs": sorted({n for id in together for n in waits.get(id, ())}),
                "bound": [number[b] for b in bound],
                "more": more,
            }
        )
    return rows


def coats_of(state: State, operations: Iterable[Operation]) -> frozenset[str]:
    """The operations that put a coat on."""
    found = set()
    for operation in operations:
        joint = state.vehicle.joints.get(operation.name)
        coat = joint is not None and kind_of(joint.kind).closed_by == "coat" and operation.sort == "close"
        if coat or operation.sort == "protect":
            found.add(operation.id)
    return frozenset(found)


def usual_minutes(sessions: Sequence[Coming]) -> int:
    """Minutes with tools in hand of the usual session: half are as long at least."""
    return sorted(_hands_on(one) for one in sessions)[len(sessions) // 2] if sessions else 0


def _hands_on(one: Coming) -> int:
    """Minutes of a session with tools in hand."""
    return int(one.minutes * WORK_SHARE)


def _calendar(sessions: Sequence[Coming], start: datetime) -> Sessions:
    clock = [round((one.moment - start).total_seconds() / 60) for one in sessions]
    return Sessions(
        starts=np.array(clock, dtype=np.int32),
        lengths=np.array([_hands_on(one) for one in sessions], dtype=np.int32),
    )


def _reached(operations: Sequence[Operation], ids: frozenset[str], ran: Run) -> NDArray[np.int32]:
    """In which session the last of these operations ended, in each future; far off where one never did."""
    columns = [n for n, o in enumerate(operations) if o.id in ids]
    if not columns:
        return np.full(len(ran.session), -1, dtype=np.int32)
    ended = ran.session[:, columns]
    last = ended.max(axis=1).astype(np.int32)
    last[(ended < 0).any(axis=1)] = _NEVER
    return np.asarray(last)


def _band(gate: str, reached: NDArray[np.int32], sessions: Sequence[Coming], count: int) -> GateBand:
    likely, high = (_session_at(reached, part, sessions) for part in (0.5, 0.9))
    inside = float((reached < len(sessions)).mean()) if len(reached) else 0.0
    return GateBand(gate=gate, likely=likely, high=high, reached=inside, operations=count)


def _session_at(reached: NDArray[np.int32], part: float, sessions: Sequence[Coming]) -> Coming | None:
    """The first session by which so large a part of the futures is there."""
    number = int(np.sort(reached)[max(0, ceil(part * len(reached)) - 1)])
    if not sessions or number >= len(sessions):
        return None
    return sessions[max(0, number)]


def _too_long(setting: _Setting, sessions: Sequence[Coming]) -> tuple[str, ...]:
    """What asks for more than the usual session, with what must follow it; work in spells does not."""
    usual = usual_minutes(sessions)
    return tuple(
        o.what
        for o, row in zip(setting.operations, setting.rows, strict=True)
        if not row["long"] and row["planned"] + sum(setting.rows[b]["planned"] for b in row["bound"]) > usual
    )


# ---- what more would bring


def _with_more(
    setting: _Setting, drawn: Drawn, sessions: Sequence[Coming], ids: frozenset[str]
) -> dict[str, NDArray[np.int32]]:
    """The same futures with a helper every time, and with an evening more each week."""
    helped = drawn.futures._replace(helped=np.ones_like(drawn.futures.helped))
    longer, futures = _with_evenings(sessions, drawn)
    calendar, evenings = _calendar(sessions, setting.start), _calendar(longer, setting.start)
    return {
        HANDS: _reached(setting.operations, ids, run(setting.work, calendar, helped)),
        EVENINGS: _reached(setting.operations, ids, run(setting.work, evenings, futures)),
    }


def _bought(part: _Part, gate: str, sessions: Sequence[Coming]) -> tuple[Bought, ...]:
    now = _days(part.reached[gate], sessions)
    days = {HANDS: sessions, EVENINGS: evenings_between(sessions)}
    return tuple(
        Bought(what=what, weeks=_weeks(now, _days(reached, days[what])))
        for what, reached in part.more.items()
    )


def _days(reached: NDArray[np.int32], sessions: Sequence[Coming]) -> date | None:
    found = _session_at(reached, 0.9, sessions)
    return found.day if found else None


def _weeks(before: date | None, after: date | None) -> int:
    """Whole weeks sooner; 0 where it makes no difference, or nobody can tell."""
    if before is None or after is None:
        return 0
    return max(0, (before - after).days // 7)


def evenings_between(sessions: Sequence[Coming]) -> tuple[Coming, ...]:
    """The sessions, and after each an evening in the middle of the week."""
    return tuple(one for one, _ in _both(sessions))


def _both(sessions: Sequence[Coming]) -> list[tuple[Coming, int]]:
    both = [(one, n) for n, one in enumerate(sessions)]
    both += [
        (Coming(one.day + timedelta(days=MIDWEEK), EVENING_START, EVENING), n)
        for n, one in enumerate(sessions)
    ]
    return sorted(both, key=lambda pair: (pair[0].moment, pair[1]))


def _with_evenings(sessions: Sequence[Coming], drawn: Drawn) -> tuple[tuple[Coming, ...], Futures]:
    """An evening is held, and helped, as often as the session before it."""
    both = _both(sessions)
    columns = [n for _, n in both]
    futures = drawn.futures
    return tuple(one for one, _ in both), futures._replace(
        held=np.ascontiguousarray(futures.held[:, columns]),
        helped=np.ascontiguousarray(futures.helped[:, columns]),
        dry=np.ascontiguousarray(futures.dry[:, columns]),
    )
