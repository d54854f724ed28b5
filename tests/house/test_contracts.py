"""The import contracts cover every floor, and each one bites when it is broken on purpose."""

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.house.source import HOUSE, PACKAGE, floors
from tests.house.test_flow_page import KNOWN, contract

OUTSIDE_THE_CORE = {"cli", "web", "press", "demo", "restoration", "store", "exchange"}


def short(modules: list[str]) -> set[str]:
    """Module names without the package before them."""
    return {module.rpartition(".")[2] for module in modules}


def test_every_floor_below_the_shell_counts_as_core() -> None:
    assert short(contract("core")["source_modules"]) == floors() - OUTSIDE_THE_CORE
    assert OUTSIDE_THE_CORE <= KNOWN


def test_the_shell_that_is_there_is_held_to_asking() -> None:
    assert short(contract("shell")["source_modules"]) == {"cli", "web", "press"} & floors()


def test_ruff_keeps_clock_and_chance_out() -> None:
    house = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))
    banned = house["tool"]["ruff"]["lint"]["flake8-tidy-imports"]["banned-api"]
    assert {"datetime.date.today", "datetime.datetime.now", "random"} <= set(banned)


@pytest.fixture(scope="module")
def small_house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the floors with nothing on them but their maps, under the same contracts."""
    house = tmp_path_factory.mktemp("house")
    for floor in PACKAGE.glob("*/__init__.py"):
        there = house / "src" / "witnessmark" / floor.parent.name
        there.mkdir(parents=True)
        shutil.copy(floor, there)
    shutil.copy(PACKAGE / "__init__.py", house / "src" / "witnessmark")
    shutil.copy(HOUSE / "pyproject.toml", house)
    return house


ASK = """
import sys
sys.path.insert(0, "src")
from importlinter.cli import lint_imports
sys.exit(lint_imports(no_cache=True))
"""


def verdict(house: Path) -> subprocess.CompletedProcess[str]:
    """Ask the import checker about a house."""
    command = [sys.executable, "-c", ASK]
    return subprocess.run(command, cwd=house, capture_output=True, encoding="utf-8", check=False)


def test_the_bare_floors_are_sound(small_house: Path) -> None:
    answer = verdict(small_house)
    assert answer.returncode == 0, answer.stdout + answer.stderr


@pytest.mark.parametrize(
    ("where", "line", "contract_broken"),
    [
        ("state/slip.py", "import os", "core"),
        ("plan/slip.py", "import random", "core"),
        ("journal/slip.py", "import witnessmark.owed", "floors"),
        ("owed/slip.py", "import witnessmark.reach", "floors"),
        ("cli/slip.py", "import witnessmark.gate", "shell"),
        ("store/slip.py", "import witnessmark.owed", "store"),
    ],
)
def test_a_break_is_refused(small_house: Path, where: str, line: str, contract_broken: str) -> None:
    slip = small_house / "src" / "witnessmark" / where
    slip.write_text(line + "\n", encoding="utf-8")
    try:
        answer = verdict(small_house)
    finally:
        slip.unlink()
    assert answer.returncode == 1
    assert f"{contract(contract_broken)['name']} BROKEN" in answer.stdout


def test_a_folder_nobody_declared_is_refused(small_house: Path) -> None:
    attic = small_house / "src" / "witnessmark" / "attic"
    attic.mkdir()
    (attic / "__init__.py").touch()
    try:
        answer = verdict(small_house)
    finally:
        shutil.rmtree(attic)
    assert answer.returncode == 1
    assert "attic" in answer.stdout
