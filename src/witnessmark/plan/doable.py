"""Which operations could be done in one session at all, and why the others could not."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.missed import Stage, stage
from witnessmark.jobs.minutes import about
from witnessmark.jobs.needs import items_of
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.stock import Stock
from witnessmark.owed.time import moment
from witnessmark.plan.estimate import planned
from witnessmark.state.closing import lets_go
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

# A session shorter than this opens nothing that lets go and starts nothing wet or hot. Our choice.
SHORT_HOURS = 1.0

# Of an operation longer than a session a spell is planned, in minutes. Our choice.
SPELL = 60

NO_ROOM = "does not fit the hours"

_FAR_STAGES = {Stage.CREEPING: "done creeping, on private ground", Stage.ROAD: "done on the road"}


class Terms(Struct, frozen=True, kw_only=True):
    """What a session offers: hands-on minutes, a helper or none, its length, the moment if it is known."""

    hours: float
    work_minutes: float
    helper: bool
    factor: float = 1.0
    now: datetime | None = None

    @property
    def short(self) -> bool:
        return self.hours < SHORT_HOURS


class Doable(Struct, kw_only=True):
    """Operations by id that could be done, and for the others the reason.

    uses    id -> (number of a thing in stock, how many); stocks: how many there are of each
    spells  ids of operations of which only a spell is planned
    """

    operations: dict[str, Operation]
    because: dict[str, str]
    uses: dict[str, tuple[tuple[int, int], ...]]
    stocks: tuple[int, ...]
    spells: frozenset[str]


def doable(state: State, jobs: Iterable[Job], extra: Iterable[Operation], terms: Terms) -> Doable:
    """Sort every operation: it can be done, or it waits for something."""
    stock = Stock(state)
    found = Doable(
        operations={}, because={}, uses={}, stocks=tuple(int(n) for n in stock.left), spells=frozenset()
    )
    every = {o.id: o for job in jobs for o in job.operations} | {o.id: o for o in extra}
    for operation in every.values():
        uses, missing = _in_hand(state, stock, operation)
        because = f"not in hand: {', '.join(missing)}" if missing else _because(state, operation, terms)
        if because:
            found.because[operation.id] = because
            continue
        if planned(operation, terms.factor, most=terms.work_minutes) > terms.work_minutes:
            operation = _spell(operation)
            found.spells |= {operation.id}
        found.operations[operation.id] = operation
        found.uses[operation.id] = uses
    _drop_what_waits(found, every)
    return found


def _because(state: State, operation: Operation, terms: Terms) -> str:
    """Why an operation cannot be done in such a session; "" where it can."""
    far = _FAR_STAGES.get(stage(operation.stage)) if operation.stage else None
    if far:
        return far
    if operation.hands > 1 and not terms.helper:
        return "needs a helper"
    too_long = planned(operation, terms.factor, most=terms.work_minutes) > terms.work_minutes
    if too_long and not (operation.put_down and operation.sort in ("work", "prepare")):
        return NO_ROOM
    if terms.short and (not operation.put_down or _opens_what_lets_go(state, operation)):
        return "not begun in a short session"
    return _cure(state, operation, terms.now)


def _opens_what_lets_go(state: State, operation: Operation) -> bool:
    joint = state.vehicle.joints.get(operation.name)
    return operation.sort == "open" and joint is not None and lets_go(joint, kind_of(joint.kind))


def _cure(state: State, operation: Operation, now: datetime | None) -> str:
    """A coat that may not go on yet, by its product sheet."""
    surface = state.surfaces.get(operation.name)
    if now is None or operation.sort != "protect" or surface is None or not surface.recoat_from_hours:
        return ""
    opens = moment(surface.day, surface.time) + timedelta(hours=surface.recoat_from_hours)
    return f"the coat below must cure until {opens:%Y-%m-%d %H:%M}" if now < opens else ""


def _spell(operation: Operation) -> Operation:
    """A part of an operation that is longer than the session, and can be put down."""
    return replace(
        operation,
        what=f"a spell at it, longer than one session: {operation.what}",
        minutes=about(SPELL),
        pays=(),
        leaves="",
        note="; ".join(n for n in ("write how long it took", operation.note) if n),
    )


def _in_hand(
    state: State, stock: Stock, operation: Operation
) -> tuple[tuple[tuple[int, int], ...], list[str]]:
    """Which things in stock an operation uses up, and what of its needs is not in hand."""
    uses: list[tuple[int, int]] = []
    missing: list[str] = []
    for item in items_of(state, operation):
        number = next((n for n in stock.matching(item) if stock.left[n] >= item.quantity), None)
        if number is None:
            missing.append(item.what)
        else:
            uses.append((number, int(item.quantity)))
    return tuple(uses), missing


def _drop_what_waits(found: Doable, every: dict[str, Operation]) -> None:
    """Take out what comes after something that cannot be done, or of which only a spell is done."""
    todo = [*found.because, *found.spells]
    after: dict[str, list[str]] = {}
    for operation in every.values():
        for before in operation.after:
            after.setdefault(before, []).append(operation.id)
    while todo:
        before = todo.pop()
        for id in after.get(before, ()):
            if id in found.operations:
                del found.operations[id]
                found.spells -= {id}
                found.because[id] = f"comes after: {every[before].what}"
                todo.append(id)
