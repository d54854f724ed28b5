"""Every command on a console set to cp1252, in a folder with a space and an umlaut, as its own process."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.pictures import saved
from witnessmark.cli.lazy import COMMANDS

CALLS = {
    "begin": ["begin", "zweiter Anhänger"],
    "write": ["write", "took off hub nut left", "--yes"],
    "photo": ["photo", "Foto ß.png"],
    "strike": ["strike", "3", "--why", "that was the other side"],
    "journal": ["journal"],
    "owed": ["owed"],
    "gate": ["gate", "road"],
    "state": ["state"],
    "reach": ["reach", "hub nut left"],
    "session": ["session"],
    "needs": ["needs"],
    "buy": ["buy"],
    "plan": ["plan", "--seconds", "0.2"],
    "chance": ["chance", "--seconds", "0.2"],
    "whatif": ["whatif", "two free days"],
    "calendar": ["calendar", "--to", "Kalender ü.ics"],
    "check": ["check"],
    "sheet": ["sheet", "wall", "--pdf", "Wand ä.pdf"],
    "week": ["week"],
    "history": ["history", "--pdf", "Geschichte ß.pdf"],
    "pages": ["pages", "--help"],
    "bench": ["bench", "bolts", "check", "thread=M8", "grade=8.8", "torque=13 lbf ft"],
    "import": ["import", "stock ü.csv"],
    "export": ["export", "Akte ö.zip"],
    "people": ["people"],
    "backup": ["backup", ".", "Zweitschrift ö.zip"],
    "restore": ["restore", "Sicherung ü.zip", "zurück"],
    "demo": ["demo", "--dir", "Demo ß", "--json"],
}


def run(folder: Path, *words: str) -> subprocess.CompletedProcess[bytes]:
    environment = {**os.environ, "PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    command = [sys.executable, "-m", "witnessmark", *words]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, check=False)


@pytest.fixture(scope="module")
def garage(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("x") / "Ten ünd Söhne"
    folder.mkdir()
    assert run(folder, "begin", "Anhänger № 1", "--body", "trailer").returncode == 0
    lines = "new joint: hub nut left, taper roller bearing\ntook off hub nut left\n"
    (folder / "lines.txt").write_text(lines, encoding="utf-8")
    assert run(folder, "write", "--file", "lines.txt", "--yes").returncode == 0
    (folder / "stock ü.csv").write_text(
        "item,number\nSplint 3,2 – verzinkt,4\n".replace("3,2", "3.2"), "utf-8"
    )
    assert run(folder, "backup", ".", "Sicherung ü.zip").returncode == 0
    (folder / "Foto ß.png").write_bytes(saved("PNG"))
    return folder


def test_every_command_has_its_call():
    assert set(CALLS) == set(COMMANDS)


@pytest.mark.parametrize("command", CALLS)
def test_it_runs_and_speaks_utf8(garage, command):
    folder = garage / "zweiter" if command == "begin" else garage
    folder.mkdir(exist_ok=True)
    done = run(folder, *CALLS[command])
    said = done.stdout.decode("utf-8") + done.stderr.decode("utf-8")
    assert done.returncode in (0, 1), said
    assert "Traceback" not in said
    assert said.strip()


@pytest.mark.parametrize("command", sorted(COMMANDS))
def test_every_help_has_an_example(garage, command):
    done = run(garage, command, "--help")
    assert done.returncode == 0
    assert f"witnessmark {command}" in done.stdout.decode("utf-8").split("Example:")[1] or command == "begin"
