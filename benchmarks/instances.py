"""Instances of resource-constrained project scheduling in PSPLIB's single-mode text, as problems."""

from __future__ import annotations

from pathlib import Path

from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target


def read_instance(file: Path) -> Problem:
    """One endless session; the target is the makespan. Activities of no length drop out."""
    lines = file.read_text(encoding="utf-8").splitlines()
    count = int(_after(lines, "jobs (incl")[0].split(":")[1])
    then = {row[0]: row[3:] for row in _rows(lines, "PRECEDENCE RELATIONS", 2, count)}
    work = {row[0]: row for row in _rows(lines, "REQUESTS/DURATIONS", 3, count)}
    (capacities,) = _rows(lines, "RESOURCEAVAILABILITIES", 2, 1)
    real = [number for number, row in work.items() if row[2]]
    place = {number: at for at, number in enumerate(real)}
    return Problem(
        activities=tuple(Activity(minutes=work[n][2], demands=tuple(work[n][3:])) for n in real),
        sessions=(
            Session(start=0, minutes=sum(row[2] for row in work.values()), capacities=tuple(capacities)),
        ),
        held_over=(True,) * len(capacities),
        targets=(Target(activities=tuple(range(len(real)))),),
        links=tuple(Link(place[n], place[t]) for n in real for t in then[n] if t in place),
    )


def _after(lines: list[str], heading: str) -> list[str]:
    return lines[next(n for n, line in enumerate(lines) if line.startswith(heading)) :]


def _rows(lines: list[str], heading: str, skip: int, count: int) -> list[list[int]]:
    return [[int(word) for word in line.split()] for line in _after(lines, heading)[skip : skip + count]]
