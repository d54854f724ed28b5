"""What holds for every line: nothing typed is lost, nothing raises, what is sure reads back the same."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from msgspec import json as wire

from tests.words.garage import TODAY, VOCABULARY, best, understood
from witnessmark.journal.wire import fact_from_json, fact_to_json
from witnessmark.words.lexicon import lexicon
from witnessmark.words.read import read_line
from witnessmark.words.tokens import tokens_of
from witnessmark.words.understood import Reading, as_json
from witnessmark.words.verbs import verb_words

# Words that no list knows: every one of them has to turn up in what was understood.
STRANGE = st.text("bcdfghjkmpqvwxz", min_size=6, max_size=9).filter(
    lambda w: w not in lexicon().every and not w.startswith("b4")
)
ORDINARY = st.sampled_from(sorted(w for w in verb_words() | lexicon().every if w.isalpha()))
NAMES = st.sampled_from(sorted(VOCABULARY.vehicle.joints))
NUMBERS = st.sampled_from(
    [
        "37",
        "140 Nm",
        "1.1 L",
        "2 h",
        "£6.40",
        "M8",
        "5/16 UNF",
        "10:40",
        "38 x 60 x 10",
        "yesterday",
        "n/s",
        "osr",
        ",",
        ".",
        "-",
        "?",
    ]
)
LINES = st.lists(st.one_of(ORDINARY, STRANGE, NAMES, NUMBERS), max_size=12).map(" ".join)

PLAIN_VERBS = st.sampled_from(
    [
        "took off",
        "opened",
        "slackened",
        "nipped up",
        "tightened",
        "marked",
        "looked at",
        "photo of",
        "fitted",
        "closed",
        "stored",
        "proved",
    ]
)


def told(reading: Reading) -> str:
    """Everything a reading says, as one text."""
    facts = " ".join(wire.encode(fact).decode() for fact in reading.facts)
    return f"{reading.sentence} {reading.remark} {facts}".lower()


@given(st.text())
def test_no_text_makes_it_raise(text: str) -> None:
    reading = understood(text).best
    assert reading.facts
    assert reading.sentence.endswith((".", text.strip()[-1:] or "."))


@given(LINES)
def test_no_mixture_of_the_trades_own_words_makes_it_raise(line: str) -> None:
    reading = understood(line).best
    assert all(fact_from_json(fact_to_json(fact)) == fact for fact in reading.facts)


@given(LINES, st.lists(STRANGE, min_size=1, max_size=3))
def test_a_word_it_does_not_know_is_never_dropped(line: str, strange: list[str]) -> None:
    reading = understood(" ".join([strange[0], line, *strange[1:]])).best
    assert all(word in told(reading) for word in strange)


@given(LINES)
def test_every_number_typed_turns_up_again(line: str) -> None:
    reading = understood(line).best
    numbers = [t.text for t in tokens_of(line) if t.sort == "number"]
    said = told(reading)
    days = {"10:40"} if reading.time or reading.verb == "held" else set()
    assert all(n in said or n in days for n in numbers if n not in ("140", "1.1", "6.40", "2"))


@given(LINES)
def test_the_spans_left_over_are_the_words_of_the_remark(line: str) -> None:
    reading = understood(line).best
    assert all(0 <= a < b <= len(line) for a, b in reading.unplaced)
    assert ", ".join(line[a:b] for a, b in reading.unplaced) == reading.remark
    assert list(reading.unplaced) == sorted(reading.unplaced)


@given(LINES)
def test_sure_means_without_any_doubt(line: str) -> None:
    read = understood(line)
    assert read.best.sure == (not read.best.doubts)
    assert not (read.best.sure and (read.others or read.ask))


@given(PLAIN_VERBS, NAMES)
def test_a_known_name_is_read_surely_wherever_the_verb_stands(verb: str, name: str) -> None:
    spoken = name.replace(",", "")
    reading = best(f"{verb} {spoken}")
    assert reading.sure, reading.doubts
    assert getattr(reading.fact, "at", None) == (name,)
    assert reading.remark == ""


@given(PLAIN_VERBS, NAMES)
def test_the_sentence_of_a_sure_reading_reads_back_as_the_same_fact(verb: str, name: str) -> None:
    first = best(f"{verb} {name.replace(',', '')}")
    again = best(first.sentence)
    assert again.facts == first.facts
    assert again.sentence == first.sentence


@given(LINES)
def test_reading_twice_gives_the_same(line: str) -> None:
    assert read_line(line, VOCABULARY, today=TODAY) == read_line(line, VOCABULARY.vehicle, today=TODAY)


@given(LINES)
def test_the_plain_values_carry_the_agreed_names(line: str) -> None:
    shown = as_json(understood(line), line=7, owes=("a",))
    assert list(shown) == [
        "reading",
        "verb",
        "part",
        "joint",
        "side",
        "figures",
        "remark",
        "sure",
        "others",
        "line",
        "owes",
    ]
    assert all(set(figure) == {"typed", "value", "unit"} for figure in shown["figures"])
    assert wire.decode(wire.encode(shown)) == shown
