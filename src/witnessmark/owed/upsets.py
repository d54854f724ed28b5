"""What opening one joint upset elsewhere: one debt for each thing upset, however many joints did it."""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.ground.missed import if_missed
from witnessmark.owed.debt import Debt, listed
from witnessmark.state.joint_state import TIGHT, JointState
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.kind import Upset


def upset_debts(state: State) -> Iterator[Debt]:
    """Everything upset and not put right since, the latest opening behind it."""
    causes: dict[str, list[tuple[JointState, Upset]]] = {}
    for joint in state.joints.values():
        if joint.opened_line is None or joint.scrapped:
            continue
        for upset in kind_of(state.vehicle.joints[joint.name].kind).upset:
            if _still_upset(state, joint, upset):
                causes.setdefault(upset.name, []).append((joint, upset))
    for name, found in causes.items():
        yield _debt(name, found, kind_of(state.vehicle.joints[found[0][0].name].kind).system)


def _still_upset(state: State, joint: JointState, upset: Upset) -> bool:
    right = state.answers.put_right.get(upset.name)
    if right is None:
        return True
    assert joint.opened_place is not None
    return joint.opened_place > right.place or joint.position != TIGHT


def _debt(name: str, found: list[tuple[JointState, Upset]], system: str) -> Debt:
    latest = max(found, key=lambda pair: pair[0].opened_place or ())
    heaviest = min((upset for _, upset in found), key=lambda upset: if_missed(upset.if_missed))
    joint = latest[0]
    assert joint.opened_line is not None
    assert joint.opened_day is not None
    return Debt(
        sort="put_right",
        what=heaviest.text,
        where="the vehicle",
        item=name,
        if_missed=heaviest.if_missed,
        because=f"upset by opening {listed([j.name for j, _ in found])}",
        line=joint.opened_line,
        since=joint.opened_day,
        pays=f"put right {name}",
        stage=heaviest.stage,
        system=system,
    )
