"""The likelihood beside the rules: whole, learned from the lines that lie here, and alone never enough."""

from __future__ import annotations

from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.words.garage import TODAY, VOCABULARY, best
from tests.words.more import LISTS, digest, kinds_of, more_rows
from witnessmark.tables.weights import read_weights
from witnessmark.words.builders import BUILDERS
from witnessmark.words.choosing import REMARKED, Choice
from witnessmark.words.likelihood import WEIGHTS, likelihoods, telling
from witnessmark.words.line import take_apart
from witnessmark.words.naming import find_names
from witnessmark.words.telltales import telltales

WORDS = [
    "took",
    "off",
    "hub nut",
    "left rear",
    "fitted",
    "new seal",
    "47 Nm",
    "rained",
    "ordered",
    ",",
    "by",
    "brathwick",
]


def weighed(text: str) -> Choice:
    line = take_apart(text, VOCABULARY, TODAY)
    return Choice(line, find_names(line, VOCABULARY))


@given(st.lists(st.sampled_from(WORDS), max_size=9))
def test_the_likelihoods_of_all_kinds_make_one(words: list[str]) -> None:
    line = take_apart(" ".join(words), VOCABULARY, TODAY)
    found = likelihoods(line, find_names(line, VOCABULARY))
    assert sum(exp(score) for score in found.values()) == pytest.approx(1.0)


def test_every_kind_it_tells_can_be_built() -> None:
    assert set(read_weights(WEIGHTS).kinds) <= set(BUILDERS)


def test_the_weights_were_learned_from_the_lines_that_lie_here() -> None:
    assert read_weights(WEIGHTS).digest == digest()


def test_of_the_lines_it_was_learned_from_it_tells_nearly_all() -> None:
    right = read_weights(WEIGHTS).right
    assert all(right[name] >= 0.95 * len(more_rows(name)) for name in LISTS)


def test_the_held_out_lines_are_none_of_those_it_was_learned_from() -> None:
    held = {row["line"] for name in ("sixty", "fresh") for row in more_rows(name)}
    learned = {row["line"] for name in ("practice", "invented", "story", *LISTS) for row in more_rows(name)}
    assert len(held) == 240
    assert not held & learned


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("hub nut left rear gave up at last with a long bar", "took_off"),
        ("that seal left rear is in the skip", "scrapped"),
        ("kettle on, too cold for anything", REMARKED),
    ],
)
def test_a_kind_is_told_by_words_that_no_phrase_holds(line: str, kind: str) -> None:
    assert weighed(line).order[0] == kind
    assert not best(line).sure or kind == REMARKED


def test_the_records_own_word_outweighs_the_company_it_keeps() -> None:
    assert weighed("fitted hub nut left rear, a bit of sun, postman waved").order[0] == "fitted"


@pytest.mark.parametrize("line", ["hub nut left rear, funny story", "drum left rear"])
def test_no_debt_is_paid_by_the_company_of_words(line: str) -> None:
    choice = weighed(line)
    paying = {"proved", "put_right", "watched_fire", "closed"}
    assert not [tag for tag in choice.order if tag in paying and not telling(choice.line, choice.hits, tag)]


def test_a_name_of_the_vehicle_is_one_telltale_whatever_it_is() -> None:
    def told(text: str) -> tuple[str, ...]:
        line = take_apart(text, VOCABULARY, TODAY)
        return telltales(line, find_names(line, VOCABULARY))

    assert told("took off hub nut left rear") == told("took off drum left rear")
    assert "m <name>" in told("took off hub nut left rear")


def test_the_lists_say_what_kind_each_line_is() -> None:
    assert all(set(kinds_of(row)) <= set(BUILDERS) for name in LISTS for row in more_rows(name))
