"""What fits the next session, how likely it closes up by packing-up time, where it can be put down."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.jobs.operation import Operation


class SafeStop(Struct, frozen=True, kw_only=True):
    """After which operation (from 1; 0 is before the first) work can be put down, and how it then stands."""

    after: int
    what: str
    chance: float


class Waiting(Struct, frozen=True, kw_only=True):
    """An operation that does not fit this session, and what it waits for."""

    what: str
    name: str
    because: str


class SessionPlan(Struct, frozen=True, kw_only=True):
    """The answer for one session.

    hours       length of the session; work_minutes: what is left after set-up and tidying
    helper      a second pair of hands is there
    operations  in the order to do them
    chance      of having all of them done by packing-up time, 0..1
    chance_words  the same in plain words, "about 7 in 10"
    safe_stops  where it can be put down on the way
    left_loose  joints that would stand loose if the plan ends as planned
    bring, order  things to have in hand; things to order tonight
    waiting     what did not fit and why
    proven      no better choice exists under what is known; else how far the best bound is
    """

    hours: float
    work_minutes: float
    helper: bool
    operations: tuple[Operation, ...]
    chance: float
    chance_words: str
    minutes: tuple[float, float, float]
    safe_stops: tuple[SafeStop, ...]
    left_loose: tuple[str, ...]
    bring: tuple[str, ...]
    order: tuple[str, ...]
    waiting: tuple[Waiting, ...]
    proven: bool
    factor_words: str = ""
    cautions: tuple[str, ...] = ()
