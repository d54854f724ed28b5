"""The written pages lead somewhere, and the program never leans on what is for the tests."""

import ast
import re
import tomllib
from pathlib import Path

from tests.house.source import HOUSE, PACKAGE, modules, name_of, tree
from tests.house.test_pins import declared

PAGES = [HOUSE / "README.md", *sorted((HOUSE / "docs").rglob("*.md"))]
LINK = re.compile(r"(?<!!)\[[^\]]+\]\(([^)#\s]+)[^)]*\)")
NAMES_OF_MODULES = {"zxing-cpp": "zxingcpp", "pillow": "PIL", "import-linter": "importlinter"}


def links(page: Path) -> list[str]:
    """The files a page links to; pictures and addresses apart."""
    found = LINK.findall(page.read_text(encoding="utf-8"))
    return [link for link in found if "://" not in link]


def test_every_link_between_the_pages_leads_to_a_file() -> None:
    assert links(HOUSE / "README.md")
    dead = [
        f"{name_of(page)}: {link}"
        for page in PAGES
        for link in links(page)
        if not (page.parent / link).exists()
    ]
    assert dead == []


def test_every_decision_is_listed() -> None:
    folder = HOUSE / "docs" / "decisions"
    pages = {page.name for page in folder.glob("*.md")} - {"README.md"}
    assert pages == set(links(folder / "README.md"))


def imported_by(path: Path) -> set[str]:
    """The top names of what a module imports, inside functions as well."""
    found: set[str] = set()
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            found.add((node.module or "").partition(".")[0])
    return found


def test_the_program_never_imports_what_is_for_the_tests() -> None:
    for_tests = {
        NAMES_OF_MODULES.get(name, name.replace("-", "_")) for name in declared("test") - declared("workshop")
    }
    leaning = {name_of(path): imported_by(path) & for_tests for path in modules(PACKAGE)}
    assert {name: found for name, found in leaning.items() if found} == {}


def test_what_is_an_extra_is_imported_only_by_the_part_that_is_read_when_asked_for() -> None:
    extras = {name.replace("-", "_") for name in declared("workshop")}
    leaning = {name_of(path) for path in modules(PACKAGE) if imported_by(path) & extras}
    assert leaning == {
        f"src/witnessmark/store/postgres_{part}.py" for part in ("record", "schema", "trouble")
    }


def test_the_version_is_read_from_one_place() -> None:
    project = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))
    assert "version" not in project["project"]
    assert project["tool"]["hatch"]["version"]["path"] == "src/witnessmark/ground/version.py"
