"""The drawn vehicle, and one place of it with its layers: what the vehicle's pages ask for."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.reach.access import access_of
from witnessmark.reach.layers import layers
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.sheet import words_of
from witnessmark.sheets.drawn.vehicle import DrawnVehicle, PlaceHeld, draw_vehicle, places_held


class Thing(Struct, frozen=True, kw_only=True):
    """A part or a joint in its layer.

    state  of a joint its word; of a part where it is
    off    out of the way already
    from_  the place it belongs to, where that is another
    """

    name: str
    joint: bool
    state: str
    off: bool
    from_: str = ""


class PlaceShown(Struct, frozen=True, kw_only=True):
    """One place: what it holds, and what lies on what, the outermost layer first."""

    held: PlaceHeld
    layers: tuple[tuple[Thing, ...], ...]


def vehicle_drawn(flow: Flow, address: Callable[[str], str]) -> DrawnVehicle:
    """The vehicle drawn as it stands; `address` says where a place's page is."""
    return draw_vehicle(flow.state, words_of(flow), address)


def place_shown(flow: Flow, name: str) -> PlaceShown:
    """One place by its name. Raises BadInput where nothing is told to be there."""
    places = {place.name: place for place in places_held(flow.state, words_of(flow))}
    if name not in places:
        raise BadInput(
            given=f"nothing is told to be at {name!r}",
            holds="a place of this vehicle",
            do="Choose one on the vehicle's page.",
            near=tuple(places)[:4],
        )
    held = places[name]
    own = {name: n for n, name in enumerate((*held.joints, *held.parts))}
    access = access_of(flow.state)
    piles = layers(access, [*held.joints, *held.parts])
    gone = {access.names[n] for n in access.gone}
    return PlaceShown(
        held=held,
        layers=tuple(
            tuple(
                _thing(flow, thing, thing in own, thing in gone)
                for thing in sorted(pile, key=lambda name: own.get(name, len(own)))
            )
            for pile in piles
        ),
    )


def _thing(flow: Flow, name: str, own: bool, gone: bool) -> Thing:
    joint = name in flow.state.joints
    part = flow.state.parts.get(name)
    stands = flow.word(name) if joint else part.where if part else "never described"
    elsewhere = "" if own else flow.vehicle.place_of(name) or "another place"
    return Thing(name=name, joint=joint, state=stands, off=gone, from_=elsewhere)
