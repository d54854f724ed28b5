"""Moments in the garage that must be answered on the spot, asked of the demo vehicle as they are said."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.running import run
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.ahead import look_ahead, order_ahead, outlook_plain, sessions_ahead
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.sheet import Asked, make_sheet
from witnessmark.restoration.whatif import what_if, whatif_screen
from witnessmark.sheets.text import as_text

# ---- the seal will not come out


def test_the_seal_will_not_come_out(flow: Flow) -> None:
    """Stop levering; what opens next, its gasket and washers; the chance falls; what else to do."""
    asked = what_if(flow, "the pinion seal won't come out")
    assert asked.heard == "pinion seal will not come."
    assert asked.said[0].startswith("Stop at three tries")
    assert "it was about 6 in 10, now about 2 in 10" in asked.said[1]
    assert any(row.startswith("axle cover gasket") for row in asked.five.opens)
    assert any("cover gasket, for axle cover gasket" in row for row in asked.five.renew)
    assert any("shaft seal 38 x 60 x 10" in row for row in asked.five.renew)
    assert any(row.startswith("1 × cover gasket") for row in asked.five.order)
    assert asked.five.swap
    assert not any("pinion" in row for row in asked.five.swap)
    assert any("EMPTY, NO GEAR OIL" in row for row in asked.five.stop)
    assert any("cover what is open" in row for row in asked.five.stop)


def test_no_answer_leaves_what_lets_go_loose_without_a_word(flow: Flow) -> None:
    stop = what_if(flow, "hub nut left rear seized").five.stop
    assert stop[0].startswith("not yet: shoe adjuster, left rear must first be tight")


# ---- that ring is not made any more


def test_that_ring_is_not_made_any_more(tmp_path: Path) -> None:
    """A round spigot, root 47.0 mm, groove 3.2 wide and 2.0 deep, gear oil at 90 °C: what fits."""
    groove = ("diameter=47.0 mm", "depth=2.0 mm", "width=3.2 mm", "temperature=90 °C", "fluid=gear oil")
    told = run(tmp_path, "bench", "orings", "match", "gland=radial static", *groove)
    assert told.code == 0
    fits = [row for row in told.out.splitlines() if "fits" in row]
    assert any("2.62" in row and "45.69" in row for row in fits)
    assert "squeeze" in told.out
    assert "stretch" in told.out


# ---- the welder jams in the middle


def test_the_welder_jams_in_the_middle_of_the_outrigger(flow: Flow) -> None:
    asked = what_if(flow, "the welder jams in the middle of the outrigger")
    assert "by ease: tip" in asked.said[0]
    assert "closing plate seam, left rear" in asked.said[1]
    assert {"contact tip", "liner", "spool of wire"} <= set(asked.five.order)
    assert any("last spark" in row and "60 minutes" in row for row in asked.five.stop)
    assert any(row.startswith("do not take the brace out") for row in asked.five.stop)
    assert asked.five.swap
    assert not any("weld" in row for row in asked.five.swap)


# ---- late, free, dropped


def test_a_part_three_weeks_late_names_the_day_and_what_it_holds_up(flow: Flow) -> None:
    asked = what_if(flow, "half-shaft o-ring three weeks late")
    assert asked.heard == "half-shaft o-ring comes 3 weeks late: not before 24 December."
    assert "half-shaft o-ring, left" in asked.said[0]
    assert not any("half-shaft" in row for row in asked.five.swap)


def test_two_free_days_bring_the_road_nearer(flow: Flow) -> None:
    asked = what_if(flow, "two free days")
    assert asked.before != asked.after
    assert asked.five.swap


def test_a_job_dropped_says_what_is_still_owed_and_how_to_keep_the_no(flow: Flow) -> None:
    asked = what_if(flow, "drop clutch plate")
    assert "write: left clutch plate, and why" in " ".join(asked.said)
    assert "not needed now: clutch plate" in asked.five.order


@pytest.mark.parametrize(
    "line",
    ["the flux won't come out", "moon dust three weeks late", "drop everything", "it rained", "99 free days"],
)
def test_what_cannot_be_answered_is_told_with_what_would_hold(flow: Flow, line: str) -> None:
    with pytest.raises(BadInput) as told:
        what_if(flow, line)
    assert told.value.holds
    assert told.value.do


def test_the_answer_fits_a_screen_and_writes_nothing(flow: Flow) -> None:
    last = flow.line
    shown = as_text(whatif_screen(flow, what_if(flow, "welder down")))
    for heading in ("What else opens", "Goes in new", "Order tonight", "Swaps in", "Where to stop safely"):
        assert heading in shown
    assert "Nothing was written" in shown
    assert flow.line == last


# ---- the helper for forty minutes; thirty-five minutes tonight


def test_the_helper_is_there_for_forty_minutes(flow: Flow) -> None:
    """The helper's sheet reads out by place what takes two pairs of hands."""
    sheet = as_text(make_sheet(flow, Asked(kind="helper", hours=40 / 60)))
    assert "pedal" in sheet.lower()
    assert "seat" in sheet.lower()


def test_thirty_five_minutes_tonight(flow: Flow) -> None:
    """Small things that close up: nothing wet, nothing that lets go opened, nine chances in ten."""
    plan = flow.session(35 / 60)
    assert plan.operations
    assert all(o.put_down for o in plan.operations)
    assert plan.chance >= 0.5
    assert not set(plan.left_loose) - {n for n, j in flow.state.joints.items() if j.position == "loose"}


# ---- looking ahead


def test_the_first_session_run_is_the_session_sheet_itself(flow: Flow) -> None:
    sessions = sessions_ahead(flow)
    sheet = flow.session(sessions.coming[0].minutes / 60)
    order = order_ahead(flow, sessions)
    ids = [o.id for o in sheet.operations if o.sort != "garage"]
    assert [o.id for o in order.operations][: len(ids)] == ids


def test_the_road_is_a_band_of_weeks_and_never_a_day(flow: Flow) -> None:
    plain = outlook_plain(flow, look_ahead(flow, samples=400))
    road = plain["gates"][-1]
    assert road["gate"] == "road"
    assert road["words"].startswith("session of week ")
    assert road["reached"] > 0.9
    assert set(road["p50"]) == {"year", "week"}
    assert (road["p50"]["year"], road["p50"]["week"]) < (road["p90"]["year"], road["p90"]["week"])
    assert 1 <= len(plain["drivers"]) <= 5


def test_without_a_helper_for_a_year_the_road_is_further_off(flow: Flow) -> None:
    hands = look_ahead(flow, samples=400).bought[0]
    assert hands.weeks > 0
