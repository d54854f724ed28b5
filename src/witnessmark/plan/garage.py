"""Small things that are always worth doing: soak what fights, label what lies about, prepare the order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.jobs.minutes import about
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.debt import listed
from witnessmark.state.joint_state import APART
from witnessmark.state.standing import State

GARAGE = "garage"


def garage_operations(state: State, jobs: Sequence[Job], order: Sequence[str]) -> Iterator[Operation]:
    """None opens, wets or heats anything; all can be put down. Minutes: common practice, no source."""
    fights = [o.name for job in jobs for o in job.operations if o.sort == "open" and o.fights]
    if fights:
        yield _small("soak", f"soak {listed(fights)}: it works while you are away", 10)
    bagged = {name for bag in state.counts.bags for name in bag.at}
    bare = [n for n, joint in state.joints.items() if joint.position == APART and n not in bagged]
    if bare:
        yield _small("label", f"photograph, bag and label what came off: {listed(bare)}", 15)
    if order:
        things = "thing" if len(order) == 1 else "things"
        yield _small("order", f"prepare the order: {len(order)} {things}, sizes measured", 5)


def _small(name: str, what: str, likely: float) -> Operation:
    return Operation(
        id=f"{GARAGE}/{name}",
        what=what,
        sort="garage",
        name=name,
        job=GARAGE,
        minutes=about(likely),
        where="workbench",
    )
