"""What is off the vehicle: parts and bags by where they lie, and the turns that are due."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from witnessmark.owed.debt import Debt
from witnessmark.sheets.phrases import counted, sheet_code, short_day
from witnessmark.sheets.rows import Cells, Due, JointRow, Section, Sheet
from witnessmark.state.counts import Bag
from witnessmark.state.parts import AWAY, BENCH, DONOR, ON, POST, SCRAPPED, SHELF, PartState
from witnessmark.state.standing import State

COLUMNS = ("what", "where", "since", "line")
_ORDER = (SHELF, BENCH, AWAY, POST, DONOR, SCRAPPED)


def shelf_sheet(state: State, debts: Sequence[Debt], *, today: date) -> Sheet:
    """Parts that are off, by where they are; bags; and what asks to be turned or looked after.

    debts  everything owed; turns and returns that are due are taken from it
    """
    title = state.vehicle.name or "the vehicle"
    return Sheet(
        kind="shelf",
        title="Shelf",
        vehicle=title,
        date=today,
        line=state.last_line,
        code=sheet_code("shelf", "", title, today, state.last_line),
        sections=(_due(debts, today), *_parts(state), _bags(state.counts.bags)),
    )


def _due(debts: Sequence[Debt], today: date) -> Section:
    rows = tuple(
        JointRow(
            name=d.part or d.joint or d.where,
            dues=(Due(what=d.what, because=d.because, line=d.line, days=(today - d.since).days, code=d.id),),
        )
        for d in debts
        if d.sort in ("turn", "back") and d.overdue
    )
    return Section(heading="due now", rows=rows, empty="Nothing on the shelf asks for anything today.")


def _parts(state: State) -> Sequence[Section]:
    sections = []
    for where in _ORDER:
        rows = tuple(_part(p) for p in state.parts.values() if p.where == where and p.where != ON)
        if rows:
            heading = f"{where}: {counted(len(rows), 'part')}"
            sections.append(Section(heading=heading, rows=rows, columns=COLUMNS))
    return sections or [Section(heading="parts", empty="Every part is on the vehicle.")]


def _part(part: PartState) -> Cells:
    bad = f", found {part.bad}" if part.bad else ""
    place = part.place or part.with_whom
    due = f", due back {part.due_back}" if part.due_back else ""
    since = short_day(part.since) if part.since else ""
    return Cells(cells=(f"{part.name}{bad}", f"{place}{due}", since, f"{part.line or ''}"))


def _bags(bags: Sequence[Bag]) -> Section:
    rows = tuple(
        Cells(
            cells=(
                f"{bag.what}, {counted(bag.number, 'piece')}" if bag.number else bag.what,
                bag.where,
                short_day(bag.day),
                f"{bag.line}",
            )
        )
        for bag in bags
    )
    return Section(heading="bags not emptied", rows=rows, columns=COLUMNS, empty="No bag stands.")
