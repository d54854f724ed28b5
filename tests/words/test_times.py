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
        ("7.15pm", "19:15", ""),
        ("both off at 17.05, sat down", "17:05", ""),
        ("stopped welding 11.47", "11:47", ""),
        ("stopped welding 16.25 hours", "16:25", ""),
        ("last spark 1730", "17:30", ""),
        ("opened 4 oclock", "16:00", ""),
        ("finished grinding ten to four", "15:50", ""),
        ("quarter past 8 this evening", "20:15", ""),
        ("at twenty past three in the afternoon", "15:20", ""),
        ("at ten in the morning", "10:00", ""),
        ("in from nine until one", "09:00", "13:00"),
        ("in the garage 2 to half 4", "14:00", "16:30"),
        ("did ten till noon", "10:00", "12:00"),
        ("from half nine till just on one o'clock", "09:30", "13:00"),
    ],
)
def test_a_time_is_the_one_meant(typed: str, time: str, until: str) -> None:
    (found,) = find_times(typed)
    assert (found.time, found.until) == (time, until)


@pytest.mark.parametrize(
    "line",
    [
        "torque 45-50 Nm",
        "gap 4.5 to 5.0",
        "4 h to 7 days",
        "10.40 mm",
        "recoat 4 to 7 days",
        "3 to 4 turns",
        "5 to 10 thou",
        "ten to twelve bolts",
        "welded 1.20 sheet",
        "it took 2.25 hours",
        "bolts 2 to 3",
        "half a turn",
        "paid 11.47",
    ],
)
def test_figures_are_no_times(line: str) -> None:
    assert find_times(line) == ()


@given(st.text())
def test_finding_never_raises_and_times_are_times(text: str) -> None:
    for found in find_times(text):
        assert 0 <= found.start < found.end <= len(text)
        assert "00:00" <= found.time <= "23:59"
