"""The drawn vehicle as a value: which places hold what, how each stands, and the pictures of it."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from witnessmark.ground.missed import if_missed
from witnessmark.sheets.drawn.boxes import plan_boxes
from witnessmark.sheets.drawn.picture import Address, PlaceNow, plan_svg, side_svg
from witnessmark.sheets.drawn.placing import drawn_place
from witnessmark.sheets.drawn.shapes import shape_of
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Vehicle

STATES = ("apart", "loose", "tight", "proven", "as found")
UNTOLD = "place not told"
SIDES_DRAWN = ("left", "right")


class PlaceHeld(Struct, frozen=True, kw_only=True):
    """One place of the vehicle: its joints and parts, and how the worst joint stands.

    joints  the worst first
    drawn   it lies on the drawing; what does not is listed beside it
    """

    name: str
    joints: tuple[str, ...]
    parts: tuple[str, ...]
    now: PlaceNow
    drawn: bool


class DrawnVehicle(Struct, frozen=True, kw_only=True):
    """The pictures as SVG, the worst place first in the list of all places."""

    shape: str
    plan: str
    sides: tuple[str, ...]
    places: tuple[PlaceHeld, ...]


def draw_vehicle(state: State, words: Mapping[str, str], address: Address) -> DrawnVehicle:
    """Draw a vehicle as it stands.

    words    the word for each joint's state
    address  where a place's own page is
    """
    shape = shape_of(state.vehicle)
    places = places_held(state, words)
    now = {place.name: place.now for place in places}
    return DrawnVehicle(
        shape=shape.key,
        plan=plan_svg(shape, now, address),
        sides=tuple(side_svg(shape, side, now, address) for side in SIDES_DRAWN),
        places=places,
    )


def places_held(state: State, words: Mapping[str, str]) -> tuple[PlaceHeld, ...]:
    """Every place something is told to be at, the worst first; places of the drawing under its own names."""
    vehicle = state.vehicle
    known = plan_boxes(shape_of(vehicle))
    joints: dict[str, list[str]] = {}
    parts: dict[str, list[str]] = {}
    for name in state.joints:
        joints.setdefault(_place(vehicle, name, known), []).append(name)
    for name in state.parts:
        parts.setdefault(_place(vehicle, name, known), []).append(name)
    ranks = {name: (STATES.index(words[name]), _missed(state, name), name) for name in state.joints}
    found = [
        PlaceHeld(
            name=place,
            joints=tuple(sorted(joints.get(place, ()), key=ranks.__getitem__)),
            parts=tuple(sorted(parts.get(place, ()))),
            now=_now([ranks[name] for name in joints.get(place, ())]),
            drawn=place in known,
        )
        for place in {**joints, **parts}
    ]
    return tuple(sorted(found, key=_worst))


def _place(vehicle: Vehicle, name: str, known: Mapping[str, object]) -> str:
    told = vehicle.place_of(name) or parted(name)[1]
    return drawn_place(told, known) or told or UNTOLD


Rank = tuple[int, int, str]


def _missed(state: State, name: str) -> int:
    joint = state.vehicle.joints[name]
    return if_missed(joint.if_missed or kind_of(joint.kind).if_missed)


def _now(ranks: list[Rank]) -> PlaceNow:
    if not ranks:
        return PlaceNow()
    undone = [missed for stands, missed, _ in ranks if STATES[stands] in ("apart", "loose")]
    return PlaceNow(state=STATES[min(ranks)[0]], lets_go=bool(undone) and min(undone) == 0)


def _worst(place: PlaceHeld) -> tuple[int, bool, str]:
    rank = STATES.index(place.now.state) if place.now.state else len(STATES)
    return (rank, not place.now.lets_go, place.name)
