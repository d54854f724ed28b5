"""Whether the figure in a line can be right: one more sentence of the read-back. It never blocks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Closed, Described, ReadFigure, Struck, Tightened
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.things import Joint

if TYPE_CHECKING:
    from witnessmark.bench.slip import Slip
    from witnessmark.sheets.fastening import Judgement

TORQUE = "N·m"
BAND = "dry to oiled steel (nut factor 0.22 to 0.12)"
TAILS = {
    "over": "even dry it passes proof",
    "doubtful": "oiled it passes proof",
    "low": "oiled it stays under 20 % of proof",
}


class Plausible(Struct, frozen=True, kw_only=True):
    """How a line's figure stands beside what the fasteners it names bear.

    joints    those that share this answer
    state     within, over, doubtful, low, or "cannot tell"
    """

    joints: tuple[str, ...]
    figure: str
    thread: str
    grade: str
    state: str
    unit_slip: str
    sentence: str


class _Written(Struct, frozen=True):
    """A figure on a joint, as the joint will be known once the line is written."""

    joint: Joint
    torque: Quantity


def plausible(facts: Iterable[AnyFact], joints: Mapping[str, Joint]) -> tuple[Plausible, ...]:
    """Judge every torque figure that these facts write.

    joints  as the record knows them before the line

    A figure that is read is always spoken of; one that was tightened to only where thread and grade are
    known. Figures of other kinds, an end float or a level, are none of the bench's.
    """
    written = tuple(_figures(facts, joints))
    if not written:
        return ()
    from witnessmark.sheets.fastening import judge_figure

    shared: dict[tuple[str, str, str, str], tuple[Judgement, list[str]]] = {}
    for one in written:
        judged = judge_figure(one.joint, one.torque)
        key = (judged.figure, judged.thread, judged.grade, judged.why)
        shared.setdefault(key, (judged, []))[1].append(one.joint.name)
    return tuple(_plausible(judged, tuple(names)) for judged, names in shared.values())


def _figures(facts: Iterable[AnyFact], joints: Mapping[str, Joint]) -> Iterator[_Written]:
    known = dict(joints)
    for fact in facts:
        inner = fact.instead if isinstance(fact, Struck) else fact
        match inner:
            case Described():
                known |= {joint.name: joint for joint in inner.joints}
            case ReadFigure():
                for joint in (known[name] for name in inner.at if name in known):
                    yield from _read(inner, joint)
            case Tightened() | Closed() if inner.figures and inner.figures[0].unit == TORQUE:
                for joint in (known[name] for name in inner.at if name in known):
                    if joint.thread and joint.grade and _pulled_to_it(joint, inner):
                        yield _Written(joint, inner.figures[0])
            case _:
                pass


def _read(fact: ReadFigure, joint: Joint) -> Iterator[_Written]:
    """Each end of the figure read; the one on record where only its thread or grade is told now."""
    later = replace(joint, thread=fact.thread or joint.thread, grade=fact.grade or joint.grade)
    torques = [figure for figure in fact.figures if figure.unit == TORQUE]
    if not fact.figures and (fact.thread or fact.grade) and joint.figure and joint.figure.unit == TORQUE:
        torques = [Quantity(joint.figure.typed, joint.figure.high, TORQUE)]
    for torque in torques:
        yield _Written(later, torque)


def _pulled_to_it(joint: Joint, fact: Tightened | Closed) -> bool:
    """What is closed by setting may be closed with the effort to turn it, which no thread bears."""
    return isinstance(fact, Tightened) or kind_of(joint.kind).closed_by != "set"


def _plausible(judged: Judgement, names: tuple[str, ...]) -> Plausible:
    return Plausible(
        joints=names,
        figure=judged.figure,
        thread=judged.thread,
        grade=judged.grade,
        state=judged.state,
        unit_slip=judged.unit_slip,
        sentence=_sentence(judged),
    )


def _sentence(judged: Judgement) -> str:
    """One sentence: how it stands, in which band, and which unit may have been meant.

    >>> from witnessmark.sheets.fastening import Judgement
    >>> _sentence(Judgement(figure="18 Nm", state="cannot tell", why="the thread of u-bolts is not known"))
    'Whether 18 Nm is plausible cannot be told: the thread of u-bolts is not known.'
    """
    if judged.slip is None:
        return f"Whether {judged.figure} is plausible cannot be told: {judged.why}."
    told = (
        f"{judged.figure} on {judged.thread}, {judged.grade or 'grade not known'}, is {judged.states}, "
        f"{_span(judged.slip)}{BAND}"
    )
    if "within" in judged.states:
        return f"{told}."
    unit = judged.unit_slip or "whether a unit was mixed up cannot be told"
    tail = TAILS.get(judged.state, "")
    return f"{told}: {'; '.join(part for part in (tail, unit, 'your book comes first') if part)}."


def _span(slip: Slip) -> str:
    """The part of proof that one grade is left with; of several there is no one band to tell."""
    rows = slip.rows("grades")
    if len(rows) != 1:
        return ""
    return f"{rows[0]['dry']:.0%} to {rows[0]['oiled']:.0%} of proof, ".replace("%", " %")


def plausible_plain(found: Iterable[Plausible]) -> list[dict[str, Any]]:
    """The same as plain values for a script."""
    return [
        {
            "joints": list(one.joints),
            "figure": one.figure,
            "thread": one.thread,
            "grade": one.grade,
            "state": one.state,
            "unit_slip": one.unit_slip,
            "sentence": one.sentence,
        }
        for one in found
    ]
