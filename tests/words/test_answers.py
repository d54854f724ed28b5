"""Every closing check, ask of a gate and thing upset answers to its own name."""

from __future__ import annotations

import pytest

from tests.words.garage import TODAY, best
from witnessmark.journal.facts import LookedAt, Proved, PutRight
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.read import read_line
from witnessmark.words.trade import trade
from witnessmark.words.vocabulary import vocabulary_of

NAMES = sorted((answer.name, answer.sort) for answer in trade().typed.values())
BARE = vocabulary_of(Vehicle(country="GB"))


@pytest.mark.parametrize(("name", "sort"), NAMES, ids=[name for name, _ in NAMES])
def test_its_name_is_enough(name: str, sort: str) -> None:
    proved = read_line(f"proved {name}", BARE, today=TODAY).best
    looked = read_line(f"looked at {name}", BARE, today=TODAY).best
    assert (proved.fact, proved.sure) == (Proved(check=name), True)
    assert (looked.fact, looked.sure) == (LookedAt(check=name), True)
    if sort == "upset":
        right = read_line(f"put right {name}", BARE, today=TODAY).best
        assert (right.fact, right.sure) == (PutRight(what=name), True)


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("bled the brakes", "bleed brakes"),
        ("brakes bled all round", "bleed brakes"),
        ("tracking done", "toe"),
        ("wheel alignment set to book", "toe"),
        ("set the handbrake", "handbrake adjust"),
        ("handbrake adjusted", "handbrake adjust"),
    ],
)
def test_what_was_upset_is_known_by_the_work_that_rights_it(line: str, what: str) -> None:
    fact = best(line).fact
    assert isinstance(fact, PutRight)
    assert fact.what == what


def test_a_name_only_spelt_like_one_is_asked_about() -> None:
    reading = best("proved pedal hald")
    assert isinstance(reading.fact, Proved)
    assert (reading.fact.check, reading.sure) == ("pedal hold", False)
