"""Ticks made on paper, entered in one sweep: codes with their numbers, each one fact of its own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import date
from difflib import get_close_matches

from msgspec import Struct

from witnessmark.ground.codes import ALPHABET, LENGTH
from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Closed, PrintedSheet
from witnessmark.owed.debt import spoken
from witnessmark.owed.joints import BLANK
from witnessmark.restoration.devices import ids_from, write_once
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import paying
from witnessmark.sheets.phrases import sheet_code
from witnessmark.vehicle.sides import SIDES, parted
from witnessmark.vehicle.things import Vehicle

MOST = 200
_CODE = re.compile(rf"(?<!\S)([{ALPHABET}{ALPHABET.lower()}]{{{LENGTH}}})(?=[\s:,;.]|$)")
_CLOSED = re.compile(r"^(all\b|closed\b|in one go\b)", re.IGNORECASE)


class Swept(Struct, frozen=True, kw_only=True):
    """One tick as it was read.

    typed    the words it was typed in, code first
    line     the line that would be written, "" where none would
    fact     where a whole assembly is closed, the fact itself
    said     what was understood, or what the code stands for
    trouble  why it will not do
    """

    code: str
    typed: str
    line: str = ""
    fact: Closed | None = None
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
        if code in sheets and code not in lines:
            return _of_a_sheet(restoration.flow().vehicle, code, words, sheets[code])
        line = _line(code, words, lines)
        heard = restoration.hear(line, day=day)
        if not heard.sure:
            raise heard.unsure()
    except BadInput as trouble:
        return Swept(code=code, typed=typed, trouble=trouble)
    return Swept(code=code, typed=typed, line=line, said=heard.understood.best.sentence)


def _of_a_sheet(vehicle: Vehicle, code: str, words: str, sheet: str) -> Swept:
    """A sheet's own code: it only names the sheet; with "all closed" it closes a closing sheet's assembly."""
    typed = f"{code} {words}".strip()
    if not words:
        return Swept(code=code, typed=typed, said=f"{sheet}: the sheet itself, nothing to write")
    assembly = sheet.partition(": ")[2]
    if not assembly or not _CLOSED.match(words):
        raise BadInput(
            given=f"{code} is a sheet's own code, and {words!r} stands behind it",
            holds="the code of one box and its figure; of a closing sheet, all closed or all but ...",
            do="Look the code up beside the box.",
        )
    but = _but(vehicle, assembly, words)
    line = f"closed {spoken(assembly)}" + (f" all but {', '.join(but)}" if but else "")
    fact = Closed(at=(assembly,), but=but)
    said = f"{line}; what lets go is answered singly"
    return Swept(code=code, typed=typed, line=line, fact=fact, said=said)


def _but(vehicle: Vehicle, assembly: str, words: str) -> tuple[str, ...]:
    """The exceptions by their plain names, each one a joint of the assembly."""
    known = {parted(name)[0] for name in vehicle.in_assembly(assembly)}
    told = re.split(r"\bbut\b", words, maxsplit=1, flags=re.IGNORECASE)[1:]
    names = [_plain(piece).lower() for one in told for piece in re.split(r",|\band\b", one)]
    names = [name for name in names if name and name not in SIDES]
    for name in names:
        if name not in known:
            raise BadInput(
                given=f"{name!r} is no joint of {assembly}",
                holds="exceptions as they are called on the sheet",
                do="Write them with commas between.",
                near=tuple(get_close_matches(name, known, n=3, cutoff=0.5)),
            )
    if told and not names:
        raise BadInput(given="all but, and nothing named", holds="what is left", do="Name it.")
    return tuple(dict.fromkeys(names))


def _line(code: str, words: str, lines: dict[str, str]) -> str:
    """The line a tick stands for."""
    if code in lines:
        pays = lines[code]
        if BLANK not in pays:
            return f"{pays} {words}".strip()
        if not words:
            raise BadInput(
                given=f"{code} without its figure", holds=pays.replace(BLANK, "and a number"), do="Add it."
            )
        return pays.replace(BLANK, words)
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
        if tick.fact is not None:
            restoration.new_id = ids_from(_id(device_id, tick.code))
            written += restoration.write_fact(tick.fact, tick.line, day=day)
        elif tick.line:
            heard = restoration.hear(tick.line, day=day)
            written += write_once(restoration, heard, _id(device_id, tick.code))
        elif tick.trouble:
            left.append(tick.typed)
    return tuple(written), "\n".join(left)
