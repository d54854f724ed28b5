"""What single pages ask for: the vehicle by place, the shelf, the front page, lines of the journal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.jobs.operation import Operation
from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import AtFact, Photographed, Struck
from witnessmark.journal.order import in_force, reading_order
from witnessmark.owed.debt import Debt, spoken
from witnessmark.owed.joints import BLANK
from witnessmark.plan.session import SessionPlan
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.sheet import session_screen
from witnessmark.sheets.rows import JointRow, Sheet, Step, Words
from witnessmark.sheets.shelf import shelf_sheet
from witnessmark.sheets.wall import wall_sheet
from witnessmark.vehicle.catalogue import catalogue

NEXT = 3
MOST_OFFERED = 60


class Front(Struct, frozen=True, kw_only=True):
    """The front page: what lets go and is apart or loose, the next operations, what not to forget.

    pays  for each step the line that, typed, pays what it is done for; "" where there is none
    """

    loose: tuple[JointRow | Words, ...]
    plan: SessionPlan
    steps: tuple[Step, ...]
    pays: tuple[str, ...]
    more: int
    not_forgotten: tuple[Words, ...]
    gate: str


class Shown(Struct, frozen=True, kw_only=True):
    """One line of the journal, with the strike on it where there is one, what hangs on it, and its photos."""

    entry: Entry
    time: str
    struck_by: int | None = None
    strikes: int | None = None
    about: tuple[str, ...] = ()
    owes: tuple[Debt, ...] = ()
    photos: tuple[str, ...] = ()


def front(flow: Flow, *, hours: float = 3.0, helper: bool = False) -> Front:
    """What stands on the front page now."""
    plan = flow.session(hours, helper=helper)
    road = flow.gate("road")
    wall = wall_sheet(flow.state, flow.owed, plan, road, today=flow.today)
    steps = [row for row in session_screen(flow, plan).sections[0].rows if isinstance(row, Step)]
    return Front(
        loose=tuple(row for row in wall.sections[0].rows if isinstance(row, JointRow | Words)),
        plan=plan,
        steps=tuple(steps[:NEXT]),
        pays=tuple(_pays(plan.operations[step.number - 1], flow.owed) for step in steps[:NEXT]),
        more=max(0, len(steps) - NEXT),
        not_forgotten=tuple(row for row in wall.sections[2].rows if isinstance(row, Words)),
        gate=road.headline(),
    )


def loose_on(flow: Flow) -> tuple[JointRow | Words, ...]:
    """What lets go and is apart or loose, the loose first."""
    wall = wall_sheet(flow.state, flow.owed, None, None, today=flow.today)
    return tuple(row for row in wall.sections[0].rows if isinstance(row, JointRow | Words))


def _pays(operation: Operation, owed: Sequence[Debt]) -> str:
    return next((debt.pays for debt in owed if debt.id in operation.pays), "")


def shelf_screen(flow: Flow) -> Sheet:
    """What is off the vehicle, and where."""
    return shelf_sheet(flow.state, flow.owed, today=flow.today)


def paying(flow: Flow) -> dict[str, str]:
    """Code -> the line that, typed, pays what stands under it; for everything owed or asked by a gate."""
    lines = {debt.id: debt.pays for debt in flow.owed}
    for name in ("start", "roll", "test", "road"):
        lines |= {one.code: one.pays for one in flow.gate(name).not_known}
    return lines


def offered_lines(flow: Flow) -> tuple[str, ...]:
    """Whole lines likely to be written next: what the session would pay first, then the heaviest owed."""
    paid = {code for operation in flow.session().operations for code in operation.pays}
    first = [d.pays for d in flow.owed if d.id in paid]
    return tuple(dict.fromkeys([*first, *(d.pays for d in flow.owed)]))[:MOST_OFFERED]


def before_blank(pays: str) -> str:
    """The words of a line up to the figure that is still to be typed; "" where none is.

    >>> before_blank("measured hub nut left rear FIGURE"), before_blank("took off hub nut left rear")
    ('measured hub nut left rear', '')
    """
    words, blank, _ = pays.partition(BLANK)
    return words.strip() if blank else ""


def kinds_known() -> tuple[tuple[str, str], ...]:
    """Every kind of joint as (key, name), by name; to choose from where the five likeliest will not do."""
    return tuple(
        sorted(((key, kind.name) for key, kind in catalogue().items()), key=lambda pair: pair[1].lower())
    )


# ---- lines of the journal


def lines_found(flow: Flow, find: str, about: str = "") -> tuple[Shown, ...]:
    """The lines in which every word looked for stands, latest done first; struck ones stay.

    about  only those about this part, joint or assembly, by its whole name

    Photos that were put with a line stand with that line, not by themselves.
    """
    wanted = spoken(find.lower()).split()
    strikes = in_force(flow.entries)
    beside = photos_beside(flow.entries)
    return tuple(
        _shown(entry, strikes, photos=beside)
        for entry in reversed(reading_order(flow.entries))
        if all(word in _searched(entry) for word in wanted)
        and (not about or _is_about(flow, entry, about))
        and not (isinstance(entry.fact, Photographed) and entry.fact.of)
    )


def _is_about(flow: Flow, entry: Entry, name: str) -> bool:
    fact = entry.fact.instead if isinstance(entry.fact, Struck) else entry.fact
    named = fact.at if isinstance(fact, AtFact) else ()
    return name in named or any(flow.vehicle.assembly_of(one) == name for one in named)


def photos_beside(entries: Sequence[Entry]) -> dict[int, tuple[str, ...]]:
    """Line -> names of the photos that stand with it, whether it is struck or not."""
    struck = in_force(entries)
    beside: dict[int, tuple[str, ...]] = {}
    for entry in entries:
        if isinstance(entry.fact, Photographed) and entry.line not in struck:
            line = entry.fact.of or entry.line
            beside[line] = (*beside.get(line, ()), *entry.fact.photos)
    return beside


def line_shown(flow: Flow, number: int) -> Shown:
    """One line, and what still hangs on it."""
    found = next((e for e in flow.entries if e.line == number), None)
    if found is None:
        raise BadInput(
            given=f"there is no line {number}",
            holds=f"a line from 1 to {flow.line}" if flow.line else "a record with lines in it",
            do="Look in the journal.",
        )
    return _shown(found, in_force(flow.entries), flow.owed, photos_beside(flow.entries))


def words_on(flow: Flow, lines: Sequence[int]) -> dict[int, str]:
    """Line -> the words it was typed in."""
    wanted = frozenset(lines)
    return {e.line: e.words for e in flow.entries if e.line in wanted}


def _shown(
    entry: Entry,
    strikes: dict[int, Entry],
    owed: Sequence[Debt] = (),
    photos: Mapping[int, tuple[str, ...]] = MappingProxyType({}),
) -> Shown:
    strike = strikes.get(entry.line)
    return Shown(
        entry=entry,
        time="" if entry.time == END_OF_DAY else entry.time,
        struck_by=strike.line if strike else None,
        strikes=entry.fact.line if isinstance(entry.fact, Struck) else None,
        about=entry.fact.at if isinstance(entry.fact, AtFact) else (),
        owes=tuple(d for d in owed if d.line == entry.line),
        photos=photos.get(entry.line, ()),
    )


def _searched(entry: Entry) -> str:
    return " ".join(_said(entry)).lower()


def _said(entry: Entry) -> Iterator[str]:
    yield entry.words
    yield day_searched(entry.day)
    if isinstance(entry.fact, AtFact):
        yield from (spoken(name) for name in entry.fact.at)


def day_searched(day: date) -> str:
    """A day as it may be looked for: as year-month-day.

    >>> day_searched(date(2026, 3, 14))
    '2026-03-14'
    """
    return day.isoformat()
