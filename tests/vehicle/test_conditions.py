"""Words for what is found: what each says for the record (common practice, no source)."""

from __future__ import annotations

import pytest

from witnessmark.vehicle.conditions import condition, conditions


def test_no_way_of_typing_means_two_conditions() -> None:
    forms = [form for each in conditions().values() for form in (each.word, *each.forms)]
    assert len(forms) == len(set(forms))


@pytest.mark.parametrize(
    ("typed", "word", "bad", "fights", "loosens"),
    [
        ("seized solid", "seized", True, True, False),
        ("weeps", "weeping", True, False, False),
        ("sheared off", "sheared", True, True, True),
        ("Not There", "missing", True, False, True),
        ("fine", "good", False, False, False),
    ],
)
def test_a_form_says_what_its_word_says(
    typed: str, word: str, bad: bool, fights: bool, loosens: bool
) -> None:
    found = condition(typed)
    assert (found.word, found.bad, found.fights, found.loosens) == (word, bad, fights, loosens)


def test_an_unknown_word_says_nothing() -> None:
    found = condition("mauve")
    assert (found.word, found.bad, found.good, found.fights, found.loosens) == (
        "mauve",
        False,
        False,
        False,
        False,
    )


def test_nothing_is_good_and_bad_at_once() -> None:
    assert all(each.good != each.bad for each in conditions().values())
