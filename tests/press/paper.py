"""Reading paper back: the text of a PDF, its pictures, and the ink on them in millimetres."""

from __future__ import annotations

import io
import itertools
import re
from collections.abc import Iterator

import numpy as np
import pypdf
import pypdfium2
from numpy.typing import NDArray

Ink = NDArray[np.bool_]
MM = 25.4


def page_texts(pdf: bytes) -> list[str]:
    """The text of each page, as another reader finds it."""
    return [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]


def flat(text: str) -> str:
    """Text without space, break or capital; where a page ends, its head and foot are taken out."""
    return "".join(text.split()).replace("\u200b", "").casefold()


def body(pdf: bytes) -> str:
    """All pages run together, with the head once and every foot and later head taken out."""
    pages = [re.sub(r"100mm:measuremepage\d+of\d+", "", flat(text)) for text in page_texts(pdf)]
    return pages[0] + "".join(re.sub(r"^.*?,tojournalline\d+code[2-9a-z]{4}", "", page) for page in pages[1:])


def picture(pdf: bytes, page: int = 0, dpi: float = 200) -> NDArray[np.uint8]:
    """One page as red, green and blue."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        return np.array(document[page].render(scale=dpi / 72).to_pil().convert("RGB"))
    finally:
        document.close()


def ink(pdf: bytes, page: int = 0, dpi: float = 200) -> Ink:
    """Where one page is more black than white."""
    dark: Ink = picture(pdf, page, dpi).mean(axis=2) < 128
    return dark


def runs(line: Ink) -> Iterator[tuple[int, int]]:
    """Start and length of each run of ink along a line."""
    at = 0
    for dark, group in itertools.groupby(line.tolist()):
        length = len(list(group))
        if dark:
            yield at, length
        at += length
