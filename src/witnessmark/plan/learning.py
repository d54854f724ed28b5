"""What this record has taught about its owner's guesses, told plainly, by the sort of thing guessed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import exp

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.plan.overrun import Met, guesses_met, learned, overrun_of
from witnessmark.state.standing import State

# With fewer finished things of a sort nothing is said of it.
ENOUGH = 5

# What all guesses together have taught counts like so many things of one sort.
WORTH = 3.0

ALL, SEIZED, NEW_GROUND, KNOWN = "all you guessed", "seized things", "things not apart before", "other things"


class Taught(Struct, frozen=True):
    """One sort of thing: the factor on a guess, half above and half below, from so many finished."""

    sort: str
    factor: float
    finished: int

    @property
    def says(self) -> str:
        """The plain sentence.

        >>> Taught("seized things", 1.8, 7).says
        'you usually take 1.8 × your guess on seized things (7 jobs)'
        >>> Taught("seized things", 1.8, 4).says
        'seized things: not enough of your own yet (4 jobs)'
        """
        jobs = "1 job" if self.finished == 1 else f"{self.finished} jobs"
        if self.finished < ENOUGH:
            return f"{self.sort}: not enough of your own yet ({jobs})"
        return f"you usually take {self.factor:.1f} × your guess on {self.sort} ({jobs})"


def taught(state: State) -> tuple[Taught, ...]:
    """All guesses together, then each sort of which something was finished."""
    met = list(guesses_met(state))
    every = overrun_of(met)
    start = replace(every, weight=WORTH, finished=0, open=0, lasted=())
    rows = [Taught(ALL, every.factor, every.finished)]
    for sort in (SEIZED, NEW_GROUND, KNOWN):
        logs = list(_finished(met, sort, state))
        if logs:
            rows.append(Taught(sort, exp(learned(logs, start).centre), len(logs)))
    return tuple(rows)


def _finished(met: Iterable[Met], sort: str, state: State) -> Iterator[float]:
    return (one.log for one in met if one.finished and _sort(state, one.name) == sort)


def _sort(state: State, name: str) -> str:
    """What a thing guessed is, by all the record knows of it."""
    joint = state.joints.get(name)
    if joint is not None and joint.fights:
        return SEIZED
    return NEW_GROUND if joint is not None and joint.opened_line is None else KNOWN
