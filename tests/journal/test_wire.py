from __future__ import annotations

import json

import pytest

from tests.journal.lines import describing, entry
from witnessmark.ground.errors import RecordDamaged
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.entry import VERSION
from witnessmark.journal.facts import Remarked, Struck, Tightened, TookOff
from witnessmark.journal.wire import entry_from_json, entry_to_json, fact_from_json, fact_to_json, lifted

TIGHT = Tightened(at=("hub nut, left rear",), figures=(Quantity("47 N·m", 47.0, "N·m"),), marked=True)


def test_a_fact_is_plain_json_named_by_what_was_done_and_leaves_out_what_was_not_said() -> None:
    assert json.loads(fact_to_json(TIGHT)) == {
        "did": "tightened",
        "at": ["hub nut, left rear"],
        "figures": [{"typed": "47 N·m", "value": 47.0, "unit": "N·m"}],
        "marked": True,
    }


def test_an_entry_comes_back_equal_with_its_heading() -> None:
    line = entry(12, TIGHT, time="10:40", words="tightened hub nut lr 47 Nm, marked")
    assert entry_from_json(entry_to_json(line)) == line
    assert json.loads(entry_to_json(line))["day"] == "2026-03-14"


def test_a_correction_inside_a_strike_comes_back_equal() -> None:
    strike = Struck(line=3, why="other side", instead=describing("wheel nuts, left rear", parts=("wheel",)))
    assert fact_from_json(fact_to_json(strike)) == strike


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"{",
        b"[]",
        b"null",
        b'{"did": "levitated"}',
        b'{"at": ["wheel"]}',
        b'{"did": "put_right"}',
        b"\xff",
    ],
)
def test_what_is_no_fact_is_damage_not_a_guess(raw: bytes) -> None:
    with pytest.raises(RecordDamaged):
        fact_from_json(raw)


@pytest.mark.parametrize("raw", [b"", b"[]", b"{}", b'{"version": 1}', b'{"version": "1", "fact": {}}'])
def test_what_is_no_entry_is_damage(raw: bytes) -> None:
    with pytest.raises(RecordDamaged):
        entry_from_json(raw)


def test_a_shape_newer_than_the_program_is_refused_with_what_to_do() -> None:
    with pytest.raises(RecordDamaged, match="renew the program"):
        fact_from_json(fact_to_json(TIGHT), VERSION + 1)


def test_an_entry_of_a_newer_shape_is_refused() -> None:
    plain = json.loads(entry_to_json(entry(1, Remarked()))) | {"version": VERSION + 1}
    with pytest.raises(RecordDamaged, match="renew the program"):
        entry_from_json(json.dumps(plain))


def test_a_fact_is_lifted_step_by_step_in_order() -> None:
    steps = {1: lambda f: {**f, "seen": ["one"]}, 2: lambda f: {**f, "seen": [*f["seen"], "two"]}}
    assert lifted({"did": "took_off"}, 1, 3, steps) == {"did": "took_off", "seen": ["one", "two"]}


def test_a_shape_no_step_leads_from_is_refused() -> None:
    with pytest.raises(RecordDamaged, match="no way is known"):
        lifted({"did": "took_off"}, 1, 3, {1: dict})


def test_the_end_of_a_number_survives_the_wire() -> None:
    fact = TookOff(figures=(Quantity("1/3 in", 25.4 / 3, "mm"),))
    assert fact_from_json(fact_to_json(fact)) == fact
