"""One fact changes a made-up restoration: how soon a plan that goes on from the last is as good as a new one.

    .venv/bin/python benchmarks/replanning.py --operations 200 --seed 0 --seconds 5

The fact: what one operation waits for comes three weeks later. Prints one line of JSON: seconds until the
new plan had the value it has at the end, seconds until the one that goes on had it to a thousandth, and how
much of the next four sessions stayed as it was.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from msgspec.structs import replace

from benchmarks.calendars_made import DAY, calendar_problem
from benchmarks.measuring import warm
from witnessmark.engines.schedule import Allowed, schedule
from witnessmark.engines.schedule_model import Answer, Problem, Schedule

SESSIONS = 4


def traced(
    problem: Problem, seconds: float, seed: int, last: Schedule | None = None
) -> tuple[Answer, list[tuple[float, int]]]:
    """An answer of one chain after the other, with the best value at each moment."""
    begun = time.thread_time()
    seen: list[tuple[float, int]] = []

    def told(value: int) -> None:
        if not seen or value < seen[-1][1]:
            seen.append((time.thread_time() - begun, value))

    allowed = Allowed(used=lambda made: (time.thread_time() - begun) / seconds, told=told)
    return schedule(problem, allowed, seed=seed, last=last), seen


def later(problem: Problem, plan: Schedule) -> Problem:
    """The operation in the middle of the plan begins three weeks later than it stood."""
    order = sorted(range(len(plan.placed)), key=lambda n: plan.placed[n].start)
    number = order[len(order) // 3]
    activities = list(problem.activities)
    activities[number] = replace(activities[number], earliest=plan.placed[number].start + 21 * DAY)
    return replace(problem, activities=tuple(activities))


def sessions_of(plan: Schedule) -> list[int]:
    """The session each operation begins in."""
    return [placed.pieces[0].session for placed in plan.placed]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--operations", type=int, default=200)
    parser.add_argument("--hard", action="store_true")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--seconds", type=float, default=5.0)
    asked = parser.parse_args()
    problem = calendar_problem(asked.operations, hard=asked.hard, seed=asked.seed)
    warm()
    before, _ = traced(problem, asked.seconds, asked.seed)
    changed = later(problem, before.schedule)
    cold, cold_seen = traced(changed, asked.seconds, asked.seed + 1)
    again, again_seen = traced(changed, asked.seconds, asked.seed + 1, before.schedule)
    reached = next((t for t, value in again_seen if value <= cold.value * 1.001), None)
    was, now = sessions_of(before.schedule), sessions_of(again.schedule)
    stood = [n for n, session in enumerate(was) if session < SESSIONS]
    same = [n for n in stood if was[n] == now[n]]
    print(
        json.dumps(
            {
                "operations": asked.operations,
                "hard": asked.hard,
                "seed": asked.seed,
                "new": round(cold.value / DAY, 1),
                "new_seconds": round(cold_seen[-1][0], 2) if cold_seen else 0.0,
                "going_on": round(again.value / DAY, 1),
                "going_on_seconds": round(reached, 2) if reached is not None else None,
                "unchanged": round(len(same) / len(stood), 2) if stood else 1.0,
            }
        )
    )


if __name__ == "__main__":
    main()
