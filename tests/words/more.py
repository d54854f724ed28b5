"""The lines the likelihood is learned from, and the mark by which its weights know them again."""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path
from typing import Any

from tests.words.judging import rows

HERE = Path(__file__).parent
FOLDER = HERE / "more_lines"
# Lines by other hands than the reader's, each list by a hand of its own.
LISTS = ("a", "a2", "b", "b2", "c", "d")


def more_rows(name: str) -> list[dict[str, Any]]:
    """One of the lists, or "story", "practice" or "invented"."""
    return rows(f"{name}_lines.json" if name in ("practice", "invented") else f"more_lines/{name}.json")


def digest() -> str:
    """A mark of everything that is learned from: it changes when a line of it does."""
    mark = sha256()
    for path in sorted([*FOLDER.iterdir(), HERE / "practice_lines.json", HERE / "invented_lines.json"]):
        mark.update(path.name.encode())
        mark.update(path.read_bytes())
    return mark.hexdigest()[:16]
