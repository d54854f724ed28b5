"""Starting lists: one choice brings the parts and joints of an assembly, and what stands in front of what."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

import msgspec
from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.tables.read import names_in, read_table
from witnessmark.vehicle.sides import CORNERS, parted, whole_name
from witnessmark.vehicle.things import Joint, Part, Vehicle

Expanded = tuple[tuple[Part, ...], tuple[Joint, ...]]


class ListedPart(Struct, frozen=True, kw_only=True):
    """A part of a list, its name without the corner."""

    name: str
    quantity: int = 1
    note: str = ""


class ListedJoint(Struct, frozen=True, kw_only=True):
    """A joint of a list; names in `holds` and `behind` are those of the list, without the corner."""

    name: str
    kind: str
    holds: tuple[str, ...] = ()
    behind: tuple[tuple[str, ...], ...] = ()
    count: int = 1
    if_missed: str = ""
    note: str = ""


class StartingList(Struct, frozen=True, kw_only=True):
    """One list.

    per    corner, side or vehicle: whether a corner or side must be told
    strip  joint names, outermost first
    """

    key: str
    name: str
    words: tuple[str, ...]
    place: str
    per: str
    system: str
    cautions: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    photo_first: str = ""
    safe_stop: str = ""
    helper_minutes: int = 0
    blocks: str = ""
    store_note: str = ""
    strip: tuple[str, ...] = ()
    part: tuple[ListedPart, ...] = ()
    joint: tuple[ListedJoint, ...] = ()


@cache
def starting_lists() -> Mapping[str, StartingList]:
    """Every starting list by its key.

    >>> starting_lists()["drum-brake-corner"].per
    'corner'
    """
    found = {}
    for name in names_in("lists"):
        key = name.rpartition("/")[2]
        found[key] = msgspec.convert({"key": key, **read_table(name)}, StartingList)
    return MappingProxyType(found)


def side_wanted(chosen: StartingList, side: str) -> str:
    """What is missing before a list can be brought in: "corner", "side" or "".

    >>> side_wanted(starting_lists()["drum-brake-corner"], "left")
    'corner'
    """
    if chosen.per == "corner":
        return "" if side in CORNERS else "corner"
    if chosen.per == "side":
        return "" if side else "side"
    return ""


def assembly_name(list_key: str, side: str) -> str:
    """The whole name of the assembly a list brings.

    >>> assembly_name("drum-brake-corner", "left rear")
    'drum brake corner, left rear'
    """
    chosen = starting_lists()[list_key]
    return whole_name(chosen.name, side if chosen.per != "vehicle" else "")


def expand(list_key: str, side: str, vehicle: Vehicle) -> Expanded:
    """The parts and joints a list brings to a vehicle, under whole names.

    A name the record knows already is shared, not described twice. Names in `holds` and `behind`
    mean the list's own things first, then what the vehicle has on that side, then on the whole.
    Raises BadInput for an unknown list, or where a corner or side is needed and not told.
    """
    lists = starting_lists()
    if list_key not in lists:
        raise BadInput(
            given=f"{list_key!r} is no starting list", holds=", ".join(lists), do="Choose one of the lists."
        )
    chosen = lists[list_key]
    wanted = side_wanted(chosen, side)
    if wanted:
        holds = ", ".join(CORNERS) if wanted == "corner" else "left or right"
        raise BadInput(given=f"{chosen.name} without a {wanted}", holds=holds, do=f"Say which {wanted}.")
    naming = _Naming(chosen, side if chosen.per != "vehicle" else "", vehicle)
    parts = tuple(naming.part(p) for p in chosen.part if naming.whole(p.name) not in vehicle.parts)
    joints = tuple(naming.joint(j) for j in chosen.joint if naming.whole(j.name) not in vehicle.joints)
    return parts, joints


class _Naming:
    """Whole names for the plain names of one list brought to one side."""

    def __init__(self, chosen: StartingList, side: str, vehicle: Vehicle) -> None:
        self.chosen, self.side, self.vehicle = chosen, side, vehicle
        self.own = {p.name for p in chosen.part} | {j.name for j in chosen.joint}
        self.assembly = whole_name(chosen.name, side)
        self.place = chosen.place.format(corner=side, side=side).strip()

    def whole(self, name: str) -> str:
        plain, own_side = parted(name)
        return whole_name(plain, own_side or self.side)

    def mentioned(self, name: str) -> str:
        sided = self.whole(name)
        known = {*self.vehicle.parts, *self.vehicle.joints}
        if name in self.own or sided in known or name not in known:
            return sided
        return name

    def part(self, listed: ListedPart) -> Part:
        whole = self.whole(listed.name)
        return Part(
            name=whole,
            place=self.place,
            side=parted(whole)[1],
            assembly=self.assembly,
            number=listed.quantity,
            note=listed.note,
        )

    def joint(self, listed: ListedJoint) -> Joint:
        whole = self.whole(listed.name)
        return Joint(
            name=whole,
            kind=listed.kind,
            place=self.place,
            side=parted(whole)[1],
            assembly=self.assembly,
            holds=tuple(self.mentioned(n) for n in listed.holds),
            behind=tuple(tuple(self.mentioned(n) for n in route) for route in listed.behind),
            number=listed.count,
            if_missed=listed.if_missed,
            note=listed.note,
        )
