"""The chance of being done in time: sums of operations, by drawing them many times over."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, sqrt

from msgspec import Struct

from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.estimate import FINDING, spreads
from witnessmark.plan.overrun import MOST, Draw, Overrun

SAMPLES = 4_000


class Forecast(Struct, frozen=True, kw_only=True):
    """What came of the draws.

    chance   of all operations being done in the work minutes, 0..1
    minutes  P10, P50 and P90 of their sum
    reached  for each operation, the chance of having done it and all before it
    """

    chance: float
    minutes: tuple[float, float, float]
    reached: tuple[float, ...]


def simulate(
    operations: Sequence[Operation],
    work_minutes: float,
    overrun: Overrun,
    draw: Draw,
    *,
    samples: int = SAMPLES,
) -> Forecast:
    """Draw the operations, in their order, many times.

    Each sample draws the owner once: a person who guesses short does so on every guess. Then each
    operation is drawn, and whether it turns something up. Parts of one guess share their luck.
    """
    sampler = _Sampler(operations, overrun, draw, samples)
    totals = [0.0] * samples
    reached: list[float] = []
    for operation in operations:
        totals = [total + taken for total, taken in zip(totals, sampler.taken(operation), strict=True)]
        reached.append(sum(total <= work_minutes for total in totals) / samples)
    totals.sort()
    low, likely, high = (totals[min(samples - 1, int(p * samples))] for p in (0.1, 0.5, 0.9))
    return Forecast(
        chance=reached[-1] if reached else 1.0, minutes=(low, likely, high), reached=tuple(reached)
    )


class _Sampler:
    """Draws one operation for all samples at once; owners and shared guesses are drawn beforehand."""

    def __init__(self, operations: Sequence[Operation], overrun: Overrun, draw: Draw, samples: int) -> None:
        self.draw = draw
        self.samples = samples
        typed = any(o.minutes.owner for o in operations)
        self.owners = [overrun.drawn(draw) for _ in range(samples)] if typed else []
        self.shared: dict[str, tuple[list[float], list[float]]] = {}

    def taken(self, operation: Operation) -> list[float]:
        """The minutes of one operation in every sample."""
        minutes = operation.minutes
        luck, factors = self._luck(minutes)
        below, above = spreads(minutes)
        taken = [minutes.likely * exp((above if z > 0 else below) * z) for z in luck]
        if factors:
            taken = [t * f for t, f in zip(taken, factors, strict=True)]
        if operation.finding:
            below, above = spreads(FINDING)
            for n, found in enumerate(self.draw.random() < operation.finding for _ in range(self.samples)):
                if found:
                    z = self.draw.gauss(0.0, 1.0)
                    taken[n] += FINDING.likely * exp((above if z > 0 else below) * z)
        return taken

    def _luck(self, minutes: Minutes) -> tuple[list[float], list[float]]:
        if minutes.guess and minutes.guess in self.shared:
            return self.shared[minutes.guess]
        luck = [self.draw.gauss(0.0, 1.0) for _ in range(self.samples)]
        factors = self._factors(minutes) if minutes.owner else []
        if minutes.guess:
            self.shared[minutes.guess] = (luck, factors)
        return luck, factors

    def _factors(self, minutes: Minutes) -> list[float]:
        """The owner's factor on a guess; its spread counts only beyond the guess's own."""
        below, above = spreads(minutes)
        own = (below**2 + above**2) / 2
        return [
            min(MOST, exp(mu + sqrt(max(0.0, sigma**2 - own)) * self.draw.gauss(0.0, 1.0)))
            for mu, sigma in self.owners
        ]


def chance_words(chance: float) -> str:
    """A chance in plain words: a band of ten, never a decimal.

    >>> [chance_words(c) for c in (0.99, 0.72, 0.5, 0.08, 0.01)]
    ['nearly certain', 'about 7 in 10', 'about 5 in 10', 'about 1 in 10', 'hardly']
    """
    if chance >= 0.95:
        return "nearly certain"
    if chance < 0.05:
        return "hardly"
    return f"about {min(9, max(1, round(chance * 10)))} in 10"
