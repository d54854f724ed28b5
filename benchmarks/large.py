"""A large record, made up: every starting list several times over, opened, closed and proved over years.

Most of what was opened is proven again; one in twelve joints stands half done, as in a real garage.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from datetime import date, datetime, timedelta
from itertools import cycle
from pathlib import Path

from msgspec.structs import replace

from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.store.sqlite_record import create
from witnessmark.vehicle.starting_lists import expand, starting_lists
from witnessmark.vehicle.things import Vehicle

FIRST = date(2016, 1, 2)
NOW = datetime(2026, 3, 14, 11, 20)
SIDES = {"corner": ("left front", "right front", "left rear", "right rear"), "side": ("left", "right")}
TORQUE = (Quantity("47 N·m", 47.0, "N·m"),)
HALF_DONE = 12


def large_record(folder: Path, *, joints: int, facts: int) -> None:
    """Make it in an empty folder."""
    with create(folder) as record:
        record.append(list(entries(joints, facts)), 0)


def entries(joints: int, size: int) -> Iterator[Entry]:
    """The lines, a few dozen a week."""
    described = list(descriptions(joints))
    names = [joint.name for one in described for joint in one.joints]
    told: list[f.AnyFact] = [f.DescribedVehicle(name="long-lived", body="pickup", country="GB"), *described]
    told += work(names, size - len(told))
    step = ((NOW.date() - FIRST).days - 1) / size
    for line, fact in enumerate(told, 1):
        day = FIRST + timedelta(days=int(line * step))
        yield Entry(
            id=f"{line:016d}", day=day, time=END_OF_DAY, written=f"{day}T20:00:00", line=line, who="you",
            words=f"{type(fact).__name__.lower()} {', '.join(getattr(fact, 'at', ())[:2])}", fact=fact,
        )  # fmt: skip


def descriptions(joints: int) -> Iterator[f.Described]:
    """Starting lists at every side, over and over under new names, until there are so many joints."""
    found = 0
    for turn in cycle(range(1, 1000)):
        for key, one in starting_lists().items():
            for side in SIDES.get(one.per, ("",)):
                parts, brought = expand(key, side, Vehicle())
                fact = renamed(f.Described(parts=parts, joints=brought[: joints - found]), turn)
                found += len(fact.joints)
                yield fact
                if found >= joints:
                    return


def renamed(fact: f.Described, turn: int) -> f.Described:
    """The same under other names, so that a second one does not replace the first."""
    if turn == 1:
        return fact
    head = ("", "", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")[turn]

    def new(name: str) -> str:
        return f"{head} {name}" if name else ""

    return replace(
        fact,
        parts=tuple(replace(p, name=new(p.name), assembly=new(p.assembly)) for p in fact.parts),
        joints=tuple(
            replace(
                j, name=new(j.name), assembly=new(j.assembly), holds=tuple(new(n) for n in j.holds),
                behind=tuple(tuple(new(n) for n in route) for route in j.behind),
            )
            for j in fact.joints
        ),
    )  # fmt: skip


def work(names: list[str], size: int) -> list[f.AnyFact]:
    """Each joint opened, renewed, closed and proved in its turn; at the end some stand half done."""
    draw = random.Random(7)
    half = draw.sample(names, len(names) // HALF_DONE)
    last: list[f.AnyFact] = []
    for n, name in enumerate(half):
        last += [f.Opened(at=(name,)), *([f.Found(at=(name,), condition="worn")] if n % 4 == 0 else [])]
        last += [f.NippedUp(at=(name,))] if n % 3 == 1 else []
        last += [f.Tightened(at=(name,), figures=TORQUE)] if n % 3 == 2 else []
    last += [f.Wanted(at=(name,), job="renew") for name in half[:6]]
    done: list[f.AnyFact] = []
    while len(done) < size - len(last):
        name = draw.choice(names)
        done += [f.Opened(at=(name,)), f.Found(at=(name,), condition="stuck"), f.Fitted(at=(name,), new=True)]
        done += [f.Closed(at=(name,), seen=True, figures=TORQUE), f.LookedAt(at=(name,))]
    return [*done[: size - len(last)], *last]
