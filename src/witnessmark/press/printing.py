"""Paper: a sheet as PDF, or as pictures of its pages. The same sheet gives the same bytes."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path

from witnessmark.ground.errors import BadInput
from witnessmark.press.payload import label_data, marks_data, sheet_data
from witnessmark.press.setting import NO_PHOTOS, Form, Paper, set_pages
from witnessmark.press.square import square_svg, square_text
from witnessmark.sheets.rows import Label, Sheet


def to_pdf(
    sheet: Sheet, *, paper: Paper = "a4", single: bool = False, photos: Mapping[str, bytes] = NO_PHOTOS
) -> bytes:
    """A sheet as PDF: black on white, every page with its head, its foot and a bar of 100 mm.

    single  for labels: one to a page
    photos  the JPEG files of its pictures by name; one that is not there leaves its frame empty
    """
    return _set(sheet, paper, single, "pdf", photos=photos)[0]


def to_png_pages(
    sheet: Sheet,
    *,
    paper: Paper = "a4",
    single: bool = False,
    ppi: float = 144,
    photos: Mapping[str, bytes] = NO_PHOTOS,
) -> Sequence[bytes]:
    """Each page as a picture, `ppi` dots to the inch."""
    return _set(sheet, paper, single, "png", ppi, photos)


def to_svg_pages(sheet: Sheet, *, paper: Paper = "a4", single: bool = False) -> Sequence[bytes]:
    """Each page as a drawing."""
    return _set(sheet, paper, single, "svg")


def _set(
    sheet: Sheet,
    paper: Paper,
    single: bool,
    form: Form,
    ppi: float = 144,
    photos: Mapping[str, bytes] = NO_PHOTOS,
) -> Sequence[bytes]:
    data = {"sheet": sheet_data(sheet), "marks": marks_data(), "paper": paper, "labels": "[]"}
    show = "wall-sheet" if sheet.kind == "wall" else "flowing-sheet"
    labels = labels_of(sheet)
    if labels:
        squares = {label.code: square_svg(square_text(label)) for label in labels}
        data["labels"] = label_data(labels, squares)
        show = "single-labels" if single else "label-grid"
    return set_pages(show, data, form, ppi, photos)


def labels_of(sheet: Sheet) -> tuple[Label, ...]:
    """The labels a sheet holds, in order."""
    return tuple(row for section in sheet.sections for row in section.rows if isinstance(row, Label))


def print_to(
    sheet: Sheet,
    path: Path,
    *,
    single: bool = False,
    paper: Paper = "a4",
    photos: Mapping[str, bytes] = NO_PHOTOS,
) -> None:
    """Write a sheet's PDF: beside its place first, then moved there whole.

    Raises BadInput where the folder cannot be written to; what stood there before still stands.
    """
    made = to_pdf(sheet, paper=paper, single=single, photos=photos)
    beside = path.with_name(f"{path.name}.new")
    try:
        beside.write_bytes(made)
        os.replace(beside, path)
    except OSError as trouble:
        beside.unlink(missing_ok=True)
        raise BadInput(
            given=f"{path} cannot be written ({trouble.strerror or trouble})",
            holds="a file in a folder that is there and may be written to",
            do="Give another place for the PDF.",
        ) from trouble
