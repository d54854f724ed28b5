"""Jobs wanted that are still to be done: not left, not proven done since they were wanted."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.state.closing import proven
from witnessmark.state.joint_state import TIGHT
from witnessmark.state.parts import ON
from witnessmark.state.standing import State
from witnessmark.state.supply import Line
from witnessmark.vehicle.catalogue import kind_of

RENEW, REFURBISH, MAKE_GOOD, REFIT, COAT, PROVE = "renew", "refurbish", "make good", "refit", "coat", "prove"
JOBS = (RENEW, REFURBISH, MAKE_GOOD, REFIT, COAT, PROVE)

# Jobs for which the joint itself must be apart.
APART_FOR = frozenset({RENEW, REFURBISH, MAKE_GOOD, COAT})


class Wish(Struct, frozen=True, kw_only=True):
    """One job wanted of one thing.

    targets  its joints and parts that are not yet as wanted; several where an assembly is meant
    """

    job: str
    name: str
    targets: tuple[str, ...]
    line: int

    @property
    def id(self) -> str:
        return f"{self.job}/{self.name}"


def wishes_of(state: State) -> tuple[Wish, ...]:
    """What is wanted and not done, in the order it was wanted; the same job wanted twice counts once."""
    latest: dict[tuple[str, str], Line] = {}
    for line in state.supply.wanted:
        job = line.fact.job or MAKE_GOOD
        if job not in JOBS:
            raise BadInput(
                given=f"line {line.line} wants the job {job!r}",
                holds=f"one of {', '.join(JOBS)}",
                do="Strike the line and say which of these it is.",
            )
        latest |= {(job, name): line for name in line.fact.at}
    return tuple(_alive(state, latest))


def _alive(state: State, latest: dict[tuple[str, str], Line]) -> Iterator[Wish]:
    for (job, name), line in latest.items():
        if _left_since(state, name, line):
            continue
        things = _things(state, name)
        targets = tuple(t for t in things if not done_since(state, job, t, line))
        if targets:
            yield Wish(job=job, name=name, targets=targets, line=line.line)


def _things(state: State, name: str) -> tuple[str, ...]:
    """A joint or a part itself; of an assembly all its joints, and where it has none its name alone."""
    if name in state.vehicle.joints or name in state.vehicle.parts:
        return (name,)
    return state.vehicle.in_assembly(name) or (name,)


def _left_since(state: State, name: str, line: Line) -> bool:
    return any(name in left.fact.at and _after(left, line) for left in state.supply.left)


def _after(one: Line, other: Line) -> bool:
    return (one.day, one.line) > (other.day, other.line)


def done_since(state: State, job: str, name: str, line: Line) -> bool:
    """Whether a thing is as the job wanted it, by a line after the wish."""
    if name in state.joints:
        return _joint_done(state, job, name, line.line)
    if name in state.parts:
        return _part_done(state, job, name, line.line)
    surface = state.surfaces.get(name)
    coated = surface.coated_line if surface is not None and surface.last_coat else None
    return job == COAT and coated is not None and coated > line.line


def _joint_done(state: State, job: str, name: str, wanted: int) -> bool:
    joint = state.joints[name]
    kind = kind_of(state.vehicle.joints[name].kind)
    if joint.scrapped:
        return True
    if (joint.position != TIGHT and job != PROVE) or not proven(kind, joint):
        return False
    if job == PROVE:
        return bool(kind.check) and all(
            joint.answered[c.name] > wanted for c in kind.check if c.stage != "road"
        )
    return joint.closed_line is not None and joint.closed_line > wanted


def _part_done(state: State, job: str, name: str, wanted: int) -> bool:
    part = state.parts[name]
    held = [j.name for j in state.vehicle.joints.values() if name in j.holds]
    back = part.where == ON and not part.bad and part.line is not None and part.line > wanted
    return back and all(
        state.joints[j].position == TIGHT and proven(kind_of(state.vehicle.joints[j].kind), state.joints[j])
        for j in held
    )
