"""Press fits against Lamé's equations solved another way, and their bands."""

from typing import Any

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.answers.fits import press
from witnessmark.bench.fits import fit_pressure, heat_to_open, hub_hoop_stress, press_force
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import MegaPascal, Mm, PerKelvin, Ratio

STEEL = {
    "shaft_modulus": 210_000.0,
    "hub_modulus": 210_000.0,
    "shaft_poisson": 0.3,
    "hub_poisson": 0.3,
}


def radial_growth(
    pressure: float, at: float, inner: float, outer: float, modulus: float, nu: float, *, inside: bool
) -> float:
    """Growth of one cylinder's face under pressure, by solving Lamé's two constants from its two faces."""
    faces = numpy.array([[1.0, -1.0 / (inner / 2) ** 2], [1.0, -1.0 / (outer / 2) ** 2]])
    loads = numpy.array([-pressure, 0.0]) if inside else numpy.array([0.0, -pressure])
    a, b = numpy.linalg.solve(faces, loads)
    radius = at / 2
    hoop, radial = a + b / radius**2, a - b / radius**2
    return float(radius * (hoop - nu * radial) / modulus)


@given(st.floats(10, 80), st.floats(1.2, 3), st.floats(0.1, 0.8), st.floats(0.0002, 0.002))
def test_the_growth_of_both_faces_makes_up_the_interference(
    shaft: float, over: float, bore: float, part: float
) -> None:
    hub, inner, tight = shaft * over, shaft * bore, shaft * part
    p = fit_pressure(
        Mm(shaft),
        Mm(hub),
        Mm(tight),
        MegaPascal(205_000),
        MegaPascal(110_000),
        Ratio(0.3),
        Ratio(0.26),
        Mm(inner),
    )
    out = radial_growth(p, shaft, shaft, hub, 110_000, 0.26, inside=True)
    shrink = radial_growth(p, shaft, inner, shaft, 205_000, 0.3, inside=False)
    assert 2 * (out - shrink) == pytest.approx(tight, rel=1e-9)


def test_a_bored_shaft_gives_less_pressure() -> None:
    solid = press(shaft_diameter=25, hub_diameter=50, interference=0.02, **STEEL)
    hollow = press(shaft_diameter=25, hub_diameter=50, interference=0.02, shaft_bore=15, **STEEL)
    assert hollow.band("pressure").value < solid.band("pressure").value
    assert (hollow.picture or "").count("<path") > (solid.picture or "").count("<path")


def test_force_and_heat_are_bands_and_only_told_when_they_can_be() -> None:
    bare = press(shaft_diameter=25, hub_diameter=50, interference=0.02, **STEEL)
    assert "give length and friction" in str(bare.results["force"])
    assert "give expansion" in str(bare.results["heat_to_drop_on"])
    whole = press(
        shaft_diameter=25,
        hub_diameter=50,
        interference=0.02,
        length=20,
        friction=0.12,
        expansion=12e-6,
        **STEEL,
    )
    force, heat = whole.band("force"), whole.band("heat_to_drop_on")
    assert force.low is not None
    assert force.high is not None
    assert force.low < force.value < force.high
    assert heat.value == pytest.approx(0.02 / (12e-6 * 25))
    assert heat.high is not None
    assert heat.high > heat.value


def test_formulas_take_arrays() -> None:
    tight: Any = numpy.array([0.01, 0.02])
    steel, nu = MegaPascal(210_000), Ratio(0.3)
    pressures = fit_pressure(Mm(25), Mm(50), tight, steel, steel, nu, nu, Mm(0))
    assert pressures == pytest.approx([31.5, 63.0])
    assert hub_hoop_stress(pressures, Mm(25), Mm(50)) == pytest.approx([52.5, 105.0])


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"hub_diameter": 20}, "hub over shaft"),
        ({"interference": 2}, "interference"),
        ({"interference": -0.01}, "interference"),
        ({"shaft_bore": 25}, "bore over shaft"),
        ({"hub_modulus": 1}, "hub_modulus"),
        ({"hub_poisson": 0.9}, "hub_poisson"),
        ({"length": 20, "friction": 9}, "friction"),
        ({"expansion": 1}, "expansion"),
    ],
)
def test_impossible_fits_are_refused(change: dict[str, float], word: str) -> None:
    given = {"shaft_diameter": 25, "hub_diameter": 50, "interference": 0.02, **STEEL, **change}
    with pytest.raises(BadInput, match=word):
        press(**given)


def test_the_force_is_pressure_on_the_skin_times_friction() -> None:
    skin = 3.14159265 * 30 * 40
    assert press_force(MegaPascal(50), Mm(30), Mm(40), Ratio(0.1)) == pytest.approx(skin * 50 * 0.1)
    assert heat_to_open(Mm(0.06), Mm(50), PerKelvin(12e-6)) == pytest.approx(100)


def test_single_formulas_refuse_nonsense() -> None:
    with pytest.raises(BadInput, match="pressure"):
        press_force(MegaPascal(-1), Mm(25), Mm(20), Ratio(0.1))
    with pytest.raises(BadInput, match="opening"):
        heat_to_open(Mm(9), Mm(25), PerKelvin(12e-6))
