"""An XLSX file read from its bare XML: the independent way in, with nothing but the standard library."""

from __future__ import annotations

import re
import zipfile
from pathlib import Path
from xml.etree import ElementTree

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
RELATION = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"


def raw_rows(path: Path, sheet: str) -> list[dict[str, str]]:
    """The rows of a sheet as text by column letter; text must stand in its own cell."""
    with zipfile.ZipFile(path) as packed:
        root = ElementTree.fromstring(packed.read(_part_of(packed, sheet)))
    return [
        {re.sub(r"[0-9]", "", cell.attrib["r"]): _text(cell) for cell in row.iter(f"{MAIN}c") if len(cell)}
        for row in root.iter(f"{MAIN}row")
    ]


def has_formula(path: Path) -> bool:
    """Whether any sheet of the file holds a formula."""
    with zipfile.ZipFile(path) as packed:
        names = [name for name in packed.namelist() if name.startswith("xl/worksheets/")]
        return any(
            ElementTree.fromstring(packed.read(name)).find(f".//{MAIN}f") is not None for name in names
        )


def _part_of(packed: zipfile.ZipFile, sheet: str) -> str:
    book = ElementTree.fromstring(packed.read("xl/workbook.xml"))
    wanted = next(one.attrib[RELATION] for one in book.iter(f"{MAIN}sheet") if one.attrib["name"] == sheet)
    relations = ElementTree.fromstring(packed.read("xl/_rels/workbook.xml.rels"))
    target = next(one.attrib["Target"] for one in relations if one.attrib["Id"] == wanted)
    return target.lstrip("/") if target.startswith("/") else f"xl/{target}"


def _text(cell: ElementTree.Element) -> str:
    kind = cell.attrib.get("t", "n")
    assert kind in ("n", "inlineStr")
    return "".join(piece.text or "" for piece in cell.iter(f"{MAIN}{'v' if kind == 'n' else 't'}"))
