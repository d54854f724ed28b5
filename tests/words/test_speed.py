"""A line is read while a person lifts the hand from the key, on a vehicle of hundreds of joints."""

from __future__ import annotations

from time import perf_counter

from tests.words.garage import TODAY, garage
from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.words.read import read_line
from witnessmark.words.vocabulary import vocabulary_of

SIDES = {
    "corner": ("left front", "right front", "left rear", "right rear"),
    "side": ("left", "right"),
    "vehicle": ("",),
}
LINE = "fitted new split pin hub nut left rear, 140 Nm and marked, second look tomorrow"


def test_one_line_takes_less_than_five_milliseconds() -> None:
    every = [(key, side) for key, chosen in starting_lists().items() for side in SIDES[chosen.per]]
    vocabulary = vocabulary_of(garage(*every))
    assert len(vocabulary.vehicle.joints) >= 200
    taken = []
    for _ in range(20):
        start = perf_counter()
        read_line(LINE, vocabulary, today=TODAY)
        taken.append(perf_counter() - start)
    assert min(taken) < 0.005


def test_a_page_pasted_by_mistake_does_not_hang() -> None:
    start = perf_counter()
    read_line("proved pedal hold and " * 300, vocabulary_of(garage()), today=TODAY)
    assert perf_counter() - start < 10
