"""The plan for the shell: from one record at one moment, going on from the plan as it stood before."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from functools import partial
from typing import Any

from witnessmark.engines.schedule import Allowed, by_steps
from witnessmark.gate.asks import GATES, gate_called
from witnessmark.plan.arrivals import awaited
from witnessmark.plan.attendance import attendance
from witnessmark.plan.blocks import blocks_of
from witnessmark.plan.laying import Asked, minutes_of
from witnessmark.plan.overrun import owners_overrun
from witnessmark.plan.timetable import Timetable
from witnessmark.plan.timetabling import Terms, timetable
from witnessmark.restoration.ahead import gate_operations, order_ahead, sessions_ahead
from witnessmark.restoration.flow import Flow
from witnessmark.sheets.rows import Sheet
from witnessmark.sheets.strip import BROAD, NARROW, strip_svg
from witnessmark.sheets.timetable import timetable_sheet

# Steps of each chain where no clock is given; of the seconds, the parts the chains use.
STEPS = 2_000
CHAINS_PART = 0.6
BEFORE_PART = 0.4


def plan_ahead(flow: Flow, *, left: Callable[[], float] | None = None, seed: int = 0) -> Timetable:
    """The plan of one record, going on from the plan of the day before the last line was written.

    left  the seconds left, where a clock is given; else it takes so many steps, the same every time
    """
    before, last = _before(flow), None
    with ThreadPoolExecutor(2) as pool:
        if before is not None:
            stood = Terms(allowed=_allowed(left, BEFORE_PART), seed=seed, spread=pool.map)
            last = timetable(before.state, asked_of(before), stood)
        terms = Terms(
            allowed=_allowed(left, CHAINS_PART), seed=seed, spread=pool.map, known=sessions_ahead(flow).known
        )
        return timetable(flow.state, asked_of(flow), terms, last)


def asked_of(flow: Flow) -> Asked:
    """What the plan of a record is asked of."""
    sessions = sessions_ahead(flow)
    order = order_ahead(flow, sessions)
    first = sessions.coming[0]
    things, waits = awaited(flow.state, order.operations, flow.today)
    came = attendance(flow.state.calendar, flow.state.supply.held, flow.today).helped
    return Asked(
        blocks=blocks_of(order, partial(minutes_of, overrun=owners_overrun(flow.state))),
        sessions=sessions.coming,
        gates={name: gate_operations(flow, name, order) for name in GATES},
        first=frozenset(o.id for o in flow.session(first.minutes / 60, helper=first.helper).operations),
        things=things,
        waits=waits,
        helped=came[0] / sum(came),
        now=flow.now,
    )


def _allowed(left: Callable[[], float] | None, part: float) -> Allowed:
    """So much of the time left is for the chains; the rest for the exact solver, in the last of two plans."""
    if left is None:
        return by_steps(STEPS)
    whole = max(0.01, left())
    seconds = left if part == CHAINS_PART else None
    return Allowed(used=lambda made: (whole - left()) / (whole * part), seconds=seconds)


def _before(flow: Flow) -> Flow | None:
    """The record as it stood the day before its last line was written; None where it had none."""
    if not flow.entries:
        return None
    day = max(entry.written_day for entry in flow.entries)
    lines = [entry for entry in flow.entries if entry.written_day < day]
    if not lines:
        return None
    return Flow(lines, flow.now - timedelta(days=max(0, (flow.today - day).days)), seed=flow.seed)


def timetable_screen(flow: Flow, plan: Timetable) -> Sheet:
    """The plan as a sheet."""
    names = {name: gate_called(name).screen_name for name in GATES}
    return timetable_sheet(plan, names, vehicle=flow.vehicle.name, line=flow.line)


def timetable_plain(plan: Timetable) -> dict[str, Any]:
    """The plan as plain values, in fixed names."""
    return {
        "sessions": [
            {
                "day": held.session.day.isoformat(),
                "week": held.session.day.isocalendar().week,
                "start": f"{held.session.moment:%H:%M}",
                "minutes": held.session.minutes,
                "helper": held.helper,
                "helper_assumed": held.assumed,
                "operations": [
                    {
                        "id": stint.operation.id,
                        "what": stint.operation.what,
                        "name": stint.operation.name,
                        "minutes": stint.minutes,
                        "goes_on": stint.again,
                    }
                    for stint in held.stints
                ],
            }
            for held in plan.held
        ],
        "gates": [
            {
                "gate": gate.gate,
                "week": gate.session.day.isocalendar().week if gate.session else None,
                "year": gate.session.day.isocalendar().year if gate.session else None,
                "operations": gate.operations,
                "because": gate.because,
            }
            for gate in plan.gates
        ],
        "left_out": [{"what": one.what, "because": one.because, "do": one.do} for one in plan.left_out],
        "moved": [
            {
                "what": one.what,
                "before": one.before.isoformat() if one.before else None,
                "now": one.now.isoformat() if one.now else None,
                "because": one.because,
            }
            for one in plan.moved
        ],
        "gap": round(plan.gap, 4),
        "proven": plan.proven,
        "known": plan.known,
        "operations": plan.operations,
    }


def timetable_picture(plan: Timetable, *, narrow: bool = False) -> str:
    """The plan as a strip of sessions, SVG, for a desk or for a phone; "" where nothing is planned."""
    names = {name: gate_called(name).screen_name for name in GATES}
    return strip_svg(plan, names, NARROW if narrow else BROAD)
