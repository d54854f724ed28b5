"""How published values are counted."""

from collections import Counter

import pytest

from tests.published.listing import by_question, modules, report
from tests.published.printed import COUNTED_PER_QUESTION, COUNTED_PER_SOURCE, Printed, agrees
from witnessmark.bench.questions import every_question


def test_no_question_and_no_source_counts_too_often() -> None:
    assert {q: n for q, n in by_question().items() if n > COUNTED_PER_QUESTION} == {}
    assert {m.__name__: len(m.PRINTED) for m in modules() if len(m.PRINTED) > COUNTED_PER_SOURCE} == {}


def test_no_value_counts_twice() -> None:
    every = Counter((m.__name__, one.question, one.what) for m in modules() for one in m.PRINTED)
    assert [key for key, n in every.items() if n > 1] == []


def test_every_value_is_said_of_a_question_that_exists() -> None:
    known = {f"{q.subject} {q.question}" for q in every_question()}
    assert set(by_question()) - known == set()


def test_what_does_not_count_says_why() -> None:
    beside = [one for m in modules() for one in (*m.BESIDE, *m.NOT_REPRODUCED)]
    assert [one.what for one in beside if not one.why] == []


def test_every_source_says_how_it_was_seen() -> None:
    assert {m.SOURCE.seen for m in modules()} <= {"page", "excerpt"}
    assert "values count" in report()


@pytest.mark.parametrize(("printed", "value", "near"), [("43.80", 43.803, True), ("43.80", 43.806, False)])
def test_near_means_half_of_the_last_digit_printed(printed: str, value: float, near: bool) -> None:
    assert agrees(Printed("q", "w", printed, lambda: value)) is near
