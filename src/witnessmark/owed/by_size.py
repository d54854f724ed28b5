"""The size by which a renewable can be ordered: as described, as found, or as measured; never guessed."""

from __future__ import annotations

from witnessmark.owed.stock import bare
from witnessmark.state.closing import own_items
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import parted, whole_name
from witnessmark.vehicle.things import Joint

THREADED = frozenset({"nut", "bolt", "stud", "screw", "u-bolt"})
SHEET = frozenset({"sheet", "steel"})


def size_of(state: State, joint: Joint, what: str) -> str:
    """The size of a renewable of a joint; "" where the record does not tell it.

    What the joint is named after has the joint's own size; what is a joint of its own has that one's.
    A nut, bolt or stud has its thread, a bolt its grade too, where one is known. Sheet steel has the
    thickness that was measured.
    """
    found = state.sizes.of.get((joint.name, what))
    if found is not None:
        return found.text
    own = joint if what in own_items(joint, kind_of(joint.kind)) else _namesake(state, joint, what)
    if own is not None and (size := _own_size(state, own)):
        return size
    words = bare(what)
    if words & THREADED:
        return _thread(state, joint, headed="nut" not in words)
    return _thickness(state, joint) if words >= SHEET else ""


def _namesake(state: State, joint: Joint, what: str) -> Joint | None:
    """The joint that is called what is renewed, on the same side: a pinion seal beside its flange nut."""
    return state.vehicle.joints.get(whole_name(what, parted(joint.name)[1]))


def _own_size(state: State, joint: Joint) -> str:
    found = state.sizes.of.get((joint.name, ""))
    return joint.size or (found.text if found else "")


def _thread(state: State, joint: Joint, *, headed: bool) -> str:
    measured = state.sizes.threads.get(joint.name)
    thread = joint.thread or (measured.text if measured else "")
    return f"{thread}, {joint.grade}" if thread and joint.grade and headed else thread


def _thickness(state: State, joint: Joint) -> str:
    """Of the joint's own metal, or of a part that it holds."""
    measured = (state.sizes.thick.get(name) for name in (joint.name, *joint.holds))
    return next((thick.quantity.typed for thick in measured if thick), "")
