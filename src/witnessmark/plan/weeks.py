"""A band of sessions in words: by weeks of the calendar, never a day."""

from __future__ import annotations

from datetime import date

from witnessmark.plan.coming import Coming


def week_band(likely: Coming | None, high: Coming | None, today: date) -> str:
    """From the session that is likely to the one that is nearly sure.

    >>> june, july = Coming(date(2026, 6, 6), 540, 180), Coming(date(2026, 7, 4), 540, 180)
    >>> week_band(june, july, date(2026, 3, 1)), week_band(june, june, date(2026, 3, 1))
    ('session of week 23 to 27', 'session of week 23')
    >>> week_band(june, Coming(date(2027, 1, 9), 540, 180), date(2026, 3, 1))
    'session of week 23 to week 1 of 2027'
    """
    if likely is None:
        return "further off than can be told"
    first, year = _week(likely)
    of_year = "" if year == today.isocalendar().year else f" of {year}"
    if high is None:
        return f"session of week {first}{of_year}, or far later"
    last, last_year = _week(high)
    if (first, year) == (last, last_year):
        return f"session of week {first}{of_year}"
    if year == last_year:
        return f"session of week {first} to {last}{of_year}"
    return f"session of week {first}{of_year} to week {last} of {last_year}"


def _week(session: Coming) -> tuple[int, int]:
    year, week, _ = session.day.isocalendar()
    return week, year
