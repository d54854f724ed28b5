"""How each joint stands: as found, apart, loose or tight, and what was answered since it was opened."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AtFact,
    Bared,
    Closed,
    Coated,
    CutOut,
    DownedTools,
    DryFitted,
    Filled,
    Fitted,
    Found,
    Left,
    LookedAt,
    Marked,
    Measured,
    NippedUp,
    Opened,
    Photographed,
    Proved,
    PutRight,
    Ran,
    Scrapped,
    Slackened,
    Tightened,
    TookOff,
    Welded,
)
from witnessmark.state.closing import answers_all, lets_go, named_in, own_items
from witnessmark.state.joint_state import APART, AS_FOUND, LOOSE, TIGHT, Finding, JointNow, JointState, Look
from witnessmark.state.lane import Step, copied
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.things import Vehicle


class JointLane:
    """The joints' way through the journal."""

    def __init__(self, vehicle: Vehicle) -> None:
        self.vehicle = vehicle
        self.now = {name: JointNow(joint) for name, joint in vehicle.joints.items()}
        self.holders: dict[str, list[str]] = {}
        self.assemblies: dict[str, list[str]] = {}
        self.asked_by_check: dict[str, list[str]] = {}
        self.off: set[str] = set()
        self.km = 0.0
        self.heat_cycles = 0
        for name, joint in self.now.items():
            for part in joint.joint.holds:
                self.holders.setdefault(part, []).append(name)
            if joint.joint.assembly:
                self.assemblies.setdefault(joint.joint.assembly, []).append(name)
            for check in joint.kind.check:
                self.asked_by_check.setdefault(check.name, []).append(name)

    @property
    def steps(self) -> Mapping[type, Step]:
        each = self._each
        return {
            TookOff: self.took_off,
            Opened: each(self.opened),
            CutOut: each(self.opened),
            Slackened: each(self.slackened),
            DryFitted: each(self.loosely),
            NippedUp: each(self.loosely),
            DownedTools: each(self.finger_tight),
            Found: each(self.found),
            Bared: each(self.bared),
            Coated: each(self.coated),
            Fitted: self.fitted,
            Tightened: each(self.tightened),
            Filled: each(self.filled),
            Welded: each(self.welded),
            Proved: self.proved,
            PutRight: self.put_right,
            LookedAt: each(self.looked_at),
            Marked: each(lambda joint, entry, fact: self.record(joint, entry, "mark")),
            Photographed: each(self.photographed),
            Measured: each(self.measured),
            Closed: self.closed,
            Left: each(self.left),
            Scrapped: each(self.scrapped),
            Ran: self.ran,
        }

    def copied(self) -> JointLane:
        fresh = copied(self)
        fresh.now = {name: joint.copied() for name, joint in self.now.items()}
        return fresh

    def states(self) -> Mapping[str, JointState]:
        return MappingProxyType({name: joint.frozen() for name, joint in self.now.items()})

    def _each(self, act: Callable[[JointNow, Entry, Any], None]) -> Step:
        def step(entry: Entry, fact: AtFact) -> None:
            for name in fact.at:
                joint = self.now.get(name)
                if joint is not None:
                    act(joint, entry, fact)

        return step

    # ---- opening

    def opened(self, joint: JointNow, entry: Entry, fact: object = None) -> None:
        if joint.position == APART:
            return
        joint.disturb(entry)
        joint.stand(APART, entry)

    def took_off(self, entry: Entry, fact: TookOff) -> None:
        for name in fact.at:
            if name in self.now:
                self.opened(self.now[name], entry)
            if name in self.vehicle.parts:
                self.off.add(name)
                for holder in self.holders.get(name, ()):
                    self.opened(self.now[holder], entry)

    def slackened(self, joint: JointNow, entry: Entry, fact: object) -> None:
        if joint.position in (AS_FOUND, TIGHT):
            joint.disturb(entry)
        joint.stand(LOOSE, entry)

    def found(self, joint: JointNow, entry: Entry, fact: Found) -> None:
        seen = condition(fact.condition)
        if seen.fights:
            joint.fights = fact.condition
        if seen.loosens and joint.position in (AS_FOUND, TIGHT):
            self.slackened(joint, entry, fact)
        if seen.bad and not any((f.condition, f.item) == (fact.condition, fact.item) for f in joint.findings):
            joint.findings.append(Finding(fact.condition, fact.item, entry.line, entry.day))
        elif seen.good:
            joint.findings = [f for f in joint.findings if f.item != fact.item]

    def bared(self, joint: JointNow, entry: Entry, fact: object) -> None:
        if joint.kind.closed_by == "coat":
            self.opened(joint, entry)

    # ---- closing

    def loosely(self, joint: JointNow, entry: Entry, fact: object) -> None:
        if joint.position in (AS_FOUND, TIGHT):
            self.slackened(joint, entry, fact)
        else:
            joint.stand(LOOSE, entry)

    def finger_tight(self, joint: JointNow, entry: Entry, fact: object) -> None:
        self.loosely(joint, entry, fact)
        joint.finger_tight = True

    def fitted(self, entry: Entry, fact: Fitted) -> None:
        for name in fact.at:
            if name in self.now:
                self._fitted_joint(self.now[name], entry, fact)
            if name in self.vehicle.parts:
                self.off.discard(name)
                for holder in self.holders.get(name, ()):
                    self._refitted(self.now[holder], entry)

    def touch(self, joint: JointNow, entry: Entry) -> None:
        """A joint never touched before owes its proof from the first act on it."""
        if joint.position == AS_FOUND:
            joint.disturb(entry)
            joint.stand(LOOSE, entry)

    def _fitted_joint(self, joint: JointNow, entry: Entry, fact: Fitted) -> None:
        self.touch(joint, entry)
        if fact.item:
            self._renew(joint, fact.item, entry)
            return
        if fact.new or joint.kind.closed_by == "fit":
            for item in own_items(joint.joint, joint.kind):
                self._renew(joint, item, entry)
            if fact.new:
                joint.findings = [f for f in joint.findings if f.item]
        if joint.kind.closed_by in ("fit", "place"):
            self.tight(joint, entry)
        elif joint.position != LOOSE:
            joint.stand(LOOSE, entry)

    def _refitted(self, holder: JointNow, entry: Entry) -> None:
        whole = not self.off.intersection(holder.joint.holds)
        if whole and holder.position == APART and holder.kind.closed_by in ("tighten", "set", "connect"):
            holder.stand(LOOSE, entry)

    def _renew(self, joint: JointNow, item: str, entry: Entry) -> None:
        joint.renewed[item] = entry.line
        joint.findings = [f for f in joint.findings if f.item != item]

    def tight(self, joint: JointNow, entry: Entry) -> None:
        self.touch(joint, entry)
        joint.stand(TIGHT, entry)
        joint.findings = [f for f in joint.findings if not condition(f.condition).loosens]
        joint.closed_line, joint.closed_day = entry.line, entry.day
        joint.closed_km, joint.closed_heat = self.km, self.heat_cycles

    def tightened(self, joint: JointNow, entry: Entry, fact: Tightened) -> None:
        self.tight(joint, entry)
        if fact.figures:
            joint.torque = fact.figures[0]
            self.record(joint, entry, "figure")
        if fact.marked:
            self.record(joint, entry, "mark")

    def filled(self, joint: JointNow, entry: Entry, fact: Filled) -> None:
        if joint.kind.closed_by in ("fill", "bleed"):
            self.tight(joint, entry)
        self.record(joint, entry, "fluid")
        if fact.figures:
            self.record(joint, entry, "figure")

    def welded(self, joint: JointNow, entry: Entry, fact: object) -> None:
        if joint.kind.closed_by == "weld":
            self.tight(joint, entry)
            joint.findings.clear()

    def coated(self, joint: JointNow, entry: Entry, fact: object) -> None:
        if joint.kind.closed_by == "coat":
            self.tight(joint, entry)
            self.record(joint, entry, "coat")

    # ---- proving

    def proved(self, entry: Entry, fact: Proved) -> None:
        joints = [self.now[n] for n in fact.at if n in self.now]
        if fact.check:
            for joint in joints if fact.at else self._asked(fact.check):
                self._answer(joint, entry, fact)
            return
        for joint in joints:
            if joint.position in (TIGHT, AS_FOUND):
                joint.looks.append(Look(entry.line, entry.day, self.km, self.heat_cycles))
                if answers_all(joint.joint, joint.kind, fact):
                    joint.answered.update((check.name, entry.line) for check in joint.kind.check)

    def _asked(self, check: str) -> list[JointNow]:
        """The joints answered when none was named: all that share an act of many kinds, else the only one."""
        asked = [self.now[name] for name in self.asked_by_check.get(check, ())]
        if len({joint.kind.key for joint in asked}) > 1:
            return asked
        waiting = [j for j in asked if j.opened_line is not None and check not in j.answered]
        return waiting if len(waiting) == 1 else []

    def _answer(self, joint: JointNow, entry: Entry, fact: Proved) -> None:
        """A check counts once its joint is tight; one given on the workbench counts while it is apart."""
        stage = next((c.stage for c in joint.kind.check if c.name == fact.check), "")
        if joint.position in (TIGHT, AS_FOUND) or stage == "workbench":
            joint.answered[fact.check] = entry.line
            if fact.figures:
                self.record(joint, entry, "figure")

    def put_right(self, entry: Entry, fact: PutRight) -> None:
        for joint in self.now.values():
            if joint.kind.closed_by == "bleed" and fact.what in (
                joint.joint.name,
                f"bleed {joint.kind.system}",
            ):
                self.tight(joint, entry)

    def looked_at(self, joint: JointNow, entry: Entry, fact: object) -> None:
        joint.looks.append(Look(entry.line, entry.day, self.km, self.heat_cycles))

    def measured(self, joint: JointNow, entry: Entry, fact: Measured) -> None:
        self.record(joint, entry, "figure")
        if fact.what:
            self.record(joint, entry, fact.what)

    def record(self, joint: JointNow, entry: Entry, what: str) -> None:
        joint.recorded[what] = entry.line

    def photographed(self, joint: JointNow, entry: Entry, fact: Photographed) -> None:
        """A photo that goes with the line of a joint still open shows no closing."""
        if not fact.of or joint.position == TIGHT:
            self.record(joint, entry, "photo")

    def closed(self, entry: Entry, fact: Closed) -> None:
        for name in fact.at:
            if name in self.now:
                self._close(self.now[name], entry, fact)
            for member in self.assemblies.get(name, ()):
                if self._swept(self.now[member], fact):
                    self._close(self.now[member], entry, fact)

    def _swept(self, joint: JointNow, fact: Closed) -> bool:
        """Whether closing a whole assembly closes this joint of it."""
        if lets_go(joint.joint, joint.kind):
            return False
        return joint.opened_line is not None and not named_in(joint.joint.name, fact.but)

    def _close(self, joint: JointNow, entry: Entry, fact: Closed) -> None:
        self.tight(joint, entry)
        if fact.figures:
            joint.torque = fact.figures[0]
        if not answers_all(joint.joint, joint.kind, fact):
            return
        for renewal in joint.kind.renew:
            if renewal.always:
                self._renew(joint, renewal.item, entry)
        joint.answered.update((check.name, entry.line) for check in joint.kind.check)
        joint.recorded.update((record.name, entry.line) for record in joint.kind.record)

    # ---- the rest

    def left(self, joint: JointNow, entry: Entry, fact: Left) -> None:
        joint.left_why = fact.why
        if not lets_go(joint.joint, joint.kind):
            joint.findings.clear()

    def scrapped(self, joint: JointNow, entry: Entry, fact: object) -> None:
        joint.scrapped = True

    def ran(self, entry: Entry, fact: Ran) -> None:
        self.km += fact.km
        self.heat_cycles += fact.heat_cycles
