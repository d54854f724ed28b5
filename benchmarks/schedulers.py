"""The same instances given to this project's scheduler and to others, one after the other in one run.

    .venv/bin/python benchmarks/schedulers.py --seconds 10 j6013_2 j1206_3
    .venv/bin/python benchmarks/schedulers.py --seconds 10 --ours-only

Prints each makespan and, last, the sums and their ratios. Others: the exact solver by itself with 2 and
8 threads, with and without its simplifying; and, where it is installed, a modelling library over it.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from ortools.sat.python import cp_model

from benchmarks.instances import read_instance
from benchmarks.measuring import answered, warm
from witnessmark.engines.schedule_model import Problem

FOLDER = Path(__file__).resolve().parents[1] / "tests" / "engines" / "psplib"
BEST_KNOWN = {
    "j6013_2": 106, "j6025_6": 112, "j6045_9": 123, "j6041_3": 98,
    "j1206_3": 135, "j12011_2": 157, "j12031_4": 218, "j12046_2": 198,
}  # fmt: skip


def ours(problem: Problem, seconds: float) -> int:
    return answered(problem, seconds, chains_part=0.95)[0].value


def plain(workers: int, *, presolve: bool) -> Callable[[Problem, float], int]:
    """The exact solver on the plainest model: intervals, capacities, links, the makespan."""

    def run(problem: Problem, seconds: float) -> int:
        model = cp_model.CpModel()
        horizon = problem.sessions[0].minutes
        begins = [model.new_int_var(0, horizon, "") for _ in problem.activities]
        ends = [b + a.minutes for b, a in zip(begins, problem.activities, strict=True)]
        spans = [
            model.new_fixed_size_interval_var(b, a.minutes, "")
            for b, a in zip(begins, problem.activities, strict=True)
        ]
        for r, capacity in enumerate(problem.sessions[0].capacities):
            model.add_cumulative(spans, [a.demands[r] for a in problem.activities], capacity)
        for link in problem.links:
            model.add(begins[link.then] >= ends[link.before])
        makespan = model.new_int_var(0, horizon, "")
        model.add_max_equality(makespan, ends)
        model.minimize(makespan)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = workers
        solver.parameters.cp_model_presolve = presolve
        solver.parameters.max_time_in_seconds = seconds
        solver.solve(model)
        return int(solver.objective_value)

    return run


def library(problem: Problem, seconds: float) -> int:
    """A modelling library for scheduling over the same solver, two threads."""
    import pyjobshop

    model = pyjobshop.Model()
    resources = [model.add_renewable(c) for c in problem.sessions[0].capacities]
    tasks: list[Any] = []
    for activity in problem.activities:
        task = model.add_task()
        model.add_mode(task, resources, activity.minutes, demands=list(activity.demands))
        tasks.append(task)
    for link in problem.links:
        model.add_end_before_start(tasks[link.before], tasks[link.then])
    result = model.solve(time_limit=seconds, display=False, num_workers=2)
    return int(result.objective)


def peers() -> dict[str, Callable[[Problem, float], int]]:
    found: dict[str, Callable[[Problem, float], int]] = {
        "solver, 2 threads": plain(2, presolve=True),
        "solver, 8 threads": plain(8, presolve=True),
        "solver, 2 threads, as given": plain(2, presolve=False),
    }
    try:
        import pyjobshop  # noqa: F401
    except ImportError:
        return found
    return {**found, "library, 2 threads": library}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("names", nargs="*")
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--ours-only", action="store_true")
    asked = parser.parse_args()
    names = asked.names or list(BEST_KNOWN)
    runs = {"this project": ours} | ({} if asked.ours_only else peers())
    sums = dict.fromkeys(runs, 0)
    warm()
    print("instance", "best known", *runs, sep=" | ")
    for name in names:
        problem = read_instance(FOLDER / f"{name}.sm")
        found = {who: run(problem, asked.seconds) for who, run in runs.items()}
        for who, value in found.items():
            sums[who] += value
        print(name, BEST_KNOWN[name], *found.values(), sep=" | ", flush=True)
    print("sum", sum(BEST_KNOWN[n] for n in names), *sums.values(), sep=" | ")
    print("ours to theirs", "", *(f"{sums['this project'] / s:.3f}" for s in sums.values()), sep=" | ")


if __name__ == "__main__":
    main()
