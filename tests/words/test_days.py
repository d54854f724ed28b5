"""Days as they are typed, counted from a Wednesday."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.words.days import find_days

WEDNESDAY = date(2026, 3, 18)


@pytest.mark.parametrize(
    ("typed", "past", "coming"),
    [
        ("today", date(2026, 3, 18), date(2026, 3, 18)),
        ("yesterday", date(2026, 3, 17), date(2026, 3, 17)),
        ("last night", date(2026, 3, 17), date(2026, 3, 17)),
        ("day before yesterday", date(2026, 3, 16), date(2026, 3, 16)),
        ("2 days ago", date(2026, 3, 16), date(2026, 3, 16)),
        ("a week ago", date(2026, 3, 11), date(2026, 3, 11)),
        ("on Friday", date(2026, 3, 13), date(2026, 3, 20)),
        ("Wednesday", date(2026, 3, 18), date(2026, 3, 25)),
        ("last Wednesday", date(2026, 3, 11), date(2026, 3, 25)),
        ("till Friday", None, date(2026, 3, 20)),
        ("tomorrow", None, date(2026, 3, 19)),
        ("2026-03-14", date(2026, 3, 14), date(2026, 3, 14)),
        ("14 March", date(2026, 3, 14), date(2027, 3, 14)),
        ("3rd of April", date(2025, 4, 3), date(2026, 4, 3)),
        ("Mar 14th 2026", date(2026, 3, 14), date(2026, 3, 14)),
        ("14/3/26", date(2026, 3, 14), date(2026, 3, 14)),
        ("till june", None, date(2026, 6, 1)),
        ("on the 14th", date(2026, 3, 14), date(2026, 4, 14)),
        ("by the 31st", date(2026, 1, 31), date(2026, 3, 31)),
        ("Friday week", None, date(2026, 3, 27)),
        ("a week on Friday", None, date(2026, 3, 27)),
    ],
)
def test_a_day_is_the_nearest_one_meant(typed: str, past: date | None, coming: date) -> None:
    (found,) = find_days(f"hub nut off {typed}", WEDNESDAY)
    assert (found.past, found.coming) == (past, coming)


@pytest.mark.parametrize(
    "line",
    [
        "sat in the drizzle",
        "may the fourth",
        "2026-13-45",
        "5/16 UNF",
        "in march past",
        "31 Feb",
        "the 3rd bolt",
    ],
)
def test_words_that_are_no_day_are_left_alone(line: str) -> None:
    assert find_days(line, WEDNESDAY) == ()


@given(st.text())
def test_finding_never_raises_and_spans_lie_in_the_line(text: str) -> None:
    assert all(0 <= f.start < f.end <= len(text) for f in find_days(text, WEDNESDAY))


@given(
    st.dates(min_value=date(1, 1, 10), max_value=date(9999, 12, 20)),
    st.sampled_from(["yesterday", "on Friday", "14 March", "next week", "3 weeks ago"]),
)
def test_no_day_is_past_that_lies_ahead(today: date, typed: str) -> None:
    assert all(f.past is None or f.past <= today for f in find_days(typed, today))
