"""Short ways to make spreadsheets for tests."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import openpyxl

from witnessmark.exchange.grid import RowTrouble
from witnessmark.vehicle.things import Joint, Part, Vehicle

EMPTY = Vehicle()


def book(path: Path, **sheets: Sequence[Sequence[Any]]) -> Path:
    """An XLSX file made by the library itself, not by our writer."""
    made = openpyxl.Workbook()
    made.remove(made.active)
    for name, rows in sheets.items():
        sheet = made.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    made.save(path)
    made.close()
    return path


def table(path: Path, *rows: Sequence[str], delimiter: str = ",", encoding: str = "utf-8") -> Path:
    """A CSV file."""
    with path.open("w", encoding=encoding, newline="") as file:
        csv.writer(file, delimiter=delimiter).writerows(rows)
    return path


def vehicle_of(*things: Part | Joint, country: str = "") -> Vehicle:
    """A vehicle with these things."""
    return Vehicle(
        country=country,
        parts={thing.name: thing for thing in things if isinstance(thing, Part)},
        joints={thing.name: thing for thing in things if isinstance(thing, Joint)},
    )


def places(troubles: Sequence[RowTrouble]) -> list[tuple[str, int, str]]:
    """Where each trouble stands."""
    return [(trouble.sheet, trouble.row, trouble.column) for trouble in troubles]
