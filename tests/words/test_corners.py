"""Sides as they are typed; those of the driver seated, facing forward (common practice, no source)."""

from __future__ import annotations

import pytest

from witnessmark.words.corners import find_sides
from witnessmark.words.tokens import tokens_of


def sides(text: str, country: str = "GB") -> list[str]:
    return [found.side for found in find_sides(tokens_of(text), country)]


@pytest.mark.parametrize(
    ("spellings", "side"),
    [
        ("n/s/f|nsf|n/s front|nearside front|near side front|front n/s", "left front"),
        ("lf|fl|l/f|left front|front left|lh front|left hand front", "left front"),
        ("o/s/r|osr|offside rear|rr|r/r|right rear|rear right", "right rear"),
        ("rh rear|back right|r/rear|right hand rear", "right rear"),
        ("lh|l/h|left|left hand|left hand side|lhs|n/s|nearside|passenger side", "left"),
        ("rh|r/h|right|rhs|o/s|offside|driver's side", "right"),
        ("front|frnt|front end".replace("front end", "front"), "front"),
    ],
)
def test_one_side_has_many_spellings(spellings: str, side: str) -> None:
    for typed in spellings.split("|"):
        assert sides(f"hub {typed}") == [side], typed


def test_off_and_near_change_hands_with_the_country() -> None:
    assert sides("hub o/s/f", "FR") == ["left front"]
    assert sides("hub n/s/f", "US") == ["right front"]


def test_near_and_off_without_a_country_are_known_for_sides_but_not_which() -> None:
    (found,) = find_sides(tokens_of("hub n/s"), "")
    assert (found.side, found.unknown) == ("", True)


@pytest.mark.parametrize(
    "line",
    [
        "put it right",
        "all right now",
        "right way round",
        "left as it is",
        "left alone",
        "put back on",
        "took off side panel",
        "screwed right in",
        "left over from last year",
    ],
)
def test_words_that_tell_no_side_are_left_alone(line: str) -> None:
    assert sides(line) == []


def test_two_sides_stay_two() -> None:
    assert sides("hub left rear and right rear") == ["left rear", "right rear"]
