"""One instance of resource-constrained project scheduling, in PSPLIB's text, within so many seconds.

    .venv/bin/python benchmarks/rcpsp.py tests/engines/psplib/j12046_2.sm --seconds 10

Prints one line of JSON; `bound` is proven by links, by work and by the exact solver.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.instances import read_instance
from benchmarks.measuring import answered, told, warm


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seed", type=int, default=0)
    asked = parser.parse_args()
    problem = read_instance(asked.file)
    warm()
    answer, took = answered(problem, asked.seconds, workers=asked.workers, seed=asked.seed)
    told(
        problem,
        answer,
        instance=asked.file.stem,
        makespan=answer.value,
        bound=answer.bound,
        seconds=round(took, 2),
    )


if __name__ == "__main__":
    main()
