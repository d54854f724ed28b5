"""Ids made on a device: a line sent again is the same line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.web.van import van
from witnessmark.restoration.devices import new_id, usable_id, write_once, written_as

ID = "aaaabbbbccccddddeeeeffff00001111"


@pytest.mark.parametrize("typed", ["", "short", "A" * 32, "../../etc/passwd", "0" * 65, "a b" * 8])
def test_what_is_no_id_becomes_a_new_one(typed: str) -> None:
    made = usable_id(typed)
    assert made != typed
    assert usable_id(made) == made


def test_ids_are_not_made_twice() -> None:
    assert len({new_id() for _ in range(100)}) == 100


def test_a_line_of_two_facts_is_one_line_to_its_device(tmp_path: Path) -> None:
    with van(tmp_path).opened() as restoration:
        heard = restoration.hear("took off wheel nuts right rear")
        assert len(heard.facts) == 2
        written = write_once(restoration, heard, ID)
        assert [entry.id for entry in written] == [ID, f"{ID}.2"]
        assert write_once(restoration, heard, ID) == written
        assert written_as(restoration.entries, ID, "took off  wheel nuts right rear") == written
        assert written_as(restoration.entries, ID, "something else") == ()
