"""Setting pages: the page's own source, its faces, and one call to the typesetter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any, Literal

Paper = Literal["a4", "us-letter"]
Form = Literal["pdf", "png", "svg"]

_PARTS = ("furniture", "rows", "wall", "labels")


@cache
def page_source() -> str:
    """Everything the pages are set by, in one text."""
    folder = files("witnessmark.press")
    return "\n".join(folder.joinpath(f"{part}.typ").read_text("utf-8") for part in _PARTS)


@cache
def faces() -> tuple[str, ...]:
    """Folders of the faces the pages are set in: the same on every machine."""
    return tuple(str(files(package) / "files") for package in ("font_source_sans_pro", "font_fjallaone"))


def set_pages(show: str, data: Mapping[str, str], form: Form, ppi: float = 144) -> Sequence[bytes]:
    """Set pages and give each page's bytes; a PDF is one.

    show  the name in the source of what is set, as "wall-sheet"
    data  texts in JSON, handed over beside the source and never pasted into it
    form  "pdf", "png" or "svg"; ppi is used for png alone
    """
    import typst

    typesetter: Any = typst
    made = typesetter.compile(
        f"{page_source()}\n#{show}()\n".encode(),
        font_paths=list(faces()),
        ignore_system_fonts=True,
        format=form,
        ppi=ppi,
        sys_inputs=dict(data),
    )
    return tuple(made) if isinstance(made, list) else (made,)
