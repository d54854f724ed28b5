"""How long ten thousand futures take: python benchmarks/chance.py --operations 500 --samples 10000 --seed 0

One JSON line. `seconds`: drawing, running and reading off, warm, the best of three. `plain`: the same rule as
a loop in plain Python on 100 of the same futures, scaled up; the drawing is not counted there. The
operations are made up: skewed minutes, one in twelve for two pairs of hands, one in five waits for one of
forty things, each comes after up to two of the twenty before it, and the four gates take a quarter each.
"""

from __future__ import annotations

import argparse
import json
import random
import resource
import time
from concurrent.futures import ThreadPoolExecutor
from datetime import date, timedelta
from typing import Any

import numpy as np

from benchmarks.plain_loop import Future
from witnessmark.engines.dispatch import run
from witnessmark.engines.dispatch_model import Sessions, Work, work_of
from witnessmark.jobs.findings import LEAST_NEVER_APART
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.arrivals import LATE, LATE_BY, Lateness, Thing
from witnessmark.plan.futures import Drawn, Odds, draw
from witnessmark.plan.overrun import learned
from witnessmark.restoration.ahead import PARTS

WEEK, HANDS_ON, WEEKS, THINGS, PLAIN = 7 * 24 * 60, 120, 260, 40, 100
GATES = ("start", "roll", "test", "road")


def made(count: int, seed: int) -> tuple[list[Operation], list[dict[str, Any]]]:
    """Operations and the rows they become."""
    chance = random.Random(seed)
    operations, rows = [], []
    for n in range(count):
        likely = min(110.0, max(3.0, chance.lognormvariate(2.2, 0.9)))
        minutes = Minutes(likely * 0.6, likely, likely * 2.2, owner=chance.random() < 0.3)
        operations.append(
            Operation(
                id=f"{n}", what="", sort="open", name=f"{n}", job=f"{n // 10}", minutes=minutes,
                finding=0.1, turns_up="never apart" if chance.random() < 0.4 else "closing",
                hands=1 + (chance.random() < 1 / 12),
            )
        )  # fmt: skip
        before = sorted(
            {chance.randrange(max(0, n - 20), n) for _ in range(chance.randrange(3))} if n else ()
        )
        needs = [chance.randrange(THINGS)] if chance.random() < 0.2 else []
        rows.append(
            {"planned": min(HANDS_ON, round(likely * 1.3)), "before": before, "needs": needs, "more": 93,
             "hands": operations[-1].hands}
        )  # fmt: skip
    return operations, rows


def drawn(operations: list[Operation], samples: int, source: Any) -> Drawn:
    odds = Odds(
        overrun=learned([0.3, 0.6, 0.1, 0.5, 0.9]),
        findings={"never apart": (4.0, 30.0), "closing": (0.2, 19.8)},
        least={"never apart": LEAST_NEVER_APART},
        held=(46.0, 6.0),
        helped=(12.0, 34.0),
        lateness=Lateness(LATE, LATE_BY),
    )
    things = [(Thing(f"thing {n}", None), n if n % 2 else -1) for n in range(THINGS)]
    return draw(operations, things, [False] * WEEKS, odds, source, samples=samples)


def once(
    operations: list[Operation], work: Work, sessions: Sessions, samples: int, seed: int
) -> tuple[dict[str, tuple[int, int]], Drawn]:
    """Draw, run, and read the two sessions of each gate off, in parts on two threads, as the command does."""
    quarter = max(1, len(operations) // 4)

    def part(source: Any) -> tuple[Any, Drawn]:
        future = drawn(operations, samples // PARTS, source)
        ended = run(work, sessions, future.futures).session
        lasts = [ended[:, n * quarter : (n + 1) * quarter].max(axis=1) for n in range(len(GATES))]
        return lasts, future if source is sources[0] else None

    sources = np.random.default_rng(seed).spawn(PARTS)
    with ThreadPoolExecutor(2) as pool:
        parts = list(pool.map(part, sources))
    found = {}
    for n, gate in enumerate(GATES):
        last = np.sort(np.concatenate([lasts[n] for lasts, _ in parts]))
        found[gate] = (int(last[len(last) // 2]) + 1, int(last[len(last) * 9 // 10]) + 1)
    return found, parts[0][1]


def plainly(rows: list[dict[str, Any]], sessions: Sessions, future: Drawn) -> float:
    """Seconds of the plain loop for PLAIN of the futures."""
    pairs = list(zip(sessions.starts.tolist(), sessions.lengths.tolist(), strict=True))
    lists = {name: getattr(future.futures, name)[:PLAIN].tolist() for name in
             ("taken", "extra", "wait", "arrival", "held", "helped")}  # fmt: skip
    begun = time.process_time()
    for n in range(PLAIN):
        Future(rows, pairs, **{name: values[n] for name, values in lists.items()}).run()
    return time.process_time() - begun


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--operations", type=int, default=500)
    asked.add_argument("--samples", type=int, default=10_000)
    asked.add_argument("--seed", type=int, default=0)
    given = asked.parse_args()
    operations, rows = made(given.operations, given.seed)
    work = work_of(rows, HANDS_ON)
    first = date(2026, 1, 3)
    starts = np.array([n * WEEK + 540 for n in range(WEEKS)], dtype=np.int32)
    sessions = Sessions(starts, np.full(WEEKS, HANDS_ON, dtype=np.int32))
    once(operations, work, sessions, PLAIN * PARTS, given.seed)
    wall, cpu = [], []
    for _ in range(3):
        begun, worked = time.perf_counter(), time.process_time()
        gates, future = once(operations, work, sessions, given.samples, given.seed)
        wall.append(time.perf_counter() - begun)
        cpu.append(time.process_time() - worked)
    plain = plainly(rows, sessions, future) * given.samples / PLAIN
    weeks = {
        g: [(first + timedelta(7 * (s - 1))).isocalendar()[:2] for s in found] for g, found in gates.items()
    }
    print(
        json.dumps(
            {
                "operations": given.operations,
                "samples": given.samples,
                "seconds": round(min(wall), 3),
                "cpu_seconds": round(min(cpu), 3),
                "p50": {gate: found[0] for gate, found in gates.items()},
                "p90": {gate: found[1] for gate, found in gates.items()},
                "weeks": weeks,
                "plain_seconds": round(plain, 1),
                "times": round(plain / min(cpu), 1),
                "peak_mb": round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024),
            }
        )
    )


if __name__ == "__main__":
    main()
