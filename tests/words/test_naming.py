"""Names of a vehicle found by the part of them a person types."""

from __future__ import annotations

import pytest

from tests.words.garage import TODAY
from tests.words.judging import vehicle_knowing
from witnessmark.words.line import take_apart
from witnessmark.words.naming import find_names
from witnessmark.words.read import read_line
from witnessmark.words.vocabulary import vocabulary_of


def named(line: str, *names: str) -> list[tuple[str, str]]:
    vocabulary = vocabulary_of(vehicle_knowing(list(names)))
    hits = find_names(take_apart(line, vocabulary, TODAY), vocabulary)
    return [(hit.named.plain, hit.how) for hit in hits]


@pytest.mark.parametrize(
    ("line", "name", "how"),
    [
        ("wheel spindle nut off", "wheel spindle nut", "full"),
        ("spindle nuts off", "wheel spindle nut", "tail"),
        ("steering bolts off", "steering box bolts", "loose"),
        ("prop shaft flange", "propshaft flange", "full"),
        ("hubnut off", "hub nut", "full"),
        ("u bolts off", "U-bolts", "full"),
        ("carburetter off", "carburettor", "full"),
        ("half shaft o ring", "half-shaft O-ring", "full"),
        ("hub left rear nut", "hub nut", "full"),
    ],
)
def test_a_name_answers_to_the_words_people_use(line: str, name: str, how: str) -> None:
    assert named(line, name) == [(name.lower(), how)]


def test_a_noun_before_it_makes_it_another_thing() -> None:
    assert named("fuel hose off", "brake hose") == []


def test_a_noun_behind_it_makes_it_the_head_of_another_name() -> None:
    assert named("wing mirror off", "wing") == [("wing", "headless")]


def test_the_name_of_more_words_wins() -> None:
    assert named("brake drum screws off", "brake drum", "brake drum screws") == [
        ("brake drum screws", "full")
    ]


def test_words_that_fit_two_names_are_not_sure() -> None:
    vehicle = vehicle_knowing(["pinion seal", "hub seal"])
    read = read_line("seal fitted", vehicle, today=TODAY)
    assert not read.best.sure
    assert {r.joint for r in (read.best, *read.others)} >= {"pinion seal", "hub seal"}


def test_a_part_and_the_whole_it_belongs_to_are_kept_apart() -> None:
    vehicle = vehicle_knowing(["gearbox", "gearbox mounting bolts", "gearbox drain plug"])
    assert read_line("gearbox out", vehicle, today=TODAY).best.part == "gearbox"
    assert read_line("gearbox drain plug out", vehicle, today=TODAY).best.joint == "gearbox drain plug"
