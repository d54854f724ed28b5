"""A sheet as the data a page is set from: its plain values, and the few phrases the page needs ready made."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

import msgspec

from witnessmark.sheets.marks import mark_svg
from witnessmark.sheets.phrases import day_words, days_words, fit_to_show, short_day
from witnessmark.sheets.plain import as_plain, reworded
from witnessmark.sheets.rows import JointRow, Label, Number, Row, Sheet, Step

STATES = ("apart", "loose", "tight", "proven")


def sheet_data(sheet: Sheet) -> str:
    """The sheet as JSON for the page, every text made fit to show."""
    shown = reworded(sheet, fit_to_show)
    data = as_plain(shown)
    data["day"] = day_words(shown.date)
    data["notes_heading"] = "Cautions" if shown.kind == "session" else "Note"
    for section, plain in zip(shown.sections, data["sections"], strict=True):
        plain["rows"] = [_row(row) for row in section.rows]
    return json.dumps(data, ensure_ascii=False)


def marks_data() -> str:
    """The witness marks as JSON: state to drawing."""
    return json.dumps({state: mark_svg(state) for state in STATES})


def _row(row: Row) -> dict[str, Any]:
    plain: dict[str, Any] = msgspec.to_builtins(row)
    match row:
        case Number():
            plain["pedigree"] = row.pedigree
        case Step():
            plain["numbers"] = [msgspec.to_builtins(n) | {"pedigree": n.pedigree} for n in row.numbers]
        case JointRow():
            plain["dues"] = [_stood(msgspec.to_builtins(due)) for due in row.dues]
            _stood(plain)
        case Label():
            plain["day"] = short_day(row.day) if row.day else ""
        case _:
            pass
    return plain


def _stood(plain: dict[str, Any]) -> dict[str, Any]:
    if plain.get("days") is not None:
        plain["stood"] = days_words(plain["days"])
    return plain


def label_data(labels: Iterable[Label], drawings: Mapping[str, str]) -> str:
    """Each label with its square code drawn, as JSON for the page."""
    rows = []
    for label in labels:
        row = _row(label)
        row = {key: fit_to_show(value) if isinstance(value, str) else value for key, value in row.items()}
        rows.append(row | {"square": drawings[label.code]})
    return json.dumps(rows, ensure_ascii=False)
