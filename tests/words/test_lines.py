"""A file of typed lines: what counts, and under which day it stands."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.ground.errors import BadInput
from witnessmark.words.lines import TypedLine, read_lines

TEXT = """
# the first evening
hub nut left rear off

@ 2026-03-14 9:40
drum off left rear
@ 2026-03-15
  drum on left rear
@ written 2026-03-17
wheel on left rear
@ 2026-03-16 10:05 written 2026-03-18
let down
"""


def test_each_line_stands_under_the_marks_above_it() -> None:
    assert read_lines(TEXT) == (
        TypedLine(number=3, words="hub nut left rear off"),
        TypedLine(number=6, words="drum off left rear", day=date(2026, 3, 14), time="09:40"),
        TypedLine(number=8, words="drum on left rear", day=date(2026, 3, 15)),
        TypedLine(number=10, words="wheel on left rear", day=date(2026, 3, 15), written=date(2026, 3, 17)),
        TypedLine(
            number=12, words="let down", day=date(2026, 3, 16), time="10:05", written=date(2026, 3, 18)
        ),
    )


@pytest.mark.parametrize(
    "mark", ["@", "@ today", "@ 2026-02-30", "@ 2026-03-14 25:00", "@ written soon", "@ 14/3/2026"]
)
def test_a_bad_mark_names_its_line(mark: str) -> None:
    with pytest.raises(BadInput) as refused:
        read_lines(f"hub nut off\n{mark}\n")
    assert "line 2" in refused.value.given
    assert "2026-03-14" in refused.value.holds


@given(st.lists(st.text(st.characters(categories=["L", "N", "Zs"]), min_size=1), max_size=8))
def test_every_line_that_says_something_is_kept_in_order(lines: list[str]) -> None:
    kept = [line.words for line in read_lines("\n".join(lines))]
    assert kept == [line.strip() for line in lines if line.strip()]
