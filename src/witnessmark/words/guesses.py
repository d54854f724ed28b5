"""The times of a guess: one, two or three, some of them without a unit of their own."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.words.work import Work

_THREE = 3
_UNITS = (("h", 60.0), ("m", 1.0), ("d", 1440.0), ("w", 10080.0))
_BETWEEN = frozenset({"/", "-", "–", ",", "to", "or", "maybe", "more", "like", "then", "and", "say"})
_BEHIND = frozenset({"if", "at", "tops", "with", "when", "worst", "max", "or", "more"})


class Guess(Struct, frozen=True):
    """Minutes if all goes well, likely, and if it fights, 0 where not told; and the figures as typed."""

    low: float = 0.0
    likely: float = 0.0
    high: float = 0.0
    figures: tuple[Quantity, ...] = ()


class _Time(Struct, frozen=True):
    at: int
    quantity: Quantity
    unit: float


def take_guess(work: Work) -> Guess:
    """The times of a line, each placed; a bare number beside one is of its unit."""
    times = [_Time(at, q, _unit(q)) for at, q in work.quantities("time")]
    if not times:
        return Guess()
    known = sorted([*times, *_bare(work, times)], key=lambda t: t.at)
    for time in known:
        work.place(time.at)
    figures = tuple(t.quantity for t in known)
    minutes = [q.value for q in figures]
    if len(minutes) >= _THREE:
        low, likely, high = sorted(minutes[-_THREE:])
        return Guess(low, likely, high, figures)
    if len(minutes) == 1:
        return Guess(likely=minutes[0], figures=figures)
    parted = known[1].at - known[0].at > 1
    if not ((parted and _are_linked(work, known[0].at, known[1].at)) or _is_if(work, known[1].at)):
        work.doubt("of three guesses two are told")
    return Guess(low=min(minutes), high=max(minutes), figures=figures)


def _is_if(work: Work, at: int) -> bool:
    return at + 1 < len(work.atoms) and work.atoms[at + 1].low in _BEHIND


def _unit(quantity: Quantity) -> float:
    """Minutes of the unit a time was typed with, 0 where it has none of its own."""
    unit = re.search(r"[a-z]+$", quantity.typed.strip().lower())
    return next((worth for start, worth in _UNITS if unit and unit[0].startswith(start)), 0.0)


def _bare(work: Work, times: Sequence[_Time]) -> list[_Time]:
    found: list[_Time] = []
    for at in reversed(work.numbers()):
        atom = work.atoms[at]
        if atom.value is None or atom.low in ("a", "an", "one"):
            continue
        behind = next((t for t in sorted([*times, *found], key=lambda t: t.at) if t.at > at), None)
        before = next((t for t in reversed(times) if t.at < at), None)
        unit = _shared(work, at, atom.value, before, behind)
        if unit:
            found.append(_Time(at, Quantity(work.words(at, at + 1), atom.value * unit, "min"), unit))
    return found


def _shared(work: Work, at: int, value: float, before: _Time | None, behind: _Time | None) -> float:
    """The unit a bare number has from the time behind it, or from the one before it."""
    linked = behind is not None and _are_linked(work, at, behind.at)
    after = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
    if before is not None and (linked or after in _BEHIND) and before.unit:
        grows = before.quantity.value <= value * before.unit
        if not linked or (behind is not None and grows and value * before.unit <= behind.quantity.value):
            return before.unit
    return behind.unit if linked and behind is not None else 0.0


def _are_linked(work: Work, first: int, last: int) -> bool:
    return all(work.atoms[i].low in _BETWEEN for i in range(first + 1, last))
