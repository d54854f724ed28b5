"""Wire, brakes, toe, pulls and steel: laws that hold whatever the numbers."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import brakes, loads, steel, steering, wires
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import (
    Ampere,
    Celsius,
    Degree,
    Kilogram,
    Metre,
    Mm,
    Mm2,
    Newton,
    OhmMm2PerMetre,
    Percent,
    Ratio,
    Volt,
)


@given(st.floats(0.5, 60), st.floats(0.5, 20), st.floats(0.05, 1), st.floats(-20, 90))
def test_the_copper_that_a_drop_allows_makes_that_drop(
    amps: float, way: float, drop: float, warm: float
) -> None:
    factor = wires.copper_factor(Celsius(warm))
    area = wires.copper_area(Ampere(amps), Metre(way), Volt(drop), factor)
    if not 0.01 <= area <= 500:
        return
    ohms = wires.resistance(Mm2(area), OhmMm2PerMetre(wires.COPPER_20 * factor))
    assert wires.voltage_drop(Ampere(amps), Metre(way), ohms) == pytest.approx(drop)


@given(st.floats(10, 1500), st.floats(2, 8), st.floats(10, 40), st.floats(1, 6))
def test_pressure_times_piston_is_the_push(force: float, ratio: float, bore: float, boost: float) -> None:
    pressure = brakes.line_pressure(Newton(force), Ratio(ratio), Mm(bore), Ratio(boost))
    assert pressure * brakes.piston_area(Mm(bore)) == pytest.approx(force * ratio * boost)


@given(st.floats(-20, 20), st.floats(300, 900))
def test_toe_turns_back(toe: float, across: float) -> None:
    assert steering.toe_length(steering.toe_angle(Mm(toe), Mm(across)), Mm(across)) == pytest.approx(
        toe, abs=1e-9
    )


def test_toe_over_an_array() -> None:
    found = steering.toe_angle(np.array([0.0, 2.0, 4.0]), Mm(400))  # type: ignore[arg-type]
    assert np.asarray(found) == pytest.approx([0, 0.28648, 0.57297], abs=1e-5)


def test_straight_up_a_vehicle_weighs_what_it_weighs_and_its_eye_half() -> None:
    mass = Kilogram(1500)
    assert loads.recovery_force(mass, Degree(30), Ratio(0)) == pytest.approx(loads.eye_test_force(mass))


def test_plain_carbon_is_its_own_equivalent() -> None:
    none = Percent(0)
    assert steel.carbon_equivalent(Percent(0.2), none, none, none, none, none, none) == 0.2


@pytest.mark.parametrize("carbon", [-0.1, 2.5, float("nan")])
def test_carbon_beyond_steel_is_refused(carbon: float) -> None:
    none = Percent(0)
    with pytest.raises(BadInput, match="carbon"):
        steel.carbon_equivalent(Percent(carbon), none, none, none, none, none, none)
