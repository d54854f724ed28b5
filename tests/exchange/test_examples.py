"""The examples and the page beside them say what the program does today."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import openpyxl
import pytest

from scripts.spreadsheet_examples import EXAMPLES, make
from tests.exchange.sheets import EMPTY, book, table, vehicle_of
from witnessmark.exchange.columns import OWED_HEADINGS, SHEETS, headings_of
from witnessmark.exchange.spreadsheet import read_spreadsheet
from witnessmark.vehicle.things import Part

PAGE = EXAMPLES.parent / "spreadsheet.md"
STALE = "run scripts/spreadsheet_examples.py"


def cells(path: Path) -> dict[str, list[list[object]]]:
    """Every filled cell of a file, by sheet."""
    if path.suffix == ".csv":
        with path.open(encoding="utf-8-sig", newline="") as file:
            return {"": [list(row) for row in csv.reader(file)]}
    opened = openpyxl.load_workbook(path)
    found = {
        sheet.title: [list(row) for row in sheet.iter_rows(values_only=True)] for sheet in opened.worksheets
    }
    opened.close()
    return found


def test_the_examples_are_those_the_script_makes(tmp_path: Path) -> None:
    fresh = {path.name: cells(path) for path in make(tmp_path)}
    kept = {path.name: cells(path) for path in EXAMPLES.glob("spreadsheet-*")}
    assert kept == fresh, STALE


def test_the_filled_example_is_taken_whole() -> None:
    proposal = read_spreadsheet(EXAMPLES / "spreadsheet-filled.xlsx", EMPTY)
    assert proposal.troubles == ()
    assert {row.sheet for row in proposal.good} == set(SHEETS)


def test_the_csv_twins_say_what_the_filled_example_says() -> None:
    whole = read_spreadsheet(EXAMPLES / "spreadsheet-filled.xlsx", EMPTY)
    parts = read_spreadsheet(EXAMPLES / "spreadsheet-filled-parts.csv", EMPTY)
    known = vehicle_of(*(part for fact in parts.facts for part in fact.parts))  # type: ignore[union-attr]
    joints = read_spreadsheet(EXAMPLES / "spreadsheet-filled-joints.csv", known)
    known = vehicle_of(
        *known.parts.values(),
        *(joint for fact in joints.facts for joint in fact.joints),  # type: ignore[union-attr]
    )
    jobs = read_spreadsheet(EXAMPLES / "spreadsheet-filled-jobs.csv", known)
    stock = read_spreadsheet(EXAMPLES / "spreadsheet-filled-stock.csv", known)
    offers = read_spreadsheet(EXAMPLES / "spreadsheet-filled-offers.csv", known)
    suppliers = read_spreadsheet(EXAMPLES / "spreadsheet-filled-suppliers.csv", known)
    apart = (parts, joints, jobs, stock, offers, suppliers)
    assert tuple(fact for one in apart for fact in one.facts) == whole.facts


@pytest.mark.parametrize("sheet", SHEETS)
def test_the_page_tells_every_column_with_its_example(sheet: str) -> None:
    text = PAGE.read_text(encoding="utf-8")
    section = text.split(f"\n## {sheet}\n")[1].split("\n## ")[0]
    rows = re.findall(r"^\| (.+?) \| (.+?) \| (.+?) \|$", section, re.MULTILINE)[1:]
    assert rows == [
        (column.heading + (" (needed)" if column.needed else ""), column.says, column.example)
        for column in SHEETS[sheet]
    ]


def test_the_page_tells_what_is_owed_in_the_columns_it_is_written_in() -> None:
    assert ", ".join(OWED_HEADINGS) in PAGE.read_text(encoding="utf-8")


@pytest.mark.parametrize("sheet", SHEETS)
def test_every_example_on_the_page_is_one_the_program_takes(tmp_path: Path, sheet: str) -> None:
    named = ("wheel", "hub cap", "axle cover", "wheel cylinder, left rear", "brake drum")
    known = vehicle_of(*(Part(name=name) for name in named))
    row = [column.example for column in SHEETS[sheet]]
    for path in (
        book(tmp_path / "a.xlsx", **{sheet: [list(headings_of(sheet)), row]}),
        table(tmp_path / "a.csv", headings_of(sheet), row),
    ):
        proposal = read_spreadsheet(path, known)
        assert proposal.troubles == ()
        assert proposal.rows_good == 1
