"""Where the source lies, read once for the tests of the house."""

import ast
from pathlib import Path

HOUSE = Path(__file__).resolve().parents[2]
PACKAGE = HOUSE / "src" / "witnessmark"


def modules(*roots: Path) -> list[Path]:
    """Every Python file below the roots, in order."""
    return sorted(path for root in roots for path in root.rglob("*.py"))


def tree(path: Path) -> ast.Module:
    """The syntax tree of one file."""
    return ast.parse(path.read_text(encoding="utf-8"), filename=str(path))


def name_of(path: Path) -> str:
    """The path as a person would say it: from the top of the project."""
    return path.relative_to(HOUSE).as_posix()


def floors() -> set[str]:
    """The folders of the package that hold at least one module."""
    return {path.parent.name for path in PACKAGE.glob("*/__init__.py")}
