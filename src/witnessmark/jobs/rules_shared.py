"""What the order rules share: finding operations, telling welds, naming the place of a joint."""

from __future__ import annotations

from witnessmark.jobs.building import Building
from witnessmark.jobs.minutes import about
from witnessmark.jobs.operation import Operation


def acts(b: Building, sort: str) -> list[Operation]:
    """The operations of one sort, as they stand now."""
    return [o for o in b.operations.values() if o.sort == sort]


def on_joints(b: Building, sort: str) -> list[Operation]:
    """The operations of one sort that are done to a joint; of closings those that leave it tight."""
    return [o for o in acts(b, sort) if o.name in b.state.joints and (sort != "close" or o.leaves)]


def place_of(b: Building, name: str) -> str:
    """The assembly a joint belongs to, else its place, else its own name."""
    joint = b.state.vehicle.joints.get(name)
    return (joint.assembly or joint.place or joint.name) if joint else name


def prepare(
    b: Building, act: str, name: str, job: str, what: str, likely: float, cautions: tuple[str, ...] = ()
) -> str:
    """Add an operation that makes ready; of several for one thing there is one. Its id."""
    where = b.state.vehicle.place_of(name)
    return b.add(
        Operation(
            id=f"{act}/{name}", what=what, sort="prepare", name=name, job=job, minutes=about(likely),
            where=where, cautions=cautions,
        )
    )  # fmt: skip
