"""Small records for tests: facts in, entries out, without typing headings."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import AnyFact, Described, DescribedVehicle
from witnessmark.state.standing import State, state_from
from witnessmark.vehicle.things import Joint, Part

FIRST_DAY = date(2026, 3, 7)
NOON = "12:00"


def entry(fact: AnyFact, line: int, day: date = FIRST_DAY, time: str = END_OF_DAY, words: str = "") -> Entry:
    """One line of a record."""
    return Entry(
        id=f"id-{line}",
        day=day,
        time=time,
        written=f"{day.isoformat()}T23:00:00",
        line=line,
        who="you",
        words=words or type(fact).__name__,
        fact=fact,
    )


def record(*facts: AnyFact, start: date = FIRST_DAY, days_apart: int = 0) -> list[Entry]:
    """Facts as a record, one line each, all on one day or some days apart."""
    return [entry(fact, n, start + timedelta(days=days_apart * (n - 1))) for n, fact in enumerate(facts, 1)]


def described(*things: Joint | Part) -> Described:
    """A fact that describes these things."""
    return Described(
        parts=tuple(t for t in things if isinstance(t, Part)),
        joints=tuple(t for t in things if isinstance(t, Joint)),
    )


def state_of(*facts: AnyFact, body: str = "car", days_apart: int = 0) -> State:
    """The state of a vehicle of this body after these facts."""
    return state_from(record(DescribedVehicle(name="test", body=body), *facts, days_apart=days_apart))


def evening(day: date = FIRST_DAY) -> datetime:
    """A moment late on a day."""
    return datetime(day.year, day.month, day.day, 22, 0)
