"""How joints stand while a session goes on: what an operation opens, loosens and closes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from witnessmark.jobs.operation import Operation
from witnessmark.state.closing import lets_go
from witnessmark.state.joint_state import APART, LOOSE, TIGHT
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of


def joint_lets_go(state: State, name: str) -> bool:
    """Whether this one joint letting go is enough."""
    joint = state.vehicle.joints.get(name)
    return joint is not None and lets_go(joint, kind_of(joint.kind))


def holders_of(state: State, part: str) -> Iterator[str]:
    """The joints that hold a part."""
    return (j.name for j in state.vehicle.joints.values() if part in j.holds)


def loosened_by(state: State, operation: Operation) -> Iterator[str]:
    """Ids of closings without which an operation would leave a joint worse than apart and bagged.

    A part put back hangs on joints that are not tight yet; a blanking plug comes out only to close its joint.
    """
    joint = state.joints.get(operation.name)
    if operation.id.startswith("blank/") and joint is not None and joint.position in (APART, LOOSE):
        yield f"close/{operation.name}"
    if operation.id.startswith("fit/"):
        for name in holders_of(state, operation.name):
            if joint_lets_go(state, name) and state.joints[name].position == APART:
                yield f"close/{name}"


def walked(state: State, operations: Sequence[Operation]) -> Iterator[Mapping[str, str]]:
    """How each joint stands at the start, and after each operation."""
    stands = {name: joint.position for name, joint in state.joints.items() if not joint.scrapped}
    yield dict(stands)
    for operation in operations:
        if operation.id.startswith("fit/"):
            for name in holders_of(state, operation.name):
                if stands.get(name) == APART:
                    stands[name] = LOOSE
        elif operation.name in stands:
            if operation.sort == "open":
                stands[operation.name] = APART
            elif operation.sort == "close" and operation.leaves == TIGHT:
                stands[operation.name] = TIGHT
        yield dict(stands)
