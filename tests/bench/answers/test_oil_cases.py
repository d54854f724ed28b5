"""A case to fill, and the metals in it."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.bench.slip import Slip
from witnessmark.ground.errors import BadInput


def filled(fill: str, breather: str = "", hot: str = "90 C") -> Slip:
    more = {"breather": breather} if breather else {}
    return asked(
        "oils", "fill", case_volume="1 L", fill=fill, temperature_cold="20 C", temperature_hot=hot, **more
    )


@pytest.mark.parametrize(
    ("fill", "breather", "verdict"),
    [
        ("80 %", "open", "fits"),
        ("0.8 L", "open", "fits"),
        ("93 %", "open", "marginal"),
        ("97 %", "open", "no"),
        ("80 %", "blocked", "no"),
        ("30 %", "blocked", "marginal"),
        ("80 %", "", "marginal"),
        ("97 %", "", "no"),
    ],
)
def test_verdicts(fill: str, breather: str, verdict: str) -> None:
    assert filled(fill, breather).verdict == verdict


def test_a_mild_warming_of_a_shut_case_is_borne() -> None:
    assert filled("30 %", "blocked", hot="50 C").verdict == "fits"
    assert filled("60 %", hot="45 C").verdict == "fits"


def test_over_filling_does_no_harm_only_while_it_breathes_and_has_room() -> None:
    """common practice, no source: over-filling is shrugged off; here is when that holds and when not."""
    assert "a little too much does no harm" in filled("85 %", "open").because
    assert "comes out of the breather" in filled("98 %", "open").because
    assert "goes out past a seal" in filled("85 %", "blocked").because


def test_what_comes_out_is_what_does_not_go_in() -> None:
    slip = filled("98 %", "open")
    assert slip.band("comes_out").value == pytest.approx(slip.band("oil_hot").value - 1.0021, abs=1e-6)
    assert slip.band("air_space").value == pytest.approx(-slip.band("comes_out").value)


def test_pressure_is_absolute_and_iron_is_the_worse_case() -> None:
    blocked = filled("95 %", "blocked").band("pressure_hot")
    assert blocked.high == blocked.value > 1.0
    assert blocked.low is not None
    assert blocked.low < blocked.value
    assert filled("95 %", "open").band("pressure_hot").value == pytest.approx(0.1013)
    assert "far more than any seal bears" in filled("99 %", "blocked").because
    unsaid = filled("80 %").band("pressure_hot")
    assert (unsaid.low, unsaid.high) == (0.1013, unsaid.value)


@pytest.mark.parametrize(
    ("fill", "cold", "hot", "case"),
    [("1.2 L", "20 C", "90 C", "1 L"), ("0 %", "20 C", "90 C", "1 L"), ("80 %", "90 C", "20 C", "1 L"),
     ("80 %", "20 C", "300 C", "1 L"), ("80 %", "20 C", "90 C", "2000 L")],
)  # fmt: skip
def test_a_fill_that_cannot_be_is_refused(fill: str, cold: str, hot: str, case: str) -> None:
    with pytest.raises(BadInput):
        asked("oils", "fill", case_volume=case, fill=fill, temperature_cold=cold, temperature_hot=hot)


def test_a_steering_housing_with_brass_races_wants_gl_4_not_gl_5() -> None:
    """common practice, no source."""
    assert asked("oils", "suits", api_class="GL-4", metals="steel, brass").verdict == "fits"
    five = asked("oils", "suits", api_class="GL-5", metals="steel, brass")
    assert five.verdict == "no"
    assert "disputed" in five.because
    assert "yellow-metal-disputed" in five.sources
    assert {row["standing"] for row in five.rows()} == {"handbook", "common practice"}


@pytest.mark.parametrize(
    ("api_class", "metals", "verdict"),
    [
        ("GL-5", "steel", "fits"),
        ("gl5", "iron", "fits"),
        ("GL-1", "steel", "marginal"),
        ("GL-1", "bronze", "fits"),
        ("GL-4/GL-5", "brass", "marginal"),
        ("GL-4/GL-5", "steel", "fits"),
        ("GL-5", "copper", "no"),
    ],
)
def test_classes_and_metals(api_class: str, metals: str, verdict: str) -> None:
    assert asked("oils", "suits", api_class=api_class, metals=metals).verdict == verdict


@pytest.mark.parametrize("typed", [("GL-9", "steel"), ("hypoid", "steel"), ("GL-4", "cheese")])
def test_unknown_classes_and_metals_are_told_with_the_known_ones(typed: tuple[str, str]) -> None:
    with pytest.raises(BadInput) as trouble:
        asked("oils", "suits", api_class=typed[0], metals=typed[1])
    assert trouble.value.near
