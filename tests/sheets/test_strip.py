"""The plan's sheet and its strip: sessions by day, gates by name, thin lines for what dries and comes."""

from datetime import date
from xml.etree import ElementTree

from hypothesis import given
from hypothesis import strategies as st

from tests.building import state_of
from tests.plan.orders import asked, saturdays, step
from witnessmark.plan.arrivals import Thing
from witnessmark.plan.timetable import Timetable
from witnessmark.plan.timetabling import Terms, timetable
from witnessmark.sheets.strip import BROAD, NARROW, strip_svg
from witnessmark.sheets.text import as_text
from witnessmark.sheets.timetable import timetable_sheet

NAMES = {"road": "road", "start": "start"}
SEAL = Thing("pinion seal", date(2026, 6, 17))


def plan(count: int = 6, minutes: float = 100) -> Timetable:
    steps = [step(f"hub {n}", minutes) for n in range(count)]
    question = asked(
        *steps, gates={"start": frozenset({"hub 0"}), "road": frozenset(o.id for o in steps)},
        things=(SEAL,), waits={"hub 0": (0,)}, sessions=saturdays(60),
    )  # fmt: skip
    return timetable(state_of(), question, Terms(known="by your calendar"))


def words(svg: str) -> list[str]:
    return [e.text or "" for e in ElementTree.fromstring(svg).iter() if e.tag.endswith("text")]


def test_each_session_is_a_box_with_its_day_its_jobs_and_their_minutes() -> None:
    said = words(strip_svg(plan(), NAMES))
    assert "Sat 6 Jun" in said
    assert "w 23" in said
    assert "renew hub 1" in said
    assert "100" in said


def test_a_gate_stands_at_the_foot_of_its_session_and_the_post_is_a_thin_line() -> None:
    said = words(strip_svg(plan(), NAMES))
    assert [s for s in said if s.startswith("gate:")] == ["gate: start", "gate: road"]
    assert "pinion seal in the post" in said
    assert "stroke-dasharray" in strip_svg(plan(), NAMES)


@given(st.integers(0, 30), st.integers(5, 115), st.sampled_from([BROAD, NARROW]))
def test_it_is_never_wider_than_its_paper(count: int, minutes: int, wide: float) -> None:
    svg = strip_svg(plan(count, minutes), NAMES, wide)
    if not count:
        assert svg == ""
        return
    root = ElementTree.fromstring(svg)
    for element in root.iter():
        assert float(element.get("x", 0)) <= wide
    assert float(root.get("width", "0").removesuffix("mm")) == wide


def test_the_sheet_tells_the_gates_the_next_sessions_and_what_it_is_not() -> None:
    told = as_text(timetable_sheet(plan(), NAMES, vehicle="the van", line=9), 200)
    assert "By this order of work the road gate is asked after the session of week" in told
    assert "Saturday 6 June 2026, 09:00" in told
    assert "no forecast" in told
    assert "Sessions by your calendar." in told


def test_what_is_left_out_is_told_with_what_mends_it() -> None:
    question = asked(step("coat", 200, put_down=False), step("other", 20))
    told = as_text(timetable_sheet(timetable(state_of(), question, Terms()), NAMES, vehicle="", line=1), 200)
    assert "In no session of this plan" in told
    assert "Free a longer session for it" in told


def test_what_moved_is_told_from_where_to_where_and_why() -> None:
    question = asked(*(step(f"hub {n}", 100) for n in range(3)))
    before = timetable(state_of(), question, Terms())
    late = asked(
        *(step(f"hub {n}", 100) for n in range(3)),
        things=(Thing("seal", date(2026, 6, 25)),),
        waits={"hub 0": (0,)},
    )
    told = as_text(
        timetable_sheet(timetable(state_of(), late, Terms(), before), NAMES, vehicle="", line=2), 200
    )
    assert "do hub 0: waits for seal" in told
