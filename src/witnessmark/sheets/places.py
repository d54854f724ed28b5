"""The vehicle by place: which joints sit where and how each stands, the worst first."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import date

from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.sheets.phrases import counted, missed_words, sheet_code, short_day
from witnessmark.sheets.rows import JointRow, Section, Sheet
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import parted

STATES = ("apart", "loose", "tight", "proven", "as found")
UNTOLD = "place not told"


def places_sheet(state: State, words: Mapping[str, str], *, today: date) -> Sheet:
    """Every joint under its place; the place with the worst joint first, and the worst joint first in it.

    words  the word for each joint's state
    """
    vehicle = state.vehicle
    places: dict[str, list[str]] = {}
    for name in state.joints:
        places.setdefault(_place(vehicle.place_of(name), name), []).append(name)
    ranks = {name: (STATES.index(words[name]), _missed(state, name)) for name in state.joints}
    ordered = sorted(places.items(), key=lambda item: min(ranks[name] for name in item[1]))
    sections = tuple(
        Section(
            heading=f"{place}: {counted(len(names), 'joint')}",
            rows=tuple(_row(state, name, words) for name in sorted(names, key=lambda n: (ranks[n], n))),
            note=_counted([words[name] for name in names]),
        )
        for place, names in ordered
    )
    title = vehicle.name or "the vehicle"
    return Sheet(
        kind="vehicle",
        title="The vehicle by place",
        vehicle=title,
        date=today,
        line=state.last_line,
        code=sheet_code("vehicle", "", title, today, state.last_line),
        sections=sections or (Section(heading="joints", empty="No joint is described yet."),),
    )


def _counted(words: Sequence[str]) -> str:
    """How many stand how: "2 apart, 5 proven"."""
    numbers = Counter(words)
    return ", ".join(f"{numbers[word]} {word}" for word in STATES if numbers[word])


def _place(place: str, name: str) -> str:
    return place or parted(name)[1] or UNTOLD


def _missed(state: State, name: str) -> IfMissed:
    joint = state.vehicle.joints[name]
    return if_missed(joint.if_missed or kind_of(joint.kind).if_missed)


def _row(state: State, name: str, words: Mapping[str, str]) -> JointRow:
    now = state.joints[name]
    since = f"since {short_day(now.since)}" if now.since else ""
    return JointRow(
        name=name,
        state=words[name],
        if_missed=missed_words(_missed(state, name).key),
        because=since,
        line=now.line,
    )
