"""Every picture stays on its paper, is black on white, and is to the scale that it says."""

import math

import pytest

from tests.bench.picture.drawn import SVG, Drawn
from witnessmark.bench.picture.axes import Axis, round_ticks
from witnessmark.bench.picture.svg import dimension
from witnessmark.bench.questions import ask

NIGHT = "time,air,humidity\n" + "".join(
    f"{(17 + i) % 24:02d}:00,{12 - 5 * math.sin(i / 14 * math.pi):.1f},"
    f"{65 + 30 * math.sin(i / 14 * math.pi):.0f}\n"
    for i in range(15)
)
LONG = "time,air,humidity,steel\n" + "".join(
    f"2026-03-{1 + i // 24:02d}T{i % 24:02d}:00,9,80,{i % 7}\n" for i in range(72)
)
FILES = {"night.csv": NIGHT, "long.csv": LONG}

CASE = {"case_volume": "1.2 L", "temperature_cold": "15 C", "temperature_hot": "95 C"}

ASKED = [
    ("oils", "viscosity", {"at1": "160 cSt @ 40 C", "at2": "15.5 cSt @ 100 C", "temperature": "10 C"}),
    ("oils", "viscosity", {"at1": "1.6 cSt @ 40 C", "at2": "0.8 cSt @ 100 C", "temperature": "150 C"}),
    ("oils", "viscosity", {"at1": "460 cSt @ 40 C", "at2": "31 cSt @ 100 C", "temperature": "-40 C"}),
    ("oils", "grade", {"kind": "gear", "at40": "205 cSt", "at100": "19.5 cSt"}),
    ("oils", "grade", {"kind": "engine", "at40": "95 cSt", "at100": "10.8 cSt"}),
    ("oils", "grade", {"kind": "industrial", "at40": "68 cSt", "at100": "8.7 cSt"}),
    *[
        ("oils", "fill", {**CASE, "fill": fill, **more})
        for fill in ("0.9 L", "97 %", "99.5 %")
        for more in ({"breather": "open"}, {"breather": "blocked"}, {})
    ],
    ("welds", "plugs", {"length": "450 mm", "thickness": "1 mm", "spots_counted": "12"}),
    ("welds", "plugs", {"length": "40 mm", "thickness": "1 mm", "spots_counted": "1"}),
    ("welds", "plugs", {"length": "1500 mm", "thickness": "3 mm", "spots_counted": "40"}),
    ("welds", "group", {"lines": "0,0 0,50; 100,0 100,50 mm", "load": "0,-7.5,0 kN", "at": "200,50,0 mm"}),
    ("welds", "group", {"lines": "0,0 80,0; 0,0 0,120 "
                                 "mm", "load": "1,-4,2.5 kN", "at": "60,60,90 mm", "leg": "4 mm"}),
    ("welds", "group", {"lines": "0,0 80,0; 0,40 80,40 "
                                 "mm", "load": "0,0,-2 kN", "at": "40,20,0 mm", "throat": "3 mm"}),
    ("welds", "group", {"lines": "; ".join(f"{i * 9},0 {i * 9},{20 + i} mm"[:-3] for i in range(15)) + " mm",
                        "load": "0,1,0 kN", "at": "0,0,0 mm"}),
    ("welds", "order", {"panel": "120x80 mm", "thickness": "1 mm", "run": "20 mm"}),
    ("welds", "order", {"panel": "300x120 mm", "thickness": "0.8 mm", "run": "30 mm", "seam": "one side"}),
    ("welds", "order", {"panel": "100x100 "
                                 "mm", "thickness": "1 mm", "run": "20 mm", "seam": "0,0 140,0 140,60 mm"}),
    ("sheet", "bend", {"thickness": "1.2 mm", "radius": "1.5 mm", "angle": "90 deg", "legs": "25x40 mm"}),
    ("sheet", "bend", {"thickness": "1 mm", "radius": "2 mm", "angle": "45 deg", "legs": "20x300x20 mm"}),
    ("sheet", "bend", {"thickness": "2 mm", "radius": "2 mm", "angle": "90 deg", "legs": "9x900 mm"}),
    ("sheet", "bend", {"thickness": "3 mm", "radius": "3 mm", "angle": "150 deg", "legs": "80x80 mm"}),
    ("paint", "window", {"air": "13 C", "humidity": "62 %", "steel": "13.5 C", "forecast": "@night.csv"}),
    ("paint", "window", {"air": "9 C", "humidity": "80 %", "steel": "5 C", "forecast": "@long.csv"}),
    ("paint", "window", {"air": "9 C", "humidity": "78 %", "steel": "8.2 C", "sheet_minimum": "5 C"}),
    ("paint", "window", {"air": "-5 C", "humidity": "90 %", "steel": "-6 C"}),
    ("wires", "size", {"current": "18 A", "length": "2 m", "supply": "6 V", "drop": "0.3 V"}),
    ("wires", "size", {"current": "300 A", "length": "2 m", "supply": "6 V", "drop": "0.3 V"}),
    ("wires", "size", {"current": "1 A", "length": "1 m", "supply": "12 V", "fraction": "5 %"}),
    ("leaks", "order", {"suspects": "rear seal 40 % 20 min 80 %; gasket 30 % 5 min 90 %; breather 15 "
                                    "% 0.5 min 95 %"}),
    ("leaks", "order", {"suspects": "a 60 % 1 min 100 %; b 40 % 90 min 50 %", "results": "a yes"}),
]  # fmt: skip


@pytest.mark.parametrize(
    ("subject", "question", "typed"), ASKED, ids=[f"{s}-{q}-{i}" for i, (s, q, _) in enumerate(ASKED)]
)
def test_nothing_leaves_the_paper_and_nothing_is_coloured(
    subject: str, question: str, typed: dict[str, str]
) -> None:
    text = ask(subject, question, typed, FILES).picture
    drawn = Drawn(text)
    assert 80 <= drawn.wide <= 210
    assert 50 <= drawn.high <= 297
    outside = [
        (x, y)
        for x, y in drawn.marks()
        if not (-0.5 <= x <= drawn.wide + 0.5 and -0.5 <= y <= drawn.high + 0.5)
    ]
    assert outside == []
    assert [words for words, left, right in drawn.spans() if left < 0 or right > drawn.wide] == []
    assert {e.attrib.get("fill", "none") for e in drawn.root.iter()} <= {"none", "white", "black"}
    assert "e+" not in " ".join(drawn.words)
    assert drawn.words


def test_a_weld_line_is_drawn_to_its_scale() -> None:
    typed = {"lines": "0,0 0,50; 100,0 100,50 mm", "load": "0,-7.5,0 kN", "at": "200,50,0 mm"}
    drawn = Drawn(ask("welds", "group", typed).picture)
    (a, b), (c, _) = drawn.strokes(1.2)
    assert math.dist(a, b) / drawn.scale() == pytest.approx(50, abs=0.1)
    assert abs(a[0] - c[0]) / drawn.scale() == pytest.approx(100, abs=0.1)


def test_plugs_are_drawn_where_they_stand_and_as_wide_as_they_are() -> None:
    slip = ask("welds", "plugs", {"length": "450 mm", "thickness": "1 mm", "spots_counted": "12"})
    drawn = Drawn(slip.picture)
    holes = [e for e in drawn.root.iter(f"{SVG}circle") if e.attrib["fill"] == "white"]
    xs = [float(e.attrib["cx"]) for e in holes]
    assert len(holes) == 12
    assert float(holes[0].attrib["r"]) * 2 / drawn.scale() == pytest.approx(8, abs=0.1)
    assert (xs[1] - xs[0]) / drawn.scale() == pytest.approx(slip.band("pitch").value, abs=0.1)


def test_a_patch_is_drawn_to_its_scale_with_every_turn_on_it() -> None:
    drawn = Drawn(ask("welds", "order", {"panel": "120x80 mm", "thickness": "1 mm", "run": "20 mm"}).picture)
    runs = drawn.strokes(0.9)
    assert len(runs) == 20
    across = max(p[0] for run in runs for p in run) - min(p[0] for run in runs for p in run)
    assert across / drawn.scale() == pytest.approx(120, abs=1.5)
    assert {str(i) for i in range(1, 21)} <= set(drawn.words)


def test_the_flat_is_as_long_on_paper_as_it_is_cut() -> None:
    slip = ask(
        "sheet", "bend", {"thickness": "1.2 mm", "radius": "1.5 mm", "angle": "90 deg", "legs": "25x40 mm"}
    )
    drawn = Drawn(slip.picture)
    flat = next(e for e in drawn.root.iter(f"{SVG}rect") if e.attrib.get("height") == "12")
    assert float(flat.attrib["width"]) / drawn.scale() == pytest.approx(
        slip.band("flat_length").value, abs=0.1
    )


def test_the_case_shows_oil_by_height() -> None:
    typed = {"case_volume": "1 L", "fill": "80 %", "temperature_cold": "20 C", "temperature_hot": "90 C"}
    drawn = Drawn(ask("oils", "fill", {**typed, "breather": "open"}).picture)
    levels = [a[1] for a, b in drawn.strokes(0.25) if a[1] == b[1] and abs(a[0] - b[0]) == pytest.approx(34)]
    floor, roof = 90.0, 28.0
    assert (floor - levels[0]) / (floor - roof) == pytest.approx(0.8, abs=0.01)
    assert levels[1] < levels[0]


def test_wires_are_drawn_their_own_size() -> None:
    drawn = Drawn(
        ask("wires", "size", {"current": "18 A", "length": "2 m", "supply": "6 V", "drop": "0.3 V"}).picture
    )
    chosen = next(e for e in drawn.root.iter(f"{SVG}circle") if e.attrib["fill"] == "black")
    assert math.pi * float(chosen.attrib["r"]) ** 2 == pytest.approx(6, abs=0.05)


def test_an_axis_carries_a_value_to_its_place_and_ticks_are_round() -> None:
    axis = Axis(1, 100, 0, 50, math.log10)
    assert axis.at(10) == pytest.approx(25)
    assert axis.holds(100)
    assert not axis.holds(101)
    assert round_ticks(0, 27) == (0.0, 5.0, 10.0, 15.0, 20.0, 25.0)
    assert round_ticks(-3, 3, 3) == (-2.0, 0.0, 2.0)


def test_a_seam_laid_backwards_still_has_its_numbers_outside() -> None:
    typed = {"panel": "140x60 mm", "thickness": "1 mm", "run": "20 mm", "seam": "140,0 0,0 mm"}
    drawn = Drawn(ask("welds", "order", typed).picture)
    floor = max(p[1] for run in drawn.strokes(0.9) for p in run)
    turns = [
        float(t.attrib["y"])
        for t in drawn.root.iter(f"{SVG}text")
        if t.attrib.get("font-weight") and str(t.text).isdigit()
    ]
    assert len(turns) == 7
    assert min(turns) > floor


@pytest.mark.parametrize(
    "typed",
    [
        {"at1": "0.9 cSt @ 20 C", "at2": "0.4 cSt @ 80 C", "temperature": "60 C"},
        {"at1": "9000 cSt @ -20 C", "at2": "6 cSt @ 120 C", "temperature": "60 C"},
    ],
)
def test_a_line_that_ends_at_the_edge_is_drawn(typed: dict[str, str]) -> None:
    drawn = Drawn(ask("oils", "viscosity", typed).picture)
    assert any("60 °C" in word for word in drawn.words)
    assert all(0 <= y <= drawn.high for _, y in drawn.marks())


def test_words_that_find_no_room_stand_on_the_side_asked_for() -> None:
    after = Drawn(f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 99 99'>{_short(before=False)}</svg>")
    ahead = Drawn(f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 99 99'>{_short(before=True)}</svg>")
    assert after.spans()[0][1] > 52
    assert ahead.spans()[0][2] < 50


def _short(*, before: bool) -> str:
    return dimension((50, 50), (52, 50), "19.7", off=-8, before=before)


def test_each_day_of_a_long_forecast_is_named_where_it_begins() -> None:
    typed = {"air": "9 C", "humidity": "80 %", "steel": "5 C"}
    drawn = Drawn(ask("paint", "window", {**typed, "forecast": "@long.csv"}, FILES).picture)
    days = {words: left for words, left, _ in drawn.spans() if words.startswith("2026-")}
    assert list(days) == ["2026-03-01", "2026-03-02", "2026-03-03"]
    first, second, third = days.values()
    assert second - first == pytest.approx(third - second)
    night = Drawn(ask("paint", "window", {**typed, "forecast": "@night.csv"}, FILES).picture)
    assert not [words for words in night.words if "-" in words]


def test_the_loss_is_told_beside_the_line_of_what_is_allowed_not_on_it() -> None:
    typed = {"current": "18 A", "length": "2 m", "supply": "6 V", "drop": "0.3 V"}
    drawn = Drawn(ask("wires", "size", typed).picture)
    (limit,) = {a[0] for a, b in drawn.strokes(0.25) if a[0] == b[0] and abs(a[1] - b[1]) > 50}
    losses = [one for one in drawn.spans() if one[0].endswith(" V") and "allowed" not in one[0]]
    assert len(losses) == 6
    assert not [words for words, left, right in losses if left < limit < right]


def test_every_look_for_a_leak_carries_its_number_however_short() -> None:
    suspects = "rear seal 40 % 20 min 80 %; gasket 30 % 5 min 90 %; breather 15 % 0.5 min 95 %"
    assert {"1", "2", "3"} <= set(Drawn(ask("leaks", "order", {"suspects": suspects}).picture).words)
