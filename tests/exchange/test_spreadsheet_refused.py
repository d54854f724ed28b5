"""Files that are no spreadsheet, or a damaged one: refused whole, in three parts."""

from __future__ import annotations

import zipfile
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.exchange.sheets import EMPTY, book, table
from tests.exchange.test_spreadsheet import STOCK
from tests.exchange.test_spreadsheet import full as full
from witnessmark.exchange import csv_in, spreadsheet, xlsx_in
from witnessmark.exchange.spreadsheet import read_spreadsheet
from witnessmark.ground.errors import BadInput


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\n\n",
        b"just some words\nin a file\n",
        b"\x81\x8d\x8f\x90",
        b"name\0,side",
        b'name,"note\nnever closed',
    ],
)
def test_a_csv_that_is_none_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "a.csv").write_bytes(content)
    with pytest.raises(BadInput):
        read_spreadsheet(tmp_path / "a.csv", EMPTY)


# ---- files that are none ---------------------------------------------------------------------


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04", b"name,side", b"x" * 3000])
def test_an_xlsx_that_is_none_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "a.xlsx").write_bytes(content)
    with pytest.raises(BadInput, match="not a whole ZIP"):
        read_spreadsheet(tmp_path / "a.xlsx", EMPTY)


def test_a_zip_that_is_no_xlsx_is_refused(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "a.xlsx", "w") as packed:
        packed.writestr("about.json", "{}")
    with pytest.raises(BadInput, match="not an XLSX file"):
        read_spreadsheet(tmp_path / "a.xlsx", EMPTY)


def test_a_damaged_sheet_is_refused(full: Path) -> None:
    with zipfile.ZipFile(full) as packed:
        held = {name: packed.read(name) for name in packed.namelist()}
    held["xl/worksheets/sheet1.xml"] = held["xl/worksheets/sheet1.xml"][:300]
    with zipfile.ZipFile(full, "w") as packed:
        for name, content in held.items():
            packed.writestr(name, content)
    with pytest.raises(BadInput, match="not an XLSX file"):
        read_spreadsheet(full, EMPTY)


@given(st.integers(0, 9999), st.integers(1, 255))
def test_a_flipped_byte_is_told_or_does_no_harm(
    tmp_path_factory: pytest.TempPathFactory, where: int, flip: int
) -> None:
    path = book(tmp_path_factory.getbasetemp() / "flipped.xlsx", stock=STOCK)
    whole = bytearray(path.read_bytes())
    whole[where * len(whole) // 10_000] ^= flip
    path.write_bytes(whole)
    with suppress(BadInput):
        proposal = read_spreadsheet(path, EMPTY)
        assert proposal.troubles or proposal.rows_good in (0, 2)


def test_an_xlsx_that_would_swell_is_refused(full: Path) -> None:
    with zipfile.ZipFile(full, "a", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/media/bomb.xml", bytes(2**23))
    with pytest.raises(BadInput, match="would swell"):
        read_spreadsheet(full, EMPTY)


def test_a_sheet_nobody_filled_in_by_hand_is_refused(full: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(xlsx_in, "MOST_ROWS", 2)
    with pytest.raises(BadInput, match="rows"):
        read_spreadsheet(full, EMPTY)
    monkeypatch.setattr(csv_in, "MOST_ROWS", 2)
    with pytest.raises(BadInput, match="more than 2 rows"):
        read_spreadsheet(table(full.with_suffix(".csv"), ["item"], ["a"], ["b"]), EMPTY)
    monkeypatch.setattr(spreadsheet, "MOST_BYTES", 10)
    with pytest.raises(BadInput, match="is larger than"):
        read_spreadsheet(full, EMPTY)


@pytest.mark.parametrize("name", ["a.ods", "a.xls", "a", "a.pdf"])
def test_another_kind_of_file_is_refused(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_bytes(b"x")
    with pytest.raises(BadInput, match="neither an XLSX nor a CSV"):
        read_spreadsheet(tmp_path / name, EMPTY)


def test_no_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be read"):
        read_spreadsheet(tmp_path / "a.xlsx", EMPTY)
