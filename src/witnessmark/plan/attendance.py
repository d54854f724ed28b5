"""How often what was arranged took place, and how often a second pair of hands was there."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from msgspec import Struct

from witnessmark.plan.coming import expected
from witnessmark.state.calendar import Calendar
from witnessmark.state.supply import Line

# The starts: nine sessions in ten take place, a helper comes to one in four; each is worth so many sessions.
HELD = (3.6, 0.4)
HELPED = (1.0, 3.0)

LOOK_BACK = 364
NEAR = 1


class Attendance(Struct, frozen=True, kw_only=True):
    """Two beta distributions, (for, against), and how many sessions they were counted from."""

    held: tuple[float, float]
    helped: tuple[float, float]
    counted: int


def attendance(calendar: Calendar, held: Sequence[Line], today: date) -> Attendance:
    """Counted over a year back, and not before the first session that was written.

    A session counts as held where one was written on its day or the day beside it.
    """
    since = min((line.day for line in held), default=today)
    days = min(LOOK_BACK, max(0, (today - since).days))
    wanted = [one for one in expected(calendar, held, today, days) if one.day >= since]
    on = {line.day for line in held}
    met = sum(any(abs((day - one.day).days) <= NEAR for day in on) for one in wanted)
    late = [line for line in held if 0 <= (today - line.day).days <= LOOK_BACK]
    helped = sum(line.fact.helper or bool(line.fact.people) for line in late)
    return Attendance(
        held=(HELD[0] + met, HELD[1] + len(wanted) - met),
        helped=(HELPED[0] + helped, HELPED[1] + len(late) - helped),
        counted=len(late),
    )
