"""The wall sheet: what lets go and is apart or loose, today's three operations, what not to forget."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from witnessmark.gate.answer import GateAnswer
from witnessmark.owed.debt import Debt
from witnessmark.plan.session import SessionPlan
from witnessmark.sheets.phrases import counted, missed_words, sheet_code, where_words
from witnessmark.sheets.rows import JointRow, Section, Sheet, Step, Words
from witnessmark.state.joint_state import LOOSE
from witnessmark.state.standing import State

MOST_ON_THE_WALL = 7
OPERATIONS_SHOWN = 3
MOST_NOT_FORGOTTEN = 5

# What time or a garage brings; the joints themselves stand above it on the wall.
_NOT_FORGOTTEN = ("fire_watch", "blank", "fluid", "bare", "recoat", "brace", "turn", "back", "look_again")


def wall_sheet(
    state: State,
    debts: Sequence[Debt],
    plan: SessionPlan | None,
    gate: GateAnswer | None,
    *,
    today: date,
) -> Sheet:
    """What hangs on the wall for one day, to be read from two metres.

    debts  everything owed, in the order of `owed_by`
    plan   the next session, None where none is settled
    gate   the gate whose headline stands below, usually `road`
    """
    vehicle = state.vehicle.name or "the vehicle"
    footer = (gate.headline(),) if gate else ()
    return Sheet(
        kind="wall",
        title="Wall sheet",
        vehicle=vehicle,
        date=today,
        line=state.last_line,
        code=sheet_code("wall", "", vehicle, today, state.last_line),
        sections=(_lets_go(state, debts), _today(plan), _not_forgotten(state, debts, today)),
        footer=footer,
    )


def _lets_go(state: State, debts: Sequence[Debt]) -> Section:
    open_now = [d for d in debts if d.sort == "close" and d.if_missed == "lets_go"]
    # What is loose looks done; what is apart can be seen. So loose comes first where people pass by.
    open_now.sort(key=lambda d: state.joints[d.joint].position != LOOSE)
    rows: list[JointRow | Words] = [
        JointRow(name=d.joint, state=state.joints[d.joint].position, if_missed=missed_words(d.if_missed))
        for d in open_now[:MOST_ON_THE_WALL]
    ]
    more = len(open_now) - len(rows)
    if more > 0:
        rows.append(Words(text=f"and {more} more", sort="loud"))
    return Section(
        heading="apart or loose",
        rows=tuple(rows),
        if_missed="lets go",
        empty="Nothing that lets go is known to be apart or loose.",
    )


def _today(plan: SessionPlan | None) -> Section:
    operations = plan.operations if plan else ()
    rows: list[Step | Words] = [
        Step(number=n, text=operation.what, place=where_words(operation.name, operation.where))
        for n, operation in enumerate(operations[:OPERATIONS_SHOWN], start=1)
    ]
    more = len(operations) - len(rows)
    if more > 0:
        rows.append(Words(text=f"and {more} more on the session sheet", sort="aside"))
    empty = "Nothing fits this session." if plan else "No session is planned."
    return Section(heading="today", rows=tuple(rows), empty=empty)


def _not_forgotten(state: State, debts: Sequence[Debt], today: date) -> Section:
    now = [d for d in debts if d.sort in _NOT_FORGOTTEN and (d.overdue or d.due_day == today)]
    now.sort(key=lambda d: _NOT_FORGOTTEN.index(d.sort))
    rows = [Words(text=d.what, label=d.joint or d.part or d.where) for d in now[:MOST_NOT_FORGOTTEN]]
    more = len(now) - len(rows)
    if more > 0:
        rows.append(Words(text=f"and {more} more on the owed sheet", sort="aside"))
    bags = [bag.what for bag in state.counts.bags]
    if bags:
        rows.append(
            Words(
                text="; ".join(bags[:3]) + ("; ..." if len(bags) > 3 else ""),
                label=f"{counted(len(bags), 'bag')} not emptied",
            )
        )
    return Section(heading="don't forget", rows=tuple(rows), empty="Nothing else waits today.")
