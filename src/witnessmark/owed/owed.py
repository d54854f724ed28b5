"""Everything owed: the product. One list, heaviest first, each with the line behind it."""

from __future__ import annotations

from datetime import datetime

from msgspec.structs import replace

from witnessmark.ground.codes import codes_for
from witnessmark.ground.missed import if_missed
from witnessmark.owed.debt import SORTS, Debt
from witnessmark.owed.garage import garage_debts
from witnessmark.owed.joints import joint_debts
from witnessmark.owed.looks import look_debts
from witnessmark.owed.time import time_debts
from witnessmark.owed.upsets import upset_debts
from witnessmark.state.closing import proven
from witnessmark.state.joint_state import APART, LOOSE, TIGHT
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

_POSITIONS = {APART: 0, LOOSE: 1, TIGHT: 2}


def owed_by(state: State, now: datetime) -> tuple[Debt, ...]:
    """All debts of a vehicle at a moment, sorted by what happens if missed, joints before papers."""
    found: list[Debt] = []
    km, heat, today = state.answers.km, state.answers.heat_cycles, now.date()
    assemblies: dict[str, list[str]] = {}
    for described in state.vehicle.joints.values():
        assemblies.setdefault(described.assembly, []).append(described.name)
    for name, joint in state.joints.items():
        if joint.opened_line is None and not joint.findings:
            continue
        described = state.vehicle.joints[name]
        kind = kind_of(described.kind)
        neighbours = assemblies.get(described.assembly, ()) if described.assembly else ()
        found += joint_debts(described, kind, joint, neighbours)
        found += look_debts(described, kind, joint, km, heat, today)
    found += upset_debts(state)
    found += garage_debts(state, today)
    found += time_debts(state, now)
    codes = codes_for(sorted(debt.key for debt in found))
    return tuple(sorted((replace(d, id=codes[d.key]) for d in found), key=lambda d: _order(state, d)))


def _order(state: State, debt: Debt) -> tuple[int, bool, int, object, int, str]:
    joint = state.joints.get(debt.joint)
    return (
        if_missed(debt.if_missed),
        not debt.overdue,
        _POSITIONS.get(joint.position, 3) if joint else 3,
        debt.since,
        SORTS.index(debt.sort),
        debt.key,
    )


def word_for(state: State, name: str) -> str:
    """The word for a joint's state: apart, loose, tight or proven; as found where it was never touched."""
    joint = state.joints[name]
    if joint.position == TIGHT and proven(kind_of(state.vehicle.joints[name].kind), joint):
        return "proven"
    return joint.position
