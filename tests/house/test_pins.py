"""Every library is pinned by hash, at one version, and no file names a registry."""

import re
import tomllib
from pathlib import Path

import pytest

from tests.house.source import HOUSE

FILES = ["requirements.txt", "requirements-test.txt", "requirements-uv.txt"]
PIN = re.compile(r"^([a-z0-9][a-z0-9.-]*)==(\S+)(?: ; ([^\\]+?))?(?: \\)?$", re.M)


def pins(path: Path) -> dict[tuple[str, str], str]:
    """Each pinned library, by its name and the machines it is for, with its version."""
    found = PIN.findall(path.read_text(encoding="utf-8"))
    return {(name, where): version for name, version, where in found}


def declared(table: str) -> set[str]:
    """The names that pyproject.toml asks for: to run, to test, or for an extra."""
    project = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = project["dependencies"] if table == "run" else project["optional-dependencies"][table]
    return {re.split(r"[\s<>=!~;\[]", line, maxsplit=1)[0] for line in wanted}


@pytest.mark.parametrize("name", FILES)
def test_every_pin_carries_its_hashes(name: str) -> None:
    text = (HOUSE / name).read_text(encoding="utf-8")
    entries = re.split(r"\n(?=\S)", text.strip())
    assert pins(HOUSE / name)
    assert [entry.splitlines()[0] for entry in entries if "--hash=sha256:" not in entry] == []


@pytest.mark.parametrize("name", [*FILES, "pyproject.toml"])
def test_no_file_of_pins_names_a_registry(name: str) -> None:
    text = (HOUSE / name).read_text(encoding="utf-8")
    assert not re.search(r"https?://|--(extra-)?index-url|--find-links", text)


def test_what_is_tested_is_what_runs() -> None:
    running, testing = pins(HOUSE / "requirements.txt"), pins(HOUSE / "requirements-test.txt")
    everywhere = {library: version for (library, where), version in testing.items() if not where}
    # What a library needs on one system only may be wanted by a test library on all of them.
    assert running == {key: testing.get(key) or everywhere.get(key[0]) for key in running}


@pytest.mark.parametrize(("table", "name"), [("run", "requirements.txt"), ("test", "requirements-test.txt")])
def test_everything_asked_for_is_pinned(table: str, name: str) -> None:
    assert declared(table) - {library for library, _ in pins(HOUSE / name)} == set()
