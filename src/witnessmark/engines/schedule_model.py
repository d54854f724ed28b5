"""Activities on a clock that is open in sessions only: the problem, a schedule of it, and an answer.

All numbers are whole. Clock minutes count from any moment; sessions say when work goes on at all. An
activity once begun is carried on through the sessions that follow, each to its end, until it is done;
one that goes in one go lies inside a single session. Links hold on the clock: paint dries at night too.
One endless session with capacities makes this the resource-constrained project scheduling problem, and
with resources of capacity one the job shop.
"""

from __future__ import annotations

from msgspec import Struct


class Session(Struct, frozen=True, kw_only=True):
    """A spell in which work goes on.

    start       clock minute at which it opens, 0 or more
    minutes     its length in minutes, 1 or more
    capacities  how much of each resource is there, resource by resource
    """

    start: int
    minutes: int
    capacities: tuple[int, ...]

    @property
    def end(self) -> int:
        """Clock minute at which it closes."""
        return self.start + self.minutes


class Activity(Struct, frozen=True, kw_only=True):
    """Something to be done.

    minutes     1 or more, without any set-up
    demands     how much of each resource it takes while it runs, resource by resource
    in_one_go   may not be put down: it lies inside one session
    earliest    clock minute before which it may not begin
    group       activities of one group share a set-up; -1: none needed
    """

    minutes: int
    demands: tuple[int, ...]
    in_one_go: bool = False
    earliest: int = 0
    group: int = -1


class Link(Struct, frozen=True):
    """`then` begins no sooner than so many clock minutes after `before` has ended."""

    before: int
    then: int
    minutes: int = 0


class Target(Struct, frozen=True, kw_only=True):
    """Reached when all its activities have ended. Each clock minute until then costs `weight`, 0 or more."""

    activities: tuple[int, ...]
    weight: int = 1


class Problem(Struct, frozen=True, kw_only=True):
    """Activities, resources, sessions and targets are numbered from 0.

    sessions   in order of the clock; none overlaps another
    held_over  for each resource, whether an activity under way may keep it between sessions; one that
               takes a resource which may not be kept lies inside one session
    set_ups    for each group, minutes spent once a session before the first of its activities there
    """

    activities: tuple[Activity, ...]
    sessions: tuple[Session, ...]
    held_over: tuple[bool, ...]
    targets: tuple[Target, ...]
    links: tuple[Link, ...] = ()
    set_ups: tuple[int, ...] = ()

    def in_one_go(self, number: int) -> bool:
        """Whether an activity lies inside one session, for its own sake or for a resource's."""
        activity = self.activities[number]
        taken = zip(activity.demands, self.held_over, strict=True)
        return activity.in_one_go or any(demand and not held for demand, held in taken)


class Piece(Struct, frozen=True):
    """A part of an activity in one session: from a clock minute, for so many minutes."""

    session: int
    start: int
    minutes: int

    @property
    def end(self) -> int:
        return self.start + self.minutes


class Placed(Struct, frozen=True):
    """Where one activity lies; `set_up` where its minutes begin with its group's set-up."""

    pieces: tuple[Piece, ...]
    set_up: bool = False

    @property
    def start(self) -> int:
        """Clock minute at which it begins."""
        return self.pieces[0].start

    @property
    def end(self) -> int:
        """Clock minute at which it is done."""
        return self.pieces[-1].end


class Schedule(Struct, frozen=True):
    """One `Placed` for each activity."""

    placed: tuple[Placed, ...]


class Trouble(Struct, frozen=True, kw_only=True):
    """Why there can be no schedule.

    kind        numbers | sessions | circle | never_there | too_long | too_late | ran_out | nothing_aimed_at
    activities  those concerned; of a circle, each comes before the next and the last before the first
    resource    the one that lacks, -1: none
    needed      minutes or amount needed; there: the most there is
    """

    kind: str
    activities: tuple[int, ...] = ()
    resource: int = -1
    needed: int = 0
    there: int = 0


class Answer(Struct, frozen=True, kw_only=True):
    """The best schedule found and how far from the best it may be.

    value     sum over targets of weight times the clock minute at which it is reached
    bound     no schedule has a lower value; proven: this one has that value
    ends      clock minute at which each target is reached
    first     value of the first schedule
    steps     schedules made on the way
    troubles  why there is none; then `schedule` is empty
    """

    schedule: Schedule
    value: int = 0
    bound: int = 0
    ends: tuple[int, ...] = ()
    first: int = 0
    steps: int = 0
    troubles: tuple[Trouble, ...] = ()

    @property
    def proven(self) -> bool:
        return not self.troubles and self.value == self.bound

    @property
    def gap(self) -> float:
        """How much of the bound the value lies above it, at most: 0.02 is two in a hundred."""
        return (self.value - self.bound) / self.bound if self.bound else 0.0
