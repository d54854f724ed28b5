from __future__ import annotations

from pathlib import Path

import pytest

from witnessmark.store import scratch
from witnessmark.store.scratch import FILE, Scratch, answer_key

KEY = answer_key("owed", last_line=7, seed=1, version="0.1.0")


def test_an_answer_is_found_again_by_another_hand(tmp_path: Path) -> None:
    Scratch(tmp_path).put(KEY, b"\x00\xffanswer")
    assert Scratch(tmp_path).get(KEY) == b"\x00\xffanswer"


@pytest.mark.parametrize(
    "other",
    [
        answer_key("owed", last_line=8, seed=1, version="0.1.0"),
        answer_key("owed", last_line=7, seed=2, version="0.1.0"),
        answer_key("owed", last_line=7, seed=1, version="0.2.0"),
        answer_key("needs", last_line=7, seed=1, version="0.1.0"),
    ],
)
def test_an_answer_to_anything_else_is_not_found(tmp_path: Path, other: str) -> None:
    Scratch(tmp_path).put(KEY, b"answer")
    assert Scratch(tmp_path).get(other) is None


def test_a_later_answer_takes_the_place_of_an_earlier(tmp_path: Path) -> None:
    kept = Scratch(tmp_path)
    kept.put(KEY, b"one")
    kept.put(KEY, b"two")
    assert kept.get(KEY) == b"two"


def test_asking_makes_no_file(tmp_path: Path) -> None:
    assert Scratch(tmp_path).get(KEY) is None
    assert list(tmp_path.iterdir()) == []


def test_the_file_may_be_deleted_between_any_two_calls(tmp_path: Path) -> None:
    kept = Scratch(tmp_path)
    kept.put(KEY, b"answer")
    (tmp_path / FILE).unlink()
    assert kept.get(KEY) is None
    kept.put(KEY, b"again")
    assert kept.get(KEY) == b"again"
    kept.forget()
    kept.forget()
    assert kept.get(KEY) is None


def test_a_broken_file_counts_as_nothing_kept_and_is_replaced(tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"no database " * 1000)
    kept = Scratch(tmp_path)
    assert kept.get(KEY) is None
    kept.put(KEY, b"answer")
    assert kept.get(KEY) == b"answer"


def test_a_folder_that_is_not_there_keeps_nothing(tmp_path: Path) -> None:
    kept = Scratch(tmp_path / "gone")
    kept.put(KEY, b"answer")
    assert kept.get(KEY) is None


def test_the_oldest_answers_go_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(scratch, "MOST", 2)
    kept = Scratch(tmp_path)
    for name in ("a", "b", "c"):
        kept.put(name, name.encode())
    assert [kept.get(name) for name in ("a", "b", "c")] == [None, b"b", b"c"]
