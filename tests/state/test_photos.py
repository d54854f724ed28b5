"""Photos as the record has them: under their lines, renamed by a correction, in pairs of before and after."""

from __future__ import annotations

from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st

from tests.building import FIRST_DAY, entry
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AnyFact, Closed, Found, Photographed, Struck, Tightened, TookOff
from witnessmark.state.photos import album_from, photos_by_line

NUT, SEAL = "hub nut, left rear", "pinion seal"


def lines(*facts: AnyFact) -> list[Entry]:
    """One line a day."""
    return [entry(fact, n, FIRST_DAY + timedelta(days=n)) for n, fact in enumerate(facts, 1)]


def shown(of: int, *photos: str, at: str = NUT) -> Photographed:
    return Photographed(at=(at,), photos=photos, of=of)


def pair_names(entries: list[Entry]) -> list[tuple[str, str, str]]:
    return [(p.thing, p.before.name, p.after.name) for p in album_from(entries).pairs]


def test_a_photo_stands_under_its_line_whenever_it_was_put_there() -> None:
    entries = lines(TookOff(at=(NUT,)), Tightened(at=(NUT,)), shown(1, "a", "b"), shown(2, "c"))
    taken = album_from(entries).photos
    assert [(one.name, one.line, one.day) for one in taken] == [
        ("a", 1, entries[0].day),
        ("b", 1, entries[0].day),
        ("c", 2, entries[1].day),
    ]
    assert {line: [one.name for one in ones] for line, ones in photos_by_line(taken).items()} == {
        1: ["a", "b"],
        2: ["c"],
    }


def test_a_struck_line_takes_its_photos_along_and_a_correction_renames_them() -> None:
    opened: list[AnyFact] = [TookOff(at=(NUT,)), shown(1, "a")]
    assert album_from(lines(*opened, Struck(line=1, why="not done"))).photos == ()
    corrected = lines(*opened, Struck(line=1, why="other one", instead=TookOff(at=(SEAL,)), words="x"))
    assert [(one.name, one.at) for one in album_from(corrected).photos] == [("a", (SEAL,))]
    assert album_from(lines(*opened, Struck(line=2, why="blurred"))).photos == ()


def test_before_is_the_first_while_open_and_after_the_last_once_closed() -> None:
    assert pair_names(
        lines(
            shown(0, "before it came off"),
            TookOff(at=(NUT,)),
            shown(2, "off"),
            Found(at=(NUT,), condition="worn"),
            Tightened(at=(NUT,)),
            shown(5, "tight"),
            Closed(at=(NUT,), seen=True),
            shown(7, "closed"),
        )
    ) == [(NUT, "before it came off", "closed")]


def test_apart_twice_the_last_time_counts_once_it_is_shown_closed() -> None:
    first: list[AnyFact] = [TookOff(at=(NUT,)), shown(1, "a"), Tightened(at=(NUT,)), shown(3, "b")]
    again: list[AnyFact] = [*first, TookOff(at=(NUT,)), shown(5, "c")]
    assert pair_names(lines(*again)) == [(NUT, "a", "b")]
    assert pair_names(lines(*again, Tightened(at=(NUT,)), shown(7, "d"))) == [(NUT, "c", "d")]


def test_two_things_are_two_pairs_and_one_never_closed_is_none() -> None:
    both = (NUT, SEAL)
    entries = lines(
        TookOff(at=both), Photographed(at=both, photos=("a",), of=1), Tightened(at=(NUT,)), shown(3, "b")
    )
    assert pair_names(entries) == [(NUT, "a", "b")]


steps = st.sampled_from(
    [TookOff(at=(NUT,)), Tightened(at=(NUT,)), shown(0, "x"), Closed(at=(NUT,), seen=True)]
)


@given(st.lists(steps, max_size=12))
def test_a_pair_always_has_a_closing_between_its_two(facts: list[AnyFact]) -> None:
    numbered: list[AnyFact] = [
        shown(0, f"{n}") if isinstance(fact, Photographed) else fact for n, fact in enumerate(facts, 1)
    ]
    for pair in album_from(lines(*numbered)).pairs:
        between = numbered[pair.before.line : pair.after.line - 1]
        assert any(isinstance(fact, Tightened | Closed) for fact in between)
        assert pair.before.line < pair.after.line
