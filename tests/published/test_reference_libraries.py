"""The same work done by independent libraries: units, fits, shear areas. Checked, not counted.

They are for these tests only. Where one is not installed its test is left out by name:
`pip install pint pressfit screw-thread-lib` brings them.
"""

from __future__ import annotations

import importlib
import math
from types import ModuleType
from typing import Any

import pytest

from witnessmark.bench import bolts
from witnessmark.bench.answers.engagement import engagement
from witnessmark.bench.plausible import LBF_FT, LBF_IN
from witnessmark.bench.seal_list import limits_of
from witnessmark.bench.thread_list import find_thread
from witnessmark.ground.measures import GRAVITY
from witnessmark.ground.units import Degree, Mm

INCH = 25.4


def library(module: str, package: str) -> ModuleType:
    """A library, or a skip that says what brings it."""
    pytest.importorskip(module.partition(".")[0], reason=f"pip install {package}")
    return importlib.import_module(module)


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [(LBF_FT, "force_pound * foot"), (LBF_IN, "force_pound * inch"), (GRAVITY, "kilogram_force * meter")],
)
def test_units_of_torque_agree_with_pint(ours: float, theirs: str) -> None:
    registry: Any = library("pint", "pint").UnitRegistry()
    assert registry(theirs).to("newton * meter").magnitude == pytest.approx(ours, rel=1e-12)


@pytest.mark.parametrize("size", [8, 16, 25, 38, 50, 70, 100, 150, 200])
def test_limits_of_seal_seats_agree_with_pressfit(size: int) -> None:
    fit = library("pressfit", "pressfit").fit(f"{size} H8/h11")
    least_shaft, most_bore = limits_of(Mm(size))
    assert fit.hole_limits_mm[1] - size == pytest.approx(most_bore, abs=1e-9)
    assert fit.shaft_limits_mm[0] - size == pytest.approx(least_shaft, abs=1e-9)


THREADS = ("10-24", "10-32", "1/4-20", "1/4-28", "1/2-13")


@pytest.mark.parametrize("name", THREADS)
def test_shear_areas_agree_with_screw_thread_lib(name: str) -> None:
    threads = library("screw_thread_lib.threads", "screw-thread-lib")
    theirs = threads.Assembly.from_database("ASME_UN_2A2B", name, UTSs=120_000, UTSn=60_000)
    pitch, inch = Mm(INCH / theirs.n), Mm(INCH)
    tapped = bolts.shear_area_tapped(inch, Mm(theirs.dmin * INCH), Mm(theirs.D2max * INCH), pitch, Degree(60))
    bolt = bolts.shear_area_bolt(inch, Mm(theirs.D1max * INCH), Mm(theirs.d2min * INCH), pitch, Degree(60))
    assert tapped / INCH**2 == pytest.approx(theirs.ASn_min_FEDSTD_2a(1), rel=1e-4)
    assert bolt / INCH**2 == pytest.approx(theirs.ASs_min_FEDSTD_4a(1), rel=1e-4)


def test_the_length_a_bolt_needs_for_its_own_thread_agrees_with_screw_thread_lib() -> None:
    threads = library("screw_thread_lib.threads", "screw-thread-lib")
    theirs = threads.Assembly.from_database("ASME_UN_2A2B", "1/2-13", UTSs=120_000, UTSn=60_000)
    ours = engagement(
        thread="1/2 UNC", grade="SAE 5", shear_strength=2000, bolt_major_min=theirs.dmin * INCH,
        bolt_pitch_min=theirs.d2min * INCH, tapped_pitch_max=theirs.D2max * INCH,
        tapped_minor_max=theirs.D1max * INCH,
    )  # fmt: skip
    assert ours.band("bolt_needs").value / INCH == pytest.approx(theirs.LEr_FEDSTD_14(), rel=2e-3)
    assert math.isclose(find_thread("1/2 UNC").area / INCH**2, theirs.As_FEDSTD_1a(), rel_tol=1e-3)
