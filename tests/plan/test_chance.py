"""Sums by drawing: against closed forms where there are any, and held to their claims in invented worlds."""

import random
from math import exp, log, sqrt

import pytest
from msgspec.structs import replace

from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.plan.chance import chance_words, simulate
from witnessmark.plan.estimate import band, done_within
from witnessmark.plan.overrun import Overrun, learned


def operation(number: int, minutes: Minutes, finding: float = 0.0) -> Operation:
    return Operation(
        id=f"open/{number}",
        what="undo",
        sort="open",
        name=str(number),
        job="j",
        minutes=minutes,
        finding=finding,
    )


def test_one_operation_is_its_closed_form() -> None:
    minutes = Minutes(43, 120, 335)
    got = simulate([operation(1, minutes)], 180, Overrun(), random.Random(1), samples=20_000)
    assert got.chance == pytest.approx(done_within(minutes, 180), abs=0.01)
    assert got.minutes == pytest.approx((43, 120, 335), rel=0.04)


def test_one_operation_with_findings_is_its_band() -> None:
    asked = operation(1, Minutes(5, 10, 30), 0.3)
    got = simulate([asked], 60, Overrun(), random.Random(1), samples=20_000)
    assert got.minutes == pytest.approx(band(asked), rel=0.05)


def test_a_sum_of_even_ones_comes_near_the_normal_sum() -> None:
    """Forty narrow, even operations: means and variances add, so the band is known beforehand."""
    spread, count = 0.1, 40
    minutes = Minutes(10 * exp(-1.2816 * spread), 10, 10 * exp(1.2816 * spread))
    got = simulate([operation(n, minutes) for n in range(count)], 400, Overrun(), random.Random(1))
    middle = count * 10 * exp(spread**2 / 2)
    width = 10 * exp(spread**2 / 2) * sqrt((exp(spread**2) - 1) * count)
    assert got.minutes == pytest.approx((middle - 1.2816 * width, middle, middle + 1.2816 * width), rel=0.005)


def test_the_sum_of_the_likely_ones_is_short() -> None:
    operations = [operation(n, Minutes(10, 20, 80)) for n in range(6)]
    assert simulate(operations, 120, Overrun(), random.Random(1)).chance < 0.3


def test_what_comes_first_is_reached_more_surely() -> None:
    got = simulate([operation(n, Minutes(10, 20, 60)) for n in range(6)], 120, Overrun(), random.Random(1))
    assert list(got.reached) == sorted(got.reached, reverse=True)
    assert got.chance == got.reached[-1]


def test_nothing_to_do_is_done() -> None:
    assert simulate([], 120, Overrun(), random.Random(1)).chance == 1


def test_the_same_seed_gives_the_same_answer() -> None:
    operations = [operation(n, Minutes(10, 20, 60), 0.1) for n in range(4)]
    first, second = (simulate(operations, 90, Overrun(), random.Random(7)) for _ in range(2))
    assert first == second


def test_a_guess_shared_out_sums_to_the_guess() -> None:
    whole = Minutes(60, 120, 400, guess="renew/seal")
    parts = [
        operation(n, Minutes(60 * s, 120 * s, 400 * s, guess="renew/seal"))
        for n, s in enumerate((0.3, 0.3, 0.4))
    ]
    shared = simulate(parts, 180, Overrun(), random.Random(1))
    at_once = simulate([operation(1, whole)], 180, Overrun(), random.Random(1))
    assert shared.minutes == pytest.approx(at_once.minutes)


def test_catalogue_minutes_are_not_multiplied() -> None:
    slow = learned([log(4.0)] * 30)
    plain = [operation(1, Minutes(10, 20, 60))]
    typed = [replace(plain[0], minutes=Minutes(10, 20, 60, owner=True))]
    assert simulate(plain, 60, slow, random.Random(1)) == simulate(plain, 60, Overrun(), random.Random(1))
    middle = simulate(typed, 60, slow, random.Random(1)).minutes[1]
    assert middle == pytest.approx(20 * slow.factor, rel=0.03)


def covered(worlds: int, log_length: int, operations: int, *, once: bool) -> float:
    """How often the true sum lies under P90, over worlds drawn from the start of the posterior itself."""
    chance, hits = random.Random(11), 0
    for _ in range(worlds):
        mu, sigma = Overrun().drawn(chance)
        overrun = learned([chance.gauss(mu, sigma) for _ in range(log_length)])
        truth = sum(min(20.0, exp(chance.gauss(mu, sigma))) for _ in range(operations))
        guessed = [operation(n, Minutes(1, 1, 1, owner=True)) for n in range(operations)]
        if once:
            high = simulate(guessed, 1, overrun, chance, samples=200).minutes[2]
        else:
            high = sum(simulate([g], 1, overrun, chance, samples=200).minutes[1] for g in guessed)
        hits += truth <= high
    return hits / worlds


@pytest.mark.parametrize("log_length", [0, 5])
def test_nine_in_ten_sums_lie_under_their_p90(log_length: int) -> None:
    """300 worlds: two standard deviations of a nine in ten are 0.035; 200 samples a forecast add a little."""
    assert covered(300, log_length, 25, once=True) == pytest.approx(0.9, abs=0.05)


def test_adding_up_medians_covers_far_too_little() -> None:
    assert covered(60, 5, 25, once=False) < 0.6


def test_words_are_bands() -> None:
    assert chance_words(0.96) == "nearly certain"
    assert chance_words(0.94) == "about 9 in 10"
    assert chance_words(0.72) == "about 7 in 10"
    assert chance_words(0.06) == "about 1 in 10"
    assert chance_words(0.04) == "hardly"
