"""The session sheet: numbers with their standing, where to stop, the chance in words."""

import re

from msgspec.structs import replace

from tests.sheets.made_up import LINES, PLAN, TODAY, made_up_state
from witnessmark.sheets.rows import Box, JointRow, Number, Sheet, Step, Words
from witnessmark.sheets.session import session_sheet
from witnessmark.sheets.text import as_text
from witnessmark.tables.sources import cautions
from witnessmark.vehicle.catalogue import catalogue

VEHICLE = made_up_state().vehicle


def sheet_of(plan: object = PLAN) -> Sheet:
    return session_sheet(plan, VEHICLE, catalogue(), day=TODAY, line=33, cautions=cautions(), numbers=LINES)  # type: ignore[arg-type]


SHEET = sheet_of()
OPERATIONS = SHEET.sections[0].rows


def step(number: int) -> Step:
    return next(row for row in OPERATIONS if isinstance(row, Step) and row.number == number)


def test_operations_come_in_the_plans_order() -> None:
    assert [row.text for row in OPERATIONS if isinstance(row, Step)] == [o.what for o in PLAN.operations]


def test_a_closing_operation_carries_the_figure_with_its_standing() -> None:
    figure = step(4).numbers[0]
    assert (figure.label, figure.value, figure.standing) == ("figure", "35 lbf ft", "owner's book")
    assert figure.pedigree.startswith("owner's book, p. 44; plausibility: over at 4.8 and 5.8")


def test_an_operation_that_closes_nothing_carries_no_figure() -> None:
    assert [n.label for n in step(1).numbers] == ["size", "driver"]


def test_fluid_and_quantity_stand_beside_a_fill() -> None:
    assert [(n.label, n.value) for n in step(5).numbers] == [("fluid", "gear oil 90, 2 1/4 pints")]


def test_a_figure_nobody_read_is_a_blank_and_never_supplied() -> None:
    plan = replace(PLAN, operations=(replace(PLAN.operations[3], name="axle u-bolts, left"),))
    figure = next(row for row in sheet_of(plan).sections[0].rows if isinstance(row, Step)).numbers[0]
    assert figure == Number(label="figure", value="", where="not in this record: read it in your book")


def test_safe_stops_stand_after_their_operation() -> None:
    marks = [row.number if isinstance(row, Step) else "stop" for row in OPERATIONS]
    assert marks == ["stop", 1, 2, "stop", 3, 4, "stop", 5]
    stops = [row for row in OPERATIONS if isinstance(row, Words) and row.sort == "stop"]
    assert [stop.label for stop in stops] == ["safe stop"] * 3
    assert "about 9 in 10" in stops[1].text


def test_the_chance_is_said_in_words_and_never_as_a_decimal() -> None:
    assert SHEET.headline == "All of it done by packing-up time: about 7 in 10."
    assert not re.search(r"0\.\d|\d\s?%", as_text(SHEET))


def test_minutes_are_a_band() -> None:
    assert step(3).minutes == "about 25 min (15 min to 1 h)"


def test_what_takes_two_and_what_may_not_be_put_down_is_said() -> None:
    assert step(3).notes == ("two pairs of hands", "once begun, finish it")
    assert step(4).notes == ("will not come easily", "marks on both flanges meet")


def test_bring_order_left_loose_and_waiting_have_their_places() -> None:
    bring, order, loose, waiting = SHEET.sections[1:]
    assert [b.text for b in bring.rows if isinstance(b, Box)] == list(PLAN.bring)
    assert [b.text for b in order.rows if isinstance(b, Box)] == list(PLAN.order)
    assert [(j.name, j.if_missed) for j in loose.rows if isinstance(j, JointRow)] == [
        ("hub nut, left rear", "lets go"),
        ("axle u-bolts, left", "lets go"),
    ]
    assert [w.label for w in waiting.rows if isinstance(w, Words)] == [w.name for w in PLAN.waiting]


def test_cautions_come_once_each_in_full() -> None:
    assert SHEET.notes == (cautions()["stands"], cautions()["brakes-both-sides"])


def test_an_empty_session_says_so_and_promises_nothing() -> None:
    sheet = sheet_of(replace(PLAN, operations=(), safe_stops=()))
    assert sheet.headline == ""
    assert "Nothing fits this session." in as_text(sheet)
