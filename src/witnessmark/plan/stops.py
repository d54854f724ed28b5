"""Where a session can be put down: nothing that lets go loose, no pipe open to dirt, no fire unwatched."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from witnessmark.jobs.operation import Operation
from witnessmark.owed.debt import listed
from witnessmark.plan.chance import Forecast
from witnessmark.plan.loosening import joint_lets_go, walked
from witnessmark.plan.session import SafeStop
from witnessmark.state.joint_state import APART, LOOSE
from witnessmark.state.standing import State

AS_BEFORE = "as it stood before"


def safe_stops(state: State, operations: Sequence[Operation], forecast: Forecast) -> tuple[SafeStop, ...]:
    """The places to stop, where one job goes over into the next or a new thing is opened."""
    stands = list(walked(state, operations))
    found = []
    for number in range(len(operations) + 1):
        if _turns(operations, number) and _is_safe(state, operations[:number], stands[0], stands[number]):
            chance = forecast.reached[number - 1] if number else 1.0
            found.append(SafeStop(after=number, what=_said(stands[0], stands[number]), chance=chance))
    last = len(operations)
    return tuple(s for s in found if s.after in (0, last) or s.what != AS_BEFORE)


def _turns(operations: Sequence[Operation], number: int) -> bool:
    """Whether this is the start, the end, or a turn from one piece of work to another."""
    if number in (0, len(operations)):
        return True
    last, next_one = operations[number - 1], operations[number]
    return last.job != next_one.job or (last.sort != "open" and next_one.sort == "open")


def _is_safe(
    state: State, done: Sequence[Operation], before: Mapping[str, str], now: Mapping[str, str]
) -> bool:
    loosened = (n for n, position in now.items() if position == LOOSE and before[n] != LOOSE)
    unblanked = any(o.id.startswith("blank/") and now.get(o.name) == APART for o in done)
    return not any(joint_lets_go(state, n) for n in loosened) and not _unwatched(done) and not unblanked


def _unwatched(done: Sequence[Operation]) -> bool:
    """Whether there was hot work, and nobody has watched it out since."""
    hot = -1
    for number, operation in enumerate(done):
        if operation.sort in ("open", "close") and "fire-watch" in operation.cautions:
            hot = number
        if operation.sort == "watch":
            hot = -1
    return hot >= 0


def _said(before: Mapping[str, str], now: Mapping[str, str]) -> str:
    """How it then stands, as far as the session changed it."""
    apart = [n for n, position in now.items() if position == APART and before[n] != APART]
    if apart:
        return f"apart, bagged and labelled: {listed(apart)}; nothing hangs loose"
    return AS_BEFORE if before == now else "all that was opened is tight"


def left_loose(state: State, operations: Sequence[Operation]) -> tuple[str, ...]:
    """Joints that would stand loose at the end, those that let go first."""
    *_, end = walked(state, operations)
    return tuple(sorted(_loose(end), key=lambda n: (not joint_lets_go(state, n), n)))


def _loose(stands: Mapping[str, str]) -> Iterator[str]:
    return (n for n, position in stands.items() if position == LOOSE)
