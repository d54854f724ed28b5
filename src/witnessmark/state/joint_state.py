"""One joint as it stands, and the same while the journal is being walked."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.entry import Entry
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Joint

Place = tuple[date, str, int]

AS_FOUND, APART, LOOSE, TIGHT = "as found", "apart", "loose", "tight"


class Look(Struct, frozen=True):
    """A look after closing, and how far and how hot the vehicle had run by then."""

    line: int
    day: date
    km: float
    heat_cycles: int


class Finding(Struct, frozen=True):
    """Something wrong that was seen on a joint and not yet put right."""

    condition: str
    item: str
    line: int
    day: date


class JointState(Struct, frozen=True, kw_only=True):
    """One joint as it stands.

    position     as found, apart, loose or tight
    since, line  when and by which line it came to stand so
    opened_line  the opening since which renewals and proofs are owed; None when never opened
    renewed      item -> line it was fitted new by, since that opening; answered, recorded: the same
    closed_*     when it was made tight, and how far and hot the vehicle had run by then
    fights       a finding says its fasteners or seal will not come easily
    """

    name: str
    position: str = AS_FOUND
    since: date | None = None
    line: int | None = None
    opened_line: int | None = None
    opened_day: date | None = None
    opened_place: Place | None = None
    renewed: Mapping[str, int] = MappingProxyType({})
    answered: Mapping[str, int] = MappingProxyType({})
    recorded: Mapping[str, int] = MappingProxyType({})
    torque: Quantity | None = None
    closed_line: int | None = None
    closed_day: date | None = None
    closed_km: float = 0.0
    closed_heat: int = 0
    looks: tuple[Look, ...] = ()
    findings: tuple[Finding, ...] = ()
    finger_tight: bool = False
    fights: str = ""
    left_why: str = ""
    scrapped: bool = False

    @property
    def as_found(self) -> bool:
        return self.position == AS_FOUND


class JointNow:
    """A joint while the journal is walked."""

    def __init__(self, joint: Joint) -> None:
        self.joint = joint
        self.kind: Kind = kind_of(joint.kind)
        self.position = AS_FOUND
        self.since: date | None = None
        self.line: int | None = None
        self.opened_line: int | None = None
        self.opened_day: date | None = None
        self.opened_place: Place | None = None
        self.findings: list[Finding] = []
        self.fights = ""
        self.left_why = ""
        self.scrapped = False
        self.forget()

    def disturb(self, entry: Entry) -> None:
        """From this line on it owes: renewals, proofs, records."""
        self.forget()
        self.opened_line, self.opened_day, self.opened_place = entry.line, entry.day, entry.place

    def forget(self) -> None:
        """Opened anew: what was fitted, answered and recorded before counts no more."""
        self.renewed: dict[str, int] = {}
        self.answered: dict[str, int] = {}
        self.recorded: dict[str, int] = {}
        self.torque: Quantity | None = None
        self.closed_line: int | None = None
        self.closed_day: date | None = None
        self.closed_km = 0.0
        self.closed_heat = 0
        self.looks: list[Look] = []
        self.finger_tight = False

    def stand(self, position: str, entry: Entry) -> None:
        self.position, self.since, self.line = position, entry.day, entry.line
        self.finger_tight = False

    def copied(self) -> JointNow:
        """The same joint once more; what befalls either the other does not see."""
        fresh = JointNow.__new__(JointNow)
        vars(fresh).update(vars(self))
        fresh.renewed, fresh.answered = self.renewed.copy(), self.answered.copy()
        fresh.recorded = self.recorded.copy()
        fresh.looks, fresh.findings = self.looks.copy(), self.findings.copy()
        return fresh

    def frozen(self) -> JointState:
        return JointState(
            name=self.joint.name,
            position=self.position,
            since=self.since,
            line=self.line,
            opened_line=self.opened_line,
            opened_day=self.opened_day,
            opened_place=self.opened_place,
            renewed=MappingProxyType(self.renewed),
            answered=MappingProxyType(self.answered),
            recorded=MappingProxyType(self.recorded),
            torque=self.torque,
            closed_line=self.closed_line,
            closed_day=self.closed_day,
            closed_km=self.closed_km,
            closed_heat=self.closed_heat,
            looks=tuple(self.looks),
            findings=tuple(self.findings),
            finger_tight=self.finger_tight,
            fights=self.fights,
            left_why=self.left_why,
            scrapped=self.scrapped,
        )
