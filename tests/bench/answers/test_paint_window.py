"""May I paint tonight."""

import pytest

from tests.bench.answers.asking import asked, asked_from
from witnessmark.bench import air
from witnessmark.bench.slip import Slip
from witnessmark.ground.units import Celsius, Percent


def window(warm: str, humid: str, steel: str, **more: str) -> Slip:
    return asked("paint", "window", air=warm, humidity=humid, steel=steel, **more)


def night(warm: str, humid: str, steel: str, text: str) -> Slip:
    """The same with a forecast or a log."""
    files = {"hours.csv": text}
    return asked_from(files, "paint", "window", air=warm, humidity=humid, steel=steel, forecast="@hours.csv")


def test_the_steel_counts_and_not_the_air() -> None:
    assert window("20 C", "60 %", "20 C").verdict == "fits"
    assert window("20 C", "60 %", "13 C").verdict == "no"


@pytest.mark.parametrize(
    ("over", "verdict"),
    [(-0.6, "no"), (-0.4, "marginal"), (0.0, "marginal"), (0.4, "marginal"), (0.6, "fits")],
)
def test_near_a_limit_is_marginal(over: float, verdict: str) -> None:
    dew = air.dew_point(Celsius(20), Percent(60))
    assert window("20 C", "60 %", f"{dew + 3 + over:.4f} C").verdict == verdict


@pytest.mark.parametrize(("humid", "verdict"), [("81 %", "fits"), ("84 %", "marginal"), ("89 %", "no")])
def test_humidity_has_its_own_limit(humid: str, verdict: str) -> None:
    assert window("20 C", humid, "30 C").verdict == verdict


def test_the_product_sheet_comes_first() -> None:
    assert window("6 C", "60 %", "6 C").verdict == "no"
    assert window("6 C", "60 %", "6 C", sheet_minimum="5 C").verdict == "fits"
    assert window("20 C", "82 %", "30 C", sheet_humidity="70 %").verdict == "no"
    assert window("20 C", "60 %", "16 C", sheet_margin="5 C").verdict == "no"
    every = window("20 C", "60 %", "20 C", sheet_minimum="5 C", sheet_humidity="80 %", sheet_margin="3 C")
    assert not any("not said" in line for line in every.working)


def test_what_would_make_it_yes_does() -> None:
    before = window("9 C", "95 %", "8 C", sheet_minimum="5 C")
    assert before.verdict == "no"
    said = str(before.results["to_make_it_yes"])
    warm_steel = float(said.split("warm the steel to ")[1].split(" ")[0])
    warm_air = float(said.split("warm the air to ")[1].split(" ")[0])
    dew = air.dew_point(Celsius(9), Percent(95))
    humid = air.humidity_for(Celsius(warm_air), dew)
    after = window(f"{warm_air} C", f"{humid} %", f"{warm_steel + 0.05} C", sheet_minimum="5 C")
    assert after.verdict in ("fits", "marginal")
    assert after.band("dew_point").value == pytest.approx(dew, abs=0.01)
    assert (
        window("20 C", "50 %", "20 C").results["to_make_it_yes"]
        == "nothing: paint, and watch the steel until it is dry"
    )


def test_cold_steel_alone_is_told_alone() -> None:
    said = str(window("12 C", "40 %", "7 C").results["to_make_it_yes"])
    assert said.startswith("warm the steel to 10.5")
    assert "air" not in said


NIGHT = """time,air,humidity
18:00,16,55
19:00,14,60
20:00,11,75
21:00,9,90
22:00,8,97
23:00,9,85
06:00,15,55
"""


def test_a_forecast_gives_the_hours_that_would_do() -> None:
    slip = night("16 C", "55 %", "15 C", NIGHT)
    verdicts = [row["verdict"] for row in slip.rows("hours")]
    assert verdicts[0] == verdicts[1] == verdicts[-1] == "fits"
    assert verdicts[4] == "no"
    assert "Hours that would do: 18:00 to 19:00, 06:00" in slip.because
    assert "dew on the steel from 22:00" in slip.because
    assert "1.0 °C below the air" in " ".join(slip.working)
    assert "steel-follows" in slip.sources
    assert slip.picture is not None
    assert "dew point" in slip.picture


def test_a_logged_steel_is_taken_as_it_is() -> None:
    text = "time,air,humidity,steel\n18:00,16,55,20\n19:00,14,60,12\n"
    slip = night("16 C", "55 %", "10 C", text)
    assert [row["steel"] for row in slip.rows("hours")] == [20, 12]
    assert "steel-follows" not in slip.sources


def test_a_night_without_an_hour_says_so() -> None:
    text = "time,air,humidity\n18:00,3,95\n19:00,2,97\n"
    slip = night("4 C", "92 %", "3 C", text)
    assert "No hour of the forecast would do" in slip.because


def test_one_hour_is_drawn_as_one_moment() -> None:
    slip = night("16 C", "55 %", "15 C", "time,air,humidity\n18:00,16,55\n")
    assert "steel against dew" in str(slip.picture)
