"""Three guesses of one operation: closed form, sampler and band agree, with each other and with a library."""

import random
from math import exp, log, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.estimate import (
    FINDING,
    Z90,
    at,
    band,
    done_within,
    mean,
    mixed_within,
    planned,
    quantile,
    spreads,
)


@st.composite
def guesses(draw: st.DrawFn) -> Minutes:
    likely = draw(st.floats(1, 600))
    below, above = draw(st.floats(0.05, 1.5)), draw(st.floats(0.05, 1.5))
    return Minutes(likely / exp(Z90 * below), likely, likely * exp(Z90 * above))


def operation(minutes: Minutes, finding: float = 0.0) -> Operation:
    return Operation(
        id="o", what="undo it", sort="open", name="nut", job="renew/nut", minutes=minutes, finding=finding
    )


@given(guesses())
def test_the_three_guesses_come_out_as_they_went_in(minutes: Minutes) -> None:
    out = [quantile(minutes, p) for p in (0.1, 0.5, 0.9)]
    assert out == pytest.approx([minutes.low, minutes.likely, minutes.high])


@given(guesses(), st.floats(0.01, 0.99))
def test_each_half_is_the_log_normal_of_a_library(minutes: Minutes, chance: float) -> None:
    below, above = spreads(minutes)
    curve = stats.lognorm(s=above if chance > 0.5 else below, scale=minutes.likely)
    assert quantile(minutes, chance) == pytest.approx(curve.ppf(chance))
    assert done_within(minutes, quantile(minutes, chance)) == pytest.approx(curve.cdf(curve.ppf(chance)))


@given(guesses(), st.floats(0.2, 5))
def test_the_mean_is_the_integral_of_what_is_not_yet_done(minutes: Minutes, cut: float) -> None:
    most = minutes.likely * cut
    area, _ = integrate.quad(
        lambda t: 1 - done_within(minutes, t), 0, most, points=[min(minutes.likely, most)]
    )
    assert mean(minutes, most=most) == pytest.approx(area, rel=1e-5)


@given(guesses())
def test_with_one_spread_the_mean_is_the_log_normals(minutes: Minutes) -> None:
    spread = spreads(minutes)[1]
    even = Minutes(minutes.likely * exp(-Z90 * spread), minutes.likely, minutes.likely * exp(Z90 * spread))
    assert mean(even) == pytest.approx(stats.lognorm(s=spread, scale=minutes.likely).mean())


def test_the_sampler_draws_the_closed_form() -> None:
    minutes, chance = Minutes(20, 45, 150), random.Random(4)
    drawn = sorted(at(minutes, chance.gauss(0, 1)) for _ in range(40_000))
    for share in (0.1, 0.25, 0.5, 0.75, 0.9):
        assert done_within(minutes, drawn[int(share * len(drawn))]) == pytest.approx(share, abs=0.01)
    assert sum(drawn) / len(drawn) == pytest.approx(mean(minutes), rel=0.02)


def test_a_point_guess_is_a_point() -> None:
    sure = Minutes(60, 60, 60)
    assert (done_within(sure, 59.9), done_within(sure, 60), mean(sure), quantile(sure, 0.99)) == (
        0,
        1,
        60,
        60,
    )


def test_five_minutes_on_a_joint_not_apart_for_decades_takes_two_hours_once_in_a_hundred() -> None:
    from witnessmark.jobs.findings import LEAST_NEVER_APART

    assert 1 - mixed_within(Minutes(3, 5, 10), LEAST_NEVER_APART, 120) >= 0.01
    assert 1 - done_within(Minutes(3, 5, 10), 120) < 1e-6


def test_a_band_with_findings_is_what_drawing_gives() -> None:
    asked, chance = operation(Minutes(5, 10, 30), 0.25), random.Random(9)
    drawn = []
    for _ in range(40_000):
        taken = at(asked.minutes, chance.gauss(0, 1))
        drawn.append(taken + (at(FINDING, chance.gauss(0, 1)) if chance.random() < 0.25 else 0))
    drawn.sort()
    for share, figure in zip((0.1, 0.5, 0.9), band(asked), strict=True):
        assert figure == pytest.approx(drawn[int(share * len(drawn))], rel=0.04)


def test_without_findings_the_band_is_the_three_guesses() -> None:
    assert band(operation(Minutes(5, 10, 30))) == (5, 10, 30)


def test_planned_minutes_are_more_than_likely_ones_and_findings_add() -> None:
    plain, risky = operation(Minutes(5, 10, 30)), operation(Minutes(5, 10, 30), 0.1)
    assert 10 < planned(plain) < planned(risky, most=120) < planned(risky)


def test_the_owners_factor_counts_on_typed_guesses_only() -> None:
    assert planned(operation(Minutes(5, 10, 30)), 2.0) == planned(operation(Minutes(5, 10, 30)))
    assert planned(operation(Minutes(5, 10, 30, owner=True)), 2.0) == 2 * planned(
        operation(Minutes(5, 10, 30))
    )


def test_two_halves_share_the_middle() -> None:
    minutes = Minutes(10, 20, 80)
    below, above = spreads(minutes)
    assert (below, above) == pytest.approx((log(2) / Z90, log(4) / Z90))
    assert done_within(minutes, 20 - 1e-9) == pytest.approx(done_within(minutes, 20 + 1e-9)) == 0.5
    assert sqrt(minutes.low * minutes.high) > minutes.likely
