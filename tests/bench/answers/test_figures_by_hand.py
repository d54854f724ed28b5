"""Every figure of a few answers, worked by hand with plain numbers (no source: arithmetic).

Where a standard or a table gives a number that goes in, it stands beside the sum.
"""

from __future__ import annotations

import math

import pytest

from tests.bench.answers.asking import asked, asked_from
from tests.bench.picture.drawn import Drawn
from witnessmark.bench import leaks
from witnessmark.bench.leaks import Suspect
from witnessmark.bench.plausible import figure_plausible
from witnessmark.bench.slip import Slip
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantities import read_quantity


def values(slip: Slip, name: str) -> tuple[float, float | None, float | None]:
    """A result with its two ends."""
    band = slip.band(name)
    return band.value, band.low, band.high


def told(slip: Slip) -> str:
    """All of the working in one line."""
    return " ".join(slip.working)


def drawn_words(slip: Slip) -> list[str]:
    """What is written on its picture."""
    return Drawn(slip.picture).words


PROOF = 580 * math.pi / 4 * (8 - 0.938194 * 1.25) ** 2
"""N, of M8 8.8: 580 MPa on the stress area of ISO 898-1."""


def test_a_bolt_to_tighten_with_its_scatter() -> None:
    slip = asked("bolts", "tighten", thread="M8", grade="8.8", nut_factor="0.15")
    assert values(slip, "preload") == pytest.approx(
        (0.75 * PROOF, 0.75 * PROOF * 0.7, 0.75 * PROOF * 1.3), rel=1e-4
    )
    assert values(slip, "fraction_of_proof") == pytest.approx((0.75, 0.525, 0.975))
    assert slip.band("torque").value == pytest.approx(0.15 * 0.008 * 0.75 * PROOF, rel=1e-4)
    assert {"11.1", "15.9", "20.7", "proof 21.2"} <= set(drawn_words(slip))


@pytest.mark.parametrize(
    ("torque", "state"), [("18 N·m", "within"), ("22 N·m", "doubtful"), ("27 N·m", "over"), ("2 N·m", "low")]
)
def test_a_figure_checked_with_a_nut_factor_scatters_as_a_wrench_does(torque: str, state: str) -> None:
    slip = asked("bolts", "check", thread="M8", grade="8.8", torque=torque, nut_factor="0.15")
    middle = float(torque.split()[0]) / (0.15 * 0.008)
    assert values(slip, "preload") == pytest.approx((middle, middle * 0.7, middle * 1.3))
    assert values(slip, "fraction_of_proof") == pytest.approx(
        (middle / PROOF, middle * 0.7 / PROOF, middle * 1.3 / PROOF), rel=1e-4
    )
    assert slip.results["state"] == state


def test_a_written_figure_is_drawn_with_its_band_in_kilonewtons() -> None:
    slip = figure_plausible("M8", "8.8", read_quantity("18 Nm", "torque"))
    (row,) = slip.rows("grades")
    assert (row["dry"], row["oiled"]) == pytest.approx(
        (18 / (0.22 * 0.008) / PROOF, 18 / (0.12 * 0.008) / PROOF), abs=6e-4
    )
    assert {"10.2", "13.8", "18.8", "proof 21.2"} <= set(drawn_words(slip))


def test_how_deep_into_aluminium() -> None:
    slip = asked("bolts", "engagement", thread="M8", grade="8.8", material="aluminium")
    assert slip.band("length_over_diameter").value == pytest.approx(slip.band("length").value / 8)
    assert slip.band("customary").value == 2 * 8
    assert "117 MPa" in told(slip)


def test_a_driver_to_make_lies_between_its_limits() -> None:
    slip = asked("seals", "driver", bore="36.2 mm", shaft="31.8 mm")
    assert values(slip, "make_outside") == pytest.approx((35.95, 35.8, 36.1))
    assert "35.95 mm outside" in str(slip.results["make"])
    assert "3/10" not in told(slip)
    assert "three tenths" in told(slip)
    measured = asked("seals", "driver", bore="36.2 mm", shaft="31.8 mm", lip="0.5 mm")
    assert "three tenths" not in told(measured)
    assert measured.band("make_inside").value == pytest.approx(31.8 + 2 * 0.5)


def test_packs_in_order_and_what_would_be_wanted() -> None:
    tin = "0.05x4 0.10x4 mm"
    two = asked("shims", "stack", measured="0.62 mm", wanted_low="0.05 mm", wanted_high="0.15 mm", shims=tin)
    assert two.band("result").value == pytest.approx(0.62 - 0.50)
    assert len(two.rows("alternatives")) == 1
    opened = asked(
        "shims", "stack", measured="0.12 mm", wanted_low="0.05 mm", wanted_high="0.10 mm", shims=tin,
        fitted="0.30 mm", sense="open",
    )  # fmt: skip
    assert values(opened, "pack") == pytest.approx((0.25, 0.30 + 0.05 - 0.12, 0.30 + 0.10 - 0.12))
    assert opened.band("result").value == pytest.approx(0.12 - 0.30 + 0.25)
    none = asked("shims", "stack", measured="0.62 mm", wanted_low="0.03 mm", wanted_high="0.04 mm", shims=tin)
    assert not none.found
    assert values(none, "wanted_pack") == pytest.approx((0.585, 0.58, 0.59))


def test_where_to_look_for_a_drip() -> None:
    places = "rear seal 40 % 20 min 80 %; gasket 30 % 5 min 90 %; breather 15 % 0.5 min 95 %"
    slip = asked("leaks", "order", suspects=places)
    left = 0.15 * 0.05 + 0.30 * 0.10 + 0.40 * 0.20 + 0.15
    rows = [
        ("breather", 1, 15, 95, 15 * 0.95 / 0.5, 15 * 0.05 / left),
        ("gasket", 2, 30, 90, 30 * 0.90 / 5, 30 * 0.10 / left),
        ("rear seal", 3, 40, 80, 40 * 0.80 / 20, 40 * 0.20 / left),
    ]
    for row, (name, place, chance, finds, worth, dry) in zip(slip.rows("order"), rows, strict=True):
        assert (row["name"], row["place"]) == (name, place)
        assert [row[k] for k in ("chance", "finds", "worth", "if_all_dry")] == pytest.approx(
            [chance, finds, worth, dry]
        )
    assert slip.band("expected_minutes").value == pytest.approx(0.5 + 5 * 0.8575 + 20 * 0.5875)
    assert slip.because.startswith("look at breather first")
    seen = asked("leaks", "order", suspects=places, results="rear seal yes")
    assert [row["chance"] for row in seen.rows("chances")] == [100, 0, 0]


def test_minutes_after_a_dry_look_count_what_is_still_likely() -> None:
    once = Suspect(name="once", chance=0.5, minutes=4, finds=0.8, dry=1)
    sure = Suspect(name="sure", chance=0.5, minutes=2, finds=1.0)
    assert leaks.expected_minutes([sure, once], 0) == pytest.approx(2 + 4 * (1 - 0.5 / 0.6))


def test_a_look_that_may_miss_leaves_room_for_another() -> None:
    slip = asked("leaks", "order", suspects="a 60 % 5 min 100 %; b 40 % 2 min 90 %", results="a no, b no")
    assert next(row["name"] for row in slip.rows("order")) == "b"


def test_oil_and_air_in_a_case() -> None:
    slip = asked(
        "oils", "fill", case_volume="1.2 L", fill="0.9 L", temperature_cold="15 C", temperature_hot="95 C"
    )
    hot = 0.9 * (1 + 0.0007 * 80)
    assert slip.band("oil_hot").value == pytest.approx(hot)
    assert slip.band("air_space_cold").value == pytest.approx(0.3)
    air, low, high = values(slip, "air_space")
    assert air == low
    assert high == pytest.approx(1.2 * (1 + 3 * 23e-6 * 80) - hot, abs=3e-4)
    assert "1.538 bar absolute in iron, 1.515 in aluminium" in told(slip)
    shut = slip.band("pressure_hot").value
    assert shut == pytest.approx(0.1013 * 0.3 / air * (95 + 273.15) / (15 + 273.15), rel=1e-3)


def test_an_industrial_grade_spans_a_tenth_either_way() -> None:
    """ISO 3448 prints 61.2 to 74.8 cSt for VG 68."""
    (row,) = asked("oils", "grade", kind="industrial", at40="68 cSt", at100="8.7 cSt").rows("grades")
    assert (row["low"], row["high"]) == pytest.approx((61.2, 74.8))


def test_a_wire_between_two_of_the_table_goes_by_its_section() -> None:
    """Wires of 0.6 and 0.8 mm burn 88.9 and 50.8 mm a minute for each ampere, at 30 to 90 and 40 to 145 A."""
    slip = asked("welds", "settings", thickness="1.2 mm", wire="0.7 mm")
    share = (1 / 0.49 - 1 / 0.36) / (1 / 0.64 - 1 / 0.36)
    burn = 88.9 + share * (50.8 - 88.9)
    assert values(slip, "wire_feed") == pytest.approx(
        (burn * (60 + 290 / 3) / 2 / 60, burn, burn * 290 / 3 / 60), rel=1e-3
    )
    assert f"fed at {30 + share * 10:.1f} to {90 + share * 55:.0f} A" in told(slip)


def test_plugs_stand_where_they_are_told_and_in_their_turn() -> None:
    slip = asked("welds", "plugs", length="450 mm", thickness="1 mm", spots_counted="12")
    rows = slip.rows("places")
    assert [row["plug"] for row in rows] == list(range(1, 13))
    assert [row["at"] for row in rows] == [round(12 + i * 426 / 11, 1) for i in range(12)]
    assert [row["turn"] for row in rows][:6] == [1, 6, 5, 7, 8, 3]
    assert sorted(int(str(row["turn"])) for row in rows) == list(range(1, 13))
    assert str(slip.results["order"]).startswith("1, 12, 6")
    assert "one for each spot" in told(slip) or "one plug for each spot" in told(slip)
    loaded = asked("welds", "plugs", length="450 mm", thickness="1 mm", load="2 kN")
    assert "capacity" in f"{loaded.because} {told(loaded)}"
    assert "capacity" not in f"{slip.because} {told(slip)}"


def test_two_lines_under_a_force_beside_them() -> None:
    typed = {"lines": "0,0 0,50; 100,0 100,50 mm", "load": "0,-7.5,0 kN", "at": "200,50,0 mm"}
    bare, thick = asked("welds", "group", **typed), asked("welds", "group", **typed, throat="3 mm")
    turning, moment = 2 * 50 * (50**2) + 2 * 50**3 / 12, 7500 * 150
    up, aside = 7500 / 100 + moment * 50 / turning, moment * 25 / turning
    assert bare.band("line_force_max").value == pytest.approx(math.hypot(up, aside))
    assert thick.band("stress_max").value == pytest.approx(math.hypot(up, aside) / 3)
    row = thick.rows("components")[2]
    assert (row["line"], row["x"], row["y"]) == (2, 100, 0)
    assert abs(float(str(row["along"]))) == pytest.approx(up / 3)
    assert abs(float(str(row["across"]))) == pytest.approx(aside / 3)
    assert row["out"] == 0
    assert "-1125 N·m" in told(thick)
    assert "301.2" in drawn_words(bare)
    assert "100.4" in drawn_words(thick)


def test_short_runs_round_a_patch() -> None:
    slip = asked(
        "welds", "order", panel="120x80 mm", thickness="1 mm", run="20 mm", heat="0.1 kJ/mm", pause="5 s"
    )
    rows = slip.rows("runs")
    assert slip.band("minutes").value == pytest.approx((20 * (20 / 7 + 5) - 5) / 60)
    rises = [float(str(row["rise"])) for row in rows]
    assert slip.band("rise_max").value == pytest.approx(max(rises), abs=0.01)
    assert slip.band("rise_mean").value == pytest.approx(sum(rises) / 20, abs=0.01)
    middles = {int(str(row["run"])): (row["x"], row["y"]) for row in rows}
    assert [middles[n] for n in (1, 6, 7, 10, 11, 20)] == [
        (10, 0), (110, 0), (120, 10), (120, 70), (110, 80), (0, 10),
    ]  # fmt: skip
    assert [row["turn"] for row in rows] == list(range(1, 21))
    assert slip.band("minutes_waiting").value >= slip.band("minutes").value
    slow = next(row for row in slip.rows("others") if row["order"] == "one after another")
    assert 10 < float(str(slow["minutes_waiting"])) < 60
    assert "100 J/mm as given, laid at 7 mm/s" in told(slip)
    assert "pause taken" not in told(slip)


def test_runs_along_one_side_lie_on_it_with_heat_from_the_settings() -> None:
    slip = asked("welds", "order", panel="300x120 mm", thickness="1 mm", run="30 mm", seam="one side")
    assert sorted((row["x"], row["y"]) for row in slip.rows("runs")) == [(15 + 30 * i, 0) for i in range(10)]
    assert "14.25 V and 50 A at 7.5 mm/s" in told(slip)
    assert f"leave {0.8 * 14.25 * 50 / 7.5:.0f} J/mm" in told(slip)
    assert "pause taken" in told(slip)


@pytest.mark.parametrize(
    ("sheet", "at", "words"),
    [
        ("24 h @ 20 C, 96 h @ 0 C", "10 C", "2.00 times as long for each 10 °C colder"),
        ("24 h @ 20 C, 48 h @ 10 C", "15 C", "2.00 times as long for each 10 °C colder"),
    ],
)
def test_how_much_longer_ten_degrees_make_it(sheet: str, at: str, words: str) -> None:
    assert words in told(asked("paint", "cure", sheet=sheet, temperature=at))


@pytest.mark.parametrize(
    ("typed", "words"), [("89 min", "89 min"), ("90 min", "1.5 h"), ("72 h", "72 h"), ("73 h", "3.04 days")]
)
def test_a_time_is_said_in_what_suits_it(typed: str, words: str) -> None:
    assert words in asked("paint", "cure", sheet=f"{typed} @ 20 C", temperature="20 C").because


def test_what_would_make_the_night_fit() -> None:
    slip = asked("paint", "window", air="9 C", humidity="85 %", steel="7 C")
    assert slip.band("margin").value == pytest.approx(7 - slip.band("dew_point").value)
    assert "warm the steel to 10.5 °C" in str(slip.results["to_make_it_yes"])
    assert "dry it to 82 %" in str(slip.results["to_make_it_yes"])
    damp = asked("paint", "window", air="15 C", humidity="80 %", steel="13 C")
    assert f"warm the steel to {11.57 + 3.5:.1f} °C" in str(damp.results["to_make_it_yes"])
    assert "dry it" not in str(damp.results["to_make_it_yes"])


def test_each_hour_tells_steel_above_its_own_dew() -> None:
    hours = {"h.csv": "time,air,humidity,steel\n20:00,15,80,14\n21:00,14,85,13.5\n"}
    slip = asked_from(hours, "paint", "window", air="15 C", humidity="80 %", steel="14 C", forecast="@h.csv")
    dews = [11.57, 11.51]
    for row, dew, steel in zip(slip.rows("hours"), dews, (14, 13.5), strict=True):
        assert row["dew_point"] == pytest.approx(dew, abs=0.02)
        assert row["margin"] == pytest.approx(steel - dew, abs=0.02)


def test_the_same_number_in_other_systems_is_told_beside() -> None:
    slip = asked("sheet", "gauge", gauge="18", system="swg")
    assert "in swg" not in slip.because
    assert "1.25 mm in bwg" in slip.because
    assert "1.21 mm in us" in slip.because


def test_what_was_not_given_of_a_steel_is_named() -> None:
    slip = asked("steel", "equivalent", composition="C 0.2 Mn 0.9")
    assert slip.band("carbon_equivalent").value == pytest.approx(0.2 + 0.9 / 6)
    none = next(line for line in slip.working if "counts as none" in line).lower()
    assert none.endswith("none: chromium, molybdenum, vanadium, nickel, copper")


def test_a_warm_wire_loses_more() -> None:
    """IEC 60228: 3.30 Ω/km for 6 mm² of class 5 at 20 °C; copper gains 0.393 % a degree."""
    typed = {"current": "18 A", "length": "2 m", "supply": "6 V", "drop": "0.3 V"}
    cold = asked("wires", "size", **typed)
    assert cold.band("drop").value == pytest.approx(18 * 4 * 3.30 / 1000, rel=1e-3)
    warm = asked("wires", "size", **typed, temperature="40 C")
    assert warm.band("drop").value == pytest.approx(18 * 4 * 3.30 / 1000 * (1 + 0.00393 * 20), rel=2e-3)


def test_without_a_word_on_friction_the_middle_of_the_printed_band_is_taken() -> None:
    slip = asked("bolts", "check", thread="M8", grade="8.8", torque="18 N·m")
    middle, dry, oiled = (18 / (k * 0.008) for k in (math.sqrt(0.12 * 0.22), 0.22, 0.12))
    assert values(slip, "preload") == pytest.approx((middle, dry, oiled))


def test_both_ways_of_friction_are_named_even_where_one_is_half_given() -> None:
    with pytest.raises(BadInput, match="nut_factor and friction are both given"):
        asked("bolts", "tighten", thread="M8", grade="8.8", nut_factor="0.15", friction_head="0.12")


def test_a_bolt_turned_by_angle_lies_between_thread_and_shank() -> None:
    slip = asked("bolts", "turn", thread="M8", grip="40 mm", preload="20 kN", modulus="205 GPa")
    thread, shank = (20_000 * 40 / (205_000 * area) for area in (PROOF / 580, math.pi / 4 * 64))
    assert values(slip, "stretch") == pytest.approx((thread, shank, thread), rel=1e-4)
    assert values(slip, "angle") == pytest.approx(
        tuple(s / 1.25 * 360 for s in (thread, shank, thread)), rel=1e-4
    )
