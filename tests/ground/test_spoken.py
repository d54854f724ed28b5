"""Numbers said in words."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.ground.spoken import WORDS, read_said


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("twenty-five", 25),
        ("a hundred and ten", 110),
        ("two hundred and forty five", 245),
        ("half a dozen", 6),
        ("a couple of", 2),
        ("two and a quarter", 2.25),
        ("2 and three quarters", 2.75),
        ("seven sixteenths", float(Fraction(7, 16))),
        ("five thirty-seconds", float(Fraction(5, 32))),
        ("a third", float(Fraction(1, 3))),
    ],
)
def test_a_number_said_is_worth_its_figures(said: str, value: float) -> None:
    assert read_said(said) == pytest.approx(value)


@given(st.sampled_from(sorted(WORDS)))
def test_every_single_word_of_number_reads_alone(word: str) -> None:
    assert read_said(word) in (WORDS[word], None)


@given(st.text())
def test_other_text_is_none(text: str) -> None:
    assert read_said(text) is None or any(c.isalpha() for c in text)
