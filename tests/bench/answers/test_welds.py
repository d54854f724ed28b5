"""Settings, heat and plugs asked as a person asks."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.bench.answers.welds import bands_at
from witnessmark.ground.errors import BadInput


def test_settings_are_bands_between_the_printed_rows() -> None:
    slip = asked("welds", "settings", thickness="1.0 mm", wire="0.8 mm", joint="butt")
    for name in ("current", "wire_feed", "voltage", "gas_flow"):
        band = slip.band(name)
        assert band.low is not None
        assert band.high is not None
        assert band.low <= band.value <= band.high
    assert (slip.band("current").low, slip.band("current").high) == (45, 55)
    assert slip.verdict == "fits"


def test_at_a_printed_thickness_the_printed_row_comes_back() -> None:
    found = bands_at(1.6, "fillet")
    assert found["current"] == (100, 110)
    assert found["voltage"] == (18, 19.5)
    assert found["travel"] == pytest.approx((50 / 6, 60 / 6))


def test_both_joints_make_the_band_wider() -> None:
    one = bands_at(1.6, "butt")["voltage"]
    both = bands_at(1.6, None)["voltage"]
    assert both[0] == one[0]
    assert both[1] > one[1]


@pytest.mark.parametrize(
    ("thickness", "wire", "verdict"),
    [
        ("0.8 mm", "1.2 mm", "no"),
        ("4 mm", "0.6 mm", "no"),
        ("0.8 mm", "0.8 mm", "marginal"),
        ("1.6 mm", "1.0 mm", "fits"),
    ],
)
def test_the_wire_must_suit_the_sheet(thickness: str, wire: str, verdict: str) -> None:
    assert asked("welds", "settings", thickness=thickness, wire=wire, joint="butt").verdict == verdict


def test_a_wire_between_two_burns_by_its_area() -> None:
    slip = asked("welds", "settings", thickness="1.6 mm", wire="1.0 mm", joint="butt")
    burn = slip.band("wire_feed").value * 60 / slip.band("current").value
    assert 25.4 < burn < 40.6


def test_plain_carbon_dioxide_is_doubted() -> None:
    plain = asked("welds", "settings", thickness="1.6 mm", wire="0.8 mm", gas="CO2")
    mixed = asked("welds", "settings", thickness="1.6 mm", wire="0.8 mm", gas="argon 20 % CO2")
    assert (plain.verdict, mixed.verdict) == ("marginal", "fits")


@pytest.mark.parametrize(
    "typed", [{"thickness": "12 mm"}, {"thickness": "0.2 mm"}, {"wire": "3 mm"}, {"joint": "lap"}]
)
def test_settings_beyond_the_charts_are_refused(typed: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        asked("welds", "settings", **{"thickness": "1 mm", "wire": "0.8 mm", **typed})


def test_heat_by_process_and_by_efficiency() -> None:
    known = {"voltage": "24 V", "current": "180 A", "speed": "300 mm/min"}
    by_name = asked("welds", "heat", process="MIG", **known)
    by_share = asked("welds", "heat", efficiency="0.8", **known)
    assert by_name.results == by_share.results
    assert by_name.band("arc_energy").value == pytest.approx(by_name.band("heat_input").value / 0.8)
    assert (
        asked("welds", "heat", process="tig", **known).band("heat_input").value
        < by_name.band("heat_input").value
    )


@pytest.mark.parametrize(
    "typed", [{}, {"process": "mag", "efficiency": "0.8"}, {"process": "glue"}, {"efficiency": "8"}]
)
def test_a_heat_that_cannot_be_is_refused(typed: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        asked("welds", "heat", voltage="24 V", current="180 A", speed="5 mm/s", **typed)


def test_a_small_bracket_takes_twelve_plugs() -> None:
    """common practice, no source: as many plugs as there were spots, one for one."""
    slip = asked("welds", "plugs", length="450 mm", thickness="1.0 mm", spots_counted="12")
    assert slip.band("count").value == 12
    assert slip.verdict == "fits"
    assert "one for one, as built" in slip.because
    assert len(slip.rows("places")) == 12
    assert sorted(str(slip.results["order"]).split(", "), key=int) == [str(i) for i in range(1, 13)]


def test_plugs_have_no_capacity() -> None:
    slip = asked(
        "welds",
        "plugs",
        length="450 mm",
        thickness="1 mm",
        spots_counted="12",
        load="2 kN",
        strength="410 MPa",
    )
    assert "capacity" not in slip.results
    assert "no capacity is given" in slip.because


@pytest.mark.parametrize(
    ("length", "count", "verdict"),
    [("300 mm", "30", "no"), ("300 mm", "11", "marginal"), ("300 mm", "8", "fits"), ("40 mm", "1", "fits")],
)
def test_plugs_too_close_run_together(length: str, count: str, verdict: str) -> None:
    assert asked("welds", "plugs", length=length, thickness="1 mm", spots_counted=count).verdict == verdict


def test_uncounted_spots_are_asked_for() -> None:
    slip = asked("welds", "plugs", length="300 mm", thickness="1 mm")
    assert slip.verdict == "marginal"
    assert "count the old spots first" in slip.because
    assert slip.band("pitch").value >= 32


def test_plate_has_the_holes_of_the_plate_rule() -> None:
    slip = asked("welds", "plugs", length="300 mm", thickness="3 mm", spots_counted="4", edge="30 mm")
    assert slip.band("diameter").value == pytest.approx(10.9)
    assert slip.band("edge").value == 30
    assert "plug-hole-sheet" not in slip.sources


@pytest.mark.parametrize(
    "typed", [{"edge": "1 mm"}, {"edge": "400 mm"}, {"thickness": "9 mm"}, {"spots_counted": "0"}]
)
def test_a_row_that_cannot_be_is_refused(typed: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        asked("welds", "plugs", **{"length": "300 mm", "thickness": "1 mm", **typed})
