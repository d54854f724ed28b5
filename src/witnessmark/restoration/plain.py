"""Answers as plain values, in the fixed names that scripts rely on."""

from __future__ import annotations

from typing import Any

from msgspec import to_builtins

from witnessmark.gate.answer import GateAnswer
from witnessmark.jobs.operation import Operation
from witnessmark.jobs.while_open import WhileOpen
from witnessmark.journal.entry import Entry
from witnessmark.journal.order import in_force
from witnessmark.journal.wire import fact_to_plain
from witnessmark.owed.debt import Debt
from witnessmark.owed.needs import Need
from witnessmark.plan.estimate import band
from witnessmark.plan.session import SessionPlan
from witnessmark.reach.way_in import WayIn
from witnessmark.restoration.flow import Flow

Row = dict[str, Any]


def owed_rows(debts: tuple[Debt, ...]) -> list[Row]:
    """Everything owed, a row each."""
    return [
        {
            "id": d.id,
            "what": d.what,
            "where": d.where,
            "joint": d.joint,
            "part": d.part,
            "if_missed": d.if_missed,
            "because": d.because,
            "line": d.line,
            "pays": d.pays,
            "since": d.since.isoformat(),
            "due": d.due,
            "sort": d.sort,
            "item": d.item,
            "assembly": d.assembly,
            "overdue": d.overdue,
            "stage": d.stage,
        }
        for d in debts
    ]


def gate_plain(answer: GateAnswer) -> Row:
    """One gate's answer."""
    return {
        "gate": answer.gate,
        "headline": answer.headline(),
        "holds": [
            {
                "if_missed": h.if_missed,
                "joint": h.joint,
                "name": h.name,
                "state": h.state,
                "what": h.what,
                "because": h.because,
                "line": h.line,
                "days": h.days,
                "pays": h.pays,
                "code": h.code,
            }
            for h in answer.holds
        ],
        "not_known": [
            {
                "name": u.name,
                "text": u.text,
                "system": u.system,
                "if_missed": u.if_missed,
                "because": u.because,
                "limits": list(u.limits),
                "pays": u.pays,
                "code": u.code,
            }
            for u in answer.not_known
        ],
        "asked_on": answer.asked_on.isoformat(),
        "note": answer.note,
    }


def state_rows(flow: Flow) -> list[Row]:
    """Every joint as it stands, a row each."""
    rows = []
    for name, state in flow.state.joints.items():
        joint = flow.vehicle.joints[name]
        rows.append(
            {
                "joint": name,
                "kind": joint.kind,
                "place": joint.place or joint.side,
                "state": flow.word(name),
                "as_found": state.as_found,
                "since": state.since.isoformat() if state.since else None,
                "line": state.line,
            }
        )
    return rows


def reach_plain(way: WayIn, more: WhileOpen) -> Row:
    """The way in to something, and what is worth doing while it is open."""
    return {
        "remove": list(way.remove),
        "minutes": way.minutes,
        "alternatives": [{"remove": list(a.remove), "minutes": a.minutes} for a in way.alternatives],
        "open_anyway": list(way.open_anyway),
        "joints_opened": list(way.joints_opened),
        "proven": way.proven,
        "at_least": way.at_least,
        "no_way": list(way.no_way),
        "together": to_builtins(way.together),
        "while_open": to_builtins(more),
    }


def operation_plain(operation: Operation) -> Row:
    """One operation of a session, minutes with the chance of findings in them."""
    low, likely, high = band(operation)
    return {
        "what": operation.what,
        "joint": operation.name,
        "where": operation.where,
        "sort": operation.sort,
        "minutes": {"p10": round(low), "p50": round(likely), "p90": round(high)},
        "leaves": operation.leaves,
        "hands": operation.hands,
        "pays": list(operation.pays),
    }


def session_plain(plan: SessionPlan) -> Row:
    """What fits one session."""
    return {
        "hours": plan.hours,
        "work_minutes": plan.work_minutes,
        "helper": plan.helper,
        "operations": [operation_plain(o) for o in plan.operations],
        "chance": plan.chance,
        "chance_words": plan.chance_words,
        "minutes": {"p10": plan.minutes[0], "p50": plan.minutes[1], "p90": plan.minutes[2]},
        "safe_stops": [{"after": s.after, "what": s.what, "chance": s.chance} for s in plan.safe_stops],
        "left_loose": list(plan.left_loose),
        "bring": list(plan.bring),
        "order": list(plan.order),
        "waiting": [{"what": w.what, "joint": w.name, "because": w.because} for w in plan.waiting],
        "proven": plan.proven,
        "cautions": list(plan.cautions),
    }


def needs_rows(needs: tuple[Need, ...]) -> list[Row]:
    """What must be in hand, a row each."""
    return [
        {
            "what": n.what,
            "size": n.size,
            "quantity": n.quantity,
            "for": list(n.for_),
            "by": n.by,
            "have": n.have,
            "ordered": n.ordered,
        }
        for n in needs
    ]


def journal_rows(entries: tuple[Entry, ...]) -> list[Row]:
    """The lines as written, each with the strike on it where there is one."""
    strikes = in_force(entries)
    rows = []
    for e in entries:
        strike = strikes.get(e.line)
        rows.append(
            {
                "line": e.line,
                "day": e.day.isoformat(),
                "time": e.time,
                "written": e.written,
                "who": e.who,
                "words": e.words,
                "struck_by": strike.line if strike else None,
                "fact": fact_to_plain(e.fact),
            }
        )
    return rows
