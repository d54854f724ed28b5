"""The history file of a record: the sheet, and the photos it is printed with."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from witnessmark.exchange.pictures import smaller
from witnessmark.ground.errors import BadInput
from witnessmark.journal.order import in_force
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.photos import photo_content
from witnessmark.restoration.sheet import words_of
from witnessmark.sheets.history import History, history_sheet
from witnessmark.sheets.rows import Pictures, Sheet

EDGE = 1000  # points of a printed photo, at most: 85 mm wide, that is 300 to the inch


def history_screen(flow: Flow) -> Sheet:
    """The whole restoration as one sheet."""
    made = History(
        entries=flow.album.held,
        struck=len(in_force(flow.entries)),
        state=flow.state,
        photos=flow.album.photos,
        pairs=flow.album.pairs,
        road=flow.gate("road"),
        words=words_of(flow),
    )
    return history_sheet(made, today=flow.today)


def printed_photos(folder: Path, sheet: Sheet) -> dict[str, bytes]:
    """The photos of a sheet, brought to the size they are printed at; one that is lost is left out."""
    names = {
        picture.file
        for section in sheet.sections
        for row in section.rows
        if isinstance(row, Pictures)
        for picture in row.pictures
    }
    found = {}
    for name in sorted(names):
        with suppress(BadInput):
            found[name] = smaller(photo_content(folder, name), EDGE)
    return found
