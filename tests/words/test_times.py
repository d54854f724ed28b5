"""Times of day as they are typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.words.times import find_times


@pytest.mark.parametrize(
    ("typed", "time", "until"),
    [
        ("at 10:40", "10:40", ""),
        ("7pm", "19:00", ""),
        ("9.15am", "09:15", ""),
        ("last spark 11.47", "11:47", ""),
        ("noon", "12:00", ""),
        ("12 am", "00:00", ""),
        ("9:00-12:30", "09:00", "12:30"),
        ("in garage 7pm till 9.15", "19:00", "21:15"),
        ("from 10 till noon in the garage", "10:00", "12:00"),
        ("session 9 to 12:30", "09:00", "12:30"),
    ],
)
def test_a_time_is_the_one_meant(typed: str, time: str, until: str) -> None:
    (found,) = find_times(typed)
    assert (found.time, found.until) == (time, until)


@pytest.mark.parametrize(
    "line",
    ["torque 45-50 Nm", "gap 4.5 to 5.0", "4 h to 7 days", "10.40 mm", "recoat 4 to 7 days", "3 to 4 turns"],
)
def test_figures_are_no_times(line: str) -> None:
    assert find_times(line) == ()


@given(st.text())
def test_finding_never_raises_and_times_are_times(text: str) -> None:
    for found in find_times(text):
        assert 0 <= found.start < found.end <= len(text)
        assert "00:00" <= found.time <= "23:59"
