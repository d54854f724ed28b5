"""Whether a joint's figure can be right, as far as its thread and grade are known. The book always wins."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.bench.grades import strength
from witnessmark.bench.plausible import figure_plausible, states_said
from witnessmark.bench.slip import Slip
from witnessmark.bench.thread_list import Thread, find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.things import Joint

TORQUE = "N·m"
HOLLOW_KINDS = frozenset({"brake-union", "brake-hose", "banjo-union", "fuel-pipe", "fuel-hose"})
"""What is tightened there is bored through, and seats on a cone or a washer. Common practice, no source."""
PIPE = "BSP"
CANNOT_TELL = "cannot tell"


class Judgement(Struct, frozen=True, kw_only=True):
    """A torque figure beside what its fastener bears.

    figure  as typed
    thread, grade  as they stand in the record; grade "" where it is not known to it or to the tables
    state   within, over, doubtful, low, or "cannot tell"
    states  the same in a few words, at each grade where none is known
    why     where it cannot be told at all, the reason; else ""
    slip    the bench's answer, None where it has none
    """

    figure: str
    state: str
    states: str = ""
    thread: str = ""
    grade: str = ""
    why: str = ""
    slip: Slip | None = None

    @property
    def unit_slip(self) -> str:
        """What the unit may have been meant to be; "" where the figure is inside, or no unit helps."""
        told = str(self.slip.results["unit_slip"]) if self.slip else ""
        return told if told.startswith("perhaps") else ""

    @property
    def short(self) -> str:
        """A few words for a sheet; "" where nothing can be told."""
        return ", ".join(part for part in (self.states, self.unit_slip) if part)


def judge_figure(joint: Joint, torque: Quantity) -> Judgement:
    """A figure of a joint, in N·m, against the printed band."""
    thread = _thread_of(joint)
    if isinstance(thread, str):
        return Judgement(figure=torque.typed, state=CANNOT_TELL, thread=joint.thread, why=thread)
    grade = _known_grade(joint.grade, thread)
    try:
        slip = figure_plausible(thread.name, grade or None, torque)
    except BadInput as trouble:
        return Judgement(figure=torque.typed, state=CANNOT_TELL, thread=joint.thread, why=trouble.given)
    return Judgement(
        figure=torque.typed,
        state=str(slip.results["state"]),
        states=states_said(slip),
        thread=joint.thread,
        grade=grade,
        slip=slip,
    )


def _thread_of(joint: Joint) -> Thread | str:
    """The joint's thread, or why it tells nothing of a figure."""
    if joint.kind in HOLLOW_KINDS:
        return "what is tightened there is hollow, and seats on a cone or a washer"
    if not joint.thread:
        return f"the thread of {joint.name} is not in this record"
    try:
        thread = find_thread(joint.thread)
    except BadInput:
        return f"the bench's tables do not know the thread {joint.thread}"
    return f"{thread.name} is a pipe thread and no bolt's" if thread.family == PIPE else thread


def _known_grade(grade: str, thread: Thread) -> str:
    """A grade the tables know at that size; any other is answered as one nobody can read."""
    try:
        return strength(grade, thread.diameter).grade if grade else ""
    except BadInput:
        return ""
