"""The vehicle as the record describes it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from types import MappingProxyType

import msgspec

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Described, DescribedVehicle, FoundBehind, ReadFigure
from witnessmark.tables.read import read_table
from witnessmark.vehicle.things import Joint, Part, Vehicle

USUAL_BODY = "car"


def vehicle_from(entries: Iterable[Entry]) -> Vehicle:
    """Read the vehicle out of its describing facts, in reading order; later words replace earlier."""
    head = DescribedVehicle()
    has: dict[str, bool] = {}
    parts: dict[str, Part] = {}
    joints: dict[str, Joint] = {}
    described: dict[str, int] = {}
    learned: list[ReadFigure | FoundBehind] = []
    for entry in entries:
        match entry.fact:
            case DescribedVehicle() as fact:
                head = _later(head, fact)
                has |= dict.fromkeys(fact.has, True) | dict.fromkeys(fact.has_not, False)
            case Described() as fact:
                parts |= {p.name: p for p in fact.parts}
                joints |= {j.name: j for j in fact.joints}
                for name in (*(p.name for p in fact.parts), *(j.name for j in fact.joints)):
                    described.setdefault(name, entry.line)
            case ReadFigure() | FoundBehind() as fact:
                learned.append(fact)
            case _:
                pass
    for fact in learned:
        _learn(joints, fact)
    systems, features = systems_and_features(head.body, has)
    return Vehicle(
        name=head.name,
        body=head.body,
        country=head.country,
        systems=systems,
        features=features,
        parts=MappingProxyType(parts),
        joints=MappingProxyType(joints),
        described=MappingProxyType(described),
    )


def _later(head: DescribedVehicle, fact: DescribedVehicle) -> DescribedVehicle:
    return DescribedVehicle(
        name=fact.name or head.name, body=fact.body or head.body, country=fact.country or head.country
    )


def _learn(joints: dict[str, Joint], fact: ReadFigure | FoundBehind) -> None:
    for name in fact.at:
        joint = joints.get(name)
        if joint is None:
            continue
        if isinstance(fact, FoundBehind):
            joints[name] = msgspec.structs.replace(joint, behind=fact.routes)
            continue
        joints[name] = msgspec.structs.replace(
            joint,
            figure=fact.figure or joint.figure,
            thread=fact.thread or joint.thread,
            grade=fact.grade or joint.grade,
            fluid=fact.fluid or joint.fluid,
        )


@cache
def _bodies() -> dict[str, tuple[frozenset[str], frozenset[str]]]:
    return {
        body: (frozenset(row["systems"]), frozenset(row["features"]))
        for body, row in read_table("gates/systems").items()
    }


def systems_and_features(body: str, has: dict[str, bool]) -> tuple[frozenset[str], frozenset[str]]:
    """What the vehicle has: its body kind's usual systems and features, and what the record adds or takes.

    A body the table does not know is asked for what a car is asked.
    """
    bodies = _bodies()
    systems, features = bodies.get(body, bodies[USUAL_BODY])
    every = frozenset().union(*(s for s, _ in bodies.values()))
    added = frozenset(n for n, yes in has.items() if yes)
    taken = frozenset(n for n, yes in has.items() if not yes)
    return (systems | (added & every)) - taken, (features | (added - every)) - taken


def known_bodies() -> tuple[str, ...]:
    """The body kinds the table knows.

    >>> "trailer" in known_bodies()
    True
    """
    return tuple(_bodies())
