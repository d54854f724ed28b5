"""A vehicle for tests of the line: two brake corners and the axle between them, out of the starting lists."""

from __future__ import annotations

from datetime import date

from witnessmark.vehicle.starting_lists import expand
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.read import read_line
from witnessmark.words.understood import Reading, Understood
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of

TODAY = date(2026, 3, 18)  # a Wednesday
LISTS = (("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"), ("drive-axle", ""))


def garage(*lists: tuple[str, str], country: str = "GB") -> Vehicle:
    vehicle = Vehicle(country=country)
    for key, side in lists or LISTS:
        parts, joints = expand(key, side, vehicle)
        vehicle = Vehicle(
            country=country,
            parts={**vehicle.parts, **{p.name: p for p in parts}},
            joints={**vehicle.joints, **{j.name: j for j in joints}},
        )
    return vehicle


VOCABULARY: Vocabulary = vocabulary_of(garage())


def understood(text: str, *, kind: str = "", recent: tuple[str, ...] = ()) -> Understood:
    return read_line(text, VOCABULARY, today=TODAY, kind=kind, recent=recent)


def best(text: str, *, kind: str = "", recent: tuple[str, ...] = ()) -> Reading:
    return understood(text, kind=kind, recent=recent).best
