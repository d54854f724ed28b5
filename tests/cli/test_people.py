"""The command that says who may log in."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from tests.cli.running import run

PHRASE = "four rusty bolts and tea"


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(PHRASE + "\n"))


@pytest.mark.usefixtures("typed")
def test_an_owner_is_added_listed_and_taken_out(tmp_path: Path) -> None:
    said = run(tmp_path, "people", "--add", "Ada", "--as", "owner")
    assert (said.code, said.out) == (0, "Ada may log in, as owner.\n")
    assert run(tmp_path, "people", str(tmp_path), "--json").json() == [{"name": "Ada", "role": "owner"}]
    assert run(tmp_path, "people").out == "Ada, owner\n"
    assert run(tmp_path, "people", "--log-out", "ada").out == "Ada is logged out everywhere.\n"
    assert run(tmp_path, "people", "--remove", "ada").out == "Ada is taken out.\n"
    assert "No owner yet" in run(tmp_path, "people").out


@pytest.mark.usefixtures("typed")
def test_who_is_added_without_a_role_helps(tmp_path: Path) -> None:
    assert "as helper" in run(tmp_path, "people", "--add", "Ott").out


def test_a_phrase_is_never_among_the_words_of_a_command(tmp_path: Path) -> None:
    said = run(tmp_path, "people", "--add", "Ada", "--phrase", PHRASE)
    assert said.code == 2
    assert "Would hold: one of --add" in said.err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--add", "Ada", "--as", "king"), "king"),
        (("--remove", "Eve"), "nobody is called"),
        (("nowhere",), "there is no folder"),
    ],
)
def test_what_will_not_do_is_told(tmp_path: Path, words: tuple[str, ...], told: str) -> None:
    said = run(tmp_path, "people", *words)
    assert said.code == 2
    assert told in said.err
    assert "Do:" in said.err


def test_a_short_phrase_adds_nobody(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("short\n"))
    assert run(tmp_path, "people", "--add", "Ada").code == 2
    assert run(tmp_path, "people", "--json").json() == []
