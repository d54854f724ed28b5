"""What makes a reading doubtful: a thing, a strange word or a number that found no place."""

from __future__ import annotations

import pytest

from tests.words.garage import best


@pytest.mark.parametrize(
    ("line", "doubt"),
    [
        ("put the zorb on the axle cover", "a thing beside it found no place"),
        ("tightened axle cover to 25 Nm bracket", "a thing beside it found no place"),
        ("photo of axle cover", ""),
        ("took off axle cover with the puller", ""),
        ("tightened flange nut 140 Nm 7", "a number found no place"),
        ("backed off flange nut 3 turns", ""),
    ],
)
def test_what_is_left_over_beside_the_fact_is_doubted(line: str, doubt: str) -> None:
    reading = best(line)
    assert (doubt in reading.doubts) if doubt else reading.sure


def test_a_half_shaft_left_out_is_off_and_not_missing() -> None:
    reading = best("half shaft left out")
    assert reading.verb == "took_off"
    assert getattr(reading.fact, "at", ()) == ("half-shaft, left",)


def test_a_look_over_is_said_in_plain_words() -> None:
    assert best("looked over structure").sentence == "Looked over structure."


def test_a_coat_of_that_name_is_not_the_last_one() -> None:
    assert not best("coated axle top coat").fact.last_coat  # type: ignore[union-attr]
    assert best("coated axle last coat").fact.last_coat  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("line", "name"),
    [("took gasket off axle cover", "axle cover gasket"), ("undid the nut on the flange", "flange nut")],
)
def test_a_name_may_be_turned_round(line: str, name: str) -> None:
    assert best(line).joint == name


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("guessed flange nut 20 / 45 / 120 min", [20, 45, 120]),
        ("guess 2 hrs for flange nut, 5 if it fights", [120, 300]),
        ("flange nut 15min going well, 30, or 1 1/2 hours, at a guess", [15, 30, 90]),
    ],
)
def test_the_times_of_a_guess_share_their_unit(line: str, minutes: list[float]) -> None:
    assert [q.value for q in best(line).figures] == minutes
