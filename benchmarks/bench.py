"""How long the questions of the bench take, against their bounds and beside reference libraries.

Cold: user CPU time of the whole command `witnessmark bench ...`, the least of several starts, so that a
busy machine does not count. Warm: CPU time of one call, beside the same work in a library where that
library is installed; ratios of one run on one machine.

    .venv/bin/python benchmarks/bench.py
"""

from __future__ import annotations

import importlib
import os
import shlex
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from typing import Any

import numpy as np

from witnessmark.bench.air import dew_point
from witnessmark.bench.answers import orings
from witnessmark.bench.answers.oils import limits_at40
from witnessmark.bench.answers.weld_order import answer_order
from witnessmark.bench.bolts import shear_area_bolt, shear_area_tapped
from witnessmark.bench.kinds import torque
from witnessmark.bench.oils import viscosity_index
from witnessmark.bench.questions import every_question
from witnessmark.bench.ring_search import Gland, fit_of, limits, standard_rings
from witnessmark.bench.seal_list import limits_of
from witnessmark.bench.weld_group import carried_at, group_of, load_on
from witnessmark.ground.units import Celsius, CentiStoke, Degree, Mm, Percent

Work = Callable[[], object]

COLD_BOUND = 0.3
FREE = ("welds order", "welds group")
"""Questions that the cold bound leaves out: they bring in arrays."""


def main() -> None:
    """Time each, print a line a piece."""
    cold_questions()
    print(f"\n{'warm, CPU time':<52} {'ours':>10}   {'bound':>8}")
    for name, work, bound in bounded():
        print(f"{name:<52} {told(timed(work)):>10}   {told(bound):>8}")
    print(f"\n{'the same work beside a library':<52} {'ours':>10}   {'theirs':>8}   {'ratio':>6}")
    for name, ours, theirs in beside():
        a, b = timed(ours), timed(theirs)
        print(f"{name:<52} {told(a):>10}   {told(b):>8}   {a / b:6.3f}")


def cold_questions() -> None:
    """Every question from a cold start, beside a start that brings in the command library alone."""
    bare = cold(["-c", "import click, json"])
    print(f"cold, user CPU time (a start with the command library alone: {bare:.2f} s)")
    for question in every_question():
        name = f"{question.subject} {question.question}"
        taken = cold(["-m", "witnessmark", *shlex.split(question.call())[1:]])
        bound = "" if name in FREE else f"{taken / COLD_BOUND:.2f} of {COLD_BOUND} s"
        print(f"{name:<20} {taken:5.2f} s   {bound}")


def cold(words: list[str], starts: int = 3) -> float:
    """User CPU seconds of an interpreter started with these words, the least of several."""
    found = []
    for _ in range(starts):
        before = os.times().children_user
        subprocess.run([sys.executable, *words], capture_output=True, check=False)
        found.append(os.times().children_user - before)
    return min(found)


def timed(work: Work, least: float = 0.2) -> float:
    """CPU seconds one call takes, the best of several rounds of as many calls as a clock can tell."""
    calls = 1
    while True:
        start = time.process_time()
        for _ in range(calls):
            work()
        spent = time.process_time() - start
        if spent >= least / 4:
            break
        calls *= 4
    rounds = [spent / calls]
    while sum(rounds) * calls < least:
        start = time.process_time()
        for _ in range(calls):
            work()
        rounds.append((time.process_time() - start) / calls)
    return min(rounds)


def told(seconds: float) -> str:
    """A time in the unit that suits it."""
    for unit, worth in (("s", 1.0), ("ms", 1e-3)):
        if seconds >= worth:
            return f"{seconds / worth:.3g} {unit}"
    return f"{seconds / 1e-6:.3g} µs"


def bounded() -> Iterator[tuple[str, Work, float]]:
    """What has a bound of its own: name, work, seconds."""
    yield (
        "orings match, all sizes, picture drawn",
        lambda: orings.match(gland="radial static", diameter=50, depth=2.9, width=4.8),
        0.02,
    )
    warm, humid = np.linspace(-10, 40, 1_000_000), np.linspace(20, 99, 1_000_000)
    yield "a million dew points", lambda: dew_point(warm, humid), 0.1  # type: ignore[arg-type]
    yield (
        "welds order, 40 short runs with the search",
        lambda: answer_order(panel=((300.0, 200.0),), thickness=1.0, run=25.0),
        2.0,
    )
    yield "a weld group of 100 lines, stress at every end", lambda: every_end(100), 0.01


def every_end(count: int) -> list[float]:
    """The greatest stresses of a comb of weld lines under a force in space."""
    group = group_of([((9.0 * i, 0.0), (9.0 * i, 30.0 + i)) for i in range(count)])
    load = load_on(group, (1000.0, -4000.0, 2500.0), (150.0, 90.0, 70.0))
    return [carried_at(group, load, one, end).vector for one in group.lines for end in (0, 1)]


def beside() -> Iterator[tuple[str, Work, Work]]:
    """Our work and a library's, for each library that is here."""
    place = Gland(kind="radial static", seat=Mm(50), depth=Mm(2.9), width=Mm(4.8), within=Mm(0.05))
    near = [r for r in standard_rings() if 0.6 < place.seat / r.inside < 1.7]
    yield (
        f"orings match, beside judging {len(near)} rings unsorted",
        lambda: orings.match(gland="radial static", diameter=50, depth=2.9, width=4.8),
        lambda: [fit_of(place, limits(place.kind), r) for r in near],
    )
    for library, pair in PAIRS.items():
        there = installed(library)
        if there is not None:
            yield pair(there)


def dew(psychrolib: Any) -> tuple[str, Work, Work]:
    """Dew points, one by one."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    return (
        "a dew point, beside psychrolib",
        lambda: dew_point(Celsius(12.0), Percent(70.0)),
        lambda: psychrolib.GetTDewPointFromRelHum(12.0, 0.7),
    )


def index(viscosity: Any) -> tuple[str, Work, Work]:
    """The viscosity index of an oil."""

    def ours() -> float:
        low, high = limits_at40(11.2)
        return viscosity_index(CentiStoke(100.0), CentiStoke(11.2), CentiStoke(low), CentiStoke(high))

    return (
        "a viscosity index, beside chemicals",
        ours,
        lambda: viscosity.viscosity_index(100e-6, 11.2e-6),
    )


def box(ezweld: Any) -> tuple[str, Work, Work]:
    """A box of four weld lines: ours exact at the ends, theirs in patches of 1 mm."""
    corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 100.0), (0.0, 100.0)]
    lines = list(zip(corners, [*corners[1:], corners[0]], strict=True))

    def ours() -> list[float]:
        group = group_of(lines)
        load = load_on(group, (1000.0, -4000.0, 2500.0), (150.0, 90.0, 70.0))
        return [carried_at(group, load, one, end).vector for one in group.lines for end in (0, 1)]

    def theirs() -> object:
        group = ezweld.WeldGroup(PATCH_SIZE=1)
        for a, b in lines:
            group.add_line(start=list(a), end=list(b), thickness=1)
        return group.solve(Vx=1000, Vy=-4000, Vz=2500, Mx=1e5, My=-5e4, Mz=-3e5)

    return "a box of four welds, beside ezweld", ours, theirs


def unit(pint: Any) -> tuple[str, Work, Work]:
    """A figure read with its unit."""
    registry = pint.UnitRegistry()
    return (
        "reading 13 lbf ft, beside pint",
        lambda: torque("torque", "13 lbf ft"),
        lambda: registry("13 force_pound * foot").to("newton * meter"),
    )


def seat(pressfit: Any) -> tuple[str, Work, Work]:
    """Limits of a bore and a shaft."""
    return (
        "limits of a 50 mm seat, beside pressfit",
        lambda: limits_of(Mm(50)),
        lambda: pressfit.fit("50 H8/h11"),
    )


def shear(threads: Any) -> tuple[str, Work, Work]:
    """Shear areas of both threads."""
    half = threads.Assembly.from_database("ASME_UN_2A2B", "1/2-13", UTSs=120_000, UTSn=60_000)
    return (
        "both shear areas, beside screw-thread-lib",
        lambda: (
            shear_area_tapped(Mm(25.4), Mm(12.385), Mm(11.595), Mm(1.954), Degree(60)),
            shear_area_bolt(Mm(25.4), Mm(11.024), Mm(11.265), Mm(1.954), Degree(60)),
        ),
        lambda: (half.ASn_min_FEDSTD_2a(1), half.ASs_min_FEDSTD_4a(1)),
    )


PAIRS: dict[str, Callable[[Any], tuple[str, Work, Work]]] = {
    "psychrolib": dew,
    "chemicals.viscosity": index,
    "ezweld": box,
    "pint": unit,
    "pressfit": seat,
    "screw_thread_lib.threads": shear,
}


def installed(name: str) -> Any:
    """A library, or None with a word about it."""
    try:
        return importlib.import_module(name)
    except ImportError:
        print(f"{name.partition('.')[0]} is not installed: left out")
        return None


if __name__ == "__main__":
    main()
