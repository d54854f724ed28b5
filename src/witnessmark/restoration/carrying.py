"""Taking a record in and out: archives, spreadsheets. Nothing is taken by halves."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from msgspec import Struct

from witnessmark.exchange.archive import read_archive, unpack_photos, write_archive
from witnessmark.exchange.grid import RowTrouble
from witnessmark.exchange.spreadsheet import read_spreadsheet
from witnessmark.exchange.spreadsheet_out import write_spreadsheet
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.plain import owed_rows
from witnessmark.restoration.restoration import Restoration
from witnessmark.store.opening import create, holds_record, open_record
from witnessmark.store.photo_folder import FOLDER, photos_named

SHEETS = (".xlsx", ".csv")


class Taken(Struct, frozen=True, kw_only=True):
    """What an import did: lines written, rows good, and the rows that would not do."""

    written: int
    good: int
    troubles: tuple[RowTrouble, ...] = ()


def import_file(folder: Path, file: Path, *, take_good: bool, now: datetime) -> Taken:
    """Take a spreadsheet into a record, or an archive into an empty folder."""
    if file.suffix.lower() == ".zip":
        stored = take_archive(folder, file)
        return Taken(written=stored, good=stored)
    if file.suffix.lower() not in SHEETS:
        raise BadInput(
            given=f"{file.name} is of no kind that can be read",
            holds="an archive (.zip) or a spreadsheet (.xlsx, .csv)",
            do="Save it as one of these.",
        )
    restoration = Restoration(open_record(folder), now=now)
    proposal = read_spreadsheet(file, restoration.flow().vehicle)
    if proposal.troubles and not take_good:
        return Taken(written=0, good=proposal.rows_good, troubles=proposal.troubles)
    facts = [(fact, row.words) for row in proposal.good for fact in row.facts]
    written = restoration.write_facts(facts) if facts else ()
    return Taken(written=len(written), good=proposal.rows_good, troubles=proposal.troubles)


def take_archive(folder: Path, file: Path, *, kept_at: str = "") -> int:
    """Take an archive into a folder without a record: photos first, then all its lines; how many."""
    archive = read_archive(file)
    if holds_record(folder):
        raise BadInput(
            given=f"{folder} already holds a record",
            holds="an archive is taken into a folder without one",
            do="Name a new folder, as: witnessmark --in copy import the-archive.zip",
        )
    if archive.photos:
        unpack_photos(file, folder / FOLDER)
    with create(folder, kept_at=kept_at) as record:
        return len(record.append(archive.entries, 0))


def export_file(restoration: Restoration, folder: Path, file: Path) -> int:
    """Write the record as an archive, or the described vehicle as a spreadsheet; how many lines went."""
    if file.suffix.lower() == ".zip":
        named = photos_named(restoration.entries)
        write_archive(file, restoration.entries, folder / FOLDER, only=named)
        return len(restoration.entries)
    if file.suffix.lower() == ".xlsx":
        flow = restoration.flow()
        write_spreadsheet(file, flow.vehicle, owed_rows(flow.owed))
        return len(restoration.entries)
    raise BadInput(
        given=f"{file.name} names no kind that can be written",
        holds="an archive (.zip) or a spreadsheet (.xlsx)",
        do="Give the file one of these endings.",
    )
