"""Numbers with their units, as typed.

Published: appendix B, "International System of Units (SI) conversion factors", of a US Navy
facilities training text, read as an excerpt of a stored copy in 2026-11. It prints 1 in² = 645.16 mm²,
1 gal = 3.785 41 L, 1 fl oz = 29.5735 mL, 1 mile/h = 1.609 344 km/h, 1 lb = 0.453 592 kg,
1 oz = 28.3495 g, 1 lbf = 4.448 22 N, 1 tonf·ft = 2.711 64 kN·m (2000 lbf ft), 1 lbf·in = 0.112 985 N·m.
NIST SP 811 (2008), appendix B.8, gives the same units; its values below are from memory, not verified.
"""

from __future__ import annotations

import math
from contextlib import suppress
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.ground.errors import BadInput
from witnessmark.ground.measures import MEASURES
from witnessmark.ground.quantities import find_quantities, read_quantity
from witnessmark.ground.threads_typed import find_thread

PRINTED = [
    ("1 sq in", 645.16, "mm²", 0.005),
    ("1 us gallon", 3.78541, "L", 5e-6),
    ("1 us fl oz", 0.0295735, "L", 5e-8),
    ("1 mile", 1.609344, "km", 5e-7),
    ("1 lb", 0.453592, "kg", 5e-7),
    ("1 oz", 0.0283495, "kg", 5e-8),
    ("1 lbf", 4.44822, "N", 5e-6),
    ("2000 lbf ft", 2711.64, "N·m", 0.005),
    ("1 lbf in", 0.112985, "N·m", 5e-7),
]
FROM_MEMORY = [
    ("1 lbf ft", 1.355818, "N·m", 5e-7),
    ("1 kgf m", 9.80665, "N·m", 5e-6),
    ("1 psi", 0.06894757, "bar", 5e-9),
    ("1 ksi", 6.894757, "MPa", 5e-7),
    ("1 gallon", 4.54609, "L", 5e-6),
    ("1 us pint", 0.4731765, "L", 5e-8),
    ("1 inch", 25.4, "mm", 0.0),
    ("1 thou", 0.0254, "mm", 1e-12),
    ("1 kgf", 9.80665, "N", 5e-6),
]


@pytest.mark.parametrize(("typed", "value", "unit", "within"), PRINTED + FROM_MEMORY)
def test_factors_agree_with_those_in_print(typed: str, value: float, unit: str, within: float) -> None:
    quantity = read_quantity(typed)
    assert quantity.unit == unit
    assert math.isclose(quantity.value, value, abs_tol=within + 1e-12)


def test_scales_meet_where_they_are_defined_to() -> None:
    # 0 °F scale points by definition: water freezes at 32 °F and boils at 212 °F (1 atm).
    assert read_quantity("32 °F").value == pytest.approx(0)
    assert read_quantity("212 deg F").value == pytest.approx(100)
    assert read_quantity("24 tpi").value * 24 == pytest.approx(25.4)
    assert read_quantity("8 pints").value == pytest.approx(read_quantity("1 gallon").value)
    assert read_quantity("12 in").value == pytest.approx(read_quantity("1 ft").value)


@pytest.mark.parametrize(
    ("spellings", "value"),
    [
        (
            "35 lbf ft|35 lb-ft|35 ft lb|35 lbf.ft|35 lb ft|35 ft-lbs|35lbft|35 ft.lb|35 LBF FT",
            47.4536,
        ),
        ("47 Nm|47 N·m|47 N m|47nm|47 n.m|47 newton metres", 47.0),
        ("90 lbf in|90 in lb|90 in-lbf", 10.1686),
        ("5 kgf m|5 kgm|5 mkg", 49.03325),
        ("7.9 mm|7,9 mm|7.9mm", 7.9),
        ('5/16 in|5/16"|5/16 inch|0.3125 in|.3125in', 7.9375),
        ('1 1/4 in|1¼ in|1-1/4"|1.25 inch', 31.75),
        ("¾ L|3/4 L|750 ml|0,75 litres|0.75l", 0.75),
        ("1 h 20|1h20|1hr 20|80 min|1 hr 20 mins", 80.0),
        ("half an hour|30 min|0.5 h|½ hour", 30.0),
        ("an hour and a half|90 minutes|1.5 hrs", 90.0),
        ("9 °C|9C|9 deg C|9 degrees c", 9.0),
        ("£6.40|6.40 quid|6.40 gbp", 6.4),
        ("50 km|50km|50 kms", 50.0),
    ],
)
def test_one_value_has_many_spellings(spellings: str, value: float) -> None:
    for typed in spellings.split("|"):
        assert read_quantity(typed).value == pytest.approx(value, rel=1e-4), typed


def test_what_was_typed_is_kept_beside_the_value() -> None:
    assert read_quantity("35 lbf ft").typed == "35 lbf ft"
    assert [f.quantity.typed for f in find_quantities("axle 1,1 L in")] == ["1,1 L"]


def test_money_keeps_its_sign_for_a_unit() -> None:
    found = [
        (f.quantity.value, f.quantity.unit)
        for f in find_quantities("£6.40, then €12 and $5, 60p each, 58 quid")
    ]
    assert found == [(6.4, "£"), (12.0, "€"), (5.0, "$"), (0.6, "£"), (58.0, "£")]


@pytest.mark.parametrize("kind", [k for k in MEASURES])
def test_a_bare_number_is_refused_and_the_units_that_hold_are_named(kind: str) -> None:
    with pytest.raises(BadInput) as refused:
        read_quantity("50", kind)
    assert refused.value.holds == MEASURES[kind].holds
    assert "50" in refused.value.given


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("5 kg", "torque"),
        ("nan mm", "length"),
        ("inf Nm", "torque"),
        ("99999 Nm", "torque"),
        ("9" * 40 + " mm", "length"),
        ("3/0 in", "length"),
        ("-5 L", "volume"),
        ("", "length"),
        ("five", "length"),
        ("5 mm long", "length"),
        ("5 mm 6 mm", "length"),
    ],
)
def test_what_cannot_be_the_asked_kind_is_refused_with_three_parts(typed: str, kind: str) -> None:
    with pytest.raises(BadInput) as refused:
        read_quantity(typed, kind)
    assert refused.value.given
    assert refused.value.holds
    assert refused.value.do


def test_the_asked_kind_settles_a_unit_that_serves_two() -> None:
    assert read_quantity("1 MPa", "pressure").value == pytest.approx(10)
    assert read_quantity("1 bar", "stress").value == pytest.approx(0.1)
    assert read_quantity("10 kg", "force").unit == "N"
    assert read_quantity("1.25 mm", "pitch").unit == "mm"
    assert read_quantity("3", "count").value == 3


def test_a_size_is_one_quantity_for_each_dimension_and_stays_whole() -> None:
    found = find_quantities("seal 38 x 60 x 10 in the tin")
    assert [(f.quantity.value, f.quantity.unit, f.size) for f in found] == [
        (38.0, "mm", "38 x 60 x 10"),
        (60.0, "mm", "38 x 60 x 10"),
        (10.0, "mm", "38 x 60 x 10"),
    ]
    inches = find_quantities("1 1/4 x 2 x 3/8 in")
    assert [f.quantity.value for f in inches] == pytest.approx([31.75, 50.8, 9.525])


def test_a_band_gives_both_its_ends() -> None:
    assert [f.quantity.value for f in find_quantities("torque 45-50 Nm")] == [45.0, 50.0]
    assert [f.quantity.value for f in find_quantities("recoat 4 h to 7 days")] == [240.0, 10080.0]


@pytest.mark.parametrize(
    "line",
    [
        "10 in the bag",
        "undid 2 in engine bay",
        "2 l rear",
        "p 37",
        "M8 x 1.25 bolt",
        "EP90",
        "2 threads only",
    ],
)
def test_words_that_only_look_like_units_are_left_alone(line: str) -> None:
    assert find_quantities(line) == ()


@pytest.mark.parametrize(
    ("typed", "thread", "diameter", "pitch"),
    [
        ("5/16 UNF", "5/16 UNF", 7.9375, None),
        ("undid 4 5/16 unf bolts", "5/16 UNF", 7.9375, None),
        ("M8 x 1.25", "M8 x 1.25", 8.0, 1.25),
        ("M10x1", "M10 x 1", 10.0, 1.0),
        ("3/8 BSF stud", "3/8 BSF", 9.525, None),
        ("1/4 whitworth", "1/4 BSW", 6.35, None),
        ("2 BA screw", "2 BA", None, None),
        ("1/8 BSP", "1/8 BSP", None, None),
        ("24 tpi", "24 tpi", None, 25.4 / 24),
    ],
)
def test_threads_are_known_by_their_series(
    typed: str, thread: str, diameter: float | None, pitch: float | None
) -> None:
    found = find_thread(typed)
    assert found is not None
    assert found.thread == thread
    assert found.diameter == (None if diameter is None else pytest.approx(diameter))
    assert found.pitch == (None if pitch is None else pytest.approx(pitch))


@pytest.mark.parametrize(
    ("said", "value", "unit"),
    [
        ("0.748 of an inch", 18.9992, "mm"),
        ("seven sixteenths", 11.1125, "mm"),
        ("an eighth of an inch", 3.175, "mm"),
        ("a hundred and ten foot pounds", 149.1400, "N·m"),
        ("2 and a half pints", 1.420653, "L"),
        ("2 quarts", 2.273045, "L"),
        ("500 c.c.", 0.5, "L"),
        ("twenty-five minutes", 25.0, "min"),
        ("an hour and ten", 70.0, "min"),
        ("an hour and a half", 90.0, "min"),
        ("two and a quarter hours", 135.0, "min"),
        ("3 h 20", 200.0, "min"),
        ("a fortnight", 20160.0, "min"),
        ("thirty-one mile", 49.889664, "km"),
        ("23 quid fifty", 23.5, "£"),
        ("two pound fifty", 2.5, "£"),
        ("a tenner", 10.0, "£"),
    ],
)
def test_what_is_said_in_words_is_worth_what_its_figures_are(said: str, value: float, unit: str) -> None:
    (found,) = find_quantities(f"well, {said}, and home")
    assert found.quantity.typed == said
    assert found.quantity.value == pytest.approx(value, rel=1e-5)
    assert found.quantity.unit == unit


@pytest.mark.parametrize(
    "line", ["a second coat", "two bars across", "an hour ago and two bolts", "half a turn"]
)
def test_words_of_number_beside_other_things_are_no_figures(line: str) -> None:
    assert [f.quantity.typed for f in find_quantities(line)] in ([], ["an hour"])


@given(st.text())
def test_finding_never_raises_and_never_overlaps(text: str) -> None:
    found = find_quantities(text)
    assert all(0 <= f.start < f.end <= len(text) for f in found)
    assert all(a.end <= b.start for a, b in pairwise(found))
    assert all(math.isfinite(f.quantity.value) for f in found)


@given(st.text())
def test_reading_refuses_or_answers_and_nothing_else(text: str) -> None:
    for kind in ("torque", None):
        quantity = None
        with suppress(BadInput):
            quantity = read_quantity(text, kind)
        assert quantity is None or math.isfinite(quantity.value)


@given(
    st.decimals(min_value=0, max_value=900, places=2), st.sampled_from(["Nm", "lbf ft", "kgf m", "lbf in"])
)
def test_what_is_found_in_a_line_is_what_is_read_alone(number: object, unit: str) -> None:
    alone = read_quantity(f"{number} {unit}", "torque")
    found = [f.quantity for f in find_quantities(f"hub nut {number} {unit} marked") if f.kind == "torque"]
    assert [q.value for q in found] == [alone.value]
