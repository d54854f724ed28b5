"""A record kept at hand answers as one opened afresh, and works nothing out twice."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

from tests.web.van import NOW, van
from witnessmark.restoration.at_hand import MOST_PLANS, AtHand
from witnessmark.restoration.begin import reopen


def test_answers_are_those_of_a_record_opened_afresh(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    fresh = reopen(tmp_path, now=NOW).flow()
    with at_hand.opened() as restoration:
        flow = restoration.flow()
        assert flow.owed == fresh.owed
        assert flow.session(2) == fresh.session(2)
        assert flow.gate("road") == fresh.gate("road")


def test_the_same_minute_works_nothing_out_twice(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with at_hand.opened() as one:
        first = one.flow()
    with at_hand.opened() as two:
        assert two.flow() is first


def test_a_new_line_is_seen_and_the_clock_is_asked(tmp_path: Path) -> None:
    van(tmp_path)
    now = [NOW]
    at_hand = AtHand(tmp_path, lambda: now[0])
    with at_hand.opened() as restoration:
        before = restoration.flow()
        restoration.write(restoration.hear("took off gearbox"))
    with at_hand.opened() as restoration:
        assert restoration.flow().line == before.line + 1
        same = restoration.flow()
    now[0] = NOW + timedelta(days=1)
    with at_hand.opened() as restoration:
        assert restoration.flow() is not same
        assert restoration.flow().today == datetime(2026, 3, 15).date()


def test_only_so_many_plans_are_kept(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with at_hand.opened() as restoration:
        flow = restoration.flow()
        first = flow.session(1)
        for quarter in range(MOST_PLANS):
            flow.session(1.25 + quarter / 4)
        assert flow.session(1) == first
        assert flow.session(1) is not first


def test_a_line_written_through_one_hand_is_read_by_the_next_without_the_disk(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with at_hand.opened() as restoration:
        before = restoration.flow()
        restoration.write(restoration.hear("took off gearbox"))
    with at_hand.opened() as restoration:
        after = restoration.flow()
    assert after.entries[: len(before.entries)] == before.entries
    assert all(old is new for old, new in zip(before.entries, after.entries, strict=False))
    assert after.vehicle is before.vehicle  # folded on, not anew
    assert after.state == reopen(tmp_path, now=NOW).flow().state


def test_a_line_by_another_program_is_seen(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with at_hand.opened() as restoration:
        line = restoration.flow().line
    other = reopen(tmp_path, now=NOW)
    other.write(other.hear("took off gearbox"))
    with at_hand.opened() as restoration:
        assert restoration.flow().line == line + 1
        assert restoration.flow().state == other.flow().state


def test_the_names_are_made_anew_only_when_the_vehicle_is_described_further(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with at_hand.opened() as restoration:
        first = restoration.vocabulary(restoration.flow())
        restoration.write(restoration.hear("took off gearbox"))
    with at_hand.opened() as restoration:
        assert restoration.vocabulary(restoration.flow()) is first
        restoration.write(restoration.hear("opened swarf guard", kind="plain-fixing"))
    with at_hand.opened() as restoration:
        again = restoration.vocabulary(restoration.flow())
        assert again is not first
        assert "swarf guard" in again.vehicle.joints
