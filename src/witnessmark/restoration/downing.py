"""Tools put down, and coming back to them: what is finger-tight, what to prove again, what time has done."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    Arranged,
    AtFact,
    CalledOff,
    Came,
    Described,
    DescribedVehicle,
    DownedTools,
    Fact,
    Freed,
    Guessed,
    Held,
    Left,
    LeftSetUp,
    LookedAt,
    Offered,
    Ordered,
    Owned,
    Paid,
    Photographed,
    PrintedSheet,
    Quoted,
    ReadFigure,
    Remarked,
    SettledPlan,
    Struck,
    TookTime,
    Valued,
    Wanted,
)
from witnessmark.owed.debt import Debt, spoken
from witnessmark.restoration.devices import ids_from, written_as
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.photos import photographed
from witnessmark.restoration.restoration import Restoration
from witnessmark.state.joint_state import APART, LOOSE

# After a distraction people believe they are further on than they are: go back three steps.
STEPS_BACK = 3
MOST_OFFERED = 6
# Lines that can be written while the tools are down.
_PAPERWORK = (
    Described, DescribedVehicle, ReadFigure, DownedTools, Held, Photographed, PrintedSheet, Remarked,
    SettledPlan, Struck, Wanted, Left, Guessed, TookTime, Ordered, Came, Offered, Quoted, Valued, Paid, Owned,
    Arranged, CalledOff, Freed, LeftSetUp,
)  # fmt: skip
_BACK = "back again"
_OF_TIME = frozenset({"fire_watch", "blank", "fluid", "bare", "recoat", "turn", "back"})


class Interrupted(Struct, frozen=True, kw_only=True):
    """Work that was broken off and not yet taken up again.

    at    what was finger-tight
    done  the last lines of work before it, latest first
    since what time has done meanwhile
    """

    line: int
    day: date
    time: str
    words: str
    at: tuple[str, ...]
    done: tuple[Entry, ...]
    since: tuple[Debt, ...]


def offered_loose(flow: Flow) -> tuple[str, ...]:
    """Joints that are apart or loose, those touched last first: likely to be finger-tight now."""
    stood = [
        (state.line or 0, name)
        for name, state in flow.state.joints.items()
        if state.position in (APART, LOOSE) and not state.scrapped and state.line
    ]
    return tuple(name for _, name in sorted(stood, reverse=True)[:MOST_OFFERED])


def down_tools(
    restoration: Restoration, at: Sequence[str], remark: str, device_id: str, photos: Sequence[str] = ()
) -> tuple[Entry, ...]:
    """Write that work was broken off, at once; photos of how it stands go with it."""
    tight = f", finger-tight: {' and '.join(spoken(name) for name in at)}" if at else ""
    words = f"downed tools{tight}" + (f"; {remark}" if remark else "")
    return _once(restoration, DownedTools(at=tuple(at), remark=remark), words, device_id, photos)


def interrupted(flow: Flow) -> Interrupted | None:
    """The last breaking-off, where nothing was done since."""
    lines = flow.fold.recent
    last = next((n for n in reversed(range(len(lines))) if _is_work(lines[n].fact)), -1)
    downed = next((e for e in reversed(lines[last + 1 :]) if isinstance(e.fact, DownedTools)), None)
    if downed is None or not isinstance(downed.fact, DownedTools):
        return None
    done = [e for e in reversed(lines[: last + 1]) if _is_work(e.fact) and _names(e.fact)]
    return Interrupted(
        line=downed.line,
        day=downed.day,
        time=downed.time,
        words=downed.words,
        at=downed.fact.at,
        done=tuple(done[:STEPS_BACK]),
        since=tuple(d for d in flow.owed if d.sort in _OF_TIME and d.overdue),
    )


def come_back(restoration: Restoration, lines: Sequence[int], device_id: str) -> tuple[Entry, ...]:
    """Write that the things of these lines were looked at again and stand as they were left."""
    by_line = {e.line: e for e in restoration.entries}
    found = [by_line[n] for n in lines if n in by_line]
    at = tuple(dict.fromkeys(name for e in found for name in _names(e.fact)))
    said = " and ".join(spoken(name) for name in at)
    words = f"{_BACK}, looked at {said}: as left" if at else _BACK
    fact = LookedAt(at=at, remark=f"{_BACK}, as left") if at else Remarked(remark=_BACK)
    return _once(restoration, fact, words, device_id)


def _once(
    restoration: Restoration, fact: AtFact, words: str, device_id: str, photos: Sequence[str] = ()
) -> tuple[Entry, ...]:
    before = written_as(restoration.entries, device_id, words)
    if before:
        return before
    restoration.new_id = ids_from(device_id)
    assert isinstance(fact, DownedTools | LookedAt | Remarked)
    line = restoration.last_line + 1
    beside = (photographed(fact.at, photos, line),) if photos else ()
    return restoration.write_facts(((fact, words), *beside))[:1]


def _is_work(fact: Fact) -> bool:
    return not isinstance(fact, _PAPERWORK) or (isinstance(fact, Remarked) and fact.remark == _BACK)


def _names(fact: Fact) -> tuple[str, ...]:
    return fact.at if isinstance(fact, AtFact) else ()
