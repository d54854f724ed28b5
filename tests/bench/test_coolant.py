"""Coolant: there and back between mass and volume, and near a second source."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import coolant
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Percent, Ratio
from witnessmark.tables.numbers import table

ROWS = {
    kind: [(r["part"], r["freezes"]) for r in table("coolant/freezing").rows if r["kind"] == kind]
    for kind in ("ethylene", "propylene")
}


@given(st.floats(0, 100), st.sampled_from([1.036, 1.113]))
def test_mass_and_volume_turn_back(part: float, density: float) -> None:
    there = coolant.mass_from_volume(Percent(part), Ratio(density))
    assert coolant.volume_from_mass(there, Ratio(density)) == pytest.approx(part, abs=1e-9)
    assert there >= part - 1e-9


@pytest.mark.parametrize("kind", ["ethylene", "propylene"])
def test_printed_points_come_back_and_nothing_between_turns_round(kind: str) -> None:
    points = ROWS[kind]
    assert [coolant.between_points(Percent(p), points) for p, _ in points] == pytest.approx(
        [t for _, t in points]
    )
    most = int(points[-1][0])
    steps = [coolant.between_points(Percent(p / 2), points) for p in range(2 * most + 1)]
    assert all(b < a + 0.15 for a, b in itertools.pairwise(steps))


@pytest.mark.parametrize("part", [-1.0, 61.0])
def test_more_glycol_than_was_printed_is_refused(part: float) -> None:
    with pytest.raises(BadInput, match="protects less"):
        coolant.between_points(Percent(part), ROWS["ethylene"])


def test_two_points_are_too_few() -> None:
    with pytest.raises(BadInput):
        coolant.between_points(Percent(5), [(0, 0.0), (10, -3.0)])


@pytest.mark.parametrize(("kind", "fluid", "near"), [("ethylene", "MEG", 0.15), ("propylene", "MPG", 1.3)])
def test_a_properties_library_agrees(kind: str, fluid: str, near: float) -> None:
    library = pytest.importorskip("CoolProp.CoolProp")
    density = {"ethylene": 1.113, "propylene": 1.036}[kind]
    for part in range(5, 46, 5):
        theirs = library.PropsSI("T_FREEZE", "T", 300, "P", 101325, f"INCOMP::{fluid}[{part / 100}]") - 273.15
        measure = part if kind == "ethylene" else coolant.volume_from_mass(Percent(part), Ratio(density))
        assert coolant.between_points(Percent(measure), ROWS[kind]) == pytest.approx(theirs, abs=near)


def test_the_three_nearest_points_are_gone_through_by_a_parabola() -> None:
    """Worked by hand: through (10, −3.4), (20, −7.9) and (0, 0) at 12."""
    points = [(0, 0.0), (10, -3.4), (20, -7.9), (40, -23.8)]
    assert coolant.between_points(Percent(12), points) == pytest.approx(-4.212)
    assert coolant.between_points(Percent(5), points[:3]) == pytest.approx(-1.5625)


def test_less_glycol_than_was_printed_is_refused_as_well() -> None:
    with pytest.raises(BadInput, match="glycol is 5"):
        coolant.between_points(Percent(5), [(10, -3.4), (20, -7.9), (40, -23.8)])
