"""The whole job with the record on a database server: one setting, the same commands."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.running import run
from tests.store.place import new_place
from tests.store.server import Server
from witnessmark.store.kept_at import SETTING


@pytest.fixture
def kept_at(server: Server, tmp_path: Path) -> str:
    return new_place(tmp_path, server.address).kept_at


def test_a_record_on_a_server_is_begun_written_asked_and_carried_home(kept_at: str, tmp_path: Path) -> None:
    shed, home = tmp_path / "shed", tmp_path / "home"
    assert run(shed, "begin", "the orchard trailer", "--body", "trailer", "--kept-at", kept_at).code == 0
    assert (shed / SETTING).read_text(encoding="utf-8").strip() == kept_at
    assert run(shed, "write", "took off wheel nuts left", "--kind", "wheel-nuts", "--yes").code == 0
    owed = run(shed, "owed", "--json").json()
    assert {row["joint"] for row in owed} >= {"wheel nuts, left"}
    assert run(shed, "check").code == 0
    assert run(shed, "export", str(tmp_path / "out.zip")).code == 0
    assert run(home, "import", str(tmp_path / "out.zip")).code == 0
    assert run(home, "owed", "--json").json() == owed
    assert (home / "journal.db").is_file()


def test_a_setting_that_will_not_do_is_told_in_three_parts(tmp_path: Path) -> None:
    said = run(tmp_path, "begin", "the trailer", "--kept-at", "shed")
    assert said.code == 2
    assert "Would hold: a database and the record's name in it" in said.err
    assert list(tmp_path.iterdir()) == []
