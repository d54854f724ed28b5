"""What drives a band: the five things drawn whose order goes most with the order of the answers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from witnessmark.jobs.operation import Operation
from witnessmark.plan.arrivals import Thing
from witnessmark.plan.futures import Drawn

MOST = 5

# A rank correlation under this, of so many futures, is not told. Our choice.
LEAST = 0.03


class Driver(Struct, frozen=True):
    """One thing that drives a band, as a sentence, and its rank correlation (Spearman) with it."""

    says: str
    goes_with: float


def drivers_of(told: Mapping[str, NDArray[np.generic]], reached: NDArray[np.int32]) -> tuple[Driver, ...]:
    """The five that go most with when the gate is reached, the strongest first.

    told  a row of what was drawn for each sentence, future by future
    """
    order = ranks(reached)
    found = [Driver(says, abs(correlation(ranks(values), order))) for says, values in told.items()]
    found.sort(key=lambda driver: -driver.goes_with)
    return tuple(driver for driver in found[:MOST] if driver.goes_with >= LEAST)


def ranks(values: NDArray[np.generic]) -> NDArray[np.float64]:
    """Ranks from 0, ties sharing their middle.

    >>> ranks(np.array([30, 10, 10, 20])).tolist()
    [3.0, 0.5, 0.5, 2.0]
    """
    _, where, counts = np.unique(values, return_inverse=True, return_counts=True)
    ends = np.cumsum(counts)
    return np.asarray((ends - (counts + 1) / 2)[where], dtype=np.float64)


def correlation(one: NDArray[np.float64], other: NDArray[np.float64]) -> float:
    """The correlation of two rows; 0 where one of them never changes.

    >>> round(correlation(np.array([0.0, 1, 2]), np.array([0.0, 2, 4])), 6)
    1.0
    """
    a, b = one - one.mean(), other - other.mean()
    size = float(np.sqrt((a * a).sum() * (b * b).sum()))
    return float((a * b).sum()) / size if size > 0 else 0.0


def told_apart(
    operations: Sequence[Operation], things: Sequence[tuple[Thing, int]], drawn: Drawn
) -> Iterator[tuple[str, NDArray[np.generic]]]:
    """What was drawn, summed up by what a person can tell apart, each as a sentence."""
    futures = drawn.futures
    yield "how often a session is called off", futures.held[:, :52].sum(axis=1)
    if any(o.hands > 1 for o in operations):
        yield "how often the helper comes", futures.helped[:, :52].sum(axis=1)
    if any(o.minutes.owner for o in operations):
        yield "how far your own guesses fall short", drawn.factor
    for n, (thing, due) in enumerate(things):
        if thing.sure:
            continue
        when = "is ordered and comes" if due < 0 else "comes"
        yield f"when the {thing.what} {when}", futures.arrival[:, n]
    jobs: dict[str, list[int]] = {}
    for n, operation in enumerate(operations):
        jobs.setdefault(operation.job, []).append(n)
    yield "how much is found at all while things are apart", futures.extra.sum(axis=1)
    for job, columns in jobs.items():
        name = _doing(job)
        yield (
            f"what turns up while {name}",
            (futures.extra[:, columns] + futures.wait[:, columns]).sum(axis=1),
        )
        yield f"how long {name} takes", futures.taken[:, columns].sum(axis=1)


_DOING: Mapping[str, str] = {
    "close": "putting together",
    "renew": "renewing",
    "refurbish": "refurbishing",
    "make good": "making good",
    "refit": "refitting",
    "coat": "coating",
    "prove": "proving",
    "answer": "answering",
}


def _doing(job: str) -> str:
    """A job in the middle of a sentence.

    >>> _doing("make good/floor patch seam, right")
    'making good floor patch seam, right'
    """
    word, _, name = job.partition("/")
    return f"{_DOING.get(word, word)} {name}"
