"""What the owner's own log teaches: the posterior, against a library and against brute numbers."""

import random
from math import exp, log, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from tests.building import state_of
from witnessmark.journal import facts as f
from witnessmark.plan.overrun import MOST, Overrun, factor_words, learned, owners_overrun
from witnessmark.plan.student import t_below, t_quantile

logs = st.lists(st.floats(-1, 2), max_size=12)


@given(st.integers(1, 60), st.floats(-30, 30))
def test_t_in_closed_form_is_the_librarys(freedom: int, value: float) -> None:
    assert t_below(value, freedom) == pytest.approx(stats.t.cdf(value, freedom), abs=1e-12)


@given(st.integers(1, 60), st.floats(0.01, 0.99))
def test_the_t_quantile_is_the_librarys(freedom: int, chance: float) -> None:
    assert t_quantile(chance, freedom) == pytest.approx(stats.t.ppf(chance, freedom), abs=1e-9)


@given(logs)
def test_one_by_one_teaches_what_all_at_once_teaches(seen: list[float]) -> None:
    one_by_one = Overrun()
    for y in seen:
        one_by_one = learned([y], one_by_one)
    at_once = learned(seen)
    assert (one_by_one.centre, one_by_one.weight, one_by_one.shape, one_by_one.scale) == pytest.approx(
        (at_once.centre, at_once.weight, at_once.shape, at_once.scale)
    )


@given(logs, st.floats(-1, 2))
def test_the_next_one_is_a_t_and_agrees_with_the_ratio_of_evidence(seen: list[float], value: float) -> None:
    """The predictive density is the evidence with the next value over the evidence without it."""
    got = learned(seen)
    scale = sqrt(got.scale * (got.weight + 1) / (got.shape * got.weight))
    predictive = stats.t.logpdf(value, 2 * got.shape, loc=got.centre, scale=scale)
    assert predictive == pytest.approx(_evidence([*seen, value]) - _evidence(seen))


def _evidence(seen: list[float]) -> float:
    """The log of the chance of the data under the start: its joint density is a multivariate t."""
    start = Overrun()
    if not seen:
        return 0.0
    size = len(seen)
    shape = [
        [start.scale / start.shape * ((row == column) + 1 / start.weight) for column in range(size)]
        for row in range(size)
    ]
    return float(
        stats.multivariate_t(loc=[start.centre] * size, shape=shape, df=2 * start.shape).logpdf(seen)
    )


def test_the_high_factor_is_the_ninetieth_of_the_predictive_t() -> None:
    got = learned([0.9, 1.1, 0.4])
    scale = sqrt(got.scale * (got.weight + 1) / (got.shape * got.weight))
    assert got.factor_high == pytest.approx(exp(stats.t.ppf(0.9, 2 * got.shape, loc=got.centre, scale=scale)))


def test_owners_are_drawn_from_the_posterior() -> None:
    got, chance = learned([0.5, 0.6, 0.2, 0.8]), random.Random(2)
    drawn = [got.drawn(chance) for _ in range(20_000)]
    means = stats.t(2 * got.shape, loc=got.centre, scale=sqrt(got.scale / (got.shape * got.weight)))
    variances = stats.invgamma(got.shape, scale=got.scale)
    assert stats.kstest([mu for mu, _ in drawn], means.cdf).pvalue > 0.01
    assert stats.kstest([sigma**2 for _, sigma in drawn], variances.cdf).pvalue > 0.01


def test_many_lines_speak_and_few_hardly_do() -> None:
    assert learned([log(2.0)] * 200).factor == pytest.approx(2.0, abs=0.03)
    assert Overrun().factor < learned([log(2.0)]).factor < 1.6


def test_no_factor_is_beyond_the_most() -> None:
    assert learned([9.0] * 50).factor == MOST


def test_a_guess_and_the_time_it_took_are_one_lesson() -> None:
    state = state_of(
        f.Guessed(at=("pinion seal",), job="renew", likely=60),
        f.TookTime(at=("pinion seal",), job="renew", minutes=120),
        days_apart=7,
    )
    got = owners_overrun(state)
    assert (got.finished, got.open) == (1, 0)
    assert got.centre == pytest.approx(learned([log(2)]).centre)


def test_a_spell_each_on_two_days_counts_as_one_time_taken() -> None:
    spells = [f.TookTime(at=("pinion seal",), minutes=m) for m in (50, 70)]
    state = state_of(f.Guessed(at=("pinion seal",), job="renew", likely=60), *spells, days_apart=7)
    assert owners_overrun(state).centre == pytest.approx(learned([log(2)]).centre)


def test_what_is_not_finished_is_left_out_and_said() -> None:
    state = state_of(
        f.Guessed(at=("hub nut",), likely=30),
        f.TookTime(at=("hub nut",), minutes=40),
        f.Guessed(at=("floor patch",), likely=300),
        f.TookTime(at=("drum",), minutes=40),
    )
    got = owners_overrun(state)
    assert (got.finished, got.open) == (1, 1)
    assert "1 not finished left out" in factor_words(got)


def test_a_time_written_before_the_guess_answers_nothing() -> None:
    state = state_of(f.TookTime(at=("hub nut",), minutes=40), f.Guessed(at=("hub nut",), likely=30))
    assert owners_overrun(state).finished == 0


def test_a_later_guess_stands_in_the_place_of_the_earlier() -> None:
    state = state_of(
        f.Guessed(at=("hub nut",), likely=30),
        f.Guessed(at=("hub nut",), likely=90),
        f.TookTime(at=("hub nut",), minutes=90),
    )
    got = owners_overrun(state)
    assert (got.finished, got.open) == (1, 0)
    assert got.centre == pytest.approx(learned([0.0]).centre)


def test_the_mean_factor_does_not_exist_so_none_is_told() -> None:
    """The integral of exp(y) over the predictive t grows without end as its edge moves out."""
    edges = [
        integrate.quad(lambda y: exp(y) * stats.t.pdf(y, 6, 0.25, 0.61), 0, edge)[0] for edge in (20, 40, 80)
    ]
    assert edges[0] < edges[1] / 100 < edges[2] / 10_000
    assert not hasattr(Overrun(), "mean_factor")
