"""Bad input at every command: three parts, exit code 2, nothing written."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import pytest

from tests.cli.running import run

LINES = """
@ 2026-03-07 10:00
new joint: hub nut left rear, tapered drive hub
new joint: pinion seal, pinion seal
took off hub nut left rear
found pinion seal stuck
"""


@pytest.fixture(scope="module")
def vehicle(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small record, and a few files beside it that will not do."""
    folder = tmp_path_factory.mktemp("vehicle")
    assert run(folder, "begin", "test vehicle").code == 0
    (folder / "lines.txt").write_text(LINES, encoding="utf-8")
    said = run(folder, "write", "--file", str(folder / "lines.txt"), "--yes")
    assert said.code == 0, said.err
    (folder / "doubtful.txt").write_text(
        "took off hub nut left rear\ntightned wobble sprocket\n", encoding="utf-8"
    )
    (folder / "badday.txt").write_text("@ 2026-33-07\ntook off hub nut left rear\n", encoding="utf-8")
    (folder / "latin.txt").write_bytes("graißed the hub".encode("latin-1"))
    (folder / "notes.docx").write_bytes(b"PK")
    (folder / "broken.zip").write_bytes(b"not an archive")
    (folder / "broken.xlsx").write_bytes(b"not a spreadsheet")
    (folder / "bad.csv").write_text("name,kind,figure\nhub nut,wibble,47\n", encoding="utf-8")
    (folder / "columns.csv").write_text("name,kind,colour\nhub nut,wheel-nuts,red\n", encoding="utf-8")
    return folder


BAD = [
    ("brgin", "x"),
    ("begin", ""),
    ("begin", "again"),
    ("begin", "x", "--body", "spaceship"),
    ("begin", "x", "--country", "England"),
    ("begin",),
    ("write",),
    ("write", "   "),
    ("write", "tightned wobble sprocket", "--yes"),
    ("write", "took off frobnicator left rear", "--yes"),
    ("write", "took off frobnicator", "--yes", "--kind", "wibble-kind"),
    ("write", "took off hub nut left rear"),
    ("write", "took off hub nut left rear", "--yes", "--nonsense"),
    ("write", "--file", "absent.txt", "--yes"),
    ("write", "--file", "lines.txt"),
    ("write", "--file", "doubtful.txt", "--yes"),
    ("write", "--file", "badday.txt", "--yes"),
    ("write", "--file", "latin.txt", "--yes"),
    ("write", "tight hub nut left rear", "--file", "lines.txt", "--yes"),
    ("strike", "2"),
    ("strike", "999", "--why", "wrong"),
    ("strike", "0", "--why", "wrong"),
    ("strike", "two", "--why", "wrong"),
    ("strike", "2", "--why", "wrong"),
    ("strike", "4", "--why", "wrong", "--instead", "tightned wobble sprocket"),
    ("journal", "--last", "0"),
    ("journal", "--on", "yesterday"),
    ("owed", "--on", "2026-13-01"),
    ("owed", "extra"),
    ("gate",),
    ("gate", "raod"),
    ("gate", "road", "--on", "14/3/2026"),
    ("reach",),
    ("reach", "frobnicator"),
    ("session", "--hours", "0"),
    ("session", "--hours", "-3"),
    ("session", "--hours", "nan"),
    ("session", "--hours", "three"),
    ("session", "--hours", "99"),
    ("needs", "--done-by", "soon"),
    ("buy", "--seconds", "0"),
    ("buy", "--seconds", "long"),
    ("buy", "--worth", "-40"),
    ("buy", "--worth", "a lot"),
    ("buy", "--worth", "€40 quid"),
    ("buy", "--on", "soon"),
    ("sheet",),
    ("sheet", "wallpaper"),
    ("sheet", "closing"),
    ("sheet", "closing", "--of", "frobnicator"),
    ("sheet", "gate", "--gate", "raod"),
    ("sheet", "wall", "--pdf", "absent-folder/wall.pdf"),
    ("import", "absent.xlsx"),
    ("import", "notes.docx"),
    ("import", "broken.zip"),
    ("import", "broken.xlsx"),
    ("import", "bad.csv"),
    ("import", "columns.csv"),
    ("export", "record.doc"),
    ("export", "absent-folder/record.zip"),
    ("check", "--nonsense"),
]


def contents(folder: Path) -> list[tuple[object, ...]]:
    with sqlite3.connect(folder / "journal.db") as connection:
        rows = connection.execute("SELECT * FROM entries ORDER BY line").fetchall()
    connection.close()
    return rows


@pytest.mark.parametrize("words", BAD, ids=lambda words: " ".join(words) or "nothing")
def test_bad_input_is_told_in_three_parts_and_changes_nothing(vehicle, words, monkeypatch):
    monkeypatch.chdir(vehicle)
    before = contents(vehicle)
    said = run(vehicle, *words)
    assert said.code == 2, said
    assert "Given:" in said.err
    assert "Would hold:" in said.err
    assert "Do:" in said.err
    assert "Traceback" not in said.err + said.out
    assert contents(vehicle) == before


@pytest.mark.parametrize("words", [w for w in BAD if w], ids=lambda words: " ".join(words) or "nothing")
def test_a_script_gets_the_same_three_parts_as_json(vehicle, words, monkeypatch):
    monkeypatch.chdir(vehicle)
    before = contents(vehicle)
    said = run(vehicle, *words, "--json")
    assert said.code == 2, said
    assert contents(vehicle) == before
    if "--file" in words and said.out:
        assert said.json()["written"] == 0
    elif words[0] == "write" and said.out:
        assert said.json()["line"] is None
    elif words[0] == "import" and said.out:
        assert said.json()["troubles"]
    elif said.err:
        assert set(json.loads(said.err)["error"]) == {"given", "holds", "do", "near"}


@pytest.mark.parametrize("command", ["owed", "journal", "session", "check"])
def test_a_folder_without_a_record_is_said_so(tmp_path, command):
    said = run(tmp_path, command)
    assert said.code == 2
    assert "no record" in said.err


def test_near_names_are_offered():
    said = run(Path(), "gaet", "road")
    assert "gate" in said.err


def test_there_are_more_than_forty():
    assert len(set(BAD)) >= 40
