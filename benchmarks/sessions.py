"""A made-up restoration planned into sessions within so many seconds.

    .venv/bin/python benchmarks/sessions.py --operations 200 --hard --seed 0 --seconds 5

Prints one line of JSON: gate days weighted, the bound, the first plan with its seconds. How the
restorations are made stands in docs/performance.md.
"""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.calendars_made import DAY, calendar_problem
from benchmarks.measuring import answered, told, warm
from witnessmark.engines.schedule import schedule

# Up to so many operations the exact solver has half of the time.
FEW = 300


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--operations", type=int, default=200)
    parser.add_argument("--hard", action="store_true")
    parser.add_argument("--set-ups", action="store_true", help="weld days and spray days that are shared")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--seconds", type=float, default=5.0)
    asked = parser.parse_args()
    problem = calendar_problem(asked.operations, hard=asked.hard, seed=asked.seed, set_ups=asked.set_ups)
    warm()
    begun = time.perf_counter()
    first = schedule(problem)
    blink = time.perf_counter() - begun
    answer, took = answered(
        problem, asked.seconds, seed=asked.seed, chains_part=0.5 if asked.operations <= FEW else 0.95
    )
    told(
        problem,
        answer,
        operations=asked.operations,
        hard=asked.hard,
        seed=asked.seed,
        gate_days_weighted=round(answer.value / DAY, 1),
        bound=round(answer.bound / DAY, 1),
        gap=round(answer.gap, 4),
        first={"seconds": round(blink, 3), "gate_days_weighted": round(first.value / DAY, 1)},
        seconds=round(took, 2),
    )


if __name__ == "__main__":
    main()
