"""How much paint, and how long it takes."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput


def test_without_a_loss_it_is_a_band_from_none_to_half() -> None:
    slip = asked("paint", "quantity", area="4 m2", dry_film="60 micron", volume_solids="45 %")
    band = slip.band("volume")
    assert band.value == band.low == pytest.approx(4 / 7.5)
    assert band.high == pytest.approx(2 * 4 / 7.5)
    assert "paint-losses" in slip.sources


def test_with_loss_and_thinner_it_is_a_point() -> None:
    slip = asked(
        "paint", "quantity", area="4 m2", dry_film="60 µm", volume_solids="45 %", thinner="10 %", loss="40 %"
    )
    assert slip.band("volume").value == pytest.approx(4 / 7.5 / 0.6)
    assert slip.band("volume").low is None
    assert slip.band("thinner").value == pytest.approx(4 / 7.5 / 0.6 * 0.1)
    assert slip.band("wet_film").value == pytest.approx(60 * 110 / 45)


def test_between_below_and_above_the_sheet() -> None:
    sheet = "24 h @ 20 C, 48 h @ 10 C"
    inside = asked("paint", "cure", sheet=sheet, temperature="15 C")
    cold = asked("paint", "cure", sheet=sheet, temperature="5 C")
    warm = asked("paint", "cure", sheet=sheet, temperature="30 C")
    assert (inside.verdict, cold.verdict, warm.verdict) == ("fits", "no", "marginal")
    assert 1440 < inside.band("time").value < 2880 < cold.band("time").value
    assert "may never cure" in cold.because
    assert "beyond the sheet" in warm.because


def test_one_point_is_a_rule_of_thumb_with_its_spread() -> None:
    slip = asked("paint", "cure", sheet="24 h @ 20 C", temperature="10 C")
    band = slip.band("time")
    assert band.low == pytest.approx(2160)
    assert band.value == pytest.approx(2880)
    assert band.high == pytest.approx(4320)
    assert slip.verdict == "marginal"
    assert "may never cure" in slip.because
    warmer = asked("paint", "cure", sheet="24 h @ 20 C", temperature="25 C")
    assert "may never cure" not in warmer.because
    assert warmer.band("time").low == pytest.approx(1440 / 3**0.5)


def test_a_sheet_that_cures_slower_when_warm_is_refused() -> None:
    with pytest.raises(BadInput, match="shorter time at the warmer"):
        asked("paint", "cure", sheet="24 h @ 10 C, 48 h @ 20 C", temperature="15 C")
