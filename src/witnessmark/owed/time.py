"""Debts that time makes: bare steel, a recoat window, a fire watch."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from witnessmark.owed.debt import Debt, spoken
from witnessmark.state.counts import Spark
from witnessmark.state.standing import State
from witnessmark.state.surfaces import SurfaceState

# Bare steel is coated within about four hours: common practice, no source we could read whole.
BARE_HOURS = 4
# Fire watch after the last spark, minutes: sixty are shown; thirty is the least that is published.
FIRE_WATCH_SHOWN = 60
FIRE_WATCH_LEAST = 30


def moment(day: date, time: str) -> datetime:
    """The moment of a line; "24:00" is the end of its day.

    >>> moment(date(2026, 3, 14), "24:00")
    datetime.datetime(2026, 3, 15, 0, 0)
    """
    hours, minutes = time.split(":")
    return datetime(day.year, day.month, day.day) + timedelta(hours=int(hours), minutes=int(minutes))


def time_debts(state: State, now: datetime) -> Iterator[Debt]:
    for surface in state.surfaces.values():
        yield from _bare(state, surface, now)
        yield from _recoat(state, surface, now)
    for spark in state.counts.sparks:
        yield from _fire_watch(spark, now)


def _bare(state: State, surface: SurfaceState, now: datetime) -> Iterator[Debt]:
    if surface.bared_line is None:
        return
    since = moment(surface.day, surface.time)
    due = since + timedelta(hours=BARE_HOURS)
    late = now >= due
    yield Debt(
        sort="bare",
        what="key and wipe the flash rust, then coat" if late else "coat the bare steel",
        where=state.vehicle.place_of(surface.name) or surface.name,
        item=f"bare {surface.name}",
        joint=surface.name if surface.name in state.vehicle.joints else "",
        part=surface.name if surface.name in state.vehicle.parts else "",
        if_missed="wets",
        because=f"{surface.name} is bare since {_when(since)}",
        line=surface.bared_line,
        since=surface.day,
        due=f"by {_when(due)}",
        due_day=due.date(),
        overdue=late,
        pays=f"coated {spoken(surface.name)}",
    )


def _recoat(state: State, surface: SurfaceState, now: datetime) -> Iterator[Debt]:
    if surface.coated_line is None or surface.last_coat or surface.recoat_until_hours is None:
        return
    put_on = moment(surface.day, surface.time)
    until = put_on + timedelta(hours=surface.recoat_until_hours)
    opens = put_on + timedelta(hours=surface.recoat_from_hours or 0)
    shut = now >= until
    what = (
        "key and clean, then the next coat: its window has shut" if shut else "next coat, inside its window"
    )
    yield Debt(
        sort="recoat",
        what=what,
        where=state.vehicle.place_of(surface.name) or surface.name,
        item=f"recoat {surface.name}",
        joint=surface.name if surface.name in state.vehicle.joints else "",
        part=surface.name if surface.name in state.vehicle.parts else "",
        if_missed="wets",
        because=f"{surface.product or 'the last coat'} went on {_when(put_on)}; the window is its sheet's",
        line=surface.coated_line,
        since=surface.day,
        due=f"{_when(opens)} to {_when(until)}",
        due_day=until.date(),
        overdue=shut,
        pays=f"coated {spoken(surface.name)} last coat",
    )


def _fire_watch(spark: Spark, now: datetime) -> Iterator[Debt]:
    last = moment(spark.day, spark.time)
    watched_out = last + timedelta(minutes=FIRE_WATCH_SHOWN)
    enough = any(moment(*look) >= watched_out for look in spark.looks)
    if enough or not last <= now < last + timedelta(days=1):
        return
    yield Debt(
        sort="fire_watch",
        what=f"fire watch until {watched_out:%H:%M}, one more look before locking up",
        where=spark.at,
        item=f"fire watch {spark.at}",
        if_missed="lets_go",
        line=spark.line,
        since=spark.day,
        because=f"last spark {last:%H:%M}; {FIRE_WATCH_LEAST} minutes is the least published",
        due=f"until {watched_out:%H:%M}",
        due_day=watched_out.date(),
        overdue=now >= watched_out,
        pays=f"watched fire {spoken(spark.at)}",
    )


def _when(moment: datetime) -> str:
    return f"{moment:%Y-%m-%d %H:%M}"
