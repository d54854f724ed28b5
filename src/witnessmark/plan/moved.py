"""What changed since the plan before, and why: the reason that stands nearest to each thing."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from msgspec.structs import replace

from witnessmark.jobs.operation import Operation
from witnessmark.plan.laying import Asked
from witnessmark.plan.timetable import Moved, Timetable


def moved_since(plan: Timetable, last: Timetable, asked: Asked) -> Timetable:
    """The plan with what moved between sessions, came in or fell out, what stands soonest first."""
    before, now = _days(last), _days(plan)
    operations = {s.operation.id: s.operation for p in (last, plan) for h in p.held for s in h.stints}
    today = plan.today
    rows = [
        Moved(
            what=o.what,
            name=o.name,
            before=was,
            now=comes,
            because=_because(o, was, comes, before, now, asked),
        )
        for id, o in operations.items()
        if (was := before.get(id)) != (comes := now.get(id)) and not (was is None and comes is None)
    ]
    rows.sort(key=lambda m: (m.now or m.before or today, m.what))
    return replace(plan, moved=tuple(rows))


def unchanged(plan: Timetable, last: Timetable, sessions: int) -> float:
    """The part of what stood in the next sessions of the plan before that still stands there, 0..1."""
    days = [h.session.day for h in last.held if h.session.day >= plan.today][:sessions]
    stood = {id: day for id, day in _days(last).items() if day in days}
    now = _days(plan)
    still = [id for id in stood if id in now]
    return sum(now[id] == stood[id] for id in still) / len(still) if still else 1.0


def _days(plan: Timetable) -> dict[str, date]:
    return {s.operation.id: h.session.day for h in plan.held for s in h.stints}


def _because(
    operation: Operation,
    was: date | None,
    comes: date | None,
    before: Mapping[str, date],
    now: Mapping[str, date],
    asked: Asked,
) -> str:
    if comes is None:
        return "done, or no longer asked for"
    if was is None:
        return "new since then"
    if was not in {s.day for s in asked.sessions}:
        return "that session is over, or called off"
    late = [asked.things[n] for n in asked.waits.get(operation.id, ())]
    if comes > was and any(thing.due is None or thing.due > was for thing in late):
        thing = next(t for t in late if t.due is None or t.due > was)
        return f"waits for {thing.what}"
    behind = [b for b in operation.after if b in now and now[b] != before.get(b)]
    if comes > was:
        return "comes after what moved" if behind else "makes room"
    return "comes after what moved forward" if behind else "there is room sooner"
