"""Who may log in, with what, for how long, and how often one may guess."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import argon2
import pytest

from witnessmark.ground.errors import BadInput
from witnessmark.restoration import phrases
from witnessmark.restoration.people import (
    IDLE,
    LONGEST,
    MOST_BY_NAME,
    MOST_FROM,
    WINDOW,
    People,
    TooManyTries,
    usable_name,
)
from witnessmark.restoration.phrases import hashed, is_old, is_right, usable_phrase

NOW = datetime(2026, 3, 14, 11, 20)
PHRASE = "four rusty bolts and tea"


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """A hash that takes a millisecond: its strength has a test of its own."""
    monkeypatch.setattr(phrases, "_HASHER", argon2.PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))
    phrases._nobodys.cache_clear()


@pytest.fixture
def people(tmp_path: Path) -> People:
    made = People(tmp_path)
    made.add("Ada", "owner", PHRASE)
    made.add("Ott", "helper", "wet paint on a cold door")
    return made


def log_in(people: People, name: str = "Ada", phrase: str = PHRASE, source: str = "10.0.0.7") -> str:
    return people.log_in(name, phrase, source=source, now=NOW)


# ---- phrases


def test_the_kept_hash_is_argon2id_within_the_bounds_of_rfc_9106() -> None:
    """RFC 9106, section 4, second recommended option: t=3, p=4, m=2**16 KiB; a salt of 16 bytes, a tag of 32.

    The figures are from memory of the text.
    """
    kept = argon2.PasswordHasher().hash("x")
    bounds = argon2.extract_parameters(kept)
    assert (bounds.type, bounds.time_cost, bounds.parallelism) == (argon2.Type.ID, 3, 4)
    assert (bounds.memory_cost, bounds.salt_len, bounds.hash_len) == (2**16, 16, 32)


def test_the_program_hashes_with_those_bounds(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()
    assert argon2.extract_parameters(hashed(PHRASE)).memory_cost == 2**16


def test_two_hashes_of_one_phrase_differ_and_both_are_right() -> None:
    one, two = hashed(PHRASE), hashed(PHRASE)
    assert one != two
    assert PHRASE not in one
    assert is_right(one, PHRASE)
    assert is_right(two, PHRASE)
    assert not is_right(one, PHRASE + " ")


def test_a_phrase_is_the_same_however_a_device_composes_its_letters() -> None:
    assert is_right(hashed(usable_phrase("Größe zwölf Mütter")), "Gro\u0308ße zwo\u0308lf Mu\u0308tter")


@pytest.mark.parametrize(
    "typed", ["", "short", "x" * 11, "x" * 129, "abababababab", "nul\x00in the middle", "qwerty123456"]
)
def test_a_phrase_that_will_not_do_is_told(typed: str) -> None:
    with pytest.raises(BadInput, match="a pass phrase"):
        usable_phrase(typed)


def test_ones_own_name_with_a_number_is_no_phrase() -> None:
    with pytest.raises(BadInput, match="try first"):
        usable_phrase("Ada of Ottermere 1957", "Ada of Ottermere")


@pytest.mark.parametrize(
    "typed", ["a b c d e f ", "x1" * 5 + " tea", "🔧🔩🛞🚗⚙️ and tea, twelve", "x" * 100 + "yzabc "]
)
def test_any_letters_and_spaces_may_be_in_a_phrase(typed: str) -> None:
    assert usable_phrase(typed)


@pytest.mark.parametrize("kept", ["", "nonsense", "$argon2id$v=19$m=8,t=1,p=1$AAAA$BBBB"])
def test_nothing_is_right_without_a_hash(kept: str) -> None:
    assert not is_right(kept, PHRASE)
    assert not is_right(kept, "nobody's pass phrase")


def test_a_hash_of_old_bounds_is_made_anew_at_the_next_log_in(
    people: People, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(phrases, "_HASHER", argon2.PasswordHasher(time_cost=2, memory_cost=8, parallelism=1))
    assert is_old(people.everybody()[0].phrase)
    key = log_in(people)
    assert not is_old(people.everybody()[0].phrase)
    assert people.whose(key, NOW) is not None


# ---- people


def test_people_are_added_changed_and_taken_out(people: People) -> None:
    assert [(one.name, one.role) for one in people.everybody()] == [("Ada", "owner"), ("Ott", "helper")]
    people.change_phrase("ott", "another cold wet door")
    assert log_in(people, "Ott", "another cold wet door")
    people.remove("OTT")
    with pytest.raises(BadInput, match="do not belong together"):
        log_in(people, "Ott", "another cold wet door")


def test_a_name_stands_once_whatever_its_capitals(people: People) -> None:
    with pytest.raises(BadInput, match="there already"):
        people.add(" ADA ", "helper", PHRASE)


def test_the_last_owner_stays_while_there_are_others(people: People) -> None:
    with pytest.raises(BadInput, match="last owner"):
        people.remove("Ada")
    people.remove("Ott")
    people.remove("Ada")
    assert people.everybody() == ()


@pytest.mark.parametrize("name", ["", "   ", "x" * 41, "a\x00b", "\u202eadA"])
def test_a_name_that_will_not_do_is_told(name: str) -> None:
    with pytest.raises(BadInput, match="the name"):
        usable_name(name)


def test_an_unknown_role_or_name_is_told(people: People) -> None:
    with pytest.raises(BadInput, match="role 'king'"):
        people.add("Eve", "king", PHRASE)
    with pytest.raises(BadInput, match="nobody is called"):
        people.change_phrase("Eve", PHRASE)


# ---- log-ins


def test_a_key_opens_and_is_kept_nowhere(people: People, tmp_path: Path) -> None:
    key = log_in(people)
    person = people.whose(key, NOW)
    assert person is not None
    assert person.name == "Ada"
    assert len(key) >= 43  # 32 random bytes
    assert key.encode() not in (tmp_path / "doors.db").read_bytes()
    assert PHRASE.encode() not in (tmp_path / "doors.db").read_bytes()
    assert people.whose("", NOW) is None
    assert people.whose(key + "x", NOW) is None
    assert log_in(people) != key


def test_a_log_in_ends_when_it_lies_idle(people: People) -> None:
    key = log_in(people)
    seen = NOW + IDLE - timedelta(minutes=1)
    assert people.whose(key, seen) is not None
    assert people.whose(key, seen + IDLE) is not None
    assert people.whose(key, seen + IDLE + IDLE + timedelta(seconds=1)) is None
    assert people.whose(key, NOW) is None  # ended, not asleep


def test_a_log_in_ends_after_its_longest_time_however_much_it_is_used(people: People) -> None:
    key = log_in(people)
    moment = NOW
    while moment - NOW <= LONGEST:
        assert people.whose(key, moment) is not None
        moment += timedelta(hours=6)
    assert people.whose(key, moment) is None


def test_logging_out_ends_this_one_only(people: People) -> None:
    one, two = log_in(people), log_in(people)
    people.log_out(one)
    assert people.whose(one, NOW) is None
    assert people.whose(two, NOW) is not None
    people.end_log_ins("Ada")
    assert people.whose(two, NOW) is None


def test_changing_ones_own_phrase_needs_the_old_one_and_ends_every_log_in(people: People) -> None:
    key = log_in(people)
    with pytest.raises(BadInput, match="not yours now"):
        people.renew_phrase("Ada", "wrong wrong wrong", "a new cold morning", source="1", now=NOW)
    assert people.whose(key, NOW) is not None
    people.renew_phrase("Ada", PHRASE, "a new cold morning", source="1", now=NOW)
    assert people.whose(key, NOW) is None
    assert log_in(people, phrase="a new cold morning")


# ---- guessing


def test_neither_name_nor_phrase_is_given_away(people: People) -> None:
    said = set()
    for name, phrase in (("Ada", "wrong wrong wrong"), ("Eve", PHRASE), ("", ""), ("Ada", "")):
        with pytest.raises(BadInput) as told:
            log_in(people, name, phrase, source=name)
        said.add(f"{told.value}")
    assert len(said) == 1


def test_guesses_from_one_address_are_few_then_a_spell_must_pass(people: People) -> None:
    for _ in range(MOST_FROM):
        with pytest.raises(BadInput, match="do not belong together"):
            log_in(people, phrase="wrong wrong wrong")
    with pytest.raises(TooManyTries):
        log_in(people)  # even the right one
    assert log_in(people, source="10.0.0.8")
    assert people.log_in("Ada", PHRASE, source="10.0.0.7", now=NOW + WINDOW + timedelta(seconds=1))


def test_guesses_at_one_name_are_bounded_wherever_they_come_from(people: People) -> None:
    """OWASP ASVS 4.0.3, 2.2.1: no more than 100 failed tries an hour on one account (from memory)."""
    for n in range(MOST_BY_NAME):
        with pytest.raises(BadInput):
            log_in(people, phrase="wrong wrong wrong", source=f"10.0.0.{n}")
    with pytest.raises(TooManyTries):
        log_in(people, source="10.0.1.1")
    assert timedelta(hours=1) / WINDOW * MOST_BY_NAME <= 100
    assert log_in(people, "Ott", "wet paint on a cold door", source="10.0.1.1")


def test_right_ones_do_not_count(people: People) -> None:
    for _ in range(MOST_FROM + 2):
        assert log_in(people)
