"""The page docs/flow.md, the import contract and the folders say the same."""

import re
import tomllib
from typing import Any

from tests.house.source import HOUSE, PACKAGE, floors

PAGE = (HOUSE / "docs" / "flow.md").read_text(encoding="utf-8")


def block(name: str) -> list[str]:
    """The lines of one fenced block of the page."""
    found = re.search(rf"^```{name}\n(.*?)^```", PAGE, re.M | re.S)
    assert found, f"docs/flow.md has no block called {name}"
    return found[1].splitlines()


def names(floor: str) -> list[str]:
    """The folders of one floor; one in brackets need not be there yet."""
    return [name.strip() for name in floor.split("|")]


def contract(key: str) -> dict[str, Any]:
    """One import contract of pyproject.toml."""
    house = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))
    found = [c for c in house["tool"]["importlinter"]["contracts"] if c["id"] == key]
    assert len(found) == 1
    return {**found[0]}


LAYERS = [names(floor) for floor in contract("floors")["layers"]]
KNOWN = {name.strip("()") for floor in LAYERS for name in floor}


def test_the_page_draws_the_floors_of_the_contract_in_their_order() -> None:
    drawn = [names(line.split("  ")[0]) for line in block("floors")]
    assert drawn == LAYERS


def test_each_floor_says_what_it_is_for() -> None:
    assert [line for line in block("floors") if len(re.split(r" {2,}", line)) != 2] == []


def test_the_folders_are_those_of_the_contract() -> None:
    optional = {name.strip("()") for floor in LAYERS for name in floor if name.startswith("(")}
    there = {path.name for path in PACKAGE.iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert there == floors()
    assert KNOWN - optional <= there <= KNOWN


def test_the_picture_of_the_flow_names_real_folders_only() -> None:
    named = set(re.findall(r"\[(\w+)\]", "\n".join(block("flow"))))
    assert named
    assert named - KNOWN == set()


def test_every_folder_has_a_place_in_the_picture_of_the_flow() -> None:
    named = set(re.findall(r"\[(\w+)\]", "\n".join(block("flow"))))
    assert floors() - named == set()
