"""Bolts in the solutions to a design textbook, and its table of preloads at one torque."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.bolts import proof_load
from witnessmark.bench.friction import SCATTER
from witnessmark.ground.units import MegaPascal, Mm2

SOURCE = Cited(
    issuer="Budynas and Nisbett",
    title="Shigley's Mechanical Engineering Design and its solutions",
    where="problem 8-20; table 8-14, page 439",
    edition="9th",
    standing="handbook",
    seen="excerpt",
)

PRINTED = (
    Printed(
        "bolts tighten",
        "M12 of 600 MPa proof on 84.3 mm², preload at three quarters, kN",
        "37.9",
        lambda: 0.75 * proof_load(Mm2(84.3), MegaPascal(600)) / 1000,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


def test_three_deviations_of_ten_measured_preloads_lie_inside_the_scatter_we_tell() -> None:
    mean, deviation = 34.18, 2.88  # kN at 90 N·m, lubricated, as printed below the table
    assert 3 * deviation < SCATTER * mean
    assert 3 * deviation > 0.5 * SCATTER * mean
