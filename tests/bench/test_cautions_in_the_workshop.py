"""Which questions about oils, welds, paint and the rest must show which cautions."""

import pytest

from tests.bench.test_questions import CAUTIONS
from witnessmark.bench.questions import ask, every_question

MUST = {
    ("coolant", "freeze"): {"hot-coolant"},
    ("welds", "settings"): {"hot-work", "fire-watch", "electric", "galvanised"},
    ("welds", "heat"): {"hot-work", "fire-watch"},
    ("welds", "group"): {"strength-scope", "hot-work"},
    ("welds", "plugs"): {"hot-work", "fire-watch", "galvanised", "strength-scope"},
    ("welds", "order"): {"hot-work", "fire-watch", "galvanised"},
    ("steel", "equivalent"): {"hot-work"},
    ("paint", "window"): {"solvents", "isocyanates"},
    ("paint", "quantity"): {"solvents"},
    ("paint", "cure"): {"solvents"},
    ("wires", "size"): {"battery"},
    ("brakes", "line"): {"brakes-both-sides", "brake-fluid"},
    ("steering", "toe"): {"steering"},
    ("loads", "towing"): {"towing", "strength-scope"},
}

TYPED = {
    ("coolant", "freeze"): {"glycol": "40 %", "kind": "ethylene"},
    ("welds", "settings"): {"thickness": "1 mm", "wire": "0.8 mm"},
    ("welds", "heat"): {"voltage": "15 V", "current": "60 A", "speed": "5 mm/s", "process": "mag"},
    ("welds", "group"): {"lines": "0,0 0,50; 9,0 9,50 mm", "load": "0,1,0 kN", "at": "9,0,0 mm"},
    ("welds", "plugs"): {"length": "200 mm", "thickness": "1 mm"},
    ("welds", "order"): {"panel": "60x40 mm", "thickness": "1 mm", "run": "20 mm"},
    ("steel", "equivalent"): {"composition": "DC01"},
    ("paint", "window"): {"air": "12 C", "humidity": "70 %", "steel": "11 C"},
    ("paint", "quantity"): {"area": "4 m2", "dry_film": "60 micron", "volume_solids": "45 %"},
    ("paint", "cure"): {"sheet": "24 h @ 20 C", "temperature": "14 C"},
    ("wires", "size"): {"current": "8 A", "length": "4 m", "supply": "12 V", "fraction": "3 %"},
    ("brakes", "line"): {"pedal_force": "400 N", "ratio": "5", "bore": "7/8 in"},
    ("steering", "toe"): {"toe": "3 mm", "at_diameter": "400 mm"},
    ("loads", "towing"): {"mass": "1500 kg"},
}


@pytest.mark.parametrize("which", MUST, ids=" ".join)
def test_the_caution_is_shown(which: tuple[str, str]) -> None:
    assert set(ask(*which, TYPED[which]).cautions) >= MUST[which]


def test_both_lists_name_the_same_questions() -> None:
    assert set(MUST) == set(TYPED)


NEEDS_NONE = {
    "threads identify", "threads size", "shims stack", "oils viscosity", "oils index", "oils grade",
    "oils fill", "oils suits", "sheet gauge", "sheet bend", "leaks order",
}  # fmt: skip
"""Looking, measuring and choosing, with nothing hot, heavy or under load in it."""


def test_every_question_shows_its_cautions_or_is_said_to_need_none() -> None:
    shows = {" ".join(which) for which in MUST} | set(CAUTIONS)
    assert shows | NEEDS_NONE == {f"{one.subject} {one.question}" for one in every_question()}
    assert shows & NEEDS_NONE == set()
