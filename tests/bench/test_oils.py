"""Oils: the line goes through its points, the index ends where it is defined, air shut in obeys its law."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import oils
from witnessmark.bench.answers.oils import limits_at40
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Celsius, CentiStoke, Litre, MegaPascal, PerKelvin, Ratio

OUTSIDE = MegaPascal(0.1013)


def line(v1: float, t1: float, v2: float, t2: float) -> tuple[Ratio, Ratio]:
    a, b = oils.viscosity_line(CentiStoke(v1), Celsius(t1), CentiStoke(v2), Celsius(t2))
    return Ratio(a), Ratio(b)


@given(st.floats(3, 5000), st.floats(0.05, 0.8))
def test_the_line_goes_through_both_points(thick: float, part: float) -> None:
    thin = max(2.0, thick * part)
    if thin > thick * 0.98:
        return
    a, b = line(thick, 40, thin, 100)
    assert oils.viscosity_at(a, b, Celsius(40)) == pytest.approx(thick, rel=1e-3)
    assert oils.viscosity_at(a, b, Celsius(100)) == pytest.approx(thin, rel=2e-3)


def test_the_last_term_holds_the_line_below_two() -> None:
    a, b = line(1.6, 40, 0.8, 100)
    assert oils.viscosity_at(a, b, Celsius(40)) == pytest.approx(1.6, rel=2e-3)
    assert oils.viscosity_at(a, b, Celsius(100)) == pytest.approx(0.8, rel=2e-3)


@given(st.floats(-40, 140), st.floats(1, 60))
def test_an_oil_only_thins_as_it_warms(cold: float, more: float) -> None:
    a, b = line(68, 40, 8.8, 100)
    assert oils.viscosity_at(a, b, Celsius(cold)) > oils.viscosity_at(a, b, Celsius(cold + more))


@pytest.mark.parametrize(
    ("first", "second"), [((32, 40), (32, 100)), ((5, 40), (32, 100)), ((32, 40), (31, 42))]
)
def test_two_points_that_make_no_line_are_refused(
    first: tuple[float, float], second: tuple[float, float]
) -> None:
    with pytest.raises(BadInput, match="thinner when hotter"):
        line(*first, *second)


@pytest.mark.parametrize("at100", [2.0, 5.05, 8.86, 40.0, 69.95, 70.0, 100.0])
def test_the_reference_oils_have_the_index_they_stand_for(at100: float) -> None:
    low, high = limits_at40(at100)
    ours = [
        oils.viscosity_index(CentiStoke(v), CentiStoke(at100), CentiStoke(low), CentiStoke(high))
        for v in (low, high)
    ]
    assert ours == pytest.approx([0, 100], abs=1e-9)


def test_the_two_procedures_meet_at_a_hundred() -> None:
    low, high = limits_at40(9.0)
    near = [
        oils.viscosity_index(CentiStoke(high * f), CentiStoke(9), CentiStoke(low), CentiStoke(high))
        for f in (0.9999, 1.0001)
    ]
    assert near == pytest.approx([100, 100], abs=0.2)


def test_no_index_is_given_below_two() -> None:
    with pytest.raises(BadInput, match="no index is defined"):
        limits_at40(1.9)


def shut(
    case: float, oil: float, air: float, cold: float = 20, hot: float = 90, modulus: float = 1724
) -> float:
    return oils.shut_in_pressure(
        Litre(case), Litre(oil), MegaPascal(modulus), Litre(air), Celsius(cold), Celsius(hot), OUTSIDE
    )


def test_nothing_warmed_is_nothing_pressed() -> None:
    assert shut(1.0, 0.8, 0.2, 20, 20) == pytest.approx(OUTSIDE)


@given(st.floats(0.05, 0.9), st.floats(20, 120))
def test_the_gas_law_holds_for_the_room_that_is_left(air: float, hot: float) -> None:
    oil = oils.grown(Litre(1 - air), Celsius(20), Celsius(hot), PerKelvin(0.0007))
    pressure = shut(1.0, oil, air, 20, hot)
    room = 1.0 - oil + oil * (pressure - OUTSIDE) / 1724
    assert pressure * room == pytest.approx(OUTSIDE * air * (hot + 273.15) / 293.15, rel=1e-6)


def test_without_air_the_oil_alone_is_pressed() -> None:
    assert shut(1.0, 1.01, 0.0) == pytest.approx(OUTSIDE + 1724 * 0.01 / 1.01, rel=1e-6)


@given(st.floats(0.5, 0.98), st.floats(0.001, 0.015))
def test_more_oil_makes_more_pressure(fill: float, more: float) -> None:
    def pressure(part: float) -> float:
        return shut(1.0, oils.grown(Litre(part), Celsius(20), Celsius(90), PerKelvin(0.0007)), 1 - part)

    assert pressure(fill) < pressure(fill + more) < math.inf


def test_points_five_degrees_apart_are_far_enough() -> None:
    a, b = oils.viscosity_line(CentiStoke(68), Celsius(40), CentiStoke(55), Celsius(45))
    assert oils.viscosity_at(Ratio(a), Ratio(b), Celsius(45)) == pytest.approx(55, rel=1e-6)
    with pytest.raises(BadInput, match="at least 5"):
        oils.viscosity_line(CentiStoke(68), Celsius(40), CentiStoke(58), Celsius(44.9))


@pytest.mark.parametrize("thin", [0.4, 0.5, 0.8, 1.5])
def test_a_thin_oil_comes_back_as_it_went_in(thin: float) -> None:
    """The long form of the standard and its way back agree to a few ten-thousandths."""
    a, b = oils.viscosity_line(CentiStoke(thin * 3), Celsius(40), CentiStoke(thin), Celsius(100))
    assert oils.viscosity_at(Ratio(a), Ratio(b), Celsius(100)) == pytest.approx(thin, abs=2e-4)
