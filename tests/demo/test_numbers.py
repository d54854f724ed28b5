"""The demo's sheets carry the bench's numbers, and its needs the sizes to order by."""

from __future__ import annotations

import re

import pytest

from witnessmark.restoration.plain import needs_rows
from witnessmark.restoration.sheet import closing_screen, session_screen
from witnessmark.sheets.rows import JointRow, Number, Sheet, Step


def closing_lines(sheet: Sheet, joint: str) -> dict[str, Number]:
    """The lines of numbers under one joint of a closing sheet."""
    found: dict[str, Number] = {}
    standing = ""
    for row in (row for section in sheet.sections for row in section.rows):
        if isinstance(row, JointRow):
            standing = row.name
        elif isinstance(row, Number) and standing == joint:
            found[row.label] = row
    return found


@pytest.fixture(scope="module")
def axle(flow) -> Sheet:
    return closing_screen(flow, "drive axle")


def test_the_session_sheet_shows_figure_plausibility_and_spanner(flow):
    steps = [row for row in session_screen(flow, flow.session()).sections[0].rows if isinstance(row, Step)]
    fixings = next(step for step in steps if "put back and tighten wheel cylinder fixings" in step.text)
    assert [(n.label, n.value) for n in fixings.numbers] == [
        ("figure", "8 lbf ft"),
        ("spanner to try", "1/2 in AF"),
    ]
    assert fixings.numbers[0].pedigree == "owner's book, p 31; plausibility: within at 4.8 to 8.8"


def test_the_closing_sheet_of_the_axle_shows_what_its_joints_need(axle):
    bolts = closing_lines(axle, "propshaft bolts")
    assert bolts["figure"].plausibility == "doubtful at 4.8 and 5.8, within at 8.8"
    assert bolts["spanner to try"].where == "for 7/16 UNF, 4 off"
    seal = closing_lines(axle, "hub seal, left")
    assert (seal["size"].value, seal["size"].standing) == ("44.5 x 65 x 8", "measured")
    assert seal["driver"].value == "alloy sleeve 51 x 64.7"
    plug = closing_lines(axle, "axle fill plug")
    assert (plug["level"].value, plug["fluid"].value) == ("1.2 L", "gear oil ep90")


def test_the_weld_that_is_left_has_its_settings_and_no_strength(flow):
    sheet = closing_screen(flow, "outrigger repair left rear")
    welder = closing_lines(sheet, "closing plate seam, left rear")["welder"]
    assert "for 1.5 mm" in welder.where
    assert "0.8 mm wire" in welder.value


@pytest.mark.parametrize("hours", [3.0, 8.0])
def test_no_strength_stands_on_a_session_sheet(flow, hours):
    sheet = session_screen(flow, flow.session(hours, helper=True))
    numbers = [n for row in sheet.sections[0].rows if isinstance(row, Step) for n in row.numbers]
    assert len(numbers) >= 4
    assert not [n for n in numbers if re.search(r"\bk?N\b|MPa|proof|%", f"{n.value} {n.pedigree}")]
    steps = [row for row in sheet.sections[0].rows if isinstance(row, Step)]
    assert all(len(step.numbers) <= 3 for step in steps)


def test_needs_have_the_sizes_that_are_known(flow):
    sizes = {(row["what"], *row["for"]): row["size"] for row in needs_rows(flow.needs)}
    assert sizes["half-shaft seal", "hub seal, left"] == "44.5 x 65 x 8"
    assert sizes["u-bolt locking nuts", "axle u-bolts, left"] == "1/2 UNF"
    assert "1 × shaft seal 35 x 52 x 8 (gearbox rear seal)" in flow.session().order
