"""Whether nine in ten sums lie under their P90: python benchmarks/calibration.py --worlds 2000

In each invented world an owner is drawn from the start of the posterior itself, finishes some guessed things,
and then does sixty more. The forecast sees only the finished ones. So this proves the arithmetic, not that
the start fits any owner. Beside it the naive ways: guesses taken as given, a factor fitted and plugged in,
and the owner drawn anew for every operation.
"""

from __future__ import annotations

import argparse
import json
from math import sqrt
from statistics import fmean, stdev
from typing import Any

import numpy as np
from numpy.typing import NDArray

from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.arrivals import LATE, LATE_BY, Lateness
from witnessmark.plan.futures import Odds, draw
from witnessmark.plan.overrun import MOST, Overrun, learned

AHEAD, DRAWS, GUESS = 60, 800, 100.0
LOGS = (0, 3, 10, 30)


def operations() -> list[Operation]:
    """Sixty guesses without a spread of their own: all of it comes from the owner."""
    sure = Minutes(GUESS, GUESS, GUESS, owner=True)
    return [
        Operation(id=f"{n}", what="", sort="work", name=f"{n}", job="j", minutes=sure) for n in range(AHEAD)
    ]


def forecast(overrun: Overrun, source: Any, *, draws: int = DRAWS) -> NDArray[np.float64]:
    """The sums the product draws."""
    odds = Odds(
        overrun=overrun, findings={}, least={}, held=(1.0, 1.0), helped=(1.0, 1.0),
        lateness=Lateness(LATE, LATE_BY),
    )  # fmt: skip
    future = draw(operations(), [], [False], odds, source, samples=draws)
    return np.asarray(future.futures.taken.sum(axis=1), dtype=np.float64)


def world(source: Any, finished: int, *, lasting: int = 0) -> tuple[Overrun, float]:
    """What a forecast may know, and the sum that then comes.

    lasting  begun things: some are finished when the record is asked, of the others only the time so far
    """
    start = Overrun()
    variance = start.scale / source.standard_gamma(start.shape)
    mean = start.centre + sqrt(variance / start.weight) * source.standard_normal()
    logs = mean + sqrt(variance) * source.standard_normal(finished)
    begun = mean + sqrt(variance) * source.standard_normal(lasting)
    so_far = source.uniform(-1.0, 1.0, lasting)
    done = begun <= so_far
    known = learned([*logs.tolist(), *begun[done].tolist()], Overrun(lasted=tuple(so_far[~done].tolist())))
    factors = np.minimum(MOST, np.exp(mean + sqrt(variance) * source.standard_normal(AHEAD)))
    return known, float(GUESS * factors.sum())


def naive(known: Overrun, source: Any) -> dict[str, float]:
    """P90 of the sum by the ways that are not taken."""
    as_given = GUESS * AHEAD
    spread = sqrt(known.scale / known.shape * (known.weight + 1) / known.weight)
    scaled = known.centre + spread * source.standard_t(2 * known.shape, (DRAWS, AHEAD))
    each = (GUESS * np.minimum(MOST, np.exp(scaled))).sum(axis=1)
    return {"as guessed": as_given, "drawn for every operation": float(np.quantile(each, 0.9))}


def plugged_in(logs: list[float], source: Any) -> float:
    """A mean and a spread fitted to the finished ones, taken as if they were the truth."""
    drawn = fmean(logs) + stdev(logs) * source.standard_normal((DRAWS, AHEAD))
    return float(np.quantile((GUESS * np.minimum(MOST, np.exp(drawn))).sum(axis=1), 0.9))


def coverage(worlds: int, finished: int, seed: int, *, lasting: int = 0, draws: int = DRAWS) -> float:
    """The part of the worlds whose sum lies under the P90 that was forecast."""
    source = np.random.default_rng((seed, finished, lasting))
    hits = 0
    for _ in range(worlds):
        known, truth = world(source, finished, lasting=lasting)
        hits += truth <= float(np.quantile(forecast(known, source, draws=draws), 0.9))
    return hits / worlds


def naive_coverage(worlds: int, finished: int, seed: int) -> dict[str, float]:
    """The same for the naive ways; a fit takes three finished things at least."""
    source = np.random.default_rng((seed, finished, 99))
    hits: dict[str, int] = {}
    for _ in range(worlds):
        start = Overrun()
        variance = start.scale / source.standard_gamma(start.shape)
        mean = start.centre + sqrt(variance / start.weight) * source.standard_normal()
        logs = (mean + sqrt(variance) * source.standard_normal(finished)).tolist()
        truth = GUESS * np.minimum(MOST, np.exp(mean + sqrt(variance) * source.standard_normal(AHEAD))).sum()
        ways = naive(learned(logs), source)
        if finished >= 3:
            ways["fitted and plugged in"] = plugged_in(logs, source)
        for way, high in ways.items():
            hits[way] = hits.get(way, 0) + int(truth <= high)
    return {way: round(count / worlds, 3) for way, count in hits.items()}


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--worlds", type=int, default=2_000)
    asked.add_argument("--seed", type=int, default=0)
    given = asked.parse_args()
    for finished in LOGS:
        row: dict[str, Any] = {"finished": finished, "worlds": given.worlds}
        row["drawn once a future"] = round(coverage(given.worlds, finished, given.seed), 3)
        row |= naive_coverage(given.worlds, finished, given.seed)
        row["with five unfinished"] = round(coverage(given.worlds, finished, given.seed, lasting=5), 3)
        print(json.dumps(row), flush=True)


if __name__ == "__main__":
    main()
