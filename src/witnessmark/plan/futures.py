"""What may happen, drawn many times over: minutes, findings, parcels, sessions called off, the helper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Protocol

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from witnessmark.engines.dispatch_model import Futures, Marks
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.arrivals import POST, WRONG, Lateness, Thing
from witnessmark.plan.estimate import FINDING, NORMAL, spreads
from witnessmark.plan.overrun import MOST, Overrun

Floats = NDArray[np.float64]
Singles = NDArray[np.float32]

# Of what a finding asks for, this part must first be sent for. Our choice, no source.
SENT_FOR = 0.25

DAY = 24 * 60
ARRIVES = 18 * 60
_MOST_MINUTES = 30_000


class Source(Protocol):
    """A seeded source of chance, handed down from the shell; `numpy.random.Generator` is one."""

    def standard_normal(self, size: Any, dtype: Any = ...) -> Any: ...
    def random(self, size: Any, dtype: Any = ...) -> Any: ...
    def standard_gamma(self, shape: float, size: Any) -> Any: ...
    def beta(self, a: float, b: float, size: Any) -> Any: ...


class Odds(Struct, frozen=True, kw_only=True):
    """What the draws are made from; every pair is a beta distribution, (for, against).

    findings  by the sort of what turns up; least: what a chance of the sort is not taken under
    held      of a session that is expected taking place; helped: of a second pair of hands being there
    """

    overrun: Overrun
    findings: dict[str, tuple[float, float]]
    least: dict[str, float]
    held: tuple[float, float]
    helped: tuple[float, float]
    lateness: Lateness


class Drawn(Struct, frozen=True, kw_only=True):
    """The futures, and what in them is worth telling apart: the owner's factor and who comes how often."""

    futures: Futures
    factor: Floats
    findings: dict[str, Floats]


def draw(
    operations: Sequence[Operation],
    things: Sequence[tuple[Thing, int]],
    promised: Sequence[bool],
    odds: Odds,
    source: Source,
    *,
    samples: int,
) -> Drawn:
    """Draw so many futures.

    things    each thing awaited with the days from now until it is due, -1 where it has to be ordered
    promised  for each session that comes, whether a helper is promised

    The owner is drawn once a future, and so is the chance of every sort of finding: what is not known
    of a person or a vehicle goes wrong everywhere at once. Parts of one guess share their luck.
    """
    mean, spread = owners(odds.overrun, source, samples)
    taken = _minutes(operations, mean, spread, source, samples)
    chances = {
        sort: np.maximum(odds.least.get(sort, 0.0), source.beta(*pair, samples))
        for sort, pair in sorted(odds.findings.items())
    }
    extra, wait = _findings(operations, chances, source, samples)
    held, helped = _attendance(promised, odds, source, samples)
    futures = Futures(
        taken=taken, extra=extra, wait=wait, arrival=_arrivals(things, odds.lateness, source, samples),
        held=held, helped=helped, dry=np.ones_like(held),
    )  # fmt: skip
    return Drawn(futures=futures, factor=np.exp(mean), findings=chances)


def owners(overrun: Overrun, source: Source, samples: int) -> tuple[Floats, Floats]:
    """Mean and spread of the logarithm of taken to guessed, once a sample.

    What is guessed and not finished counts as taking longer than it has so far: draws are kept in the
    measure in which they would have let it.
    """
    more = samples * (4 if overrun.lasted else 1)
    variance = overrun.scale / source.standard_gamma(overrun.shape, more)
    mean = overrun.centre + np.sqrt(variance / overrun.weight) * source.standard_normal(more)
    if not overrun.lasted:
        return mean, np.sqrt(variance)
    worth = np.cumsum(_outlasts(overrun.lasted, mean, np.sqrt(variance)))
    kept = np.searchsorted(worth, (np.arange(samples) + source.random(samples)) / samples * worth[-1])
    kept = np.minimum(kept, more - 1)
    return mean[kept], np.sqrt(variance)[kept]


def _outlasts(lasted: Sequence[float], mean: Floats, spread: Floats) -> Floats:
    """The chance that each owner needs longer, for all of these, than they have lasted so far."""
    steps = np.linspace(-8.0, 8.0, 1601)
    over = np.array([1.0 - NORMAL.cdf(step) for step in steps])
    chances = np.ones_like(mean)
    for so_far in lasted:
        chances *= np.interp((so_far - mean) / spread, steps, over)
    return np.maximum(chances, 1e-300)


def _minutes(
    operations: Sequence[Operation], mean: Floats, spread: Floats, source: Source, samples: int
) -> NDArray[np.int32]:
    """Minutes of each operation: log-normal with one spread below the likely figure and another above."""
    luck: Singles = source.standard_normal((samples, len(operations)), dtype=np.float32)
    first: dict[str, int] = {}
    for n, operation in enumerate(operations):
        guess = operation.minutes.guess
        if guess and first.setdefault(guess, n) != n:
            luck[:, n] = luck[:, first[guess]]
    below, above = (
        np.array([spreads(o.minutes)[side] for o in operations], dtype=np.float32) for side in (0, 1)
    )
    luck *= np.where(luck > 0, above, below)
    luck += np.log(np.array([o.minutes.likely for o in operations], dtype=np.float32))
    np.exp(luck, out=luck)
    factors: dict[str, Singles] = {}
    for n, operation in enumerate(operations):
        if operation.minutes.owner:
            key = operation.minutes.guess or operation.id
            if key not in factors:
                factors[key] = _factor(operation.minutes, mean, spread, source, samples)
            luck[:, n] *= factors[key]
    luck += 0.5
    np.clip(luck, 1, _MOST_MINUTES, out=luck)
    return luck.astype(np.int32)


def _factor(minutes: Minutes, mean: Floats, spread: Floats, source: Source, samples: int) -> Singles:
    """The owner's factor on a guess; its spread counts only beyond the guess's own."""
    below, above = spreads(minutes)
    own = (below**2 + above**2) / 2
    wider = np.sqrt(np.maximum(0.0, spread**2 - own)).astype(np.float32)
    factor: Singles = source.standard_normal(samples, dtype=np.float32)
    factor *= wider
    factor += mean.astype(np.float32)
    np.exp(factor, out=factor)
    return np.minimum(np.float32(MOST), factor, out=factor)


def _skewed(minutes: Minutes, luck: Any) -> Any:
    below, above = spreads(minutes)
    return minutes.likely * np.exp(np.where(luck > 0, above, below) * luck)


def _findings(
    operations: Sequence[Operation], chances: dict[str, Floats], source: Source, samples: int
) -> tuple[NDArray[np.int32], NDArray[np.int32]]:
    """What operations turn up: minutes of its own, and clock minutes until what it asks for has come."""
    shape = (samples, len(operations))
    sorts = sorted(chances)
    number = np.array([sorts.index(o.turns_up) if o.turns_up in chances else -1 for o in operations])
    limits = np.zeros((samples, len(sorts) + 1), dtype=np.float32)
    for n, sort in enumerate(sorts):
        limits[:, n] = chances[sort]
    plain = np.array([o.finding if o.turns_up not in chances else 0.0 for o in operations], dtype=np.float32)
    found = source.random(shape, dtype=np.float32) < limits[:, number] + plain
    count = int(found.sum())
    extra, wait = np.zeros(shape, dtype=np.int32), np.zeros(shape, dtype=np.int32)
    lasts = np.clip(_skewed(FINDING, source.standard_normal(count)), 1, _MOST_MINUTES)
    extra[found] = np.rint(lasts)
    posted = np.where(source.random(count) < SENT_FOR, _post(source, count), 0.0)
    wait[found] = np.rint(posted * DAY)
    return extra, wait


def _post(source: Source, count: int) -> Floats:
    """Days from ordering to the door, with the lines that come wrong and are sent for again."""
    days = _skewed(POST, source.standard_normal(count))
    again = _skewed(POST, source.standard_normal(count))
    return np.asarray(days + np.where(source.random(count) < WRONG, again, 0.0))


def _arrivals(
    things: Sequence[tuple[Thing, int]], lateness: Lateness, source: Source, samples: int
) -> NDArray[np.int32]:
    """The clock at which each thing comes, in minutes from the start of today."""
    arrival = np.zeros((samples, len(things)), dtype=np.int32)
    late = source.beta(*lateness.late, samples)
    mean, spread = owners(lateness.by, source, samples)
    for n, (thing, due) in enumerate(things):
        if thing.sure:
            days: Any = np.full(samples, float(due))
        elif due < 0:
            days = _post(source, samples)
        else:
            by = np.exp(mean + spread * source.standard_normal(samples))
            days = due + np.where(source.random(samples) < late, np.minimum(by, 365.0), 0.0)
        arrival[:, n] = np.minimum(np.ceil(days), 1400) * DAY + ARRIVES
    return arrival


def _attendance(promised: Sequence[bool], odds: Odds, source: Source, samples: int) -> tuple[Marks, Marks]:
    """Which sessions take place, and in which a second pair of hands is there; a promise is kept like one."""
    shape = (samples, len(promised))
    held = source.random(shape, dtype=np.float32) < source.beta(*odds.held, samples)[:, None]
    comes = source.beta(*odds.helped, samples)[:, None]
    kept = np.where(np.array(promised, dtype=bool), source.beta(*odds.held, samples)[:, None], comes)
    helped = source.random(shape, dtype=np.float32) < kept
    return held.astype(np.uint8), helped.astype(np.uint8)
