"""Bends: K comes back from a trial strip, and the flat is as long as the neutral line."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import sheet
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Mm, Ratio


@given(st.floats(0.5, 3), st.floats(0.3, 8), st.floats(20, 150), st.floats(0.3, 0.5))
def test_k_comes_back_from_a_trial_strip(t: float, r: float, angle: float, k: float) -> None:
    taken = sheet.bend_deduction(Mm(t), Mm(r), Degree(angle), Ratio(k))
    assert sheet.k_from_deduction(Mm(t), Mm(r), Degree(angle), taken) == pytest.approx(k, abs=1e-9)


@given(st.floats(0.5, 3), st.floats(0.5, 8), st.floats(10, 140), st.floats(40, 90), st.floats(40, 90))
def test_the_flat_is_the_length_of_the_neutral_line(
    t: float, r: float, angle: float, a: float, b: float
) -> None:
    """A second route: walk along the line a part K of the thickness from the inside, in small chords."""
    k, turn = 0.42, math.radians(angle)
    back = (r + t) * math.tan(turn / 2)
    if back > 38:
        return
    n, walked = 20_000, a - back + b - back
    walked += n * 2 * (r + k * t) * math.sin(turn / n / 2)
    deduction = sheet.bend_deduction(Mm(t), Mm(r), Degree(angle), Ratio(k))
    assert sheet.flat_length([Mm(a), Mm(b)], deduction) == pytest.approx(walked, abs=1e-6)


def test_no_bend_takes_nothing() -> None:
    assert sheet.bend_deduction(Mm(1), Mm(1), Degree(0), Ratio(0.4)) == Mm(0)


@pytest.mark.parametrize("legs", [[50.0], [0.1, 50.0], [1.0, 1.0]])
def test_legs_that_cannot_be_are_refused(legs: list[float]) -> None:
    with pytest.raises(BadInput):
        sheet.flat_length([Mm(leg) for leg in legs], Mm(3))
