"""A writer killed at any moment loses no acknowledged line and leaves no half of one."""

from __future__ import annotations

import os
import subprocess
import sys
from collections import Counter
from pathlib import Path

from tests.store.appending_child import TOGETHER
from tests.store.place import Place
from witnessmark.store.checking import read_back

ROOT = Path(__file__).parents[2]
KILLS, KILLS_ON_A_SERVER = 10, 5
FOR_EVER = 10**9
EACH = 40


def child(folder: Path, name: str, limit: int) -> subprocess.Popen[str]:
    environment = os.environ | {"PYTHONPATH": os.pathsep.join([str(ROOT / "src"), str(ROOT)])}
    command = [sys.executable, "-m", "tests.store.appending_child", str(folder), name, str(limit)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, encoding="utf-8", env=environment, cwd=ROOT)


def killed_after(folder: Path, name: str, acknowledged: int) -> list[str]:
    """Kill a writer once it has acknowledged so much; everything it had said by then."""
    with child(folder, name, FOR_EVER) as writer:
        assert writer.stdout is not None
        said = [writer.stdout.readline() for _ in range(acknowledged)]
        writer.kill()
        said += writer.stdout.readlines()
    return [line.strip() for line in said if line.endswith("\n")]


def test_writers_killed_one_after_the_other_on_one_record(place: Place) -> None:
    place.create().close()
    acknowledged: list[str] = []
    for kill in range(KILLS_ON_A_SERVER if place.kept_at else KILLS):
        said = killed_after(place.folder, f"writer{kill}", acknowledged=2 * kill + 1)
        assert len(said) > 2 * kill
        acknowledged += said
        assert read_back(place.folder) == ()
    with place.reopen() as record:
        kept = Counter(entry.words for entry in record.read())
    assert set(acknowledged) <= set(kept)
    assert set(kept.values()) == {TOGETHER}


def test_two_writers_at_once_lose_no_line_and_write_none_twice(place: Place) -> None:
    place.create().close()
    with child(place.folder, "you", EACH) as you, child(place.folder, "helper", EACH) as helper:
        said = [writer.communicate()[0].split() for writer in (you, helper)]
    with place.reopen() as record:
        kept = Counter(entry.words for entry in record.read())
    assert set(kept) == {*said[0], *said[1]}
    assert kept.total() == 2 * EACH * TOGETHER
    assert read_back(place.folder) == ()
