"""Worked examples of the viscosity line, a lubricant maker's page."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.bench.answers.oils import answer_index
from witnessmark.ground.units import Celsius, CentiStoke, Ratio

SOURCE = Cited(
    title="Viscosity-temperature extrapolation, ASTM D341",
    issuer="a lubricant maker",
    where="examples 1 and 2",
    standing="maker",
)


def line(v1: float, t1: float, v2: float, t2: float, wanted: float) -> float:
    """Our viscosity at a third temperature."""
    a, b = oils.viscosity_line(CentiStoke(v1), Celsius(t1), CentiStoke(v2), Celsius(t2))
    return oils.viscosity_at(Ratio(a), Ratio(b), Celsius(wanted))


PRINTED = (
    Printed(
        "oils viscosity",
        "404 at 40 °C and 28 at 100 °C give at 60 °C",
        "132.126",
        lambda: line(404, 40, 28, 100, 60),
    ),
    Printed(
        "oils viscosity",
        "68 at 40 °C and 14.85 at 80 °C give at 100 °C",
        "8.8",
        lambda: line(68, 40, 14.85, 80, 100),
    ),
    Printed(
        "oils index",
        "index of 68 at 40 °C and 8.8 at 100 °C",
        "102",
        lambda: answer_index(at40=68, at100=line(68, 40, 14.85, 80, 100)).band("index").value,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
