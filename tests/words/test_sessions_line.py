"""When there is time, as it is typed; and that other lines are left to the reader of facts."""

from __future__ import annotations

from datetime import date

import pytest

from witnessmark.journal.facts import Arranged, CalledOff, Freed, LeftSetUp
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.read import read_line
from witnessmark.words.sessions_line import read_sessions_line, said_rule

TODAY = date(2026, 3, 4)
NOT_IN_AUGUST = "FREQ=WEEKLY;BYDAY=SA;BYMONTH=1,2,3,4,5,6,7,9,10,11,12"

LINES = [
    ("sessions Saturdays 9-13, not in August", Arranged(rule=NOT_IN_AUGUST, start="09:00", end="13:00")),
    ("session every saturday 9 to 1", Arranged(rule="FREQ=WEEKLY;BYDAY=SA", start="09:00", end="13:00")),
    (
        "also sessions wed 7pm-9pm with helper",
        Arranged(rule="FREQ=WEEKLY;BYDAY=WE", start="19:00", end="21:00", helper=True, also=True),
    ),
    (
        "sessions every other sunday 10.30-14",
        Arranged(rule="FREQ=WEEKLY;INTERVAL=2;BYDAY=SU", start="10:30", end="14:00"),
    ),
    ("sessions sat and sun 9-13", Arranged(rule="FREQ=WEEKLY;BYDAY=SA,SU", start="09:00", end="13:00")),
    ("no session 14 March, wedding", CalledOff(first="2026-03-14", why="wedding")),
    ("no sessions 24 December to 2 January", CalledOff(first="2026-12-24", last="2027-01-02")),
    (
        "free 20 and 21 June 9-17 with helper",
        Freed(first="2026-06-20", last="2026-06-21", start="09:00", end="17:00", helper=True),
    ),
    ("the welder corner does not stay set up", LeftSetUp(place="welder corner", stays=False)),
    ("workbench stays set up over the week", LeftSetUp(place="workbench", stays=True)),
]


@pytest.mark.parametrize(("line", "fact"), LINES)
def test_a_line_becomes_its_fact_through_the_reader_of_all_lines(line: str, fact: object) -> None:
    understood = read_line(line, Vehicle(), today=TODAY)
    assert understood.best.facts == (fact,)
    assert understood.best.sure


@pytest.mark.parametrize(("line", "fact"), LINES)
def test_the_sentence_reads_back_as_the_same_fact(line: str, fact: object) -> None:
    said = read_line(line, Vehicle(), today=TODAY).best.sentence
    again = read_sessions_line(said, TODAY)
    assert again is not None
    assert again.best.facts == (fact,)


@pytest.mark.parametrize(
    "line",
    [
        "held 9:00 to 13:00",
        "free the seized nut",
        "free play 3 mm",
        "no session rust",
        "sessions Saturdays 13-9 am",
        "sessions some day 9-13",
        "no session 31 February",
        "no sessions 2 June to 1 May 2026",
        "bench stays",
    ],
)
def test_what_says_something_else_is_left_alone(line: str) -> None:
    assert read_sessions_line(line, TODAY) is None


def test_a_rule_that_was_brought_in_is_shown_as_it_stands() -> None:
    rule = Arranged(rule="FREQ=MONTHLY;BYDAY=1SA", start="09:00", end="12:00")
    assert said_rule(rule) == "Sessions arranged: FREQ=MONTHLY;BYDAY=1SA, 09:00-12:00."
