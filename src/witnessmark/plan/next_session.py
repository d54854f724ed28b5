"""What fits the next session, and how sure it is to be closed up by packing-up time."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from witnessmark.ground.missed import if_missed
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.debt import Debt
from witnessmark.plan.chance import chance_words, simulate
from witnessmark.plan.check import checked
from witnessmark.plan.choosing import Choice
from witnessmark.plan.doable import NO_ROOM, Doable, Terms, doable
from witnessmark.plan.garage import garage_operations
from witnessmark.plan.ordering import in_session_order
from witnessmark.plan.overrun import Draw, factor_words, owners_overrun
from witnessmark.plan.session import SessionPlan, Waiting
from witnessmark.plan.stops import left_loose, safe_stops
from witnessmark.plan.to_hand import bring, order_tonight
from witnessmark.state.standing import State

# Of a session's length, what is left with tools in hand: 120 of 180 minutes, until the owner says otherwise.
WORK_SHARE = 2 / 3

# So many jobs that wait are told one by one; the rest are counted.
MOST_WAITING = 12


def plan_session(
    state: State,
    debts: Iterable[Debt],
    jobs: Sequence[Job],
    *,
    hours: float = 3.0,
    helper: bool = False,
    draw: Draw,
    now: datetime | None = None,
    work_minutes: float | None = None,
) -> SessionPlan:
    """The plan of one session.

    hours         its length; work_minutes: with tools in hand, where the owner says otherwise
    helper        a second pair of hands is there
    draw          a seeded generator; the same seed gives the same answer
    now           the moment, for coats that must cure

    The session is packed with mean minutes, findings among them: the curves lean to the long side, so
    that a sum of means is met more often than not. What it paid is chosen exactly; see `plan.choosing`.
    """
    overrun = owners_overrun(state)
    minutes = hours * 60 * WORK_SHARE if work_minutes is None else work_minutes
    terms = Terms(hours=hours, work_minutes=minutes, helper=helper, factor=overrun.factor, now=now)
    order = order_tonight(state, jobs)
    able = doable(state, jobs, garage_operations(state, jobs, order), terms)
    owed = tuple(debts)
    picked, proven = Choice(state, owed, jobs, able, terms).best()
    operations = in_session_order(picked, jobs, helper=helper)
    forecast = simulate(operations, minutes, overrun, draw)
    typed = any(o.minutes.owner for o in operations)
    plan = SessionPlan(
        hours=hours,
        work_minutes=minutes,
        helper=helper,
        operations=operations,
        chance=forecast.chance,
        chance_words=chance_words(forecast.chance),
        minutes=forecast.minutes,
        safe_stops=safe_stops(state, operations, forecast),
        left_loose=left_loose(state, operations),
        bring=bring(state, operations),
        order=order,
        waiting=_waiting(jobs, able, operations),
        proven=proven,
        factor_words=factor_words(overrun) if typed else "",
        cautions=tuple(dict.fromkeys(c for o in operations for c in o.cautions)),
    )
    return checked(plan, state, owed, jobs)


def _waiting(jobs: Sequence[Job], able: Doable, picked: Sequence[Operation]) -> tuple[Waiting, ...]:
    """What is not in the plan and why: one row a job, with the reason that tells most; the rest counted."""
    done = {o.id for o in picked}
    rows = []
    for job in jobs:
        left = [o for o in job.operations if o.id not in done]
        if left:
            heaviest = min(if_missed(o.if_missed) for o in left)
            rows.append((job.wanted is None, heaviest, _row(left, able)))
    rows.sort(key=lambda row: row[:2])
    shown = [row for _, _, row in rows[:MOST_WAITING]]
    more = len(rows) - len(shown)
    return (
        *shown,
        *([Waiting(what=f"and {more} more jobs", name="", because="for other days")] if more else []),
    )


def _row(left: Sequence[Operation], able: Doable) -> Waiting:
    """The operation of a job that waits for something nameable, else the first that found no room."""
    told = (o for o in left if able.because.get(o.id, NO_ROOM) != NO_ROOM)
    first = next((o for o in told if not able.because[o.id].startswith("comes after")), left[0])
    because = able.because.get(first.id, NO_ROOM)
    return Waiting(
        what=first.what, name=first.name, because=NO_ROOM if because.startswith("comes after") else because
    )
