"""How long the questions of the bench take, against their bounds and beside reference libraries.

Prints ratios measured in one run on one machine: a question beside a bare start of the interpreter,
a sum beside the same sum in a library where that library is installed.

    .venv/bin/python benchmarks/bench.py
"""

from __future__ import annotations

import importlib
import subprocess
import sys
import time
from collections.abc import Callable
from typing import Any

from witnessmark.bench.answers import orings, shims
from witnessmark.bench.bolts import shear_area_bolt, shear_area_tapped
from witnessmark.bench.kinds import torque
from witnessmark.bench.questions import every_question
from witnessmark.bench.ring_search import Gland, fit_of, limits, standard_rings
from witnessmark.bench.seal_list import limits_of
from witnessmark.ground.units import Degree, Mm

ASK = "from witnessmark.cli.bench import bench_command; bench_command({words!r})"
SLOW = {"welds order", "welds group"}


def main() -> None:
    """Time each, print a line a piece."""
    cold_questions()
    ring_search()
    shim_search()
    for name, ours, theirs in pairs():
        beside(name, ours, theirs)


def timed(work: Callable[[], object], least: float = 0.2) -> float:
    """Seconds one call takes, the best of several runs."""
    best, spent = float("inf"), 0.0
    while spent < least:
        start = time.perf_counter()
        work()
        once = time.perf_counter() - start
        best, spent = min(best, once), spent + once
    return best


def cold_questions() -> None:
    """Every question from a cold start, beside a bare start with the command library."""
    bare = cold("import click, json")
    worst = ("", 0.0)
    for question in every_question():
        words = [question.subject, question.question, *(f"{i.name}={i.example}" for i in question.inputs)]
        if f"{question.subject} {question.question}" not in SLOW:
            worst = max(worst, (" ".join(words[:2]), cold(ASK.format(words=words))), key=lambda one: one[1])
    ratio = worst[1] / bare
    print(f"slowest cold question: {worst[0]} {worst[1]:.2f} s, {ratio:.1f} times a bare start (0.3 s)")


def cold(code: str) -> float:
    """Best of three starts of an interpreter with that code."""

    def start() -> None:
        subprocess.run([sys.executable, "-c", code], capture_output=True, check=False)

    return timed(start, least=0.5)


def ring_search() -> None:
    """The search over all sizes, beside judging every size without looking first."""
    place = Gland(kind="radial static", seat=Mm(50), depth=Mm(2.9), width=Mm(4.8), within=Mm(0.05))
    near = [r for r in standard_rings() if 0.6 < place.seat / r.inside < 1.7]
    ours = timed(lambda: orings.match(gland="radial static", diameter=50, depth=2.9, width=4.8))
    every = timed(lambda: [fit_of(place, limits(place.kind), r) for r in near])
    ratio = ours / every
    print(f"orings match, picture drawn: {ours * 1000:.1f} ms, {ratio:.2f} of judging {len(near)} (20 ms)")


def shim_search() -> None:
    """A tin of shims."""
    tin = tuple((0.05 * k, 6) for k in range(1, 11))
    ours = timed(lambda: shims.stack(measured=3.0, wanted_low=0.04, wanted_high=0.06, shims=tin))
    print(f"shims stack from ten thicknesses of six: {ours * 1000:.1f} ms")


def pairs() -> list[tuple[str, Callable[[], object], Callable[[], object]]]:
    """Our sum and a library's, for each library that is here."""
    found: list[tuple[str, Callable[[], object], Callable[[], object]]] = []
    pint = library("pint")
    if pint is not None:
        registry = pint.UnitRegistry()
        found.append(
            (
                "reading 13 lbf ft, beside pint",
                lambda: torque("torque", "13 lbf ft"),
                lambda: registry("13 force_pound * foot").to("newton * meter"),
            )
        )
    pressfit = library("pressfit")
    if pressfit is not None:
        found.append(
            (
                "limits of a 50 mm seat, beside pressfit",
                lambda: limits_of(Mm(50)),
                lambda: pressfit.fit("50 H8/h11"),
            )
        )
    threads = library("screw_thread_lib.threads")
    if threads is not None:
        half: Any = threads.Assembly.from_database("ASME_UN_2A2B", "1/2-13", UTSs=120_000, UTSn=60_000)
        found.append(
            (
                "both shear areas, beside screw-thread-lib",
                lambda: (
                    shear_area_tapped(Mm(25.4), Mm(12.385), Mm(11.595), Mm(1.954), Degree(60)),
                    shear_area_bolt(Mm(25.4), Mm(11.024), Mm(11.265), Mm(1.954), Degree(60)),
                ),
                lambda: (half.ASn_min_FEDSTD_2a(1), half.ASs_min_FEDSTD_4a(1)),
            )
        )
    return found


def library(name: str) -> Any:
    """A library, or None with a word about it."""
    try:
        return importlib.import_module(name)
    except ImportError:
        print(f"{name.partition('.')[0]} is not installed: left out")
        return None


def beside(name: str, ours: Callable[[], object], theirs: Callable[[], object]) -> None:
    """One line: our time over theirs."""
    a, b = timed(ours), timed(theirs)
    print(f"{name}: {a * 1e6:.1f} µs, {a / b:.2f} of theirs")


if __name__ == "__main__":
    main()
