"""What the program says would pay a debt is a line its own reader takes surely, and it does pay it."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from tests.building import FIRST_DAY, described, entry
from witnessmark.gate.asks import asked_of, gates
from witnessmark.gate.holds import ask_gate
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.owed.debt import Debt
from witnessmark.owed.joints import BLANK
from witnessmark.owed.owed import owed_by
from witnessmark.state.standing import state_from
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.starting_lists import expand, starting_lists
from witnessmark.vehicle.things import Joint, Part, Vehicle
from witnessmark.words.read import read_line

NOW = datetime(2026, 3, 9, 21, 0)
TYPED = f"{NOW:%H:%M}"


def after(entries: list[Entry], line: str) -> list[Entry] | None:
    """The record with a typed line behind it; None where the reader was not sure."""
    state = state_from(entries)
    understood = read_line(line.replace(BLANK, "4 mm"), state.vehicle, today=NOW.date())
    if not understood.best.sure or understood.ask:
        return None
    first = len(entries) + 1
    return [*entries, *(entry(x, n, NOW.date(), TYPED) for n, x in enumerate(understood.best.facts, first))]


def unpaid(entries: list[Entry], debts: list[Debt]) -> list[str]:
    """The debts whose own line does not pay them."""
    wrong = []
    for debt in debts:
        paid = after(entries, debt.pays)
        if paid is None:
            wrong.append(f"{debt.key}: {debt.pays!r} is not read surely")
        elif debt.key in {d.key for d in owed_by(state_from(paid), NOW) if d.overdue or not debt.overdue}:
            wrong.append(f"{debt.key}: {debt.pays!r} leaves it owed")
    return wrong


def opened(*joints: Joint) -> list[Entry]:
    facts: list[f.AnyFact] = [f.DescribedVehicle(name="test", body="car"), described(*joints)]
    facts.append(f.TookOff(at=tuple(j.name for j in joints)))
    return [entry(x, n) for n, x in enumerate(facts, 1)]


@pytest.mark.parametrize("kind", sorted(catalogue()))
def test_each_debt_of_each_kind_is_paid_by_its_own_line(kind):
    joint = Joint(name="odd fitting, left rear", kind=kind)
    loose = opened(joint)
    debts = list(owed_by(state_from(loose), NOW))
    shut = [*loose, entry(f.Tightened(at=(joint.name,)), 4, NOW.date(), "20:00")]
    checks = [d for d in owed_by(state_from(shut), NOW) if d.sort in ("check", "put_right")]
    others = [d for d in debts if d.sort not in ("check", "put_right")]
    assert unpaid(loose, others) + unpaid(shut, checks) == []


@pytest.mark.parametrize("name", sorted(starting_lists()))
def test_each_debt_of_each_starting_list_is_paid_by_its_own_line(name):
    parts, joints = expand(name, "left rear", Vehicle())
    facts: list[f.AnyFact] = [f.DescribedVehicle(name="test", body="car")]
    facts.append(f.Described(parts=parts, joints=joints))
    facts.append(f.TookOff(at=tuple(j.name for j in joints)))
    loose = [entry(x, n) for n, x in enumerate(facts, 1)]
    wanted = ("close", "renew", "record", "refit")
    assert unpaid(loose, [d for d in owed_by(state_from(loose), NOW) if d.sort in wanted]) == []


@pytest.mark.parametrize("body", ["car", "trailer", "motorcycle"])
def test_each_ask_of_each_gate_is_answered_by_its_own_line(body):
    entries = [entry(f.DescribedVehicle(name="test", body=body), 1)]
    wrong = []
    for name, gate in gates().items():
        for unknown in ask_gate(name, state_from(entries), (), NOW.date()).not_known:
            answered = after(entries, unknown.pays)
            left = answered and {u.id for u in ask_gate(name, state_from(answered), (), NOW.date()).not_known}
            if left is None or unknown.id in left:
                wrong.append(f"{gate.name}: {unknown.pays!r}")
    assert wrong == []
    assert asked_of(gates()["road"], state_from(entries).vehicle)


def garage() -> list[Entry]:
    facts: list[f.AnyFact] = [
        f.DescribedVehicle(name="test", body="car"),
        described(
            Part(name="gearbox", assembly="gearbox"),
            Joint(name="input seal", kind="shaft-seal", assembly="gearbox"),
            Joint(name="fuel pipe", kind="fuel-pipe"),
            Joint(name="floor patch", kind="welded-patch"),
        ),
        f.TookOff(at=("gearbox",)),
        f.Stored(at=("gearbox",), where="top shelf"),
        f.Bagged(at=("fuel pipe",), what="olives", number=2),
        f.Blanked(at=("fuel pipe",), number=2),
        f.Braced(at=("floor patch",)),
        f.Drained(at=("gearbox",)),
        f.Bared(at=("floor patch",)),
        f.Found(at=("gearbox",), condition="cracked"),
        f.OpenedTin(what="brake fluid"),
        f.PutRight(what="bleed brakes"),
        f.SentAway(at=("gearbox",), with_whom="the plater", due_back="2026-03-08"),
    ]
    return [entry(x, n, FIRST_DAY - timedelta(days=40)) for n, x in enumerate(facts, 1)]


def test_each_debt_of_the_garage_is_paid_by_its_own_line():
    entries = garage()
    debts = [d for d in owed_by(state_from(entries), NOW) if d.overdue and d.sort != "check"]
    assert {"bag", "blank", "brace", "bare", "fluid", "back", "finding", "refit"} <= {d.sort for d in debts}
    assert unpaid(entries, debts) == []
