"""What holds a gate: known debts in its way, and what the record does not know."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from witnessmark.gate.answer import GateAnswer, Hold, Unknown
from witnessmark.gate.asks import Ask, Gate, asked_of, gate_called
from witnessmark.ground.codes import codes_for
from witnessmark.ground.missed import if_missed
from witnessmark.owed.debt import SORTS, Debt
from witnessmark.owed.owed import word_for
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

_WORDS = {"apart": 0, "loose": 1, "as found": 2, "tight": 3, "proven": 4, "": 5}


def ask_gate(name: str, state: State, debts: Iterable[Debt], today: date) -> GateAnswer:
    """Ask one gate on one day. It reports what is known to hold; it never releases."""
    gate = gate_called(name)
    holds = [_hold(state, debt, today) for debt in debts if holds_gate(gate, state, debt)]
    holds.sort(key=_order)
    return GateAnswer(
        gate=gate.name,
        screen_name=gate.screen_name,
        note=gate.note,
        asked_on=today,
        holds=tuple(holds),
        not_known=not_known(gate, state),
    )


def _order(hold: Hold) -> tuple[int, bool, int, int, int]:
    """What happens if missed, joints before papers, state, then days open."""
    sort = SORTS.index(hold.sort)
    return (if_missed(hold.if_missed), hold.joint == "", _WORDS[hold.state], -hold.days, sort)


def holds_gate(gate: Gate, state: State, debt: Debt) -> bool:
    """Whether a debt is in a gate's way: its time has come, its stage lies before, the gate asks its kind."""
    if not debt.overdue or (debt.stage and debt.stage not in gate.stages_before):
        return False
    holding = gate.holding
    return (
        (not holding.if_missed or debt.if_missed in holding.if_missed)
        and (not holding.sorts or debt.sort in holding.sorts)
        and (not holding.systems or system_of(state, debt) in holding.systems)
    )


def asked_openings(gate: Gate, state: State) -> frozenset[str]:
    """The joints that would hold a gate, once opened, by what they are."""
    holding = gate.holding
    found = []
    for name, joint in state.vehicle.joints.items():
        kind = kind_of(joint.kind)
        missed = joint.if_missed or kind.if_missed
        if (not holding.if_missed or missed in holding.if_missed) and (
            not holding.systems or kind.system in holding.systems
        ):
            found.append(name)
    return frozenset(found)


def system_of(state: State, debt: Debt) -> str:
    """The system a debt belongs to; "" where no joint tells."""
    if debt.system:
        return debt.system
    names = (
        [debt.joint]
        if debt.joint
        else [j.name for j in state.vehicle.joints.values() if debt.part in j.holds]
    )
    for name in names:
        joint = state.vehicle.joints.get(name)
        if joint is not None:
            return kind_of(joint.kind).system
    return ""


def _hold(state: State, debt: Debt, today: date) -> Hold:
    return Hold(
        if_missed=debt.if_missed,
        what=debt.what,
        name=_named(debt),
        joint=debt.joint,
        state=word_for(state, debt.joint) if debt.joint in state.joints else "",
        because=debt.because,
        line=debt.line,
        days=(today - debt.since).days,
        pays=debt.pays,
        code=debt.id,
        sort=debt.sort,
        stage=debt.stage,
    )


def _named(debt: Debt) -> str:
    """What a hold is about: its joint or part, the thing put right, else the place."""
    if debt.sort == "put_right":
        return debt.item
    return debt.joint or debt.part or debt.where


def not_known(gate: Gate, state: State) -> tuple[Unknown, ...]:
    """The asks of a gate that stand unanswered, what lets go first."""
    opened = _last_opened(state)
    asks = sorted(asked_of(gate, state.vehicle), key=lambda a: (if_missed(a.if_missed), not a.looks_over))
    codes = codes_for(sorted(f"ask/{ask.id}" for ask in gate.ask))
    found = []
    for ask in asks:
        because = _unanswered(ask, state, opened)
        if because:
            found.append(_unknown(ask, because, codes[f"ask/{ask.id}"]))
    return tuple(found)


def _last_opened(state: State) -> dict[str, tuple[tuple[date, str, int], str]]:
    """For each system the place in the record where one of its joints was last opened, and which."""
    latest: dict[str, tuple[tuple[date, str, int], str]] = {}
    for name, joint in state.joints.items():
        if joint.opened_place is None or joint.scrapped:
            continue
        system = kind_of(state.vehicle.joints[name].kind).system
        if system not in latest or joint.opened_place > latest[system][0]:
            latest[system] = (joint.opened_place, name)
    return latest


def _unanswered(ask: Ask, state: State, opened: dict[str, tuple[tuple[date, str, int], str]]) -> str:
    answer = state.answers.asks.get(ask.name)
    if answer is None:
        return "not known to this record"
    if ask.looks_over and ask.system in opened and opened[ask.system][0] > answer.place:
        return f"looked over at line {answer.line}; {opened[ask.system][1]} was opened since"
    return ""


def _unknown(ask: Ask, because: str, code: str) -> Unknown:
    return Unknown(
        id=ask.id,
        name=ask.name,
        text=ask.text,
        how=ask.how,
        system=ask.system,
        if_missed=ask.if_missed,
        because=because,
        pays=f"proved {ask.name}",
        code=code,
        limits=tuple(f"{x.text} ({x.place}: {x.authority}, {x.edition})" for x in ask.limit),
        helper=ask.helper,
    )
