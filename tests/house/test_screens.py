"""Pictures of the pages in docs: each page at each size, and no other picture."""

from __future__ import annotations

from scripts.screens import PAGES, PLACE, SIZES, pictures


def test_every_page_has_its_picture_at_every_size_and_there_is_no_other() -> None:
    kept = {file.name for file in PLACE.iterdir()}
    assert kept == set(pictures())
    assert len(kept) == len(PAGES) * len(SIZES)


def test_each_is_a_picture_of_a_size_for_the_docs() -> None:
    for file in PLACE.iterdir():
        raw = file.read_bytes()
        assert raw.startswith(b"\x89PNG"), file.name
        wide, high = int.from_bytes(raw[16:20]), int.from_bytes(raw[20:24])
        size = file.stem.rpartition("-")[2]
        assert (wide, high) == SIZES[size], file.name
        assert len(raw) < 120_000, file.name
