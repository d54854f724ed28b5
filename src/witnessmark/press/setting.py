"""Setting pages: the page's own source, its faces, and one call to the typesetter."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory
from types import MappingProxyType
from typing import Any, Literal

Paper = Literal["a4", "us-letter"]
Form = Literal["pdf", "png", "svg"]

NO_PHOTOS: Mapping[str, bytes] = MappingProxyType({})
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


def set_pages(
    show: str,
    data: Mapping[str, str],
    form: Form,
    ppi: float = 144,
    photos: Mapping[str, bytes] = NO_PHOTOS,
) -> Sequence[bytes]:
    """Set pages and give each page's bytes; a PDF is one.

    show  the name in the source of what is set, as "wall-sheet"
    data  texts in JSON, handed over beside the source and never pasted into it
    form  "pdf", "png" or "svg"; ppi is used for png alone
    photos  JPEG files by name, laid where the typesetter alone looks, for as long as it works
    """
    import typst

    typesetter: Any = typst
    with TemporaryDirectory() as root:
        for name, content in photos.items():
            Path(root, name).write_bytes(content)
        made = typesetter.compile(
            f"{page_source()}\n#{show}()\n".encode(),
            root=root,
            font_paths=list(faces()),
            ignore_system_fonts=True,
            format=form,
            ppi=ppi,
            sys_inputs={**data, "photos": json.dumps(list(photos))},
        )
    return tuple(made) if isinstance(made, list) else (made,)
