"""The lines the likelihood is learned from, and the mark by which its weights know them again."""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path
from typing import Any

from tests.words.judging import rows

HERE = Path(__file__).parent
FOLDER = HERE / "more_lines"
# Lines by other hands than the reader's, each list by a hand of its own.
LISTS = ("a", "a2", "b", "b2", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l")


def more_rows(name: str) -> list[dict[str, Any]]:
    """One of the lists, or "story", "practice", "invented" or the "sixty" held out."""
    return rows(f"more_lines/{name}.json" if name in (*LISTS, "story") else f"{name}_lines.json")


def kinds_of(row: dict[str, Any]) -> list[str]:
    """The kinds of fact a line may rightly be, as the journal tags them."""
    wanted = row["verb"] if isinstance(row["verb"], list) else [row["verb"]]
    return ["sent_away" if kind == "away" else kind for kind in wanted]


def digest() -> str:
    """A mark of everything that is learned from: it changes when a line of it does."""
    mark = sha256()
    for path in sorted([*FOLDER.iterdir(), HERE / "practice_lines.json", HERE / "invented_lines.json"]):
        mark.update(path.name.encode())
        mark.update(path.read_bytes())
    return mark.hexdigest()[:16]
