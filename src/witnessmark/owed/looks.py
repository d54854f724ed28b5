"""Looks after use: due at kilometres, days or heat cycles since a joint was closed."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from witnessmark.owed.debt import Debt, spoken
from witnessmark.owed.joints import heading
from witnessmark.state.joint_state import TIGHT, JointState, Look
from witnessmark.vehicle.kind import Kind, LookAgain
from witnessmark.vehicle.things import Joint

# A look a little before its time counts as that look: "about 50 km". Our choice, no source.
NEAR_ENOUGH = 0.8


def look_debts(
    joint: Joint, kind: Kind, state: JointState, km: float, heat_cycles: int, today: date
) -> Iterator[Debt]:
    """The next look owed of each row of the kind, once the joint is tight; a row owes one at a time."""
    if state.position != TIGHT or state.closed_line is None or state.closed_day is None or state.scrapped:
        return
    for row in kind.look_again:
        point = _next_point(row, state)
        if point is None:
            continue
        due, overdue, due_day = _due(point, state, km, heat_cycles, today)
        yield Debt(
            **heading(joint, kind),
            sort="look_again",
            item=row.name,
            what=f"{row.name}: {row.text}",
            because=f"closed at line {state.closed_line}, looked at {len(state.looks)} times since",
            line=state.closed_line,
            since=state.closed_day,
            due=due,
            due_day=due_day,
            overdue=overdue,
            pays=f"looked at {spoken(joint.name)}",
        )


Point = tuple[str, float]


def points(row: LookAgain) -> tuple[Point, ...]:
    """When a row's looks are due, as ("km", 50), ("days", 14), ("heat", 1); empty rows want one look.

    >>> points(LookAgain(name="nuts", text="", km=(50, 500)))
    (('km', 50), ('km', 500))
    """
    found = (
        [("km", k) for k in row.km] + [("days", d) for d in row.days] + [("heat", h) for h in row.heat_cycles]
    )
    return tuple(found) or (("once", 0),)


def _next_point(row: LookAgain, state: JointState) -> Point | None:
    for point in points(row):
        if not any(_reached(point, look, state) for look in state.looks):
            return point
    return None


def _reached(point: Point, look: Look, state: JointState) -> bool:
    sort, amount = point
    assert state.closed_day is not None
    run = {
        "km": look.km - state.closed_km,
        "days": float((look.day - state.closed_day).days),
        "heat": float(look.heat_cycles - state.closed_heat),
        "once": 0.0,
    }[sort]
    return run >= amount * NEAR_ENOUGH


def _due(
    point: Point, state: JointState, km: float, heat_cycles: int, today: date
) -> tuple[str, bool, date | None]:
    sort, amount = point
    assert state.closed_day is not None
    if sort == "km":
        run = km - state.closed_km
        return f"after {amount:g} km ({run:g} run)", run >= amount, None
    if sort == "heat":
        times = heat_cycles - state.closed_heat
        return f"after {amount:g} heat cycles ({times} so far)", times >= amount, None
    if sort == "days":
        day = state.closed_day + timedelta(days=int(amount))
        return f"on {day.isoformat()}", today >= day, day
    return "after first use", km > state.closed_km, None
