"""What a vehicle is made of, as far as the record knows it: parts, and the joints between them."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from witnessmark.ground.quantity import Quantity

Routes = tuple[tuple[str, ...], ...]


class Figure(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A figure to close a joint at, as a band in its inside unit, with its standing and place.

    low, high  the band in `unit` (equal where the book prints one number)
    typed      as typed, "47 N·m"
    standing   a rung of the one ladder, "owner's book"
    where      page or section
    """

    low: float
    high: float
    unit: str
    typed: str
    standing: str = "guess"
    where: str = ""


class Part(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A thing that can come off. `name` is whole, with side: "brake drum, left rear"."""

    name: str
    place: str = ""
    side: str = ""
    assembly: str = ""
    number: int = 1
    note: str = ""
    where: str = ""


class Joint(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """How things hold, seal, carry or protect.

    name       whole, with side: "hub nut, left rear"
    kind       key of the close-out catalogue
    holds      names of the parts that are free once it is apart
    behind     routes: any one of them, all of its things off or apart, lets a hand reach it
    number     how many fasteners (plugs, studs) share it
    if_missed  only where it differs from its kind's
    """

    name: str
    kind: str = "unsaid"
    place: str = ""
    side: str = ""
    assembly: str = ""
    holds: tuple[str, ...] = ()
    behind: Routes = ()
    number: int = 1
    if_missed: str = ""
    figure: Figure | None = None
    thread: str = ""
    grade: str = ""
    fluid: str = ""
    quantity: Quantity | None = None
    size: str = ""
    note: str = ""

    @property
    def fasteners(self) -> str:
        """Thread and grade as the record has them, and how many share the joint.

        >>> Joint(name="propshaft bolts", thread="3/8 UNF", grade="8.8", number=4).fasteners
        '3/8 UNF, 8.8, 4 off'
        """
        many = f"{self.number} off" if self.number > 1 else ""
        return ", ".join(part for part in (self.thread, self.grade, many) if part)


class Vehicle(Struct, frozen=True, kw_only=True):
    """The vehicle as described by the record so far.

    described  lines that described each name, for pointing back
    """

    name: str = ""
    body: str = ""
    country: str = ""
    systems: frozenset[str] = frozenset()
    features: frozenset[str] = frozenset()
    parts: Mapping[str, Part] = {}
    joints: Mapping[str, Joint] = {}
    described: Mapping[str, int] = {}

    def place_of(self, name: str) -> str:
        """Where on the vehicle a part or joint sits; "" when not told."""
        thing = self.joints.get(name) or self.parts.get(name)
        return (thing.place or thing.side) if thing else ""

    def assembly_of(self, name: str) -> str:
        """The assembly a part or joint belongs to, or the name itself where it is one; "" for neither."""
        thing = self.joints.get(name) or self.parts.get(name)
        return thing.assembly if thing else (name if name in self.assemblies else "")

    def in_assembly(self, assembly: str) -> tuple[str, ...]:
        """Names of the joints of an assembly, in the order they were described."""
        return tuple(j.name for j in self.joints.values() if j.assembly == assembly)

    @property
    def assemblies(self) -> tuple[str, ...]:
        """Names of the assemblies, in the order they were described."""
        return tuple(dict.fromkeys(j.assembly for j in self.joints.values() if j.assembly))
