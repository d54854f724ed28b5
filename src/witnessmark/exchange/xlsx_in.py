"""An XLSX file as its sheets. The library for it is imported only when such a file is read."""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any

from witnessmark.exchange.csv_in import MOST_ROWS, too_long
from witnessmark.exchange.grid import Cell, RawSheet
from witnessmark.exchange.guard import unguarded
from witnessmark.exchange.zip_reading import members, opened, refused
from witnessmark.ground.errors import BadInput

_WRONG = frozenset(("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!"))


def read_xlsx(path: Path) -> tuple[RawSheet, ...]:
    """Every sheet that has anything in it.

    Raises BadInput for a file that is no XLSX file, is damaged, or would swell beyond all sense.
    """
    with opened(path) as packed:
        members(packed, path, lambda name: True)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the library warns of drawings and rules it does not keep
            return tuple(sheet for sheet in _sheets(path) if sheet.rows)
    except BadInput:
        raise
    except Exception as trouble:  # whatever a library raises on a file that was made to break it
        raise refused(path, f"is not an XLSX file that can be read: {trouble}") from trouble


def _sheets(path: Path) -> Iterator[RawSheet]:
    import openpyxl

    raw = path.read_bytes()
    values = openpyxl.load_workbook(io.BytesIO(raw), read_only=True, data_only=True)
    formulas = openpyxl.load_workbook(io.BytesIO(raw), read_only=True)
    try:
        for sheet, asked in zip(values.worksheets, formulas.worksheets, strict=True):
            sheet.reset_dimensions()
            asked.reset_dimensions()
            rows = zip(sheet.iter_rows(values_only=True), asked.iter_rows(values_only=True), strict=True)
            yield RawSheet(sheet.title, tuple(_filled(rows, path)))
    finally:
        values.close()
        formulas.close()


def _filled(
    rows: Iterable[tuple[tuple[Any, ...], tuple[Any, ...]]], path: Path
) -> Iterator[tuple[int, tuple[Cell, ...]]]:
    for number, (values, formulas) in enumerate(rows, 1):
        if number > MOST_ROWS:
            raise too_long(path)
        cells = tuple(cell_of(value, formula) for value, formula in zip(values, formulas, strict=True))
        if any(cell.text.strip() for cell in cells):
            yield number, cells


def cell_of(value: object, formula: object = None) -> Cell:
    """A value as a spreadsheet keeps it, as text.

    >>> cell_of(4.0), cell_of(None), cell_of(" M8 ").text
    (Cell(text='4', odd=''), Cell(text='', odd=''), ' M8 ')
    """
    match value:
        case None if formula is not None:
            return Cell(str(formula), "a formula nobody has worked out yet")
        case None:
            return Cell("")
        case str() if value in _WRONG:
            return Cell(value, "the answer of a formula that went wrong")
        case str():
            return Cell(unguarded(value))
        case bool():
            return Cell(str(value).upper(), "a yes or no, which no column takes")
        case float() if value.is_integer():
            return Cell(str(int(value)))
        case date() | datetime() | time() | timedelta():
            return Cell(str(value), "a date, which a spreadsheet program makes of sizes such as 1/2")
        case _:
            return Cell(str(value))
