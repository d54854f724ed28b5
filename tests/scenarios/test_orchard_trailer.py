"""A vehicle that is not the demo: a two-wheeled trailer with a rotten drawbar, from `begin` to an empty gate.

Spreadsheet first, then lines as typed on a Saturday, then whatever the gate still holds.
"""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from tests.cli.running import run

JOINTS = [
    ("name", "side", "part of", "kind", "holds", "behind", "number", "figure", "source", "where"),
    ("wheel nuts", "left", "axle", "wheel nuts", "wheel, left", None, 4, "90 N·m", "owner's book", "p. 6"),
    (
        "wheel nuts",
        "right",
        "axle",
        "wheel nuts",
        "wheel, right",
        None,
        4,
        "90 N·m",
        "owner's book",
        "p. 6",
    ),
    ("hub nut", "left", "axle", "taper-roller-bearing", "hub, left", "wheel, left", 1, None, None, None),
    ("hub nut", "right", "axle", "taper-roller-bearing", "hub, right", "wheel, right", 1, None, None, None),
    (
        "drawbar bolts",
        None,
        "drawbar",
        "structural-bolts",
        "drawbar",
        None,
        4,
        "80 N·m",
        "owner's book",
        "p. 9",
    ),
    ("coupling head bolts", None, "drawbar", "drawbar-coupling", "coupling head", None, 2, None, None, None),
    ("drawbar patch", None, "drawbar", "mount-area-weld", None, "drawbar", None, None, None, None),
    ("trailer earth", None, "lamps", "earth-point", None, None, 1, None, None, None),
]
PARTS = [
    ("name", "side", "part of"),
    ("wheel", "left", "axle"),
    ("wheel", "right", "axle"),
    ("hub", "left", "axle"),
    ("hub", "right", "axle"),
    ("drawbar", None, "drawbar"),
    ("coupling head", None, "drawbar"),
]
JOBS = [("job", "thing", "well", "likely", "if it fights"), ("make good", "drawbar patch", 120, 300, 720)]
STOCK = [("item", "number"), ("hub split pin", 2), ("hub grease seal", 2), ("wheel bearing grease", 1)]

SATURDAY = """
@ 2026-03-14 09:10
took off drawbar
found drawbar rotten, more rust than steel
undid coupling head bolts
cut out drawbar patch
took off wheel left
took off hub nut left
found hub nut left good
downed tools: trailer earth finger tight
held 9:00 to 12:30 with helper
"""

NEXT_SATURDAY = """
@ 2026-03-21 09:00
welded drawbar patch
@ 2026-03-21 11:40
last spark drawbar patch
@ 2026-03-21 12:50
watched fire drawbar patch
coated drawbar patch epoxy primer last coat
fitted new drawbar
closed drawbar patch seen
closed drawbar bolts 80 Nm
closed coupling head bolts 45 Nm
fitted hub left
closed hub nut left 0.08 mm
fitted wheel left
closed wheel nuts left 90 Nm
tight trailer earth
proved trailer earth
"""


@pytest.fixture
def trailer(tmp_path: Path) -> Path:
    folder = tmp_path / "Anhänger im Obstgarten"
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in (("parts", PARTS), ("joints", JOINTS), ("jobs", JOBS), ("stock", STOCK)):
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    book.save(tmp_path / "trailer.xlsx")
    begun = run(folder, "begin", "the orchard trailer", "--body", "trailer", "--country", "GB")
    assert begun.code == 0, begun
    taken = run(folder, "import", str(tmp_path / "trailer.xlsx"))
    assert taken.code == 0, taken
    return folder


def write(folder: Path, text: str) -> None:
    file = folder / "lines.txt"
    file.write_text(text, encoding="utf-8")
    said = run(folder, "write", "--file", str(file), "--yes")
    assert said.code == 0, said


def states(folder: Path) -> dict[str, str]:
    return {row["joint"]: row["state"] for row in run(folder, "state", "--json").json()}


def test_from_begin_to_an_empty_gate(trailer: Path) -> None:
    new = run(trailer, "gate", "road", "--json").json()
    assert new["not_known"]
    assert new["holds"] == []

    write(trailer, SATURDAY)
    afternoon = states(trailer)
    assert afternoon["drawbar bolts"] == "apart"
    assert afternoon["hub nut, left"] == "apart"
    assert afternoon["trailer earth"] == "loose"
    assert afternoon["hub nut, right"] == "as found"
    held = run(trailer, "gate", "road", "--json").json()
    assert held["holds"][0]["if_missed"] == "lets_go"
    assert run(trailer, "gate", "road").code == 1
    owed = run(trailer, "owed", "--json").json()
    assert all(row["line"] and row["because"] for row in owed)
    needs = {row["what"]: row for row in run(trailer, "needs", "--json").json()}
    assert any("pin" in what and row["have"] for what, row in needs.items())
    session = run(trailer, "session", "--hours", "4", "--helper", "--json").json()
    assert session["operations"]
    assert 0 <= session["chance"] <= 1

    write(trailer, NEXT_SATURDAY)
    assert states(trailer)["drawbar bolts"] == "proven"
    pay_everything(trailer)
    road = run(trailer, "gate", "road", "--json")
    assert road.code == 0, road.json()
    assert road.json()["headline"] == "Road: nothing known holds. This is not a release."
    assert run(trailer, "check").code == 0


def pay_everything(folder: Path, rounds: int = 4) -> None:
    """Type the line that each hold says would pay it, a few times over; what no line pays stays."""
    for _ in range(rounds):
        answer = run(folder, "gate", "road", "--json").json()
        lines = [row["pays"].replace("FIGURE", "4 mm") for row in (*answer["holds"], *answer["not_known"])]
        if not lines:
            return
        for line in dict.fromkeys(lines):
            said = run(folder, "write", line, "--yes")
            assert said.code == 0, (line, said)
