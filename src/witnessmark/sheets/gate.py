"""The gate sheet: what this record does not know, then what holds, heaviest first. It releases nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from msgspec.structs import replace

from witnessmark.gate.answer import GateAnswer, Hold, Unknown
from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.sheets.grouping import brief, by_missed, few_words, gathered, joint_row
from witnessmark.sheets.phrases import counted, sheet_code
from witnessmark.sheets.rows import Cells, Due, JointRow, Section, Sheet, Words

PAPERS = "papers"
NOT_KNOWN = "not known to this record"
ON_THE_PAGE = "How each is done, every reason, and where an authority refuses it: on the gate's own page."
DEFER = "Limits are an authority's own, read as an excerpt: look them up, and defer to your authority."


FULL, PAPER, BRIEF = "full", "paper", "brief"


def gate_sheet(
    answer: GateAnswer,
    *,
    vehicle: str,
    line: int,
    told: str = FULL,
    assembly_of: Callable[[str], str] = lambda name: "",
) -> Sheet:
    """One gate's answer, made to be shown.

    line         the last journal line the answer knew
    told         full: everything; paper: a line each, in tables; brief: each joint that holds in a few
                 lines, what is not known by its name alone
    assembly_of  the assembly a joint or part belongs to, "" for none: paper gathers what holds by it
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
        sections=(*_not_known(answer.not_known, told), *_holds(answer, word, told, assembly_of)),
        notes=(answer.note,) if answer.note else (),
        footer=(_last_word(answer, word), *((ON_THE_PAGE,) if told == PAPER else ()), DEFER),
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
    if told == PAPER:
        return (_tabled_unknown(rows),)
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


def _tabled_unknown(rows: Sequence[JointRow]) -> Section:
    """What is not known, a line each, the heaviest first; the first column is left for a tick."""
    order = [missed.words for missed in IfMissed]
    return Section(
        heading=f"{NOT_KNOWN}: {counted(len(rows), 'thing')}",
        columns=("seen", "what", "if missed", "code"),
        rows=tuple(
            Cells(cells=("", f"{row.name}: {due.what}", row.if_missed, due.code))
            for row in sorted(rows, key=lambda row: order.index(row.if_missed))
            for due in row.dues
        ),
    )


def _tabled_holds(section: Section, assembly_of: Callable[[str], str]) -> Section:
    """What holds, a line a joint, gathered by assembly; every hold is named in it."""
    joints = [row for row in section.rows if isinstance(row, JointRow)]
    groups = gathered(joints, lambda row: ("", assembly_of(row.name)))
    rows: list[Cells] = []
    for (_, assembly), members in groups.items():
        rows += [Cells(cells=("", assembly.upper(), "", "", ""))] if assembly else []
        rows += [_one_line(row) for row in members]
    return replace(section, columns=("done", "what holds", "stands", "line", "code"), rows=tuple(rows))


def _one_line(row: JointRow) -> Cells:
    owed = " · ".join(dict.fromkeys(few_words(due.what) for due in row.dues))
    lines = [row.line, *(due.line for due in row.dues)]
    line = next((str(n) for n in lines if n), "")
    code = row.dues[0].code if len(row.dues) == 1 else ""
    return Cells(cells=("", f"{row.name}: {owed}", row.state, line, code))


def _holds(
    answer: GateAnswer, word: str, told: str, assembly_of: Callable[[str], str]
) -> tuple[Section, ...]:
    groups = gathered(answer.holds, lambda hold: (hold.if_missed, hold.name))
    joints = sorted(groups.items(), key=lambda item: not item[1][0].joint)
    rows = [
        joint_row(name, holds[0].state, missed, (_due(hold) for hold in holds))
        for (missed, name), holds in joints
    ]
    empty = f"Nothing known holds {word}."
    if told == PAPER and rows:
        return tuple(_tabled_holds(part, assembly_of) for part in by_missed(rows, lead="known to hold"))
    if told == FULL:
        return by_missed(rows, lead="known to hold", empty=empty)
    return by_missed(rows, lead="known to hold", empty=empty, shown=brief)


def _due(hold: Hold) -> Due:
    return Due(what=hold.what, because=hold.because, line=hold.line, days=hold.days, code=hold.code)
