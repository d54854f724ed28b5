"""How the whole vehicle stands: every lane walked in one pass over what still stands in the record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.order import standing
from witnessmark.state.answers import AnswerLane, Answers
from witnessmark.state.counts import CountLane, Counts
from witnessmark.state.description import vehicle_from
from witnessmark.state.joint_state import JointState
from witnessmark.state.joints import JointLane
from witnessmark.state.lane import walk
from witnessmark.state.parts import PartLane, PartState
from witnessmark.state.supply import Supply, SupplyLane
from witnessmark.state.surfaces import SurfaceLane, SurfaceState
from witnessmark.vehicle.things import Vehicle


class State(Struct, frozen=True, kw_only=True):
    """Everything the facts say, before anything is concluded from it."""

    vehicle: Vehicle
    joints: Mapping[str, JointState]
    parts: Mapping[str, PartState]
    surfaces: Mapping[str, SurfaceState]
    counts: Counts
    answers: Answers
    supply: Supply
    last_line: int


def state_from(entries: Iterable[Entry]) -> State:
    """Read a record's entries, handed over in any order, into one state."""
    every = list(entries)
    held = standing(every)
    vehicle = vehicle_from(held)
    joints, parts, surfaces = JointLane(vehicle), PartLane(vehicle), SurfaceLane()
    counts, answers, supply = CountLane(vehicle), AnswerLane(), SupplyLane()
    walk(held, (joints, parts, surfaces, counts, answers, supply))
    return State(
        vehicle=vehicle,
        joints=joints.states(),
        parts=parts.states(),
        surfaces=surfaces.states(),
        counts=counts.counts(),
        answers=answers.answers(),
        supply=supply.supply(),
        last_line=max((e.line for e in every), default=0),
    )
