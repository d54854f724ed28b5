"""The mark on a bolt's head, said with a figure or a thread from the book (common practice, no source)."""

import pytest

from tests.words.garage import best
from witnessmark.journal.facts import ReadFigure


def read(text: str) -> ReadFigure:
    (fact,) = best(text).facts
    assert isinstance(fact, ReadFigure)
    return fact


@pytest.mark.parametrize(
    ("line", "thread", "grade"),
    [
        ("book says left rear retainer nuts 18 Nm, M8, grade 8.8", "M8", "8.8"),
        ("book says left rear retainer nuts M8 8.8 18 Nm", "M8", "8.8"),
        ("book says left rear retainer nuts M8 x 1.25 10.9 25 Nm", "M8 x 1.25", "10.9"),
        ("book: left rear retainer nuts 5/16 UNF SAE grade 5, 20 lbf ft p 37", "5/16 UNF", "SAE 5"),
        ("book says left rear retainer nuts class 12.9, 18 Nm", "", "12.9"),
        ("book says left rear retainer nuts grade s, 18 Nm", "", "S"),
        ("book says left rear retainer nuts M8 grade 8.8", "M8", "8.8"),
        ("book says left rear retainer nuts 8.8 Nm", "", ""),
        ("book says left rear retainer nuts M8 17.5 Nm", "M8", ""),
        ("book says left rear retainer nuts 18 Nm M8", "M8", ""),
    ],
)
def test_the_grade_is_kept_apart_from_figure_and_thread(line: str, thread: str, grade: str) -> None:
    fact = read(line)
    assert (fact.thread, fact.grade) == (thread, grade)
    assert grade not in fact.remark.split()
    assert ("grade " + grade in best(line).sentence) == bool(grade)


def test_an_oils_grade_is_no_bolts() -> None:
    fact = read("book says axle drain plug SAE 90")
    assert fact.grade == ""
    assert fact.fluid
