"""Bolted joints: laws of the formulas, bands, verdicts, and what is refused."""

import math
from collections.abc import Callable
from typing import Any

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import bolts
from witnessmark.bench.answers import bolts as slips
from witnessmark.bench.answers.engagement import engagement, material
from witnessmark.bench.friction import DRY, OILED, SCATTER, friction_of, state_of
from witnessmark.bench.grades import strength, tidy_grade
from witnessmark.bench.thread_list import find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, MegaPascal, Mm, Mm2, Newton, NewtonMetre, Ratio

FORCES, SIZES, FACTORS = st.floats(100, 200_000), st.floats(3, 40), st.floats(0.08, 0.4)


@given(FORCES, SIZES, FACTORS)
def test_torque_and_preload_undo_each_other(force: float, size: float, factor: float) -> None:
    torque = bolts.tightening_torque(Newton(force), Mm(size), Ratio(factor))
    if torque <= 10_000:
        assert bolts.preload_from_torque(torque, Mm(size), Ratio(factor)) == pytest.approx(force)


@given(st.floats(0.05, 0.4), st.floats(0.05, 0.4))
def test_the_nut_factor_rises_with_either_friction(thread: float, head: float) -> None:
    def factor(a: float, b: float) -> float:
        return bolts.nut_factor(Mm(10), Mm(1.5), Mm(9.026), Degree(60), Ratio(a), Ratio(b), Mm(13))

    assert factor(thread + 0.01, head) > factor(thread, head)
    assert factor(thread, head + 0.01) > factor(thread, head)


def test_the_nut_factor_is_near_the_exact_wedge() -> None:
    lead = math.atan(1.5 / (math.pi * 9.026))
    friction = math.atan(0.14 / math.cos(math.radians(30)))
    exact = (9.026 / 2 * math.tan(lead + friction) + 0.14 * 13 / 2) / 10
    ours = bolts.nut_factor(Mm(10), Mm(1.5), Mm(9.026), Degree(60), Ratio(0.14), Ratio(0.14), Mm(13))
    assert ours == pytest.approx(exact, rel=0.01)


def test_the_nut_factor_is_the_sum_the_standard_prints() -> None:
    printed = (0.159 * 1.5 + 0.577 * 0.14 * 9.026 + 0.14 * 13 / 2) / 10
    ours = bolts.nut_factor(Mm(10), Mm(1.5), Mm(9.026), Degree(60), Ratio(0.14), Ratio(0.14), Mm(13))
    assert ours == pytest.approx(printed, rel=5e-4)
    sixty = (1.5 / (2 * math.pi) + 0.14 * 9.026 / math.sqrt(3) + 0.14 * 13 / 2) / 10
    assert ours == pytest.approx(sixty, rel=1e-9)


@given(st.floats(0, 89), st.floats(20, 500))
def test_an_adapter_never_asks_for_more_than_is_wanted_until_it_turns_back(
    angle: float, extension: float
) -> None:
    setting = bolts.adapter_setting(NewtonMetre(50), Mm(400), Mm(extension), Degree(angle))
    assert 0 < setting < 50
    back = bolts.adapter_setting(NewtonMetre(50), Mm(600), Mm(extension), Degree(180 - angle))
    assert back > 50


def test_formulas_take_arrays() -> None:
    torques: Any = numpy.array([10.0, 20.0])
    preloads: Any = bolts.preload_from_torque(torques, Mm(10), Ratio(0.2))
    assert list(preloads) == [5000.0, 10_000.0]
    frictions: Any = numpy.array([0.1, 0.2])
    factors: Any = bolts.nut_factor(Mm(10), Mm(1.5), Mm(9.026), Degree(60), frictions, Ratio(0.1), Mm(13))
    assert factors[1] > factors[0]
    angles: Any = numpy.array([0.0, 90.0])
    settings: Any = bolts.adapter_setting(torques, Mm(400), Mm(100), angles)
    assert settings == pytest.approx([8.0, 20.0])


def test_strip_areas_grow_with_length_and_shrink_with_slack() -> None:
    one = bolts.shear_area_tapped(Mm(10), Mm(10), Mm(9.026), Mm(1.5), Degree(60))
    assert bolts.shear_area_tapped(Mm(20), Mm(10), Mm(9.026), Mm(1.5), Degree(60)) == pytest.approx(2 * one)
    assert bolts.shear_area_tapped(Mm(10), Mm(9.8), Mm(9.2), Mm(1.5), Degree(60)) < one
    bolt = bolts.shear_area_bolt(Mm(10), Mm(8.376), Mm(9.026), Mm(1.5), Degree(60))
    assert bolts.shear_area_bolt(Mm(10), Mm(8.6), Mm(8.9), Mm(1.5), Degree(60)) < bolt


@pytest.mark.parametrize(
    ("call", "word"),
    [
        (lambda: bolts.tightening_torque(Newton(-1), Mm(8), Ratio(0.2)), "preload"),
        (lambda: bolts.preload_from_torque(NewtonMetre(math.nan), Mm(8), Ratio(0.2)), "torque"),
        (lambda: bolts.tightening_torque(Newton(1e4), Mm(8), Ratio(5)), "nut_factor"),
        (lambda: bolts.bearing_mean(Mm(16), Mm(20)), "hole over"),
        (lambda: bolts.proof_load(Mm2(0), MegaPascal(580)), "stress_area"),
        (lambda: bolts.adapter_setting(NewtonMetre(50), Mm(300), Mm(400), Degree(180)), "lever"),
        (lambda: bolts.turn_angle(Newton(1e4), Mm(0), MegaPascal(2e5), Mm2(58), Mm(1.5)), "grip"),
        (lambda: bolts.shear_area_tapped(Mm(10), Mm(7), Mm(9), Mm(1.5), Degree(60)), "crest"),
        (lambda: bolts.shear_area_bolt(Mm(10), Mm(11), Mm(9), Mm(1.5), Degree(60)), "bore"),
        (lambda: bolts.engagement_length(Newton(1e4), MegaPascal(1), Mm(20)), "shear_strength"),
    ],
)
def test_what_makes_no_sense_is_refused(call: Callable[[], object], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        call()


def test_tightening_tells_preload_with_its_scatter() -> None:
    slip = slips.tighten(thread="M8", grade="8.8", nut_factor=0.15)
    preload = slip.band("preload")
    assert preload.value == pytest.approx(0.75 * slip.band("proof_load").value)
    assert preload.low == pytest.approx(preload.value * (1 - SCATTER))
    assert slip.verdict == "fits"


@pytest.mark.parametrize(("part", "verdict"), [(0.6, "fits"), (0.9, "marginal")])
def test_scatter_past_proof_is_marginal(part: float, verdict: str) -> None:
    slip = slips.tighten(thread="M8", grade="8.8", nut_factor=0.15, fraction_of_proof=part)
    assert slip.verdict == verdict


def test_a_preload_past_proof_is_no() -> None:
    assert slips.tighten(thread="M8", grade="8.8", nut_factor=0.15, preload=25_000).verdict == "no"


def test_a_figure_to_tighten_to_needs_its_friction() -> None:
    with pytest.raises(BadInput, match="neither nut_factor nor friction"):
        slips.tighten(thread="M8", grade="8.8")


def test_preload_and_fraction_exclude_each_other() -> None:
    with pytest.raises(BadInput, match="both given"):
        slips.tighten(thread="M8", grade="8.8", nut_factor=0.2, preload=1e4, fraction_of_proof=0.5)


def test_friction_is_given_one_way_only() -> None:
    thread = find_thread("M8")
    with pytest.raises(BadInput, match="both given"):
        friction_of(thread, 0.2, 0.1, 0.1, None, None)
    with pytest.raises(BadInput, match="only one"):
        friction_of(thread, None, 0.1, None, None, None)
    with pytest.raises(BadInput, match="nut_factor"):
        friction_of(thread, 9, None, None, None, None)


def test_the_mean_diameter_under_the_head_comes_three_ways() -> None:
    m10 = find_thread("M10")
    given = friction_of(m10, None, 0.1, 0.1, 13.0, None).factor
    worked = friction_of(m10, None, 0.1, 0.1, None, 11.0)
    assert "(14.70 + 11.00) / 2" in worked.working[0]
    assert friction_of(m10, None, 0.1, 0.1, None, None).factor == pytest.approx(given)
    flats = friction_of(find_thread("3/8 UNF"), None, 0.1, 0.1, None, 10.0)
    assert flats.factor < friction_of(find_thread("3/8 UNF"), None, 0.1, 0.1, None, 12.0).factor
    assert "head-mean-diameter" in friction_of(find_thread("1/4 BSP"), None, 0.1, 0.1, None, 14.0).sources


def test_without_friction_the_printed_band_stands() -> None:
    slip = slips.check(thread="M8", grade="8.8", torque=20)
    fraction = slip.band("fraction_of_proof")
    assert fraction.high is not None
    assert fraction.low is not None
    assert fraction.high / fraction.low == pytest.approx(DRY / OILED)
    assert "plausible-band" in slip.sources


@pytest.mark.parametrize(
    ("torque", "state", "verdict"),
    [(18, "within", "fits"), (25, "doubtful", "marginal"), (60, "over", "no"), (3, "low", "marginal")],
)
def test_a_figure_stands_in_one_of_four_ways(torque: float, state: str, verdict: str) -> None:
    slip = slips.check(thread="M8", grade="8.8", torque=torque)
    assert slip.results["state"] == state
    assert slip.verdict == verdict


def test_a_given_factor_is_over_when_its_middle_is() -> None:
    assert slips.check(thread="M6", grade="8.8", torque=17.63, nut_factor=0.2).verdict == "no"
    assert state_of(0.7, 0.99, 1.3, spread=False) == "doubtful"


def test_inch_threads_say_what_their_area_rests_on() -> None:
    slip = slips.check(thread="5/16 BSF", grade="8.8", torque=15, nut_factor=0.15)
    assert "stress-area-convention" in slip.sources
    assert any("comparison only" in line for line in slip.working)


def test_the_adapter_answers_both_ways() -> None:
    asked = {"wrench_length": 300, "extension": 150}
    assert slips.adapter(torque=30, **asked).band("setting").value == pytest.approx(20)
    assert slips.adapter(setting=20, **asked).band("torque").value == pytest.approx(30)
    assert "changes nothing" in slips.adapter(torque=30, angle=90, **asked).because


@pytest.mark.parametrize("given", [{}, {"torque": 0.0, "setting": 3.0}])
def test_the_adapter_is_asked_one_thing(given: dict[str, float]) -> None:
    with pytest.raises(BadInput, match="one of them"):
        slips.adapter(wrench_length=300, extension=50, **given)


def test_the_turn_of_a_threaded_bolt_is_the_greater() -> None:
    angle = slips.turn(thread="M10", grip=40, preload=28_000, modulus=205_000).band("angle")
    assert angle.low is not None
    assert angle.low < angle.value == angle.high


def test_engagement_in_soft_metal_strips_the_tapped_part_first() -> None:
    soft = engagement(thread="M8", grade="8.8", material="soft aluminium")
    assert soft.results["weaker_side"] == "tapped part"
    hard = engagement(thread="M8", grade="8.8", shear_strength=900)
    assert hard.results["weaker_side"] == "bolt"
    assert "no customary length" in str(hard.results["customary"])
    assert soft.band("length").value > hard.band("length").value


def test_thread_limits_ask_for_more_engagement() -> None:
    basic = engagement(thread="M8", grade="8.8", shear_strength=270)
    real = engagement(
        thread="M8", grade="8.8", shear_strength=270, bolt_major_min=7.76, bolt_pitch_min=7.04,
        tapped_pitch_max=7.348, tapped_minor_max=6.912, tensile_strength=800,
    )  # fmt: skip
    assert real.band("length").value > basic.band("length").value
    assert not any("nominal sizes" in line for line in real.working)


@pytest.mark.parametrize("given", [{}, {"material": "mild steel", "shear_strength": 200.0}])
def test_engagement_is_told_one_strength(given: dict[str, Any]) -> None:
    with pytest.raises(BadInput, match="Give one"):
        engagement(thread="M8", grade="8.8", **given)


def test_a_material_is_known_by_a_word_of_it() -> None:
    assert material("material", "aluminium").value == "soft aluminium"
    with pytest.raises(BadInput) as trouble:
        material("material", "steel")
    assert set(trouble.value.near) == {"mild steel", "medium steel"}
    with pytest.raises(BadInput, match="Did you mean"):
        material("material", "grey irn")
    with pytest.raises(BadInput, match="Give one of these"):
        material("material", "cheese")


@pytest.mark.parametrize(
    ("typed", "tidy"), [("8.8", "8.8"), ("grade 5", "SAE 5"), ("class 10.9", "10.9"), ("gr 8", "SAE 8")]
)
def test_grades_are_known_by_their_usual_names(typed: str, tidy: str) -> None:
    assert tidy_grade(typed) == tidy


@pytest.mark.parametrize("typed", ["R", "8.9", "A2-70", "SAE 6", ""])
def test_grades_nobody_tabled_are_refused(typed: str) -> None:
    with pytest.raises(BadInput, match="grade is"):
        tidy_grade(typed)


def test_strength_depends_on_size_and_ends_somewhere() -> None:
    assert strength("8.8", Mm(16)).proof < strength("8.8", Mm(18)).proof
    with pytest.raises(BadInput, match="to 16 mm"):
        strength("4.8", Mm(20))
