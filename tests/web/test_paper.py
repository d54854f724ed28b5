"""Sheets from a page: the same value as on the screen, printed, and the printing kept as a line."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.web.van import CORNER, browser, van, words_in
from witnessmark.restoration.at_hand import AtHand


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.mark.parametrize(
    ("address", "says"), [("/sheets/wall", "Wheel nuts, left rear"), (f"/sheets/closing?of={CORNER}", CORNER)]
)
def test_a_sheet_is_printed_as_pdf_and_kept(small: AtHand, address: str, says: str) -> None:
    before = words_in(small)
    answer = browser(small).post(address)
    assert answer["Content-Type"] == "application/pdf"
    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(answer.content)).pages)
    assert says.lower() in " ".join(text.split()).lower()
    assert len(words_in(small)) == len(before) + 1
    assert words_in(small)[-1].startswith("printed the ")


def test_letter_paper_is_letter_paper(small: AtHand) -> None:
    answer = browser(small).post("/sheets/order", {"paper": "letter"})
    box = PdfReader(io.BytesIO(answer.content)).pages[0].mediabox
    assert (round(box.width), round(box.height)) == (612, 792)
