"""Bolts in the solutions to a design textbook, and its table of preloads at one torque."""

from __future__ import annotations

from statistics import mean

from tests.published.printed import Cited, Printed
from witnessmark.bench.bolts import preload_from_torque, proof_load
from witnessmark.bench.friction import SCATTER
from witnessmark.ground.units import MegaPascal, Mm, Mm2, NewtonMetre, Ratio

SOURCE = Cited(
    issuer="Budynas and Nisbett",
    title="Shigley's Mechanical Engineering Design and its solutions",
    where="problem 8-20; table 8-14, page 439",
    edition="9th",
    standing="handbook",
    seen="excerpt",
)

PRELOADS = (30.3, 32.5, 32.8, 32.9, 33.1, 34.7, 37.4, 34.7, 36.0, 37.4)

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


def test_ten_measured_preloads_lie_inside_the_scatter_we_tell() -> None:
    middle = mean((33.3, 34.2, 34.2))
    least, most = middle * (1 - SCATTER), middle * (1 + SCATTER)
    assert least < 34.18 - 3 * 2.88
    assert most > 34.18 + 3 * 2.88
    assert preload_from_torque(NewtonMetre(90), Mm(12), Ratio(0.2)) / 1000 > least
