"""Sheet metal and steel asked as a person asks."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput


@pytest.mark.parametrize(
    ("system", "thickness"), [("swg", 1.219), ("bwg", 1.245), ("bg", 1.26), ("us", 1.214)]
)
def test_one_number_is_four_thicknesses(system: str, thickness: float) -> None:
    slip = asked("sheet", "gauge", gauge="18", system=system)
    assert slip.band("thickness").value == pytest.approx(thickness)
    assert "the same number is" in slip.because


def test_a_gauge_that_is_not_there_offers_its_neighbours() -> None:
    with pytest.raises(BadInput) as trouble:
        asked("sheet", "gauge", gauge="13", system="us")
    assert trouble.value.near == ("12", "14")


def test_wire_gauges_agree_with_an_engineering_library() -> None:
    piping = pytest.importorskip("fluids.piping")
    for gauge in range(10, 27):
        for system, theirs in (("swg", "BSWG"), ("bwg", "BWG")):
            ours = asked("sheet", "gauge", gauge=str(gauge), system=system).band("thickness").value
            assert ours == pytest.approx(1000 * piping.t_from_gauge(gauge, True, theirs), abs=6e-4)


def test_a_bend_without_k_is_a_band_and_asks_for_a_trial() -> None:
    slip = asked("sheet", "bend", thickness="1.2 mm", radius="1.5 mm", angle="90 deg", legs="25x40 mm")
    flat, taken = slip.band("flat_length"), slip.band("deduction")
    assert flat.low is not None
    assert flat.high is not None
    assert flat.low < flat.value < flat.high
    assert taken.low is not None
    assert taken.high is not None
    assert taken.low < taken.value < taken.high
    assert "trial strip" in slip.because
    assert slip.band("minimum_radius").value == 1.2


def test_k_or_a_grade_makes_it_a_point() -> None:
    by_k = asked("sheet", "bend", thickness="1 mm", radius="2 mm", angle="90 deg", legs="20x30 mm", k="0.43")
    by_grade = asked(
        "sheet", "bend", thickness="1 mm", radius="2 mm", angle="90 deg", legs="20x30 mm", grade="medium"
    )
    assert by_k.band("flat_length") == by_grade.band("flat_length")
    assert by_k.band("flat_length").low is None
    assert "bend-k" not in by_k.sources


def test_a_tight_bend_is_told() -> None:
    slip = asked("sheet", "bend", thickness="2 mm", radius="1 mm", angle="90 deg", legs="20x30 mm")
    assert slip.verdict == "marginal"
    assert "crack" in slip.because


def test_a_wide_bend_takes_the_last_row_and_three_legs_two_bends() -> None:
    slip = asked("sheet", "bend", thickness="1 mm", radius="8 mm", angle="90 deg", legs="20x50x20 mm")
    assert "k 0.5" in slip.working[0]
    one = slip.band("deduction").value
    assert slip.band("flat_length").value == pytest.approx(90 - 2 * one)


@pytest.mark.parametrize(
    "typed",
    [
        {"legs": "76 mm"},
        {"legs": "76x115"},
        {"legs": "0.1x115 mm"},
        {"k": "0.9"},
        {"grade": "springy"},
        {"angle": "175 deg"},
        {"thickness": "0 mm"},
    ],
)
def test_a_bend_that_cannot_be_is_refused(typed: dict[str, str]) -> None:
    whole = {"thickness": "1 mm", "radius": "2 mm", "angle": "90 deg", "legs": "20x30 mm", **typed}
    with pytest.raises(BadInput):
        asked("sheet", "bend", **whole)


def test_an_equivalent_from_parts_and_from_a_grade() -> None:
    parts = asked("steel", "equivalent", composition="C 0.17, Mn 1.40")
    grade = asked("steel", "equivalent", composition="S235JR")
    assert parts.band("carbon_equivalent").value == pytest.approx(grade.band("carbon_equivalent").value)
    assert parts.band("carbon_equivalent").value == pytest.approx(0.4033, abs=1e-4)
    assert "one source" in parts.because
    assert "another source" in parts.because
    assert "en-10025-grades" in grade.sources


@pytest.mark.parametrize(
    ("typed", "said"), [("DC99", "DC01"), ("Mn 0.6", "without carbon"), ("C 9", "carbon is 9")]
)
def test_a_composition_that_cannot_be_is_refused(typed: str, said: str) -> None:
    with pytest.raises(BadInput, match=said):
        asked("steel", "equivalent", composition=typed)
