"""A sheet as text for a terminal: calm, aligned, the state by its word and a small mark."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.sheets.lines import ascii_safe, right, wrapped
from witnessmark.sheets.marks import mark_text
from witnessmark.sheets.phrases import day_words, days_words, fit_to_show, short_day
from witnessmark.sheets.plain import reworded
from witnessmark.sheets.rows import (
    Box,
    Cells,
    Due,
    JointRow,
    Label,
    Number,
    Pictures,
    Row,
    Section,
    Sheet,
    Step,
    Words,
)
from witnessmark.sheets.table import table_lines

LEAST_WIDTH = 40
BLANK = "__________"
REFUSED = "refused at"
_EDGE = "  "
_TEXT = " " * 14
_INNER = " " * 16


def as_text(sheet: Sheet, width: int = 80, *, ascii_only: bool = False) -> str:
    """The sheet in lines of at most `width` characters (at least 40), with no line end after the last.

    ascii_only  letters and signs that a plain console may lack are written with plain ones
    """
    wide = max(LEAST_WIDTH, width)
    shown = reworded(sheet, (lambda text: ascii_safe(fit_to_show(text))) if ascii_only else fit_to_show)
    lines = list(_head(shown, wide))
    for section in shown.sections:
        lines += ["", *_section(section, wide)]
    if shown.notes:
        lines += ["", *_heading("cautions" if shown.kind == "session" else "note", wide)]
        for note in shown.notes:
            lines += wrapped(note, wide, _EDGE)
    if shown.footer:
        lines += ["", "-" * wide]
        for words in shown.footer:
            lines += wrapped(words, wide)
    return "\n".join(line.rstrip() for line in lines)


def _head(sheet: Sheet, wide: int) -> Iterator[str]:
    yield from right(wrapped(sheet.title.upper(), wide - 12), f"code {sheet.code}", wide)
    yield from wrapped(sheet.vehicle, wide)
    yield from wrapped(f"{day_words(sheet.date)}, to journal line {sheet.line}", wide)
    yield "=" * wide
    if sheet.headline:
        yield from wrapped(sheet.headline, wide)


def _heading(words: str, wide: int, tail: str = "") -> Iterator[str]:
    yield from right(wrapped(words[:1].upper() + words[1:], wide), tail, wide)
    yield "-" * wide


def _section(section: Section, wide: int) -> Iterator[str]:
    yield from _heading(section.heading, wide, _missed(section.if_missed))
    if section.note:
        yield from wrapped(section.note, wide, _EDGE)
    if not section.rows:
        yield from wrapped(section.empty, wide, _EDGE)
        return
    tables = [row for row in section.rows if isinstance(row, Cells)]
    if tables:
        yield from table_lines(section.columns, [row.cells for row in tables], wide)
    for row in section.rows:
        yield from _row(row, section, wide)


def _row(row: Row, section: Section, wide: int) -> Iterator[str]:
    match row:
        case Words():
            jointly = any(isinstance(other, JointRow) for other in section.rows)
            yield from _words(row, wide, _TEXT if jointly else _EDGE)
        case Number():
            yield from _number(row, wide)
        case JointRow():
            yield from _joint(row, section, wide)
        case Box():
            yield from _box(row, wide)
        case Step():
            yield from _step(row, wide)
        case Label():
            yield from _label(row, wide)
        case Pictures():
            yield from wrapped(f"{row.label}:", wide, _EDGE)
            for picture in row.pictures:
                yield from wrapped(f"[photo] {picture.caption}", wide, _TEXT, _INNER)
        case Cells():
            pass


def _missed(words: str) -> str:
    """The word for what happens if missed, in its frame; a heavier one for what lets go."""
    if not words:
        return ""
    return f"|| {words.upper()} ||" if words == "lets go" else f"| {words} |"


def _words(row: Words, wide: int, edge: str) -> Iterator[str]:
    if row.sort == "stop":
        yield from wrapped(f"== {row.label.upper()} == {row.text}", wide, _EDGE, "     ")
        return
    label = f"{row.label}: " if row.label else ""
    yield from wrapped(f"{label}{row.text}", wide, edge, edge + "   ")


def _number(row: Number, wide: int, edge: str = _TEXT) -> Iterator[str]:
    value = f"( {row.value} )" if row.hollow else row.value or BLANK
    pedigree = f"   {row.pedigree}" if row.pedigree else ""
    yield from wrapped(f"{row.label}: {value}{pedigree}", wide, edge, edge + "  ")


def _joint(row: JointRow, section: Section, wide: int) -> Iterator[str]:
    mark = f"{_EDGE}{mark_text(row.state)} {row.state:<7} " if row.state else _EDGE
    missed = "" if section.if_missed else _missed(row.if_missed)
    tail = "  ".join(part for part in (stood(row.line, row.days), missed) if part)
    yield from right(wrapped(row.name, wide, mark, " " * len(mark)), tail, wide)
    if row.because:
        yield from wrapped(row.because, wide, _TEXT)
    said = ""
    for due in row.dues:
        if due.because and due.because != said:
            yield from wrapped(due.because, wide, _TEXT)
        said = due.because
        yield from _due(due, wide)


def stood(line: int | None, days: int | None, when: str = "") -> str:
    """The line behind a thing and how long it stands open.

    >>> stood(41, 12), stood(None, None, "after 50 km")
    ('line 41, 12 days', 'after 50 km')
    """
    parts = (f"line {line}" if line is not None else "", days_words(days) if days is not None else "", when)
    return ", ".join(part for part in parts if part)


def _due(due: Due, wide: int) -> Iterator[str]:
    tail = "  ".join(part for part in (stood(due.line, due.days, due.when), due.code) if part)
    yield from right(wrapped(due.what, wide - 6, f"{_TEXT}- ", _INNER), tail, wide)
    if due.how:
        yield from wrapped(due.how, wide, _INNER)
    for limit in due.limits:
        yield from wrapped(f"{REFUSED}: {limit}", wide, _INNER)


def _box(row: Box, wide: int) -> Iterator[str]:
    label = f"{row.label}: " if row.label else ""
    edge = f"{_EDGE}|//| " if row.answered else f"{_EDGE}|__| "
    tail = "  ".join(part for part in (row.answered, row.code) if part)
    yield from right(wrapped(f"{label}{row.text}", wide - 6, edge, " " * len(edge)), tail, wide)
    if row.aside:
        yield from wrapped(row.aside, wide, " " * len(edge))
    if row.write and not row.answered:
        blanks = "  ".join(f"{caption} {BLANK}" for caption in row.write)
        yield from wrapped(blanks, wide, " " * len(edge))


def _step(row: Step, wide: int) -> Iterator[str]:
    edge = f"{row.number:>4}. "
    inner = " " * len(edge)
    said = f"{row.text} ({row.place})" if row.place else row.text
    yield from right(wrapped(said, wide, edge, inner), row.minutes, wide)
    for number in row.numbers:
        yield from _number(number, wide, inner)
    for note in row.notes:
        yield from wrapped(note, wide, inner)
    if row.left:
        yield f"{inner}{mark_text(row.left)} {row.left} afterwards"


def _label(row: Label, wide: int) -> Iterator[str]:
    edge = f"{_EDGE}{row.code}  "
    inner = " " * len(edge)
    what = f"{row.what}, {row.side}" if row.side else row.what
    yield from wrapped(what, wide, edge, inner)
    for said in label_says(row):
        yield from wrapped(said, wide, inner)


def label_says(row: Label) -> Sequence[str]:
    """The smaller lines of a label, in the order they are printed; a blank stands where nothing is known."""
    facts = (
        f"from {row.came_from}" if row.came_from else "",
        f"how many: {row.number or '______'}",
        f"which way up: {row.way_up or '______'}",
        row.keep,
        f"now {row.where}" if row.where else "",
        row.note,
        short_day(row.day) if row.day else "",
    )
    return tuple(fact for fact in facts if fact)
