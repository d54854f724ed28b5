"""Looking ahead: which operations hold a gate, and when each gate may be reached."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any

import numpy as np

from witnessmark.gate.asks import GATES, Gate, gate_called
from witnessmark.gate.holds import asked_openings
from witnessmark.ground.errors import BadInput
from witnessmark.jobs.minutes import about
from witnessmark.jobs.operation import Job, Operation
from witnessmark.plan.coming import Coming, Sessions, coming
from witnessmark.plan.learning import taught
from witnessmark.plan.outlook import HORIZON, SAMPLES, Outlook, Spread, outlook
from witnessmark.plan.ranking import Ranked, ranked
from witnessmark.plan.weeks import week_band
from witnessmark.restoration.flow import Flow
from witnessmark.sheets.chance import chance_sheet
from witnessmark.sheets.rows import Sheet
from witnessmark.vehicle.catalogue import kind_of

# Minutes to answer one ask of a gate that was never answered. Common practice, no source.
ASK = 10

# The futures are drawn in so many parts, each from a source of its own, whoever runs them.
PARTS = 4

_NOT_IN_THE_GARAGE = ("creeping", "road")


def look_ahead(
    flow: Flow, *, samples: int = SAMPLES, spread: Spread = map, wet: frozenset[date] = frozenset()
) -> Outlook:
    """When each gate may be reached, by the calendar in the record and everything that may happen.

    spread  runs the parts of the futures; that of a pool of threads runs them at once
    wet     days on which no coat can go on
    """
    sessions = sessions_ahead(flow)
    order = order_ahead(flow, sessions)
    return outlook(
        flow.state,
        order,
        {name: gate_operations(flow, name, order) for name in GATES},
        sessions.coming,
        sessions.known,
        now=flow.now,
        sources=np.random.default_rng(flow.seed).spawn(PARTS),
        samples=samples,
        spread=spread,
        wet=wet,
    )


def sessions_ahead(flow: Flow) -> Sessions:
    """The sessions that come; a calendar that never opens is told."""
    found = coming(flow.state.calendar, flow.state.supply.held, flow.now, HORIZON)
    if not found.coming:
        raise BadInput(
            given="the calendar has no session in the next four years",
            holds="at least one day with a beginning and a later end",
            do='Say when, as: write "sessions Saturdays 9-13, not in August".',
        )
    return found


def order_ahead(flow: Flow, sessions: Sessions, jobs: Sequence[Job] | None = None) -> Ranked:
    """Everything that can be done in the garage, in the order in which the sheets would have it done.

    jobs  in place of those of the record, where something is tried
    """
    first = sessions.coming[0]
    sheet = flow.session(first.minutes / 60, helper=first.helper)
    return ranked(
        flow.state,
        flow.jobs if jobs is None else jobs,
        (o.id for o in sheet.operations),
        asks_to_answer(flow),
    )


def asks_to_answer(flow: Flow) -> Iterator[Operation]:
    """One operation for each unanswered ask of a gate; a look comes after its system is closed."""
    closings: dict[str, list[str]] = {}
    for job in flow.jobs:
        for operation in job.operations:
            joint = flow.vehicle.joints.get(operation.name)
            if operation.sort == "close" and joint is not None:
                closings.setdefault(kind_of(joint.kind).system, []).append(operation.id)
    seen: set[str] = set()
    for name in GATES:
        for ask in gate_called(name).ask:
            unknown = next((u for u in flow.gate(name).not_known if u.id == ask.id), None)
            if unknown is None or ask.id in seen or ask.stage in _NOT_IN_THE_GARAGE:
                continue
            seen.add(ask.id)
            yield Operation(
                id=f"ask/{ask.id}",
                what=unknown.text,
                sort="prove",
                name=unknown.name,
                job=f"answer/what the {name} gate asks",
                minutes=about(ASK),
                if_missed=unknown.if_missed,
                after=tuple(closings.get(ask.system, ())) if ask.looks_over else (),
                hands=2 if ask.helper == "needed" else 1,
            )


def gate_operations(flow: Flow, name: str, order: Ranked) -> frozenset[str]:
    """What must be done before a gate: what pays its holds and answers its asks, and what that leaves open.

    A job wanted that opens what would hold the gate counts too: it is done before the gate is asked again.
    """
    gate = gate_called(name)
    codes = {hold.code for hold in flow.gate(name).holds}
    asked = {f"ask/{unknown.id}" for unknown in flow.gate(name).not_known}
    opening = asked_openings(gate, flow.state)
    jobs = {o.job for o in order.operations if o.sort == "open" and o.name in opening}
    wanted = {o.id for o in order.operations if set(o.pays) & codes or o.id in asked or o.job in jobs}
    found = {o.id for o in order.operations if o.id in wanted and _before(gate, o)}
    todo = list(found)
    while todo:
        for before in order.before[todo.pop()]:
            if before not in found:
                found.add(before)
                todo.append(before)
    return frozenset(found)


def _before(gate: Gate, operation: Operation) -> bool:
    if operation.stage in _NOT_IN_THE_GARAGE:
        return False
    return not operation.stage or operation.stage in gate.stages_before


def chance_screen(flow: Flow, seen: Outlook) -> Sheet:
    """The look ahead, with the next session's own chance."""
    first = sessions_ahead(flow).coming[0]
    return chance_sheet(
        seen,
        flow.session(first.minutes / 60, helper=first.helper),
        taught(flow.state),
        {name: gate_called(name).screen_name for name in GATES},
        vehicle=flow.vehicle.name,
        line=flow.line,
    )


def outlook_plain(flow: Flow, seen: Outlook) -> dict[str, Any]:
    """The look ahead as plain values."""
    first = sessions_ahead(flow).coming[0]
    plan = flow.session(first.minutes / 60, helper=first.helper)
    return {
        "session": {"day": first.day.isoformat(), "chance": plan.chance, "chance_words": plan.chance_words},
        "gates": [
            {
                "gate": band.gate,
                "p50": _session_plain(band.likely),
                "p90": _session_plain(band.high),
                "reached": round(band.reached, 2),
                "words": week_band(band.likely, band.high, seen.today),
                "operations": band.operations,
            }
            for band in seen.gates
        ],
        "drivers": [driver.says for driver in seen.drivers],
        "more": [{"what": one.what, "weeks_sooner": one.weeks} for one in seen.bought],
        "taught": [
            {"sort": one.sort, "finished": one.finished, "says": one.says} for one in taught(flow.state)
        ],
        "too_long": list(seen.too_long),
        "sessions": seen.known,
        "samples": seen.samples,
        "operations": seen.operations,
    }


def _session_plain(session: Coming | None) -> dict[str, Any] | None:
    if session is None:
        return None
    year, week, _ = session.day.isocalendar()
    return {"year": year, "week": week}
