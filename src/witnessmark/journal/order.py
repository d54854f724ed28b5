"""The order of reading, and strikes: what still stands in a record."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

import msgspec

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Struck


def reading_order(entries: Iterable[Entry]) -> list[Entry]:
    """By the day and time the thing was done, then by line: Sunday's note of Friday undoes no Saturday."""
    return sorted(entries, key=_place)


def _place(entry: Entry) -> tuple[date, str, int]:
    return (entry.day, entry.time, entry.line)


def standing(entries: Iterable[Entry]) -> list[Entry]:
    """What still stands, in reading order: struck lines and strikes gone, corrections in their place.

    A correction stands where the struck line stood; its `line` is that of the strike that carries it.
    """
    every = list(entries)
    strikes = in_force(every)
    if not strikes:
        return reading_order(e for e in every if not isinstance(e.fact, Struck))
    keyed = []
    for entry in every:
        if isinstance(entry.fact, Struck):
            continue
        strike = strikes.get(entry.line)
        if strike is None:
            keyed.append((entry.place, entry))
        elif (corrected := _corrected(entry, strike)) is not None:
            keyed.append((entry.place, corrected))
    keyed.sort(key=lambda pair: pair[0])
    return [entry for _, entry in keyed]


def in_force(entries: Iterable[Entry]) -> dict[int, Entry]:
    """The strike in force on each struck line, by the struck line's number.

    A strike names an earlier line that is no strike. Of several on one line the last holds.
    """
    every = list(entries)
    found = [e for e in every if isinstance(e.fact, Struck)]
    if not found:
        return {}
    plain = {e.line for e in every if not isinstance(e.fact, Struck)}
    found.sort(key=lambda e: e.line)
    force: dict[int, Entry] = {}
    for strike in found:
        assert isinstance(strike.fact, Struck)
        if strike.fact.line in plain and strike.fact.line < strike.line:
            force[strike.fact.line] = strike
    return force


def _corrected(entry: Entry, strike: Entry) -> Entry | None:
    assert isinstance(strike.fact, Struck)
    if strike.fact.instead is None:
        return None
    return msgspec.structs.replace(
        entry, line=strike.line, words=strike.fact.words, fact=strike.fact.instead, who=strike.who
    )


def written_by(entries: Iterable[Entry], day: date) -> list[Entry]:
    """The entries written on or before a day: what was known then."""
    limit = f"{day.isoformat()}T24"
    return [e for e in entries if e.written < limit]


def done_by(entries: Iterable[Entry], day: date) -> list[Entry]:
    """The entries whose doing lies on or before a day; strikes stay, whenever they were made."""
    return [e for e in entries if e.day <= day or isinstance(e.fact, Struck)]
