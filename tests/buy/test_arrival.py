"""Days on the way: the three guesses come out as they were told, Sundays bring nothing."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import lognorm, norm

from witnessmark.buy.arrival import Days, chance_within, comes, days_told, posting_days

SOME_DAY = st.dates(date(2026, 1, 1), date(2027, 12, 31))


@given(st.integers(1, 20), st.integers(1, 20), st.integers(1, 20))
def test_the_three_guesses_are_the_tenth_the_fiftieth_and_the_ninetieth(a: int, b: int, c: int) -> None:
    days = days_told(*sorted((a, b, c)))
    if days.quick < days.likely < days.slow:
        found = [round(chance_within(days, n), 6) for n in (a, b, c)]
        assert sorted(found) == [0.1, 0.5, 0.9]


def test_above_the_likely_it_is_the_log_normal_of_the_library() -> None:
    days = Days(1, 2, 8)
    spread = 1.3862943611198906 / norm.ppf(0.9)  # ln(8 / 2)
    for limit in (3, 5, 12):
        assert abs(chance_within(days, limit) - lognorm.cdf(limit, spread, scale=2)) < 1e-9


@given(SOME_DAY, st.integers(0, 40))
def test_a_parcel_comes_on_the_day_that_is_so_many_posting_days_on(sent: date, days: int) -> None:
    day = comes(sent, days)
    assert posting_days(sent, day) == days
    assert days == 0 or day.weekday() != 6
    assert posting_days(sent, day - timedelta(1)) < max(days, 1)


def test_one_figure_alone_is_spread() -> None:
    assert days_told(None, 4, None) == Days(2, 4, 8)
    assert days_told(None, None, None).slow > days_told(None, None, None).likely
