"""Ticks made on paper, entered in one sweep: codes with their numbers, each one fact of its own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct

from witnessmark.ground.codes import ALPHABET, LENGTH
from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import PrintedSheet
from witnessmark.owed.debt import spoken
from witnessmark.owed.joints import BLANK
from witnessmark.restoration.devices import write_once
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import paying
from witnessmark.sheets.phrases import sheet_code

MOST = 200
_CODE = re.compile(rf"(?<!\S)([{ALPHABET}{ALPHABET.lower()}]{{{LENGTH}}})(?=[\s:,;.]|$)")
_CLOSED = re.compile(r"^(all\b|closed\b|in one go\b)", re.IGNORECASE)


class Swept(Struct, frozen=True, kw_only=True):
    """One tick as it was read.

    typed    the words it was typed in, code first
    line     the line that would be written, "" where none would
    said     what was understood, or what the code stands for
    trouble  why it will not do
    """

    code: str
    typed: str
    line: str = ""
    said: str = ""
    trouble: BadInput | None = None


def ticks_in(text: str, known: Sequence[str]) -> list[tuple[str, str]]:
    """The codes in a text, each with the words up to the next; words without a code stand under "".

    A word of four letters counts as a code only where it is known, holds a digit, or begins a line.

    >>> ticks_in("K7M2 47 Nm; P3QX", ["K7M2"])
    [('K7M2', '47 Nm'), ('P3QX', '')]
    """
    found: list[tuple[str, str]] = []
    for line in text.splitlines():
        starts = [m for m in _CODE.finditer(line) if _meant(m, line, known)]
        ends = [m.start() for m in starts[1:]] + [len(line)]
        before = line[: starts[0].start()] if starts else line
        if _plain(before):
            found.append(("", _plain(before)))
        found += [(m[1].upper(), _plain(line[m.end() : end])) for m, end in zip(starts, ends, strict=False)]
    return found


def _meant(match: re.Match[str], line: str, known: Sequence[str]) -> bool:
    word = match[1]
    first = not line[: match.start()].strip()
    return word.upper() in known or first or (word.isupper() and any(c.isdigit() for c in word))


def _plain(words: str) -> str:
    return " ".join(words.strip(" \t:;,.").split())


def sweep(restoration: Restoration, text: str, day: date | None, device_id: str = "") -> tuple[Swept, ...]:
    """Read a sweep against the record as it stands; nothing is written.

    day        the day the ticks were made; None: today
    device_id  of the form it came in: what was written under it already is no trouble
    """
    flow = restoration.flow()
    lines = paying(flow)
    sheets = dict(_printed(flow))
    ticks = ticks_in(text, [*lines, *sheets])
    if len(ticks) > MOST:
        raise BadInput(
            given=f"{len(ticks)} ticks at once", holds=f"at most {MOST}", do="Enter a sheet at a time."
        )
    already = {e.id: e.line for e in restoration.entries if device_id and e.id.startswith(device_id)}
    return tuple(
        Swept(code=code, typed=f"{code} {words}".strip(), said=f"written already as line {done}")
        if (done := already.get(_id(device_id, code)))
        else _read(restoration, code, words, lines, sheets, day)
        for code, words in ticks
    )


def _id(device_id: str, code: str) -> str:
    """The id a tick's line is written under."""
    return f"{device_id}{code.lower()}"


def _read(
    restoration: Restoration,
    code: str,
    words: str,
    lines: dict[str, str],
    sheets: dict[str, str],
    day: date | None,
) -> Swept:
    typed = f"{code} {words}".strip()
    try:
        line = _line(code, words, lines, sheets)
        if not line:
            return Swept(code=code, typed=typed, said=sheets[code])
        heard = restoration.hear(line, day=day)
        if not heard.sure:
            raise heard.unsure()
    except BadInput as trouble:
        return Swept(code=code, typed=typed, trouble=trouble)
    return Swept(code=code, typed=typed, line=line, said=heard.understood.best.sentence)


def _line(code: str, words: str, lines: dict[str, str], sheets: dict[str, str]) -> str:
    """The line a tick stands for; "" where the code only names its sheet."""
    if code in lines:
        pays = lines[code]
        if BLANK not in pays:
            return f"{pays} {words}".strip()
        if not words:
            raise BadInput(
                given=f"{code} without its figure", holds=pays.replace(BLANK, "and a number"), do="Add it."
            )
        return pays.replace(BLANK, words)
    if code in sheets:
        assembly = sheets[code].partition(": ")[2]
        if not words:
            return ""
        if assembly and _CLOSED.match(words):
            but = re.search(r"\bbut\b(.*)", words, re.IGNORECASE)
            return f"closed {spoken(assembly)}" + (f" all but{but[1]}" if but else "")
        raise BadInput(
            given=f"{code} is a sheet's own code, and {words!r} stands behind it",
            holds="the code of one box and its figure; of a closing sheet, all closed or all but ...",
            do="Look the code up beside the box.",
        )
    raise BadInput(
        given=f"{code or words!r} is no code of anything owed now",
        holds=f"{LENGTH} letters and figures as they stand beside the box; what is paid already has none",
        do="Look at the sheet again, or write it as a line. Nothing is lost: it stays in the box below.",
    )


def _printed(flow: Flow) -> Iterator[tuple[str, str]]:
    """Codes of the sheets that were printed, each with what it is; a closing sheet with its assembly."""
    title = flow.vehicle.name or "the vehicle"
    for entry in flow.entries:
        fact = entry.fact
        if isinstance(fact, PrintedSheet):
            of = (
                a
                for a in flow.vehicle.assemblies
                if fact.kind == "closing"
                and sheet_code("closing", a, title, entry.day, fact.line) == fact.code
            )
            assembly = next(of, "")
            yield fact.code, f"the {fact.kind} sheet" + (f": {assembly}" if assembly else "")


def write_sweep(
    restoration: Restoration, text: str, day: date | None, device_id: str
) -> tuple[tuple[Entry, ...], str]:
    """Write every tick that will do, one line each, however often it is sent.

    The lines, and what is left to mend as it was typed.
    """
    written: list[Entry] = []
    left: list[str] = []
    for tick in sweep(restoration, text, day, device_id):
        if tick.line:
            heard = restoration.hear(tick.line, day=day)
            written += write_once(restoration, heard, _id(device_id, tick.code))
        elif tick.trouble:
            left.append(tick.typed)
    return tuple(written), "\n".join(left)
