"""When there is time: sessions that come, and calendar files in and out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from witnessmark.exchange.beside import written_beside
from witnessmark.exchange.calendar_file import CalendarIn, calendar_in, calendar_out
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Arranged, CalledOff, Freed, LeftSetUp
from witnessmark.plan.coming import Coming, coming
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.words.sessions_line import read_sessions_line, said_rule


def say_sessions(restoration: Restoration, words: str) -> str:
    """Write one line about the calendar; the sentence it was read as."""
    understood = read_sessions_line(words, restoration.now.date())
    if understood is None:
        raise BadInput(
            given=f"{words!r} does not say when there is time",
            holds="days with hours, days without, days more, or what stays set up",
            do='As: "sessions Saturdays 9-13, not in August" · "no session 14 March" · "free 20 and 21 June '
            '9-17" · "welder corner does not stay set up".',
        )
    fact = understood.best.facts[0]
    assert isinstance(fact, Arranged | CalledOff | Freed | LeftSetUp)
    restoration.write_fact(fact, words)
    return understood.best.sentence


def take_calendar(restoration: Restoration, file: Path) -> CalendarIn:
    """Write what a calendar file brings, all of it or nothing."""
    try:
        data = file.read_bytes()
    except OSError as trouble:
        raise BadInput(
            given=f"{file} cannot be read: {trouble.strerror or trouble}",
            holds="a calendar file (.ics) on this machine",
            do="Look at the name, and where it was saved.",
        ) from trouble
    brought = calendar_in(data, file.name)
    if brought.facts:
        restoration.write_facts(brought.facts)
    return brought


def give_calendar(restoration: Restoration, file: Path) -> None:
    """Write the calendar of this record to a file."""
    flow = restoration.flow()
    data = calendar_out(flow.state.calendar, flow.vehicle.name, flow.now)
    with written_beside(file) as beside:
        beside.write_bytes(data)


def rules_told(flow: Flow) -> tuple[str, ...]:
    """The rules, exceptions and places that count now, each as a sentence."""
    calendar = flow.state.calendar
    rules = [said_rule(line.fact) for line in calendar.arranged]
    off = [f"No session {_span(line.fact)}." for line in calendar.called_off]
    free = [f"Free {_span(line.fact)}." for line in calendar.freed]
    stays = [f"The {p} {'stays' if s else 'does not stay'} set up." for p, s in calendar.stays.items()]
    return (*rules, *off, *free, *stays)


def _span(fact: CalledOff | Freed) -> str:
    return f"from {fact.first} to {fact.last}" if fact.last else f"on {fact.first}"


def next_sessions(flow: Flow, number: int) -> tuple[Sequence[Coming], str]:
    """The sessions that come, and where they are known from."""
    found = coming(flow.state.calendar, flow.state.supply.held, flow.now, number)
    return found.coming, found.known
