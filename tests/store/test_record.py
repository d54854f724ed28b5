"""What any store of a record must do: the same tests on a file and on a real database server."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from tests.journal.lines import describing, entry, unwritten
from tests.store.place import Place
from witnessmark.ground.errors import BadInput, LostRace, RecordDamaged
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Measured, Ordered, Remarked, Struck, TookOff
from witnessmark.store.record_store import NotWritten, RecordStore

ONE, TWO, THREE = (unwritten(n, Remarked(remark=f"number {n}")) for n in (1, 2, 3))


def remarks(record: RecordStore) -> list[str]:
    """The remark of every line."""
    return [e.fact.remark for e in record.read()]


def test_what_was_written_reads_back_equal_by_another_hand(place: Place) -> None:
    facts: list[AnyFact] = [
        describing("wheel nuts"),
        TookOff(at=("wheel nuts",)),
        Struck(line=2, why="no", instead=Remarked()),
    ]
    with place.create() as record:
        written = record.append([unwritten(n, fact, time="10:40") for n, fact in enumerate(facts, 1)], 0)
    with place.reopen() as again:
        assert again.read() == written
        assert written == tuple(entry(n, fact, time="10:40") for n, fact in enumerate(facts, 1))
        assert again.last_line() == 3


def test_an_empty_record_reads_as_nothing(place: Place) -> None:
    with place.create() as record:
        assert (record.read(), record.last_line(), record.append([], 0)) == ((), 0, ())


def test_the_store_gives_the_numbers_whatever_was_handed_over(place: Place) -> None:
    with place.create() as record:
        assert [e.line for e in record.append([entry(40, Remarked()), entry(7, Remarked())], 0)] == [1, 2]


@pytest.mark.parametrize("expected", [0, 1, 3])
def test_another_hand_first_means_nothing_written_and_nothing_lost(place: Place, expected: int) -> None:
    with place.create() as record, place.reopen() as other:
        other.append([ONE, TWO], 0)
        with pytest.raises(LostRace) as caught:
            record.append([THREE], expected)
        assert isinstance(caught.value, NotWritten)
        assert (caught.value.unwritten, caught.value.last) == ((THREE,), 2)
        assert remarks(record) == ["number 1", "number 2"]
        assert record.append(caught.value.unwritten, caught.value.last)[0].line == 3


def test_a_retry_is_handed_the_stored_line_and_writes_nothing(place: Place) -> None:
    with place.create() as record:
        (first,) = record.append([ONE], 0)
        record.append([TWO], 1)
        assert record.append([ONE], 0) == (first,)
        assert record.last_line() == 2


def test_a_retry_some_minutes_later_is_still_a_retry(place: Place) -> None:
    fact = Remarked(remark="drum scored")
    with place.create() as record:
        record.append([unwritten(1, fact, time="10:40", written="2026-03-14T10:40:00")], 0)
        again = unwritten(1, fact, time="10:43", written="2026-03-14T10:43:00")
        assert [e.time for e in record.append([again], 0)] == ["10:40"]


def test_a_retry_with_something_new_behind_it_writes_only_the_new(place: Place) -> None:
    with place.create() as record:
        record.append([ONE], 0)
        assert [e.line for e in record.append([ONE, TWO], 1)] == [1, 2]
        with pytest.raises(NotWritten):
            record.append([ONE, THREE], 1)


@pytest.mark.parametrize(
    "other",
    [
        unwritten(1, Remarked(remark="another"), words=ONE.words),
        unwritten(1, ONE.fact, words="other words"),
        unwritten(1, ONE.fact, words=ONE.words, day="2026-03-13"),
        unwritten(1, ONE.fact, words=ONE.words, who="helper"),
    ],
)
def test_the_same_id_with_something_else_to_say_is_refused(place: Place, other: object) -> None:
    with place.create() as record:
        record.append([ONE], 0)
        with pytest.raises(BadInput, match="carries the id of line 1"):
            record.append([TWO, other], 1)  # type: ignore[list-item]
        assert remarks(record) == ["number 1"]


def test_the_same_line_twice_in_one_go_is_written_once(place: Place) -> None:
    with place.create() as record:
        assert [e.line for e in record.append([ONE, TWO, ONE], 0)] == [1, 2, 1]


@pytest.mark.parametrize(
    "bad",
    [
        unwritten(9, Measured(figures=(Quantity("?", math.nan, "mm"),))),
        unwritten(9, Measured(figures=(Quantity("?", math.inf, "mm"),))),
        unwritten(9, Measured(figures=(Quantity("?", 10**400, "mm"),))),
        unwritten(9, Ordered(item="pin", price=math.nan)),
        unwritten(9, Remarked(remark="half a character \ud83d")),
        unwritten(9, Remarked(at=(3,))),  # type: ignore[arg-type]
        unwritten(9, "took off the wheel"),  # type: ignore[arg-type]
    ],
)
def test_what_would_not_read_back_is_refused_with_all_that_came_with_it(place: Place, bad: object) -> None:
    with place.create() as record:
        with pytest.raises(BadInput, match="nothing was written"):
            record.append([ONE, bad], 0)  # type: ignore[list-item]
        assert record.read() == ()


def test_a_line_without_an_id_is_refused(place: Place) -> None:
    with place.create() as record, pytest.raises(BadInput, match="carries no id"):
        record.append([replace(ONE, id="")], 0)


@pytest.mark.parametrize(
    "words", ["", "  ", "line\nbreak", "nul\x00inside", "Größe ⌀ 12 · 🔧", "'; DROP TABLE entries; --"]
)
def test_words_come_back_as_typed(place: Place, words: str) -> None:
    with place.create() as record:
        record.append([replace(ONE, words=words, who=words)], 0)
        (back,) = record.read()
        assert (back.words, back.who) == (words, words)


def test_a_record_is_begun_once(place: Place) -> None:
    with place.create() as record:
        record.append([ONE], 0)
    with pytest.raises(BadInput, match="already exists"):
        place.create()
    with place.reopen() as record:
        assert record.last_line() == 1


def test_a_row_that_cannot_be_read_is_named(place: Place) -> None:
    with place.create() as record:
        record.append([ONE], 0)
        raw = place.raw()
        raw.execute(
            "INSERT INTO entries VALUES (2, 'x', '2026-03-14', '10:00', '', '', '', 1, '{\"did\": \"flew\"}')"
        )
        raw.close()
        with pytest.raises(RecordDamaged, match="line 2 of the record"):
            record.read()


def test_an_id_that_no_store_would_keep_whole_is_refused(place: Place) -> None:
    with place.create() as record, pytest.raises(BadInput, match="carries no id"):
        record.append([replace(ONE, id="a\x00b")], 0)


@pytest.mark.parametrize("odd", ["back\\slash", "'quote'", "%s", "{}", "ünï"])
def test_an_odd_id_is_known_again(place: Place, odd: str) -> None:
    with place.create() as record:
        first = record.append([replace(ONE, id=odd)], 0)
        assert record.append([replace(ONE, id=odd)], 0) == first
        assert record.last_line() == 1
