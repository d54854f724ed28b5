"""What a vehicle is drawn by: the proportions of a few body kinds, chosen by what the record calls it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

import msgspec
from msgspec import Struct

from witnessmark.tables.read import read_table
from witnessmark.vehicle.things import Vehicle

USUAL = "saloon"


class Shape(Struct, frozen=True, kw_only=True):
    """Proportions in centimetres, lengths counted from the front backwards; see the table's head."""

    key: str
    bodies: tuple[str, ...]
    words: tuple[str, ...]
    length: float
    width: float
    height: float
    front: float
    wheelbase: float
    wheel: float
    tyre: float
    sill: float
    waist: float
    bonnet: float
    screen: float
    cab: float
    roof: float
    tail: float
    deck: float

    @property
    def towed(self) -> bool:
        """Drawn behind a drawbar, on one axle."""
        return self.wheelbase == 0

    @property
    def single_track(self) -> bool:
        """Two wheels in one line."""
        return self.key == "two-wheeler"

    @property
    def rear(self) -> float:
        """Where the rear axle stands, or the only one."""
        return self.front + self.wheelbase


@cache
def shapes() -> Mapping[str, Shape]:
    """Every shape by its key.

    >>> "pickup" in shapes(), len(shapes()) >= 6
    (True, True)
    """
    rows = read_table("bodies/shapes")
    return MappingProxyType({key: msgspec.convert({"key": key, **row}, Shape) for key, row in rows.items()})


def shape_of(vehicle: Vehicle) -> Shape:
    """The shape a vehicle is drawn by: by a word of its name, else by its body kind, else a saloon.

    >>> [shape_of(v).key for v in (Vehicle(name="grey estate", body="car"), Vehicle(body="braked trailer"))]
    ['estate', 'trailer']
    """
    name = set(re.findall(r"[a-z-]+", vehicle.name.lower()))
    fitting = [s for s in shapes().values() if vehicle.body in s.bodies]
    named = [s for s in shapes().values() if name & set(s.words)]
    if vehicle.body in ("", "car"):
        return next(iter(named or fitting), shapes()[USUAL])
    return next(iter(fitting or named), shapes()[USUAL])
