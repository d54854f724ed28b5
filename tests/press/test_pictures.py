"""Photos on paper: each under its caption and at its own shape; one that is lost leaves its frame."""

from __future__ import annotations

import io

import pypdf

from tests.pictures import MAKER, shot
from tests.press.paper import body, flat, page_texts, picture
from tests.sheets.every import every_sheet
from witnessmark.exchange.pictures import cleaned
from witnessmark.press.printing import to_pdf
from witnessmark.sheets.rows import Pictures, Sheet

SHEET: Sheet = every_sheet()["history"]
FILES = {"0.jpg": cleaned(shot(1, (400, 300))), "1.jpg": cleaned(shot(2, (300, 400)))}


def pictures_in(pdf: bytes) -> list[tuple[int, int]]:
    """Sizes of the pictures of a PDF, in points of their own, as another reader finds them."""
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return [found.image.size for page in pages for found in page.images if found.image is not None]


def test_both_photos_are_printed_each_under_its_caption() -> None:
    made = to_pdf(SHEET, photos=FILES)
    assert sorted(pictures_in(made)) == [(300, 400), (400, 300)]
    read = body(made)
    for section in SHEET.sections:
        for row in section.rows:
            for one in row.pictures if isinstance(row, Pictures) else ():
                assert flat(one.caption) in read
    assert "photonotathand" not in read


def test_a_lost_photo_leaves_a_frame_that_says_so() -> None:
    made = to_pdf(SHEET, photos={"1.jpg": FILES["1.jpg"]})
    assert pictures_in(made) == [(300, 400)]
    assert body(made).count("photonotathand") == 1


def test_a_photo_keeps_its_colours_and_brings_no_word_of_the_camera() -> None:
    made = to_pdf(SHEET, photos=FILES)
    assert MAKER.encode() not in made
    page = next(n for n, text in enumerate(page_texts(made)) if "before and after" in text.lower())
    seen = picture(made, page, 60).reshape(-1, 3)
    reds = (seen[:, 0] > 150) & (seen[:, 1] < 90)
    blues = (seen[:, 2] > 150) & (seen[:, 1] < 90)
    assert min(reds.sum(), blues.sum()) > 1000


def test_the_same_photos_give_the_same_bytes() -> None:
    assert to_pdf(SHEET, photos=FILES) == to_pdf(SHEET, photos=FILES)
