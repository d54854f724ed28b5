"""When a parcel comes: days on the way as a skewed guess, counted on days that post is brought."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from math import ceil, log
from statistics import NormalDist

from msgspec import Struct

NORMAL = NormalDist()
Z90 = NORMAL.inv_cdf(0.9)

# Where a supplier tells one figure: one parcel in ten in half the days, one in twice. A choice, no source.
QUICK_SHARE, SLOW_TIMES = 0.5, 2.0

# Where nothing is told at all. A guess.
NOT_TOLD = 4.0

SUNDAY = 6


class Days(Struct, frozen=True):
    """Days on the way: one parcel in ten is quicker than `quick`, half than `likely`, nine than `slow`."""

    quick: float
    likely: float
    slow: float


def days_told(quick: float | None, likely: float | None, slow: float | None) -> Days:
    """Three guesses out of those that were told; never under a tenth of a day.

    >>> days_told(None, 2, None), days_told(1, 2, 8)
    (Days(quick=1.0, likely=2, slow=4.0), Days(quick=1, likely=2, slow=8))
    """
    middle = max(0.1, NOT_TOLD if likely is None else likely)
    first = middle * QUICK_SHARE if quick is None else quick
    last = middle * SLOW_TIMES if slow is None else slow
    return Days(min(max(0.1, first), middle), middle, max(last, middle))


def chance_within(days: Days, limit: int) -> float:
    """The chance, 0..1, that a parcel takes no more than so many days.

    >>> [round(chance_within(Days(1, 2, 8), n), 2) for n in (0, 1, 2, 8)]
    [0.0, 0.1, 0.5, 0.9]
    """
    if limit <= 0:
        return 0.0
    spread = log(days.slow / days.likely) if limit >= days.likely else log(days.likely / days.quick)
    ratio = log(limit / days.likely)
    if not spread:
        return 1.0 if ratio >= 0 else 0.0
    return NORMAL.cdf(Z90 * ratio / spread)


def comes(sent: date, days: float) -> date:
    """The day a parcel comes that takes so many days, Sundays not counted.

    >>> comes(date(2026, 11, 24), 4), comes(date(2026, 11, 27), 2)
    (datetime.date(2026, 11, 28), datetime.date(2026, 11, 30))
    """
    day, left = sent, ceil(days - 1e-9)
    while left > 0:
        day += timedelta(1)
        left -= day.weekday() != SUNDAY
    return day


def posting_days(sent: date, until: date) -> int:
    """On how many days post is brought after `sent`, up to and with `until`.

    >>> posting_days(date(2026, 11, 24), date(2026, 11, 28))
    4
    """
    return sum((sent + timedelta(n)).weekday() != SUNDAY for n in range(1, (until - sent).days + 1))


def sent_on(now: datetime, cut_off: str) -> date:
    """The day an order given now is sent: today until the cut-off, else the next day that is no Sunday.

    >>> sent_on(datetime(2026, 11, 24, 15), "16:00"), sent_on(datetime(2026, 11, 28, 20), "16:00")
    (datetime.date(2026, 11, 24), datetime.date(2026, 11, 30))
    """
    day = now.date()
    if cut_off and now.time() > time.fromisoformat(cut_off):
        day += timedelta(1)
    while day.weekday() == SUNDAY:
        day += timedelta(1)
    return day
