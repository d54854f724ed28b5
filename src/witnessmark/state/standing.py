"""How the whole vehicle stands: every lane walked in one pass over what still stands in the record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from functools import cached_property
from typing import NamedTuple

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Described, DescribedVehicle, FoundBehind, ReadFigure, Struck
from witnessmark.journal.order import reading_order, standing
from witnessmark.state.answers import AnswerLane, Answers
from witnessmark.state.calendar import Calendar, CalendarLane
from witnessmark.state.counts import CountLane, Counts
from witnessmark.state.description import vehicle_from
from witnessmark.state.joint_state import JointState, Place
from witnessmark.state.joints import JointLane
from witnessmark.state.lane import walk
from witnessmark.state.parts import PartLane, PartState
from witnessmark.state.sizes import SizeLane, Sizes
from witnessmark.state.supply import Supply, SupplyLane
from witnessmark.state.surfaces import SurfaceLane, SurfaceState
from witnessmark.state.turned_up import TurnedUp, TurnedUpLane
from witnessmark.vehicle.things import Vehicle


class State(Struct, frozen=True, kw_only=True):
    """Everything the facts say, before anything is concluded from it."""

    vehicle: Vehicle
    joints: Mapping[str, JointState]
    parts: Mapping[str, PartState]
    surfaces: Mapping[str, SurfaceState]
    counts: Counts
    answers: Answers
    supply: Supply
    sizes: Sizes
    calendar: Calendar
    turned_up: TurnedUp
    last_line: int


# Facts the vehicle is read out of. Where these change, every lane starts anew.
DESCRIBING = (Described, DescribedVehicle, ReadFigure, FoundBehind)
# So many of the last lines can be followed, struck and corrected without folding what was done before them.
TAIL = 500
_FIRST: Place = (date.min, "", 0)


def state_from(entries: Iterable[Entry]) -> State:
    """Read a record's entries, handed over in any order, into one state."""
    return Fold.of(entries).state


class _Base(NamedTuple):
    """What was done longest ago, folded, and where its last line stands in the reading order."""

    vehicle: Vehicle
    lanes: _Lanes
    place: Place


class Fold:
    """A record folded and kept, so that a new line need not fold all of it again.

    base   what was done longest ago, folded once
    tail   the lines done since, as written; strikes: every strike there is
    held   what of the tail still stands, in reading order
    lanes  base and tail folded
    """

    def __init__(
        self,
        base: _Base,
        tail: Sequence[Entry],
        strikes: Sequence[Entry],
        held: list[Entry],
        lanes: _Lanes,
        last_line: int,
    ) -> None:
        self._base, self._tail, self._strikes, self._held, self._lanes = base, tail, strikes, held, lanes
        self.last_line = last_line

    @classmethod
    def of(cls, entries: Iterable[Entry]) -> Fold:
        """Fold entries, handed over in any order."""
        every = list(entries)
        strikes, plain = _parted(every)
        plain = reading_order(plain)
        old, tail = plain[:-TAIL], plain[-TAIL:]
        before, held = standing([*old, *strikes]), standing([*tail, *strikes])
        vehicle = vehicle_from([*before, *held])
        lanes = _Lanes.of(vehicle).led_along(before)
        base = _Base(vehicle, lanes, old[-1].place if old else _FIRST)
        last_line = max((e.line for e in every), default=0)
        return cls(base, tail, strikes, held, lanes.led_along(held), last_line)

    def followed_by(self, more: Sequence[Entry]) -> Fold | None:
        """The fold of these lines and those: exactly that of all of them at once.

        None where all must be folded anew: a line was done before the tail, or strikes one that was; the
        vehicle is described otherwise; the tail has grown long.
        """
        fresh, plain = _parted(more)
        tail, strikes = [*self._tail, *plain], [*self._strikes, *fresh]
        if len(tail) > 2 * TAIL or self._reached_behind(plain, fresh, {e.line for e in tail}):
            return None
        held, known = standing([*tail, *strikes]), len(self._held)
        if _describing(held) != _describing(self._held):
            return None
        if held[:known] == self._held:
            lanes = self._lanes.led_along(held[known:])
        else:
            lanes = self._base.lanes.led_along(held)
        last_line = max((e.line for e in more), default=self.last_line)
        return Fold(self._base, tail, strikes, held, lanes, last_line)

    def _reached_behind(self, plain: list[Entry], strikes: list[Entry], tail: set[int]) -> bool:
        """Whether any of these touches the base, or is no line behind those folded."""
        return (
            any(e.line <= self.last_line for e in (*plain, *strikes))
            or any(e.place <= self._base.place for e in plain)
            or any(isinstance(e.fact, Struck) and e.fact.line not in tail for e in strikes)
        )

    @property
    def recent(self) -> Sequence[Entry]:
        """The last lines that stand, in reading order: all, or at least some hundreds."""
        return self._held

    @cached_property
    def state(self) -> State:
        """How everything stands after the last line folded."""
        lanes = self._lanes
        return State(
            vehicle=self._base.vehicle,
            joints=lanes.joints.states(),
            parts=lanes.parts.states(),
            surfaces=lanes.surfaces.states(),
            counts=lanes.counts.counts(),
            answers=lanes.answers.answers(),
            supply=lanes.supply.supply(),
            sizes=lanes.sizes.sizes(),
            calendar=lanes.calendar.calendar(),
            turned_up=lanes.turned_up.turned_up(),
            last_line=self.last_line,
        )


def _parted(entries: Iterable[Entry]) -> tuple[list[Entry], list[Entry]]:
    """Strikes, and all other lines."""
    every = list(entries)
    strikes = [e for e in every if isinstance(e.fact, Struck)]
    return strikes, [e for e in every if not isinstance(e.fact, Struck)] if strikes else every


def _describing(entries: Iterable[Entry]) -> list[Entry]:
    return [e for e in entries if isinstance(e.fact, DESCRIBING)]


class _Lanes(NamedTuple):
    """Every subject's lane, in the order they are walked."""

    joints: JointLane
    parts: PartLane
    surfaces: SurfaceLane
    counts: CountLane
    answers: AnswerLane
    supply: SupplyLane
    sizes: SizeLane
    calendar: CalendarLane
    turned_up: TurnedUpLane

    @classmethod
    def of(cls, vehicle: Vehicle) -> _Lanes:
        """Lanes on which nothing has gone yet."""
        return cls(
            JointLane(vehicle), PartLane(vehicle), SurfaceLane(), CountLane(vehicle), AnswerLane(),
            SupplyLane(), SizeLane(), CalendarLane(), TurnedUpLane(vehicle),
        )  # fmt: skip

    def led_along(self, entries: Iterable[Entry]) -> _Lanes:
        """These lanes after more entries, which stand in reading order; they themselves stay behind."""
        fresh = _Lanes(
            self.joints.copied(), self.parts.copied(), self.surfaces.copied(), self.counts.copied(),
            self.answers.copied(), self.supply.copied(), self.sizes.copied(),
            self.calendar.copied(), self.turned_up.copied(),
        )  # fmt: skip
        walk(entries, fresh)
        return fresh
