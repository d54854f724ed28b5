"""One job shop of a published set in JSON, within so many seconds.

    .venv/bin/python benchmarks/jobshop.py tests/engines/job_shops.json ft10 --seconds 10

The file holds instances by name, each with its duration and machine matrices.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.measuring import answered, told, warm
from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target


def job_shop(instance: dict[str, Any]) -> Problem:
    """Machines as resources of capacity one; each row a job, its steps one after the other."""
    rows = list(zip(instance["duration_matrix"], instance["machines_matrix"], strict=True))
    machines = 1 + max(m for _, row in rows for m in row)
    activities: list[Activity] = []
    links: list[Link] = []
    for durations, row in rows:
        first = len(activities)
        for minutes, machine in zip(durations, row, strict=True):
            if minutes:
                if len(activities) > first:
                    links.append(Link(len(activities) - 1, len(activities)))
                demands = tuple(int(m == machine) for m in range(machines))
                activities.append(Activity(minutes=minutes, demands=demands))
    whole = Session(start=0, minutes=sum(a.minutes for a in activities), capacities=(1,) * machines)
    return Problem(
        activities=tuple(activities),
        sessions=(whole,),
        held_over=(True,) * machines,
        targets=(Target(activities=tuple(range(len(activities)))),),
        links=tuple(links),
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("name")
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seed", type=int, default=0)
    asked = parser.parse_args()
    problem = job_shop(json.loads(asked.file.read_text(encoding="utf-8"))[asked.name])
    warm()
    answer, took = answered(problem, asked.seconds, workers=asked.workers, seed=asked.seed, chains_part=0.1)
    told(
        problem,
        answer,
        instance=asked.name,
        makespan=answer.value,
        bound=answer.bound,
        seconds=round(took, 2),
    )


if __name__ == "__main__":
    main()
