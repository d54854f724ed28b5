"""The bench in a vehicle's folder searches what the record says is owned; elsewhere it is as ever."""

from __future__ import annotations

import subprocess
import sys
from datetime import datetime
from pathlib import Path

import pytest

from tests.cli.running import run
from tests.cli.test_bench import with_source
from witnessmark.cli.bench import NOTHING_FOUND
from witnessmark.journal.facts import Owned
from witnessmark.restoration.begin import begin
from witnessmark.restoration.drawer import drawer_from
from witnessmark.restoration.restoration import Restoration

NOW = datetime(2026, 3, 14, 10, 40)
SEAL = ("bench", "seals", "driver", "bore=36.2mm", "shaft=31.8mm")
SHIMS = ("bench", "shims", "stack", "measured=0.62mm", "wanted_low=0.05mm", "wanted_high=0.10mm")


@pytest.fixture
def owner(tmp_path: Path) -> Restoration:
    restoration = begin(tmp_path, "the van", now=NOW, body="van", country="GB")
    for words in (
        "own 1 tube 32 x 36 mm",
        "own 5 shims 0.05 mm",
        "own 2 shims 0.30 mm",
        "own 4 axle stands",
    ):
        restoration.write(restoration.hear(words))
    return restoration


def test_own_drivers_are_searched_first(tmp_path: Path, owner: Restoration) -> None:
    said = run(tmp_path, *SEAL, "--json")
    assert said.code == 0
    first = said.json()["results"]["rows"][0]
    assert (first["own"], first["id"], first["od"]) == (True, 32, 36)


def test_own_shims_are_stacked_without_being_typed(tmp_path: Path, owner: Restoration) -> None:
    said = run(tmp_path, *SHIMS, "--json")
    assert said.code == 0
    assert said.json()["asked"]["shims"]["typed"] == "own kit"


def test_a_struck_line_is_owned_no_more(tmp_path: Path, owner: Restoration) -> None:
    line = next(e.line for e in owner.entries if isinstance(e.fact, Owned) and "tube" in e.fact.item)
    owner.write(owner.hear(f"strike {line}, lent to the neighbour"))
    assert drawer_from(owner.entries).drivers == ()
    assert not any(row["own"] for row in run(tmp_path, *SEAL, "--json").json()["results"]["rows"])


def test_a_folder_without_a_record_answers_as_before(tmp_path: Path) -> None:
    assert run(tmp_path, *SEAL).code == run(tmp_path / "nowhere", *SEAL).code == NOTHING_FOUND
    lacking = run(tmp_path, *SHIMS)
    assert lacking.code == 2
    assert "lacks shims" in lacking.err
    assert list(tmp_path.iterdir()) == []


def test_a_record_that_cannot_be_read_does_not_keep_the_number_back(tmp_path: Path) -> None:
    (tmp_path / "journal.db").write_bytes(b"spilt tea" * 300)
    said = run(tmp_path, *SEAL)
    assert said.code == NOTHING_FOUND
    assert said.err.startswith("Own kit not searched: ")
    assert "make" in said.out


def test_a_question_without_a_drawer_does_not_open_the_record(tmp_path: Path) -> None:
    (tmp_path / "journal.db").write_bytes(b"spilt tea" * 300)
    said = run(tmp_path, "bench", "threads", "size", "thread=M8")
    assert (said.code, said.err) == (0, "")


@pytest.mark.parametrize("command", ["owed", "needs"])
def test_what_is_owed_is_told_without_reading_the_bench(
    command: str, tmp_path: Path, owner: Restoration
) -> None:
    script = (
        "import sys\n"
        "from witnessmark.cli.main import group\n"
        f"try:\n    group(['--in', {str(tmp_path)!r}, {command!r}], standalone_mode=False)\n"
        "except SystemExit:\n    pass\n"
        "read = sorted(m for m in sys.modules if m.startswith('witnessmark.bench'))\n"
        "assert read == [], read\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=False, env=with_source())
    assert done.returncode == 0, done.stderr.decode()
