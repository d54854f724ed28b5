"""What must be in hand for the jobs ahead, and for which session: need by need, own stock set against it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.jobs.needs import items_of
from witnessmark.jobs.operation import Job
from witnessmark.owed.needs import Need, needs_from
from witnessmark.state.parts import DONOR
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import parted

AHEAD = 4

# What an owner has in hand of a session's length, until a plan says more: 120 of 180 minutes.
WORK_MINUTES = 120.0

# A session is lost for want of a thing where missing it does more than this: what only wets or looks can go
# together dry and be taken apart again. A choice of this project, no source.
HOLDS_UP_TO = IfMissed.WRECKS


class Required(Struct, frozen=True, kw_only=True):
    """One thing to buy, short of what is to hand and in the post.

    pieces   how many; by: number of the session that needs it, from 0; as many as there are: later than these
    holds    the session is lost without it
    """

    need: Need
    pieces: int
    by: int
    holds: bool


class OnDonor(Struct, frozen=True, kw_only=True):
    """A part that the other vehicle has; `doubt` where two needs want the same one."""

    need: Need
    part: str
    doubt: str = ""


def session_of_each(jobs: Iterable[Job], work_minutes: float = WORK_MINUTES) -> dict[str, int]:
    """Name of a joint or part -> the first session that works on it, if jobs go on one after the other.

    Wanted jobs first. Likely minutes are added up; a session is full when its working minutes are.
    """
    found: dict[str, int] = {}
    used = 0.0
    for job in sorted(jobs, key=lambda job: job.wanted is None):
        for operation in job.operations:
            found.setdefault(operation.name, int(used // work_minutes))
            used += operation.minutes.likely
    return found


def required(state: State, jobs: Sequence[Job], when: dict[str, int], ahead: int) -> tuple[Required, ...]:
    """What the jobs need and nobody has yet, soonest first."""
    items = [item for job in jobs for o in job.operations for item in items_of(state, o)]
    found = [
        Required(
            need=need,
            pieces=max(1, round(need.short)),
            by=min([ahead, *(when.get(name, ahead) for name in need.for_)]),
            holds=_holds(state, need.for_),
        )
        for need in needs_from((), state, items)
        if need.short > 0
    ]
    return tuple(sorted(found, key=lambda r: (r.by, not r.holds, r.need.what)))


def dated(needs: Iterable[Need], when: dict[str, int], sessions: Sequence[date]) -> tuple[Need, ...]:
    """The same needs, each with the day of the session that needs it, year-month-day; "" where later."""
    found = []
    for need in needs:
        first = min((when.get(name, len(sessions)) for name in need.for_), default=len(sessions))
        found.append(replace(need, by=sessions[first].isoformat() if first < len(sessions) else ""))
    return tuple(found)


def _holds(state: State, names: Iterable[str]) -> bool:
    """Whether anything it is for does more than wet or look when it is missed."""
    joints = [state.vehicle.joints[name] for name in names if name in state.vehicle.joints]
    if not joints:
        return True
    return any(if_missed(j.if_missed or kind_of(j.kind).if_missed) <= HOLDS_UP_TO for j in joints)


def on_donor(state: State, wanted: Iterable[Required]) -> Iterator[OnDonor]:
    """Parts that are still on the donor, against the needs of just such a part; each is there once."""
    there = {parted(name)[0]: name for name, part in state.parts.items() if part.where == DONOR}
    taken: dict[str, str] = {}
    for one in wanted:
        part = next((there[w] for w in (one.need.what, *map(_plain, one.need.for_)) if w in there), None)
        if part is None or one.need.what != _plain(part):
            continue
        before = taken.setdefault(part, "; ".join(one.need.for_) or one.need.what)
        mine = "; ".join(one.need.for_) or one.need.what
        doubt = f"it is wanted for {before} as well, and there is one" if before != mine else ""
        yield OnDonor(need=one.need, part=part, doubt=doubt)


def _plain(name: str) -> str:
    return parted(name)[0]
