"""A spreadsheet of parts, joints, jobs, stock, offers and suppliers, read into facts that wait to be taken.

Nothing is written here. Every row that cannot be taken is named with its sheet, row and column, all
of them at once; the good rows wait until the person says to take them without the bad.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct

from witnessmark.exchange.columns import COMPUTED, SHEETS, plain_heading, sheet_told_by
from witnessmark.exchange.csv_in import read_csv
from witnessmark.exchange.grid import RawSheet, Row, RowTrouble, rows_of, trouble_at
from witnessmark.exchange.row_read import Read
from witnessmark.exchange.rows_in import READERS, assembly_in, name_in
from witnessmark.exchange.xlsx_in import read_xlsx
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import AnyFact
from witnessmark.vehicle.things import Vehicle

MOST_BYTES = 64 * 2**20


class GoodRow(Struct, frozen=True, kw_only=True):
    """A row that can be taken: its facts, and the row as it was typed."""

    sheet: str
    row: int
    words: str
    facts: tuple[AnyFact, ...]


class Proposal(Struct, frozen=True, kw_only=True):
    """What a spreadsheet would write: the good rows in order, and everything wrong with the others."""

    good: tuple[GoodRow, ...]
    troubles: tuple[RowTrouble, ...]

    @property
    def facts(self) -> tuple[AnyFact, ...]:
        """The facts of every good row, descriptions before what leans on them."""
        return tuple(fact for row in self.good for fact in row.facts)

    @property
    def rows_good(self) -> int:
        """How many rows can be taken."""
        return len(self.good)


def read_spreadsheet(path: Path, vehicle: Vehicle) -> Proposal:
    """Read an XLSX file, or a CSV file with one sheet, against what the record knows.

    Raises BadInput only where the file as a whole cannot be read.
    """
    rows: list[Row] = []
    troubles: list[RowTrouble] = []
    for raw in _raw_sheets(path):
        subject, trouble = _subject_of(raw)
        troubles += trouble
        if subject:
            found, bad = rows_of(raw, subject)
            rows += found
            troubles += bad
    rows.sort(key=lambda row: list(SHEETS).index(row.sheet))
    reads = _read_all(rows, vehicle)
    good = tuple(_good(read) for read in reads if not read.row.troubles)
    troubles += [trouble for row in rows for trouble in row.troubles]
    return Proposal(good=good, troubles=tuple(troubles))


def _raw_sheets(path: Path) -> tuple[RawSheet, ...]:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise _too_large(path)
        match path.suffix.casefold():
            case ".xlsx" | ".xlsm":
                return read_xlsx(path)
            case ".csv" | ".txt" | ".tsv":
                return (read_csv(path),)
    except OSError as trouble:
        raise BadInput(
            given=f"{path} cannot be read: {trouble.strerror or trouble}",
            holds="a file this user may read",
            do="Look at its name and its rights.",
        ) from trouble
    raise BadInput(
        given=f"{path} is neither an XLSX nor a CSV file",
        holds="a name that ends in .xlsx or .csv",
        do="Save it again as one of the two.",
    )


def _too_large(path: Path) -> BadInput:
    return BadInput(
        given=f"{path} is larger than {MOST_BYTES // 2**20} MiB",
        holds="a spreadsheet of parts and joints",
        do="Take pictures and other sheets out of it.",
    )


def _subject_of(raw: RawSheet) -> tuple[str, list[RowTrouble]]:
    """Which subject a sheet is about: told by its name, else by its headings."""
    title = plain_heading(raw.name)
    if title in SHEETS:
        return title, []
    if title == COMPUTED:
        return "", []  # worked out from the record, and not for anybody to fill in
    number, headings = raw.rows[0]
    told = sheet_told_by(frozenset(plain_heading(cell.text) for cell in headings))
    if told:
        return told, []
    unknown = BadInput(
        given=f"the sheet {raw.name!r} is about nothing known",
        holds=f"a sheet named {', '.join(SHEETS)}",
        do="Name it so, or take it out; nothing on it was read.",
    )
    return "", [trouble_at(raw.name, number, "", unknown)]


def _read_all(rows: list[Row], vehicle: Vehicle) -> list[Read]:
    """Read every row, then put aside those that lean on a row which cannot be taken."""
    known = frozenset({*vehicle.parts, *vehicle.joints, *vehicle.assemblies, *_assemblies(vehicle)})
    named = [(row, names) for row in rows if (names := _names_brought(row, vehicle))]
    _note_doubles(rows, vehicle)
    mentioned = known | {name for _, names in named for name in names}
    reads = [READERS[row.sheet](row, vehicle, mentioned) for row in rows]
    while True:
        sound = known | {name for row, names in named if not row.troubles for name in names}
        leaning = [read for read in reads if not read.row.troubles and _leans_badly(read, sound)]
        if not leaning:
            return reads
        for read in leaning:
            for heading, name in read.leans_on:
                if name not in sound:
                    read.row.note(heading, _bad_row(name))


def _assemblies(vehicle: Vehicle) -> set[str]:
    return {part.assembly for part in vehicle.parts.values() if part.assembly}


def _names_brought(row: Row, vehicle: Vehicle) -> frozenset[str]:
    """The names a row would describe, whether or not the rest of it can be read."""
    if row.sheet not in ("parts", "joints") or not row.text("name"):
        return frozenset()
    quiet = Row(row.sheet, row.number, row.cells)
    return frozenset({name_in(quiet, vehicle)[0], assembly_in(quiet)}) - {""}


def _note_doubles(rows: list[Row], vehicle: Vehicle) -> None:
    first: dict[tuple[str, str], int] = {}
    for row in rows:
        if row.sheet not in ("parts", "joints") or not row.text("name"):
            continue
        name = name_in(Row(row.sheet, row.number, row.cells), vehicle)[0]
        at = first.setdefault((row.sheet, name), row.number)
        if at != row.number:
            row.note("name", _double(name, at))


def _leans_badly(read: Read, sound: frozenset[str]) -> bool:
    return any(name not in sound for _, name in read.leans_on)


def _double(name: str, row: int) -> BadInput:
    return BadInput(
        given=f"{name} already stands in row {row}",
        holds="one row for each thing",
        do="Put both rows into one, or give this one its side.",
    )


def _bad_row(name: str) -> BadInput:
    return BadInput(
        given=f"{name} stands in a row that cannot be taken",
        holds="a row for it that is right",
        do="Mend that row, then import again.",
    )


def _good(read: Read) -> GoodRow:
    row = read.row
    return GoodRow(sheet=row.sheet, row=row.number, words=row.as_typed, facts=read.facts)
