"""Things that must come first: what is in the post and when it is due, what has still to be ordered."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date, timedelta
from math import log

from msgspec import Struct

from witnessmark.jobs.needs import items_of
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.owed.stock import Stock, bare
from witnessmark.plan.overrun import Overrun, learned
from witnessmark.state.standing import State
from witnessmark.state.supply import Supply

# From ordering to the door, in days: two, four, ten working days of a specialist, weekends counted in.
# Common practice, no source.
POST = Minutes(3, 6, 14)

# One line in ten comes wrong and is sent for again. Common practice, no source.
WRONG = 0.1

# How late a parcel is that is late, in days: a start of seven, worth two parcels; and how often one is
# late: once in four, worth four. Choices, no source.
LATE_BY = Overrun(centre=log(7.0), weight=2.0, shape=3.0, scale=1.0)
LATE = (1.0, 3.0)


class Thing(Struct, frozen=True):
    """One thing awaited: what it is, the day it is due; None where it has still to be ordered.

    sure  it comes on its day, as a session does that was moved
    """

    what: str
    due: date | None
    sure: bool = False


class Lateness(Struct, frozen=True):
    """How often what was ordered came late, as a beta distribution, and by how many days where it did."""

    late: tuple[float, float]
    by: Overrun


def awaited(
    state: State, operations: Iterable[Operation], today: date
) -> tuple[tuple[Thing, ...], Mapping[str, tuple[int, ...]]]:
    """Every thing awaited, and for each operation the numbers of those it waits for."""
    stock = Stock(state)
    orders = {line.line: line.fact for line in state.supply.ordered}
    things: dict[Thing, int] = {}
    waits: dict[str, tuple[int, ...]] = {}
    for operation in operations:
        mine = []
        for item in items_of(state, operation):
            lines, short = stock.sources(item)
            for line in lines:
                fact = orders[line]
                mine.append(Thing(fact.item, _due(fact.due, today)))
            if short > 0:
                mine.append(Thing(item.what, None))
        if mine:
            waits[operation.id] = tuple(things.setdefault(thing, len(things)) for thing in mine)
    return tuple(things), waits


def _due(text: str, today: date) -> date:
    """The day a thing is due; one that is overdue, or was never told, is taken as due in a week."""
    try:
        due = date.fromisoformat(text)
    except ValueError:
        return today + timedelta(days=7)
    return due if due > today else today + timedelta(days=7)


def lateness(supply: Supply) -> Lateness:
    """What the record's own orders teach: each with the day it was due and the day it came."""
    late: list[float] = []
    in_time = 0
    came = sorted(supply.came, key=lambda line: (line.day, line.line))
    for order in supply.ordered:
        due = _told(order.fact.due)
        arrived = next(
            (c for c in came if c.line > order.line and bare(c.fact.item) == bare(order.fact.item)), None
        )
        if due is None or arrived is None:
            continue
        if arrived.day > due:
            late.append(log((arrived.day - due).days))
        else:
            in_time += 1
    return Lateness((LATE[0] + len(late), LATE[1] + in_time), learned(late, LATE_BY))


def _told(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
