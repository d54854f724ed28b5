"""One value, three ways: what stands in the JSON stands in the text and on the paper."""

import json
import re
from datetime import date

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.sheets.every import KINDS, every_sheet, run_together, words_on
from witnessmark.sheets.lines import ascii_safe
from witnessmark.sheets.plain import as_plain
from witnessmark.sheets.rows import (
    Box,
    Cells,
    Due,
    JointRow,
    Label,
    Section,
    Sheet,
    Step,
    Words,
    number,
)
from witnessmark.sheets.text import as_text

BARRED = (
    "task", "ticket", "project", "workflow", "status", "sprint", "board", "sync", "asset", "dashboard",
    "work order", "checklist", "reminder", "deferred", "severity", "priority", "velocity", "backlog",
    "baseline", "score", "health", "cart", "feed", "timeline", "passed", "failed",
)  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
def test_every_word_of_the_plain_values_stands_in_the_text(kind: str) -> None:
    sheet = every_sheet()[kind]
    shown = run_together(as_text(sheet, 400))
    missing = [word for word in words_on(as_plain(sheet)) if run_together(word) not in shown]
    assert missing == []


@pytest.mark.parametrize("kind", KINDS)
def test_plain_values_survive_json(kind: str) -> None:
    sheet = every_sheet()[kind]
    assert msgspec.convert(json.loads(json.dumps(as_plain(sheet))), Sheet) == sheet


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("width", [40, 80, 132])
def test_no_line_is_wider_than_asked(kind: str, width: int) -> None:
    lines = as_text(every_sheet()[kind], width).splitlines()
    assert [line for line in lines if len(line) > width] == []


@pytest.mark.parametrize("kind", KINDS)
def test_a_plain_console_can_show_it(kind: str) -> None:
    text = as_text(every_sheet()[kind], ascii_only=True)
    assert text.isascii()
    assert max(len(line) for line in text.splitlines()) <= 80


@pytest.mark.parametrize("kind", KINDS)
def test_no_barred_word_stands_on_it(kind: str) -> None:
    text = as_text(every_sheet()[kind], 400).lower()
    assert [word for word in BARRED if re.search(rf"\b{word}(s|ed|ing)?\b", text)] == []


@pytest.mark.parametrize("kind", KINDS)
def test_it_says_whose_it_is_and_what_it_knew(kind: str) -> None:
    sheet = every_sheet()[kind]
    head = as_text(sheet).split("====")[0]
    assert sheet.code in head
    assert "Marrowby Ten pickup" in head
    assert "Saturday 14 March 2026, to journal line 33" in head


def test_a_state_is_shown_by_its_word_and_its_mark() -> None:
    text = as_text(every_sheet()["state"])
    for mark, word in (("| |", "apart"), ("-|_", "loose"), (" | ", "tight"), ("-|-", "proven")):
        assert re.search(rf"^  {re.escape(mark)} {word} ", text, re.M), word


def test_what_lets_go_has_the_heavier_frame() -> None:
    text = as_text(every_sheet()["gate"])
    assert "|| LETS GO ||" in text
    assert "| wets |" in text
    assert "|| WETS ||" not in text


def test_a_number_from_memory_is_hollow_and_asks_to_be_measured() -> None:
    sheet = one(
        number("figure", "16 lbf ft", "from memory"), number("figure", "35 lbf ft", "owner's book", "p. 44")
    )
    text = as_text(sheet)
    assert "( 16 lbf ft )   from memory, measure first" in text
    assert "figure: 35 lbf ft   owner's book, p. 44" in text


def test_a_section_without_rows_says_so() -> None:
    sheet = Sheet(
        kind="owed", title="t", vehicle="v", date=date(2026, 3, 14), line=0, code="ABCD",
        sections=(Section(heading="owed", empty="Nothing owed."),),
    )  # fmt: skip
    assert "  Nothing owed." in as_text(sheet).splitlines()


def test_a_shared_line_end_cannot_be_forged_from_a_name() -> None:
    text = as_text(one(JointRow(name="hub\x1b[2J\r\nnut\u202e", state="loose")))
    assert "\x1b" not in text
    assert "\u202e" not in text
    assert "hub\N{REPLACEMENT CHARACTER}[2J nut" in text.replace("  ", " ")


def test_plain_letters_stand_for_the_others() -> None:
    assert (
        ascii_safe("½ in × 2, 9 °C, Ottermære, “seen” – 日") == '1/2 in x 2, 9 degC, Ottermaere, "seen" - ?'
    )


def one(*rows: object) -> Sheet:
    return Sheet(
        kind="owed", title="t", vehicle="v", date=date(2026, 3, 14), line=1, code="ABCD",
        sections=(Section(heading="h", rows=rows),),  # type: ignore[arg-type]
    )  # fmt: skip


anything = st.text(max_size=90)
due = st.builds(Due, what=anything, because=anything, how=anything, when=anything, code=anything)
row = st.one_of(
    st.builds(Words, text=anything, label=anything),
    st.builds(
        JointRow, name=anything, state=st.sampled_from(["apart", ""]), because=anything, dues=st.tuples(due)
    ),
    st.builds(Box, text=anything, label=anything, aside=anything, code=anything, write=st.tuples(anything)),
    st.builds(Step, number=st.integers(1, 99), text=anything, minutes=anything, notes=st.tuples(anything)),
    st.builds(Label, what=anything, code=anything, keep=anything),
    st.builds(number, anything, anything, anything),
)


@given(st.lists(row, max_size=4), st.integers(20, 120))
def test_any_text_keeps_to_its_width_and_leaves_no_control_character(rows: list[object], width: int) -> None:
    text = as_text(one(*rows), width)
    assert max(len(line) for line in text.splitlines()) <= max(40, width)
    assert all(c == "\n" or ord(c) >= 32 for c in text)


@given(st.lists(st.tuples(anything, anything, anything), min_size=1, max_size=4), st.integers(40, 120))
def test_any_table_keeps_to_its_width(cells: list[tuple[str, str, str]], width: int) -> None:
    rows = tuple(Cells(cells=one_row) for one_row in cells)
    section = Section(heading="h", rows=rows, columns=("a", "b", "c"))
    sheet = Sheet(
        kind="k", title="t", vehicle="v", date=date(2026, 1, 1), line=1, code="A", sections=(section,)
    )
    assert max(len(line) for line in as_text(sheet, width).splitlines()) <= width


@given(anything)
def test_plain_letters_are_always_plain(text: str) -> None:
    assert ascii_safe(text).isascii()
