"""Brakes, toe and pulls asked as a person asks."""

import math

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput


def test_a_line_and_its_slave() -> None:
    same = asked("brakes", "line", pedal_force="100 lbf", ratio="6", bore="1 in")
    other = asked(
        "brakes", "line", pedal_force="100 lbf", ratio="6", bore="1 in", slave_bore="1/2 in", boost="2"
    )
    assert same.band("slave_force").value == pytest.approx(6 * 444.82, rel=1e-4)
    assert other.band("pressure").value == pytest.approx(2 * same.band("pressure").value)
    assert other.band("slave_force").value == pytest.approx(2 * 6 * 444.82 / 4, rel=1e-4)
    assert "brakes-both-sides" in same.cautions


def test_toe_either_way() -> None:
    long = asked("steering", "toe", toe="3 mm", at_diameter="400 mm")
    turned = asked("steering", "toe", toe=f"{long.band('angle').value} deg", at_diameter="400 mm")
    assert turned.band("toe").value == pytest.approx(3)
    assert long.band("angle_each_wheel").value == pytest.approx(long.band("angle").value / 2)
    assert "steering" in long.cautions


@pytest.mark.parametrize("toe", ["3", "3 kg", "12 deg"])
def test_a_toe_that_cannot_be_is_refused(toe: str) -> None:
    with pytest.raises(BadInput):
        asked("steering", "toe", toe=toe, at_diameter="400 mm")


def test_every_answer_on_pulls_carries_the_scope_line() -> None:
    for typed in (
        {},
        {"slope": "10 deg"},
        {"ground": "grass"},
        {"ground": "mud to the rim", "slope": "25 %"},
    ):
        slip = asked("loads", "towing", mass="1500 kg", **typed)
        assert slip.because.startswith("one for one, as built; certifier where the law asks")
        assert {"towing", "strength-scope"} <= set(slip.cautions)


def test_a_pull_beyond_what_an_eye_is_tested_with_is_told() -> None:
    light = asked("loads", "towing", mass="1500 kg")
    heavy = asked("loads", "towing", mass="1500 kg", ground="Mud to the rim")
    assert light.verdict is None
    assert heavy.verdict == "no"
    assert "do not pull it by one eye" in heavy.because
    assert light.band("eye_test_force").value == pytest.approx(1500 * 9.80665 / 2)


def test_the_two_sets_of_ground_factors_are_a_band() -> None:
    band = asked("loads", "towing", mass="1000 kg", ground="hard").band("recovery_force")
    assert band.low == pytest.approx(0.04 * 9806.65)
    assert band.high == pytest.approx(0.10 * 9806.65)


def test_a_gradient_is_a_slope() -> None:
    grade = asked("loads", "towing", mass="1000 kg", slope="100 %").band("recovery_force")
    angle = asked("loads", "towing", mass="1000 kg", slope="45 deg").band("recovery_force")
    assert grade.value == pytest.approx(angle.value)
    assert grade.value > 9806.65 * math.sin(math.pi / 4)


def test_an_unknown_ground_offers_near_ones() -> None:
    with pytest.raises(BadInput) as trouble:
        asked("loads", "towing", mass="1000 kg", ground="deep mud")
    assert "light mud" in trouble.value.near
