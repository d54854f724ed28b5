"""Coolant asked as a person asks."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput


def test_by_mass_if_nothing_is_said_and_it_says_so() -> None:
    slip = asked("coolant", "freeze", glycol="40 %", kind="ethylene")
    assert slip.band("temperature").value == pytest.approx(-23.84)
    assert "by mass (taken by mass, as nothing was said)" in slip.because
    assert slip.band("temperature").low is None


def test_by_volume_the_doubt_is_a_band() -> None:
    slip = asked("coolant", "freeze", glycol="50 %", kind="ethylene", by="volume")
    band = slip.band("temperature")
    assert band.high == pytest.approx(band.value + 3)
    assert "glycol-volume-table" in slip.sources
    assert (
        asked("coolant", "freeze", glycol="0 %", kind="ethylene", by="volume").band("temperature").high
        is None
    )


def test_propylene_by_either_measure() -> None:
    volume = asked("coolant", "freeze", glycol="40 %", kind="propylene", by="volume")
    mass = asked("coolant", "freeze", glycol="40 %", kind="propylene", by="mass")
    assert volume.band("temperature").value == pytest.approx(-20.6)
    assert mass.band("temperature").value == pytest.approx(-19.7, abs=0.1)
    assert "from-memory" in mass.sources
    assert "from-memory" not in volume.sources


@pytest.mark.parametrize(
    ("glycol", "kind", "by"),
    [("70 %", "ethylene", "mass"), ("120 %", "ethylene", "mass"), ("55 %", "propylene", "volume")],
)
def test_more_glycol_than_printed_is_refused(glycol: str, kind: str, by: str) -> None:
    with pytest.raises(BadInput):
        asked("coolant", "freeze", glycol=glycol, kind=kind, by=by)
