"""Every question answers its own example, is refused in three parts, and shows what it must."""

import re
import shlex

import pytest

from witnessmark.bench.question import Question
from witnessmark.bench.questions import ask, ask_values, every_question, find_question, questions_about
from witnessmark.bench.slip import Band, to_plain
from witnessmark.bench.slip_text import as_text
from witnessmark.ground.errors import BadInput
from witnessmark.tables.sources import cautions, sources

QUESTIONS = every_question()
OURS = ("threads", "bolts", "seals", "fits", "orings", "shims")
DRAWN = {
    "threads identify", "threads size", "bolts tighten", "bolts check", "seals driver", "fits press",
    "orings match", "orings check", "shims stack",
}  # fmt: skip
CAUTIONS = {
    "bolts tighten": {"torque-scatter", "bolt-that-lets-go"},
    "bolts check": {"torque-scatter", "bolt-that-lets-go"},
    "bolts nut_factor": {"torque-scatter"},
    "bolts adapter": {"torque-scatter", "bolt-that-lets-go"},
    "bolts engagement": {"bolt-that-lets-go"},
    "bolts turn": {"torque-scatter", "bolt-that-lets-go"},
    "seals identify": {"seal-fitting"},
    "seals driver": {"seal-fitting"},
    "fits press": {"pressing"},
    "orings match": {"ring-not-for-brakes"},
    "orings check": {"ring-not-for-brakes"},
}
EXTRA = {"seals driver": {"have": "32x36 29x41 mm"}}


def name_of(question: Question) -> str:
    """Subject and question."""
    return f"{question.subject} {question.question}"


def example(question: Question) -> dict[str, str]:
    """What its own example types."""
    words = shlex.split(question.call())[4:]
    typed = dict(word.split("=", 1) for word in words)
    return typed | EXTRA.get(name_of(question), {})


MINE = [q for q in QUESTIONS if q.subject in OURS]


def test_the_questions_of_the_contract_are_there_by_name() -> None:
    assert {name_of(q) for q in MINE} == {
        "threads identify", "threads size", "bolts tighten", "bolts check", "bolts nut_factor",
        "bolts adapter", "bolts engagement", "bolts turn", "seals identify", "seals driver",
        "fits press", "orings match", "orings check", "shims stack",
    }  # fmt: skip


def test_moments_are_told_once_and_say_no_formula() -> None:
    moments = [q.moment for q in QUESTIONS]
    assert len(set(moments)) == len(moments)
    assert not [m for m in moments if re.search(r"[=×√]", m)]


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_its_own_example_is_answered(question: Question) -> None:
    slip = ask(question.subject, question.question, example(question))
    assert (slip.subject, slip.question) == (question.subject, question.question)
    assert set(slip.asked) == set(example(question))
    assert slip.because
    assert slip.working
    assert slip.sources
    assert all(key in sources() for key in slip.sources)
    assert len(set(slip.sources)) == len(slip.sources)
    assert all(key in cautions() for key in slip.cautions)
    assert CAUTIONS.get(name_of(question), set()) <= set(slip.cautions)
    assert (slip.picture is not None) == (name_of(question) in DRAWN)
    assert to_plain(slip)["asked"]
    assert as_text(slip).startswith(name_of(question))
    assert all(re.fullmatch(r"[a-z][a-z0-9_]*", key) for key in slip.results)


@pytest.mark.parametrize("question", QUESTIONS, ids=name_of)
def test_the_call_that_is_told_is_answered_as_it_stands(question: Question) -> None:
    typed = dict(word.split("=", 1) for word in shlex.split(question.call())[4:])
    told = ask(question.subject, question.question, typed)
    assert set(told.asked) == set(typed)
    assert set(typed) >= {one.name for one in question.inputs if not one.optional}


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_every_step_of_the_working_has_numbers_or_a_reason(question: Question) -> None:
    slip = ask(question.subject, question.question, example(question))
    assert any(re.search(r"\d", line) for line in slip.working)


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_every_input_has_an_example_that_reads(question: Question) -> None:
    for one in question.inputs:
        assert one.read(one.name, one.example).typed == one.example
        assert one.help


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_what_is_missing_is_told_with_its_example(question: Question) -> None:
    needed = [i.name for i in question.inputs if not i.optional]
    if not needed:
        return
    with pytest.raises(BadInput) as trouble:
        ask(question.subject, question.question, {})
    assert all(name in trouble.value.given for name in needed)
    assert question.call() in trouble.value.do


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_an_unknown_name_is_told_with_near_ones(question: Question) -> None:
    name = question.inputs[0].name
    with pytest.raises(BadInput) as trouble:
        ask(question.subject, question.question, {name[:-1] + "x": "1"})
    assert trouble.value.near


@pytest.mark.parametrize("question", MINE, ids=name_of)
def test_results_with_scatter_hold_their_middle(question: Question) -> None:
    slip = ask(question.subject, question.question, example(question))
    bands = [r for r in slip.results.values() if isinstance(r, Band) and r.low is not None]
    assert all(b.low <= b.value <= (b.high or b.value) for b in bands if b.low is not None)


def test_an_unknown_subject_or_question_is_told_with_near_ones() -> None:
    with pytest.raises(BadInput) as trouble:
        questions_about("thread")
    assert "threads" in trouble.value.near
    with pytest.raises(BadInput) as trouble:
        find_question("threads", "identity")
    assert trouble.value.near == ("identify",)
    with pytest.raises(BadInput, match="Give one of these"):
        find_question("bolts", "zzz")


def test_values_ask_without_words() -> None:
    slip = ask_values("bolts", "nut_factor", thread="M8", friction_thread=0.12, friction_head=0.12)
    assert slip.band("nut_factor").value == pytest.approx(0.16, abs=0.02)


def test_a_file_is_read_by_the_shell() -> None:
    typed = {"bore": "36.2 mm", "shaft": "31.8 mm", "have": "@drawer.csv"}
    files = {"drawer.csv": "name,inside mm,outside mm\ntube,32,36\n"}
    slip = ask("seals", "driver", typed, files)
    assert slip.rows()[0]["driver"] == "tube"
    assert slip.asked["have"].typed == "@drawer.csv"
    with pytest.raises(BadInput, match="was not read"):
        ask("seals", "driver", typed)
