"""All that is to be done, laid into the sessions that come: what is done in each, and when a gate is asked.

This is an order of work, not a forecast: it holds if everything takes what it is planned with. When a gate
may really be reached is told by `plan.outlook`, as a band.
"""

from __future__ import annotations

from datetime import date

from msgspec import Struct

from witnessmark.jobs.operation import Operation
from witnessmark.plan.coming import Coming


class Stint(Struct, frozen=True, kw_only=True):
    """What of an operation is done in one session.

    start    minutes after midnight at which it begins; minutes: how long it is at it
    goes_on  it was begun in the session before; again: it goes on in the next
    """

    operation: Operation
    start: int
    minutes: int
    goes_on: bool = False
    again: bool = False


class Held(Struct, frozen=True, kw_only=True):
    """One session that comes and what is done in it, in the order of the clock.

    helper    a second pair of hands is promised; assumed: counted on, though nobody promised
    """

    session: Coming
    stints: tuple[Stint, ...]
    helper: bool = False
    assumed: bool = False


class Wait(Struct, frozen=True, kw_only=True):
    """A stretch of clock time in which nothing is done: a coat dries, a parcel is on its way.

    what   "underside coat dries", "pinion seal in the post"
    first, last  its days
    sort   dries | post
    """

    what: str
    first: date
    last: date
    sort: str


class GateDay(Struct, frozen=True, kw_only=True):
    """When the plan comes to a gate: the session, None where it does not; `because` tells why not."""

    gate: str
    session: Coming | None
    operations: int
    because: str = ""


class LeftOut(Struct, frozen=True, kw_only=True):
    """What is in no session: what it is, why, and what would mend it."""

    what: str
    name: str
    because: str
    do: str


class Moved(Struct, frozen=True, kw_only=True):
    """What stands in another session than in the plan before: from where to where, and why."""

    what: str
    name: str
    before: date | None
    now: date | None
    because: str


class Timetable(Struct, frozen=True, kw_only=True):
    """The plan.

    held       every session in which something is done, soonest first
    gates      in the order asked for; waits: what dries and what is in the post
    left_out   what is in no session; moved: what changed since the plan before
    gap        how much of the weighted days to the gates a better plan could save at most, as a part
    proven     none can
    known      where the sessions are known from
    """

    today: date
    held: tuple[Held, ...]
    gates: tuple[GateDay, ...]
    waits: tuple[Wait, ...]
    left_out: tuple[LeftOut, ...]
    moved: tuple[Moved, ...]
    gap: float
    proven: bool
    known: str
    operations: int

    def session_of(self, id: str) -> date | None:
        """The day on which an operation ends."""
        days = [h.session.day for h in self.held for s in h.stints if s.operation.id == id]
        return max(days, default=None)
