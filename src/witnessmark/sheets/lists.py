"""Lists for the terminal, and for paper where wanted: everything owed, how all stands, the journal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date

from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import Struck
from witnessmark.owed.debt import Debt
from witnessmark.sheets.grouping import brief, by_missed, gathered, joint_row
from witnessmark.sheets.phrases import counted, missed_words, sheet_code, short_day
from witnessmark.sheets.rows import Cells, Due, JointRow, Section, Sheet, Words
from witnessmark.state.parts import ON
from witnessmark.state.standing import State

_STATE_ORDER = ("apart", "loose", "tight", "proven", "as found")


def owed_sheet(
    debts: Sequence[Debt],
    words: Mapping[str, str],
    *,
    vehicle: str,
    today: date,
    line: int,
    full: bool = True,
) -> Sheet:
    """Everything owed, heaviest first, each under its joint; what is not due yet comes last.

    words  the word for each joint's state
    full   every debt by itself; else each joint in two or three lines
    """
    due = [d for d in debts if d.overdue]
    later = [d for d in debts if not d.overdue]
    rows = [_row(group, words, today) for group in _groups(due)]
    shown = {} if full else {"shown": brief}
    sections = by_missed(rows, lead="owed", empty="Nothing owed.", **shown)
    if later:
        waiting = tuple(Words(label=d.joint or d.part or d.where, text=f"{d.what}, {d.due}") for d in later)
        sections = (*sections, Section(heading=f"not due yet: {counted(len(later), 'thing')}", rows=waiting))
    return Sheet(
        kind="owed",
        title="What is owed",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("owed", "", vehicle, today, line),
        headline=f"{counted(len(due), 'thing')} owed." if due else "Nothing owed.",
        sections=sections,
    )


def _groups(debts: Iterable[Debt]) -> list[list[Debt]]:
    return list(gathered(debts, lambda d: (d.if_missed, d.joint or d.part or d.where or d.item)).values())


def _row(group: list[Debt], words: Mapping[str, str], today: date) -> JointRow:
    first = group[0]
    name = first.joint or first.part or first.where or first.item
    dues = (
        Due(what=d.what, because=d.because, line=d.line, days=(today - d.since).days, when=d.due, code=d.id)
        for d in group
    )
    return joint_row(name, words.get(first.joint, ""), first.if_missed, dues)


def state_sheet(state: State, words: Mapping[str, str], *, today: date) -> Sheet:
    """How everything stands: joints by their state, parts that are not on the vehicle, what is counted."""
    vehicle = state.vehicle.name or "the vehicle"
    return Sheet(
        kind="state",
        title="How it stands",
        vehicle=vehicle,
        date=today,
        line=state.last_line,
        code=sheet_code("state", "", vehicle, today, state.last_line),
        sections=(*_joints(state, words), _parts(state), _counts(state)),
    )


def _joints(state: State, words: Mapping[str, str]) -> tuple[Section, ...]:
    sections = []
    for word in _STATE_ORDER:
        rows = tuple(_joint(state, name, word) for name in state.joints if words[name] == word)
        if rows:
            sections.append(Section(heading=f"{word}: {counted(len(rows), 'joint')}", rows=rows))
    return tuple(sections) or (Section(heading="joints", empty="No joint is described yet."),)


def _joint(state: State, name: str, word: str) -> JointRow:
    now = state.joints[name]
    missed = state.vehicle.joints[name].if_missed
    since = f"since {short_day(now.since)}, line {now.line}" if now.since else ""
    return JointRow(name=name, state=word, if_missed=missed_words(missed), because=since)


def _parts(state: State) -> Section:
    rows = tuple(
        Cells(
            cells=(
                p.name,
                p.where,
                p.place or p.with_whom,
                short_day(p.since) if p.since else "",
                _number(p.line),
            )
        )
        for p in state.parts.values()
        if p.where != ON
    )
    columns = ("part", "where", "place or with whom", "since", "line")
    return Section(
        heading="not on the vehicle", rows=rows, columns=columns, empty="Every part is on the vehicle."
    )


def _counts(state: State) -> Section:
    counts = state.counts
    rows = [Cells(cells=("bag", b.what, b.where, short_day(b.day), f"{b.line}")) for b in counts.bags]
    for what, tallies in (
        ("blanks in", counts.blanks),
        ("brace on", counts.braces),
        ("on stands", counts.lifted),
        ("drained", counts.drained),
        ("tin open", tuple(counts.tins.values())),
    ):
        rows += [
            Cells(cells=(what, t.at, f"{t.number}" if t.number > 1 else "", short_day(t.day), f"{t.line}"))
            for t in tallies
        ]
    columns = ("what", "at", "where or how many", "since", "line")
    return Section(
        heading="counted", rows=tuple(rows), columns=columns, empty="No bag, blank, brace or stand."
    )


def journal_sheet(entries: Sequence[Entry], *, vehicle: str, today: date, line: int) -> Sheet:
    """The journal as it was written; a struck line stays to be read, marked as struck."""
    struck = {e.fact.line: e.line for e in entries if isinstance(e.fact, Struck)}
    rows = tuple(_entry(entry, struck) for entry in entries)
    columns = ("line", "day done", "time", "who", "words")
    return Sheet(
        kind="journal",
        title="Journal",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("journal", "", vehicle, today, line),
        sections=(
            Section(heading="as it was written", rows=rows, columns=columns, empty="No line is written yet."),
        ),
    )


def _entry(entry: Entry, struck: Mapping[int, int]) -> Cells:
    time = "" if entry.time == END_OF_DAY else entry.time
    by = struck.get(entry.line)
    words = f"{entry.words} (struck by line {by})" if by else entry.words
    cells = (_number(entry.line), short_day(entry.day), time, entry.who, words)
    return Cells(cells=cells, struck=by is not None)


def _number(line: int | None) -> str:
    return f"{line}" if line else ""
