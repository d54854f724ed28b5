"""The gate sheet: what this record does not know, then what holds, heaviest first. It releases nothing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from witnessmark.gate.answer import GateAnswer, Hold, Unknown
from witnessmark.ground.missed import if_missed
from witnessmark.sheets.grouping import brief, by_missed, gathered, joint_row
from witnessmark.sheets.phrases import counted, sheet_code
from witnessmark.sheets.rows import Due, JointRow, Section, Sheet, Words

PAPERS = "papers"
NOT_KNOWN = "not known to this record"
DEFER = "Limits are an authority's own, read as an excerpt: look them up, and defer to your authority."


FULL, PAPER, BRIEF = "full", "paper", "brief"


def gate_sheet(answer: GateAnswer, *, vehicle: str, line: int, told: str = FULL) -> Sheet:
    """One gate's answer, made to be shown.

    line  the last journal line the answer knew
    told  full: everything; paper: what is not known in full, each joint that holds in a few lines;
          brief: what is not known by its name alone as well
    """
    word = answer.screen_name
    return Sheet(
        kind="gate",
        title=f"Gate: {word}",
        vehicle=vehicle or "the vehicle",
        date=answer.asked_on,
        line=line,
        code=sheet_code("gate", answer.gate, vehicle, answer.asked_on, line),
        headline=answer.headline(),
        sections=(*_not_known(answer.not_known, told), *_holds(answer, word, told)),
        notes=(answer.note,) if answer.note else (),
        footer=(_last_word(answer, word), DEFER),
    )


def _last_word(answer: GateAnswer, word: str) -> str:
    if answer.empty:
        return answer.headline()
    return (
        f"{word.capitalize()}: these are the things known to hold. When none is left, that is not a release."
    )


def _not_known(unknown: Iterable[Unknown], told: str) -> tuple[Section, ...]:
    rows = [_unknown(one) for one in sorted(unknown, key=lambda u: u.system == PAPERS)]
    if not rows:
        return (Section(heading=NOT_KNOWN, empty="Everything this gate asks has an answer in the record."),)
    if told == BRIEF:
        return (Section(heading=f"{NOT_KNOWN}: {counted(len(rows), 'thing')}", rows=tuple(_by_name(rows))),)
    return by_missed(rows, lead=NOT_KNOWN)


def _by_name(rows: Sequence[JointRow]) -> Iterator[Words]:
    for missed in dict.fromkeys(row.if_missed for row in rows):
        names = [row.name for row in rows if row.if_missed == missed]
        yield Words(label=missed, text=" · ".join(names))


def _unknown(one: Unknown) -> JointRow:
    because = "" if one.because == NOT_KNOWN else one.because
    due = Due(what=one.text, how=one.how, code=one.code, limits=one.limits)
    return JointRow(name=one.name, if_missed=if_missed(one.if_missed).words, because=because, dues=(due,))


def _holds(answer: GateAnswer, word: str, told: str) -> tuple[Section, ...]:
    groups = gathered(answer.holds, lambda hold: (hold.if_missed, hold.name))
    joints = sorted(groups.items(), key=lambda item: not item[1][0].joint)
    rows = [
        joint_row(name, holds[0].state, missed, (_due(hold) for hold in holds))
        for (missed, name), holds in joints
    ]
    empty = f"Nothing known holds {word}."
    if told == FULL:
        return by_missed(rows, lead="known to hold", empty=empty)
    return by_missed(rows, lead="known to hold", empty=empty, shown=brief)


def _due(hold: Hold) -> Due:
    return Due(what=hold.what, because=hold.because, line=hold.line, days=hold.days, code=hold.code)
