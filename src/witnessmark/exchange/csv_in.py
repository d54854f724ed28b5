"""A CSV file as one sheet: its encoding, its separator and its subject are told by itself."""

from __future__ import annotations

import csv
import io
from pathlib import Path

from witnessmark.exchange.columns import SHEETS, headings_of, plain_heading, sheet_told_by
from witnessmark.exchange.grid import Cell, RawSheet
from witnessmark.exchange.guard import unguarded
from witnessmark.ground.errors import BadInput

SEPARATORS = (",", ";", "\t")
MOST_ROWS = 20_000


def read_csv(path: Path) -> RawSheet:
    """The rows of a CSV file; the sheet's name is the subject its headings tell.

    Raises BadInput where it cannot be read, or its headings tell no subject.
    """
    text = _decoded(path)
    told = [_rows(text, separator, path) for separator in SEPARATORS]
    rows = max(told, key=_known_headings)
    subject = sheet_told_by(frozenset(_headings(rows)))
    if not subject:
        raise BadInput(
            given=f"{path} has no row of headings that is known",
            holds="; or ".join(f"{sheet}: {', '.join(headings_of(sheet))}" for sheet in SHEETS),
            do="Put the headings of one sheet in the first row.",
        )
    return RawSheet(subject, rows)


def _decoded(path: Path) -> str:
    raw = path.read_bytes()
    encodings = ("utf-16",) if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            text = raw.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise BadInput(
        given=f"{path} is not text",
        holds="a CSV file in UTF-8",
        do="Save it again as CSV, with UTF-8 as its encoding.",
    )


def _rows(text: str, separator: str, path: Path) -> tuple[tuple[int, tuple[Cell, ...]], ...]:
    rows: list[tuple[int, tuple[Cell, ...]]] = []
    try:
        for number, cells in enumerate(
            csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True), 1
        ):
            if number > MOST_ROWS:
                raise too_long(path)
            if any(cell.strip() for cell in cells):
                rows.append((number, tuple(Cell(unguarded(cell)) for cell in cells)))
    except csv.Error as trouble:
        raise BadInput(
            given=f"{path} is not a CSV file that can be read: {trouble}",
            holds="cells with a comma or semicolon between them, quotes in pairs",
            do="Save it again as CSV.",
        ) from trouble
    return tuple(rows)


def too_long(path: Path) -> BadInput:
    """The refusal of a sheet no person filled in."""
    return BadInput(
        given=f"{path} has more than {MOST_ROWS} rows", holds=f"at most {MOST_ROWS}", do="Take it in pieces."
    )


def _headings(rows: tuple[tuple[int, tuple[Cell, ...]], ...]) -> list[str]:
    return [plain_heading(cell.text) for cell in rows[0][1]] if rows else []


def _known_headings(rows: tuple[tuple[int, tuple[Cell, ...]], ...]) -> int:
    known = {heading for sheet in SHEETS for heading in headings_of(sheet)}
    return len(known.intersection(_headings(rows)))
