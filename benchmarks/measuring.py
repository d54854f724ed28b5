"""What the scheduling benchmarks share: a clock that says how much is used up, and one line of JSON."""

from __future__ import annotations

import json
import time
from concurrent.futures import ThreadPoolExecutor
from typing import Any

from witnessmark.engines.schedule import Allowed, by_steps, schedule
from witnessmark.engines.schedule_check import answer_faults
from witnessmark.engines.schedule_model import Activity, Answer, Problem, Session, Target

# Of the time allowed, the part that the chains use; the exact solver has the rest.
CHAINS_PART = 0.7


def warm() -> None:
    """Load the compiled loops and the solver, so that they are not what is measured."""
    small = Problem(
        activities=(Activity(minutes=2, demands=(1,)), Activity(minutes=3, demands=(1,), group=0)),
        sessions=(Session(start=0, minutes=4, capacities=(1,)), Session(start=9, minutes=9, capacities=(1,))),
        held_over=(True,),
        targets=(Target(activities=(0,)), Target(activities=(1,))),
        set_ups=(1,),
    )
    schedule(small, by_steps(20, exact=0.1))


def answered(
    problem: Problem, seconds: float, *, workers: int = 2, seed: int = 0, chains_part: float = CHAINS_PART
) -> tuple[Answer, float]:
    """An answer within so many seconds of two threads, and the seconds it took."""
    begun = time.perf_counter()
    allowed = Allowed(
        used=lambda made: (time.perf_counter() - begun) / (seconds * chains_part),
        seconds=lambda: seconds - (time.perf_counter() - begun),
        workers=workers,
    )
    with ThreadPoolExecutor(2) as pool:
        answer = schedule(problem, allowed, seed=seed, spread=pool.map)
    return answer, time.perf_counter() - begun


def told(problem: Problem, answer: Answer, **more: Any) -> None:
    """Print one line: what was found, its faults by the independent checker, and what else is asked for."""
    faults = answer_faults(problem, answer)
    print(json.dumps({**more, "proven": answer.proven, "faults": list(faults)}), flush=True)
