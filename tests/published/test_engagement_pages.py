"""M10 8.8 in aluminium of 310 MPa: a page of worked sums whose text and formula do not agree."""

from __future__ import annotations

from math import pi

import pytest

from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.engagement import engagement

SOURCE = Cited(
    issuer="a page of engineering tools",
    title="Thread engagement length calculator, example and notes",
    where="M10 x 1.5, 830 MPa, into 310 MPa",
    standing="common practice",
)

PARENT = 0.58 * 310
"""Shear strength as the page takes it, MPa."""

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "bolts engagement",
        "M10 with 830 MPa into 310 MPa, times the diameter",
        "1.9",
        lambda: (
            engagement(thread="M10", grade="8.8", shear_strength=PARENT, tensile_strength=830)
            .band("length_over_diameter")
            .value
        ),
        "the page's own formula gives 1.70, with half of the cylinder taken to shear; ours takes the thread",
    ),
)


def test_the_pages_own_formula_does_not_give_its_figure() -> None:
    load = 0.7854 * (10 - 0.9382 * 1.5) ** 2 * 830
    assert load / (pi * 10 * PARENT * 0.5) / 10 == pytest.approx(1.70, abs=0.01)
