"""Small orders of work for tests: operations by hand, Saturdays to do them on."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime, timedelta
from functools import partial
from typing import Any

from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.arrivals import Thing
from witnessmark.plan.blocks import blocks_of
from witnessmark.plan.coming import Coming
from witnessmark.plan.laying import Asked, minutes_of
from witnessmark.plan.overrun import Overrun
from witnessmark.plan.ranking import Ranked

FRIDAY = datetime(2026, 6, 5, 20, 0)


def step(id: str, minutes: float, *after: str, **more: Any) -> Operation:
    """An operation that takes just so long."""
    fields: dict[str, Any] = {"sort": "work", "name": id, "job": f"renew/{id}", **more}
    return Operation(
        id=id, what=f"do {id}", minutes=Minutes(minutes, minutes, minutes), after=after, **fields
    )


def saturdays(number: int, minutes: int = 180, *, helper: frozenset[int] = frozenset()) -> tuple[Coming, ...]:
    first = date(2026, 6, 6)
    return tuple(
        Coming(first + timedelta(days=7 * n), 9 * 60, minutes, helper=n in helper) for n in range(number)
    )


def asked(
    *operations: Operation,
    sessions: tuple[Coming, ...] | None = None,
    bound: Mapping[str, tuple[str, ...]] | None = None,
    gates: Mapping[str, frozenset[str]] | None = None,
    things: tuple[Thing, ...] = (),
    waits: Mapping[str, tuple[int, ...]] | None = None,
    first: frozenset[str] = frozenset(),
    now: datetime = FRIDAY,
) -> Asked:
    """What a plan is asked of; the road gate asks for everything unless told otherwise."""
    known = {o.id for o in operations}
    order = Ranked(
        operations,
        {o.id: tuple(b for b in o.after if b in known) for o in operations},
        {o.id: (bound or {}).get(o.id, ()) for o in operations},
    )
    return Asked(
        blocks=blocks_of(order, partial(minutes_of, overrun=Overrun())),
        sessions=saturdays(20) if sessions is None else sessions,
        gates={"road": frozenset(known)} if gates is None else gates,
        first=first,
        things=things,
        waits=waits or {},
        helped=0.25,
        now=now,
    )
