"""The big face the pages are headed in: the same file the printed sheets are set in."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path


def big_face() -> Path:
    """The file of the face, from the library that carries it."""
    return Path(str(files("font_fjallaone") / "files" / "FjallaOne-Regular.ttf"))
