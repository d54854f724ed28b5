"""What was foreseen and what came of it: the road as it moved, and guesses against the log."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta

import numpy as np

from witnessmark.jobs.wishes import wishes_of
from witnessmark.plan.outlook import outlook
from witnessmark.plan.overrun import guesses_met
from witnessmark.plan.ranking import ranked
from witnessmark.restoration.ahead import asks_to_answer, gate_operations, sessions_ahead
from witnessmark.restoration.flow import Flow
from witnessmark.sheets.fan import BROAD as FAN_BROAD
from witnessmark.sheets.fan import NARROW as FAN_NARROW
from witnessmark.sheets.fan import Asked, fan_svg
from witnessmark.sheets.hours import Spent, hours_svg

# So many months back, and so many futures for each; it is a picture, not an answer. Our choices.
MONTHS, FUTURES = 9, 300
LEAST_LINES = 20


def fan_of(flow: Flow, *, narrow: bool = False) -> str:
    """The fan of the road gate, worked out again from the lines written by the end of each month."""
    return fan_svg(tuple(_asked(flow)), FAN_NARROW if narrow else FAN_BROAD)


def _asked(flow: Flow) -> Iterator[Asked]:
    for day in _months_back(flow.today):
        known = [e for e in flow.entries if e.written_day <= day]
        if len(known) < LEAST_LINES:
            continue
        then = Flow(known, datetime(day.year, day.month, day.day, 22), seed=flow.seed)
        if not wishes_of(then.state) and not then.jobs:
            continue
        sessions = sessions_ahead(then)
        order = ranked(then.state, then.jobs, (), asks_to_answer(then))
        seen = outlook(
            then.state, order, {"road": gate_operations(then, "road", order)}, sessions.coming,
            sessions.known, now=then.now, sources=[np.random.default_rng(flow.seed)], samples=FUTURES,
        )  # fmt: skip
        band = seen.gates[0]
        yield Asked(day, band.likely.day if band.likely else None, band.high.day if band.high else None)


def _months_back(today: date) -> list[date]:
    """The last days of the months before this one, and today."""
    days = [today]
    first = today.replace(day=1)
    for _ in range(MONTHS - 1):
        days.append(first - timedelta(days=1))
        first = days[-1].replace(day=1)
    return days[::-1]


def hours_of_guesses(flow: Flow, *, narrow: bool = False) -> str:
    """Every guess that was met, the latest first."""
    met = sorted(
        (one for one in guesses_met(flow.state) if one.minutes > 0), key=lambda one: one.day, reverse=True
    )
    spent = tuple(Spent(one.name, one.guessed, one.minutes, not one.finished) for one in met)
    return hours_svg(spent, FAN_NARROW if narrow else FAN_BROAD)
