"""The gate sheet: not known first, then the heaviest; joints before papers; a release never."""

import re

from msgspec.structs import replace

from tests.sheets.made_up import NAME, PAPERS, PEDAL, TYRES, hand_made_answer, made_up_state, road_answer
from witnessmark.gate.answer import Hold
from witnessmark.ground.missed import IfMissed
from witnessmark.sheets.gate import gate_sheet
from witnessmark.sheets.rows import JointRow, Sheet
from witnessmark.sheets.text import as_text

ANSWER = road_answer(made_up_state())
SHEET = gate_sheet(ANSWER, vehicle=NAME, line=33)
ORDER = [missed.words for missed in IfMissed]

HOLD = Hold(
    if_missed="wrecks", what="fill to level", name="axle fill plug", joint="axle fill plug", state="loose",
    because="axle fill plug was drained", line=5, days=21, pays="filled axle fill plug", code="VEYQ",
    sort="fluid",
)  # fmt: skip


def joint_rows(sheet: Sheet) -> list[JointRow]:
    return [row for section in sheet.sections for row in section.rows if isinstance(row, JointRow)]


def test_what_is_not_known_stands_before_what_holds() -> None:
    headings = [section.heading for section in SHEET.sections]
    unknown = [n for n, heading in enumerate(headings) if heading.startswith("not known to this record")]
    holds = [n for n, heading in enumerate(headings) if heading.startswith("known to hold")]
    assert unknown
    assert holds
    assert max(unknown) < min(holds)


def test_each_part_goes_from_the_heaviest_to_the_lightest() -> None:
    for start in ("not known", "known to hold"):
        words = [s.if_missed for s in SHEET.sections if s.heading.startswith(start)]
        assert words == sorted(words, key=ORDER.index)
        assert len(set(words)) == len(words)


def test_every_hold_and_every_unknown_is_there_once_with_its_code() -> None:
    codes = [due.code for row in joint_rows(SHEET) for due in row.dues]
    assert sorted(codes) == sorted([h.code for h in ANSWER.holds] + [u.code for u in ANSWER.not_known])


def test_every_hold_keeps_its_reason_and_its_line() -> None:
    said = {
        due.code: (due.because or row.because, due.line or row.line)
        for row in joint_rows(SHEET)
        for due in row.dues
    }
    assert {h.code: (h.because, h.line) for h in ANSWER.holds}.items() <= said.items()


def test_joints_stand_before_papers_and_parts() -> None:
    loose_end = replace(HOLD, joint="", name="the vehicle", state="", code="AAAA")
    sheet = gate_sheet(hand_made_answer((loose_end, HOLD)), vehicle=NAME, line=33)
    holds = [s for s in sheet.sections if s.heading.startswith("known to hold")]
    assert [row.name for row in holds[0].rows if isinstance(row, JointRow)] == [
        "axle fill plug",
        "the vehicle",
    ]
    unknown = [row.name for row in sheet.sections[0].rows if isinstance(row, JointRow)]
    assert unknown == [PEDAL.name, TYRES.name, PAPERS.name]


def test_a_limit_names_its_authority_its_place_and_how_it_was_read() -> None:
    text = " ".join(as_text(gate_sheet(hand_made_answer(()), vehicle=NAME, line=1)).split())
    assert "refused at: any leak, brakes on or off (VOSA, now DVSA; Great Britain; read as an excerpt" in text
    assert "defer to your authority" in text


def test_an_empty_gate_releases_nothing() -> None:
    sheet = gate_sheet(hand_made_answer((), ()), vehicle=NAME, line=33)
    assert sheet.headline == "Road: nothing known holds. This is not a release."
    assert sheet.footer[0] == sheet.headline
    assert joint_rows(sheet) == []


def test_a_gate_that_holds_is_no_release_either() -> None:
    assert "not a release" in as_text(SHEET)


def test_it_never_calls_a_vehicle_safe() -> None:
    ours = as_text(gate_sheet(hand_made_answer((HOLD,)), vehicle=NAME, line=33)).lower()
    assert not re.search(r"\bsafe(ly)?\b", ours)
    assert not re.search(r"\bis safe\b|\bsafe to\b|\broadworthy\b", as_text(SHEET).lower())
