"""Labels, the order sheet, the helper's sheet and the lists."""

from datetime import date

from msgspec.structs import replace

from tests.sheets.every import every_sheet
from tests.sheets.made_up import (
    NAME,
    NEEDS,
    PEDAL,
    PLAN,
    TODAY,
    debts_of,
    made_up_state,
    words_of,
)
from witnessmark.ground.missed import IfMissed
from witnessmark.owed.needs import Need
from witnessmark.sheets.helper import SEAT, helper_sheet
from witnessmark.sheets.labels import labels
from witnessmark.sheets.lists import owed_sheet
from witnessmark.sheets.order import order_sheet
from witnessmark.sheets.rows import Box, Cells, JointRow, Label, Sheet, Words
from witnessmark.sheets.text import as_text
from witnessmark.vehicle.catalogue import catalogue

STATE = made_up_state()
DEBTS = debts_of(STATE)
LABELS = {label.what: label for label in labels(STATE, DEBTS, catalogue())}


def test_a_bag_and_everything_off_the_vehicle_has_a_label() -> None:
    off = {"pinion flange", "propshaft", "axle cover", "half-shaft", "hub", "wheel", "radiator"}
    assert set(LABELS) == off | {"propshaft bolts and nuts", "axle cover bolts"}


def test_a_bags_label_says_what_where_from_how_many_and_what_to_renew() -> None:
    label = LABELS["propshaft bolts and nuts"]
    assert (label.number, label.where, label.day) == ("8 pieces", "on shelf 2", date(2026, 2, 21))
    assert "propshaft bolts" in label.came_from
    assert label.keep.startswith("renew propshaft locking nuts")


def test_what_was_not_counted_leaves_a_blank() -> None:
    assert LABELS["axle cover bolts"].number == ""
    assert "how many: ______" in as_text(every_sheet()["labels"])


def test_a_parts_label_says_its_side_where_it_is_and_whether_it_is_kept() -> None:
    assert (LABELS["half-shaft"].side, LABELS["half-shaft"].where) == ("left", "on shelf 3")
    assert LABELS["radiator"].where == "away with Tansyfield Steel, due back 2026-03-10"
    assert LABELS["pinion flange"].keep == "renew: found scored"
    assert LABELS["propshaft"].keep == "keep"


def test_codes_are_the_debts_own_and_never_shared() -> None:
    by_sort = {d.sort: d.id for d in DEBTS if d.sort in ("bag", "refit")}
    codes = [label.code for label in LABELS.values()]
    assert len(set(codes)) == len(codes)
    assert by_sort["bag"] in codes
    assert by_sort["refit"] in codes
    strangers = {d.id for d in DEBTS if d.sort not in ("bag", "refit")}
    assert not strangers & set(codes)


def test_the_order_sheet_asks_only_for_what_is_neither_had_nor_posted() -> None:
    sheet = order_sheet(NEEDS, vehicle=NAME, today=TODAY, line=33)
    to_order, posted, to_hand = ([b.text for b in s.rows if isinstance(b, Box)] for s in sheet.sections)
    assert to_order == ["2 × half-shaft o-ring 47 × 2.5 mm", "1 × cover gasket", "4 × split pin 1/8 × 2 in"]
    assert posted == ["1 × pinion seal 44.5 × 65 × 8 mm"]
    assert to_hand == ["2 × split pin 1/8 × 2 in", "2 × gear oil 90"]


def test_an_order_says_for_what_and_by_when() -> None:
    first = order_sheet(NEEDS, vehicle=NAME, today=TODAY, line=33).sections[0].rows[0]
    assert isinstance(first, Box)
    assert first.aside == "for half-shaft o-ring, left; by 21 Mar 2026"
    alone = order_sheet([Need(what="tin of paint")], vehicle=NAME, today=TODAY, line=33).sections[0].rows[0]
    assert isinstance(alone, Box)
    assert alone.aside == ""


def test_no_need_is_said() -> None:
    text = as_text(order_sheet([], vehicle=NAME, today=TODAY, line=0))
    assert "Nothing to order." in text


def helper() -> Sheet:
    return helper_sheet(DEBTS, PLAN.operations, (PEDAL,), vehicle=NAME, today=TODAY, line=33)


def test_the_seat_comes_first_and_holds_what_is_pressed_there() -> None:
    seat = helper().sections[0]
    assert seat.heading == SEAT
    assert {row.name for row in seat.rows if isinstance(row, JointRow)} == {"brake hold", "brake hose, rear"}


def test_what_needs_two_is_there_and_what_goes_better_with_two_is_only_named() -> None:
    codes = {
        due.code for s in helper().sections for row in s.rows if isinstance(row, JointRow) for due in row.dues
    }
    assert codes == {d.id for d in DEBTS if d.helper == "needed"} | {PEDAL.code}
    named = {row.text for row in helper().sections[-1].rows if isinstance(row, Words)}
    assert named == {d.joint for d in DEBTS if d.helper in ("helpful", "sometimes")}


def test_an_operation_for_two_stands_at_its_place() -> None:
    boxes = [(s.heading, b.text) for s in helper().sections for b in s.rows if isinstance(b, Box)]
    assert boxes == [("at the rear axle", "fit pinion flange with a new nut, creep up to the marks")]


def test_nothing_for_two_is_said() -> None:
    assert "Nothing owed takes two pairs of hands." in as_text(
        helper_sheet((), vehicle=NAME, today=TODAY, line=0)
    )


def test_the_owed_sheet_goes_from_the_heaviest_and_keeps_what_is_not_due_for_last() -> None:
    later = replace(DEBTS[0], overdue=False, due="after 50 km", id="ZZZZ")
    sheet = owed_sheet((*DEBTS, later), words_of(STATE), vehicle=NAME, today=TODAY, line=33)
    order = [missed.words for missed in IfMissed]
    words = [s.if_missed for s in sheet.sections[:-1]]
    assert words == sorted(words, key=order.index)
    waiting = [d for d in DEBTS if not d.overdue]
    assert waiting
    assert len(sheet.sections[-1].rows) == len(waiting) + 1
    assert sheet.sections[-1].heading.startswith("not due yet: ")
    codes = [
        due.code for s in sheet.sections for row in s.rows if isinstance(row, JointRow) for due in row.dues
    ]
    assert sorted(codes) == sorted(d.id for d in DEBTS if d.overdue)


def test_nothing_owed_is_said() -> None:
    sheet = owed_sheet((), {}, vehicle=NAME, today=TODAY, line=0)
    assert sheet.headline == "Nothing owed."


def test_the_state_sheet_has_every_joint_under_its_word() -> None:
    found = {
        row.name: row.state
        for s in every_sheet()["state"].sections
        for row in s.rows
        if isinstance(row, JointRow)
    }
    assert found == words_of(STATE)


def test_a_struck_line_stays_to_be_read() -> None:
    rows = [row for row in every_sheet()["journal"].sections[0].rows if isinstance(row, Cells)]
    struck = [row for row in rows if row.struck]
    assert len(rows) == 33
    assert [row.cells[0] for row in struck] == ["31"]
    assert struck[0].cells[-1] == "door trim right off (struck by line 33)"


def test_one_label_is_one_label() -> None:
    rows = every_sheet()["labels"].sections[0].rows
    assert all(isinstance(row, Label) for row in rows)
    assert len(rows) == len(LABELS)
