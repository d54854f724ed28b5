"""Writing a spreadsheet: what the record knows of parts and joints, in the columns it is read by.

The library for XLSX is imported only when such a file is written.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any

from witnessmark.exchange.beside import written_beside
from witnessmark.exchange.cells import JOB_WORDS
from witnessmark.exchange.columns import COMPUTED, OWED_HEADINGS, SHEETS, headings_of
from witnessmark.exchange.guard import guarded
from witnessmark.exchange.rows_out import OutRow, joint_rows, owed_rows, part_rows
from witnessmark.ground.missed import IfMissed
from witnessmark.ground.pedigree import STANDINGS
from witnessmark.vehicle.sides import SIDES
from witnessmark.vehicle.things import Vehicle

_UNPRINTABLE = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff\ud800-\udfff]")
_WIDEST = 40
BLANK_ROWS = 60
_CHOICES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "side": SIDES,
        "source": STANDINGS,
        "if missed": tuple(rung.words for rung in IfMissed),
        "job": JOB_WORDS,
    }
)
_AS_TEXT = "@"  # so that a spreadsheet program leaves 1/2 alone


def write_spreadsheet(path: Path, vehicle: Vehicle, owed: Iterable[Mapping[str, object]] = ()) -> None:
    """Write parts, joints and, to be read only, what is owed, as XLSX.

    owed  rows as `owed --json` gives them

    Read again by `read_spreadsheet` it describes the same parts and joints.
    Raises BadInput where the file cannot be written.
    """
    sheets: dict[str, Sequence[OutRow]] = {"parts": part_rows(vehicle), "joints": joint_rows(vehicle)}
    if due := owed_rows(owed):
        sheets[COMPUTED] = due
    write_workbook(path, sheets)


def write_workbook(path: Path, sheets: Mapping[str, Sequence[OutRow]], *, choices: bool = False) -> None:
    """Write sheets of rows, each under its own headings, as XLSX.

    choices  offer the words to choose from where only few will do
    """
    import openpyxl

    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        _fill(sheet, name, rows)
        if choices:
            _offer(sheet, name, len(rows))
    with written_beside(path) as beside:
        book.save(beside)


def write_blank(path: Path) -> None:
    """Write an empty spreadsheet to fill in, with the words to choose from at the cells that want one."""
    write_workbook(path, dict.fromkeys(SHEETS, [{}] * BLANK_ROWS), choices=True)


def write_csv(path: Path, sheet: str, rows: Sequence[OutRow]) -> None:
    """Write one sheet as CSV, in UTF-8 with the mark spreadsheet programs look for."""
    headings = _headings(sheet)
    with written_beside(path) as beside, beside.open("w", encoding="utf-8-sig", newline="") as file:
        lines = csv.writer(file)
        lines.writerow(headings)
        lines.writerows([_cell(row.get(heading, "")) for heading in headings] for row in rows)


def _headings(sheet: str) -> tuple[str, ...]:
    return headings_of(sheet) if sheet in SHEETS else OWED_HEADINGS


def _cell(value: str | int) -> str | int:
    if isinstance(value, int):
        return value
    return guarded(_UNPRINTABLE.sub("\N{REPLACEMENT CHARACTER}", value))


def _fill(sheet: Any, name: str, rows: Sequence[OutRow]) -> None:
    from openpyxl.styles import Alignment, Font
    from openpyxl.utils import get_column_letter

    headings = _headings(name)
    sheet.append(headings)
    for row in rows:
        sheet.append(
            [_cell(value) if (value := row.get(heading, "")) != "" else None for heading in headings]
        )
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    for cells in sheet.iter_rows(min_row=2):
        for cell in cells:
            cell.alignment = Alignment(wrap_text=True, vertical="top")
            if not isinstance(cell.value, int):
                cell.number_format = _AS_TEXT
    for place, heading in enumerate(headings, 1):
        longest = max([len(heading), *(len(str(row.get(heading, ""))) for row in rows)])
        sheet.column_dimensions[get_column_letter(place)].width = min(longest, _WIDEST) + 3
    sheet.freeze_panes = "B2"
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.print_title_rows = "1:1"


def _offer(sheet: Any, name: str, rows: int) -> None:
    """A list to choose from; another word may still be typed, and is looked at when the file is read."""
    from openpyxl.utils import get_column_letter
    from openpyxl.worksheet.datavalidation import DataValidation

    for place, heading in enumerate(_headings(name), 1):
        if words := _CHOICES.get(heading):
            offered = f'"{",".join(words)}"'
            choice = DataValidation(type="list", formula1=offered, allow_blank=True, showErrorMessage=False)
            choice.add(f"{get_column_letter(place)}2:{get_column_letter(place)}{rows + 1}")
            sheet.add_data_validation(choice)
