from __future__ import annotations

from datetime import date

import pytest

from tests.journal.lines import entry
from witnessmark.journal.entry import END_OF_DAY
from witnessmark.journal.facts import Remarked


def test_the_place_in_the_reading_order_is_day_then_time_then_line() -> None:
    assert entry(7, Remarked(), day="2026-03-14", time="10:40").place == (date(2026, 3, 14), "10:40", 7)


def test_the_day_of_writing_is_that_of_the_moment_not_of_the_doing() -> None:
    assert entry(1, Remarked(), day="2026-03-13", written="2026-03-15T09:00:00").written_day == date(
        2026, 3, 15
    )


@pytest.mark.parametrize("time", ["00:00", "09:59", "23:59"])
def test_the_end_of_day_sorts_behind_every_time_of_it(time: str) -> None:
    assert time < END_OF_DAY


def test_an_entry_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        entry(1, Remarked()).words = "another"  # type: ignore[misc]
