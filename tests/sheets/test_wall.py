"""The wall: only what lets go and is apart or loose, at most seven, then how many more."""

from msgspec.structs import replace

from tests.sheets.made_up import PLAN, TODAY, debts_of, made_up_state, road_answer
from witnessmark.sheets.rows import JointRow, Sheet, Step, Words
from witnessmark.sheets.wall import wall_sheet
from witnessmark.vehicle.catalogue import kind_of

STATE = made_up_state()
DEBTS = debts_of(STATE)
SHEET = wall_sheet(STATE, DEBTS, PLAN, road_answer(STATE), today=TODAY)


def joints(sheet: Sheet) -> list[JointRow]:
    return [row for row in sheet.sections[0].rows if isinstance(row, JointRow)]


def lets_go_and_open() -> set[str]:
    return {
        name
        for name, joint in STATE.joints.items()
        if joint.position in ("apart", "loose")
        and kind_of(STATE.vehicle.joints[name].kind).if_missed == "lets_go"
    }


def test_it_shows_seven_and_says_how_many_more() -> None:
    assert len(lets_go_and_open()) == 8
    assert len(joints(SHEET)) == 7
    assert {row.name for row in joints(SHEET)} < lets_go_and_open()
    last = SHEET.sections[0].rows[-1]
    assert isinstance(last, Words)
    assert last.text == "and 1 more"


def test_what_is_loose_and_looks_done_stands_above_what_is_apart() -> None:
    states = [row.state for row in joints(SHEET)]
    assert states == sorted(states, reverse=True)
    assert set(states) == {"apart", "loose"}


def test_nothing_that_only_wets_and_nothing_tight_hangs_there() -> None:
    names = {row.name for row in joints(SHEET)}
    assert not names & {"windscreen rubber", "track rod end, left front", "steering wheel"}


def test_seven_or_fewer_leave_nothing_over() -> None:
    few = [d for d in DEBTS if not (d.sort == "close" and d.joint == "hub nut, left rear")]
    sheet = wall_sheet(STATE, few, PLAN, None, today=TODAY)
    assert len(sheet.sections[0].rows) == 7
    assert all(isinstance(row, JointRow) for row in sheet.sections[0].rows)


def test_today_has_three_operations() -> None:
    steps = [row for row in SHEET.sections[1].rows if isinstance(row, Step)]
    assert [step.text for step in steps] == [operation.what for operation in PLAN.operations[:3]]


def test_a_fire_watch_is_the_first_thing_not_to_forget() -> None:
    first = SHEET.sections[2].rows[0]
    assert isinstance(first, Words)
    assert "fire watch until 10:10" in first.text


def test_bags_not_emptied_are_counted() -> None:
    bags = [row for row in SHEET.sections[2].rows if isinstance(row, Words) and "not emptied" in row.label]
    assert [row.label for row in bags] == ["2 bags not emptied"]
    assert bags[0].text == "propshaft bolts and nuts; axle cover bolts"


def test_the_gate_stands_below_and_releases_nothing() -> None:
    empty = replace(road_answer(STATE), holds=(), not_known=())
    sheet = wall_sheet(STATE, DEBTS, PLAN, empty, today=TODAY)
    assert sheet.footer == ("Road: nothing known holds. This is not a release.",)


def test_a_day_without_plan_and_debts_says_so() -> None:
    sheet = wall_sheet(STATE, (), None, None, today=TODAY)
    assert [section.rows for section in sheet.sections[:2]] == [(), ()]
    assert sheet.sections[0].empty == "Nothing that lets go is known to be apart or loose."
    assert sheet.sections[1].empty == "No session is planned."
