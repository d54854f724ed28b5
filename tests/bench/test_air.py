"""Air and its water: there and back, fast over arrays, near two libraries and a year of weather."""

import csv
import time
from importlib.util import find_spec
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import air
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Celsius, HectoPascal, Percent


@given(st.floats(0, 50), st.floats(5, 99.9))
def test_dew_point_and_humidity_turn_back(warm: float, humid: float) -> None:
    dew = Celsius(min(warm, air.dew_point(Celsius(warm), Percent(humid))))
    assert air.humidity_for(Celsius(warm), dew) == pytest.approx(min(humid, 100), rel=1e-9)
    assert air.air_for(dew, Percent(humid)) == pytest.approx(warm, abs=1e-9)


@given(st.floats(0, 40), st.floats(10, 90), st.floats(1, 10))
def test_damper_air_has_the_higher_dew_point(warm: float, humid: float, more: float) -> None:
    assert air.dew_point(Celsius(warm), Percent(humid + more)) > air.dew_point(Celsius(warm), Percent(humid))


def test_a_wet_bulb_as_warm_as_the_dry_one_means_full_air() -> None:
    assert air.dew_point_wet_bulb(Celsius(18), Celsius(18), HectoPascal(1013)) == pytest.approx(18)


@pytest.mark.parametrize(("dry", "wet", "pressure"), [(20, 21, 1013), (20, 15, 400), (61, 20, 1013)])
def test_a_wet_bulb_that_cannot_be_is_refused(dry: float, wet: float, pressure: float) -> None:
    with pytest.raises(BadInput):
        air.dew_point_wet_bulb(Celsius(dry), Celsius(wet), HectoPascal(pressure))


def test_one_wrong_hour_in_an_array_is_refused() -> None:
    with pytest.raises(BadInput, match="humidity is 101"):
        air.dew_point(np.array([10.0, 12.0]), np.array([50.0, 101.0]))  # type: ignore[arg-type]


def test_a_million_dew_points_at_once() -> None:
    warm, humid = np.linspace(-10, 40, 1_000_000), np.linspace(20, 99, 1_000_000)
    took = []
    for _ in range(3):
        start = time.process_time()
        dews = air.dew_point(warm, humid)  # type: ignore[arg-type]
        took.append(time.process_time() - start)
    assert np.asarray(dews)[123_456] == pytest.approx(air.dew_point(warm[123_456], humid[123_456]), abs=1e-9)
    assert min(took) < 0.1


def test_a_psychrometrics_library_agrees_above_freezing() -> None:
    library = pytest.importorskip("psychrolib")
    library.SetUnitSystem(library.SI)
    for warm in range(5, 41, 5):
        for humid in range(30, 101, 10):
            ours = air.dew_point(Celsius(warm), Percent(humid))
            if ours >= 0:
                theirs = library.GetTDewPointFromRelHum(warm, humid / 100)
                assert ours == pytest.approx(theirs, abs=0.04), (warm, humid)


def test_below_freezing_ours_is_dew_and_theirs_is_frost() -> None:
    library = pytest.importorskip("psychrolib")
    library.SetUnitSystem(library.SI)
    assert library.GetTDewPointFromRelHum(5, 0.3) == pytest.approx(-9.92, abs=0.01)
    assert air.dew_point(Celsius(5), Percent(30)) == pytest.approx(-11.17, abs=0.01)


def test_a_properties_library_agrees_above_freezing() -> None:
    library = pytest.importorskip("CoolProp.HumidAirProp")
    for warm, humid in ((20, 30), (20, 60), (30, 90), (40, 50)):
        theirs = library.HAPropsSI("D", "T", warm + 273.15, "P", 101325, "R", humid / 100) - 273.15
        assert air.dew_point(Celsius(warm), Percent(humid)) == pytest.approx(theirs, abs=0.04)


STATIONS = {"723170TYA.CSV": (6276, 0.36, 0.09), "703165TY.csv": (3637, 0.18, 0.06)}


def weather(name: str) -> tuple[list[int], np.ndarray, np.ndarray, np.ndarray]:
    """Month, air, humidity and dew point of each hour of a typical year, from the library that ships it."""
    found = find_spec("pvlib")
    if found is None or found.origin is None:
        pytest.skip("pvlib, which ships the weather file, is not installed")
    file = Path(found.origin).parent / "data" / name
    with file.open(encoding="latin-1", newline="") as lines:
        next(lines)
        rows = list(csv.DictReader(lines))
    months = [int(row["Date (MM/DD/YYYY)"][:2]) for row in rows]
    warm, humid, dew = (
        np.array([float(row[c]) for row in rows]) for c in ("Dry-bulb (C)", "RHum (%)", "Dew-point (C)")
    )
    return months, warm, humid, dew


@pytest.mark.parametrize("name", STATIONS)
def test_a_year_of_weather_agrees_where_one_paints(name: str) -> None:
    """Hours within eight of a change of month are left out: there the file joins different years."""
    months, warm, humid, dew = weather(name)
    hours, most, typical = STATIONS[name]
    joins = [0, *(i + 1 for i, (a, b) in enumerate(pairwise(months)) if a != b), len(months)]
    away = np.min(np.abs(np.arange(len(months))[:, None] - np.array(joins)[None, :] + 0.5), axis=1) >= 8
    keep = (warm >= 5) & (dew >= 0) & away
    apart = np.asarray(air.dew_point(warm[keep], humid[keep])) - dew[keep]
    assert int(keep.sum()) == hours
    assert float(np.abs(apart).max()) < most
    assert float(np.sqrt((apart**2).mean())) < typical


@pytest.mark.parametrize("name", STATIONS)
def test_what_is_off_in_that_year_lies_at_the_joins(name: str) -> None:
    months, warm, humid, dew = weather(name)
    joins = [0, *(i + 1 for i, (a, b) in enumerate(pairwise(months)) if a != b), len(months)]
    near = np.min(np.abs(np.arange(len(months))[:, None] - np.array(joins)[None, :] + 0.5), axis=1) < 8
    wide = (warm >= 5) & (dew >= 0)
    off = wide & (np.abs(np.asarray(air.dew_point(warm, humid)) - dew) > 0.6)  # type: ignore[arg-type]
    assert off.sum() > 10
    assert not (off & ~near).any()


def test_a_wet_bulb_far_below_the_dry_one() -> None:
    """By hand, as the WMO guide sums it: 23.326 hPa less 0.000653 · 1.01888 · 1000 · 20."""
    dew = air.dew_point_wet_bulb(Celsius(40), Celsius(20), HectoPascal(1000))
    assert dew == pytest.approx(7.017, abs=0.002)
