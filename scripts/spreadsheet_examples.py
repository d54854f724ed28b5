"""Write the blank and the filled spreadsheet of docs/examples, and the filled one's sheets as CSV.

    .venv/bin/python scripts/spreadsheet_examples.py

The vehicle is the invented one of the demo. Its figures are invented too: they are nobody's.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from witnessmark.exchange.columns import headings_of
from witnessmark.exchange.spreadsheet_out import write_blank, write_csv, write_workbook

TOP = Path(__file__).resolve().parent.parent
EXAMPLES = TOP / "docs" / "examples"
Rows = list[dict[str, str | int]]

CORNER = {"side": "left rear", "place": "rear axle", "part of": "left rear brake"}
AXLE = {"place": "rear axle", "part of": "rear axle"}

PARTS: Rows = [
    {"name": "wheel", **CORNER, "where": "under the bench"},
    {"name": "brake drum", **CORNER, "where": "shelf 2", "note": "lip worn, back the adjuster off first"},
    {"name": "brake shoes", **CORNER, "number": 2, "where": "shelf 2"},
    {"name": "wheel cylinder", **CORNER, "where": "shelf 2", "note": "weeping"},
    {"name": "half-shaft", "side": "left", **AXLE},
    {"name": "axle cover", **AXLE},
    {"name": "battery tray", "place": "engine bay", "note": "spot welds let go"},
    {"name": "fuel tank", "place": "behind the cab"},
]

JOINTS: Rows = [
    {
        "name": "wheel nuts", **CORNER, "kind": "wheel nuts", "holds": "wheel", "number": 5,
        "figure": "50 to 55 lbf ft", "source": "owner's book", "where": "page 71", "thread": "7/16 UNF",
    },
    {
        "name": "drum screws", **CORNER, "kind": "shoes-and-drum", "holds": "brake drum", "behind": "wheel",
        "number": 2, "note": "one has a chewed head",
    },
    {
        "name": "cylinder fixings", **CORNER, "kind": "wheel cylinder", "holds": "wheel cylinder",
        "behind": "wheel; brake drum; brake shoes", "number": 2, "figure": "8 lbf ft",
        "source": "owner's book", "where": "page 74", "thread": "1/4 UNF",
    },
    {
        "name": "pipe union", **CORNER, "kind": "brake pipe union",
        "behind": "wheel; brake drum or wheel cylinder", "thread": "3/8 UNF", "fluid": "brake fluid",
    },
    {
        "name": "half-shaft ring", "side": "left", **AXLE, "kind": "o-ring", "behind": "wheel, left rear",
        "size": "47 x 2.62", "fluid": "gear oil", "if missed": "warns first",
        "note": "oil on the linings when it leaks",
    },
    {
        "name": "axle cover bolts", **AXLE, "kind": "gasketed-cover", "holds": "axle cover", "number": 10,
        "figure": "16 lbf ft", "thread": "5/16 BSW", "grade": "R",
    },
    {
        "name": "filler plug", **AXLE, "kind": "fill plug", "fluid": "gear oil", "quantity": "2 1/2 pints",
        "size": "1/2 square",
    },
    {
        "name": "spring hanger outrigger", "side": "left rear", "place": "chassis", "kind": "mount-area-weld",
        "note": "closed section, on the load path",
    },
    {"name": "screen rubber", "place": "cab", "kind": "windscreen rubber"},
    {
        "name": "tray seam", "place": "engine bay", "kind": "plug-weld-seam", "holds": "battery tray",
        "number": 16,
    },
]  # fmt: skip

JOBS: Rows = [
    {
        "job": "renew",
        "thing": "half-shaft ring, left",
        "well": "50",
        "likely": "1 h 40",
        "if it fights": "5 h",
    },
    {"job": "make good", "thing": "spring hanger outrigger, left rear"},
    {
        "job": "renew",
        "thing": "wheel cylinder, left rear",
        "well": "40",
        "likely": "75",
        "if it fights": "4 h",
    },
    {"job": "refit", "thing": "left rear brake"},
]

STOCK: Rows = [
    {"item": "split pin", "number": 20, "size": "3.2 x 50"},
    {"item": "copper washer", "number": 6, "size": "5/8 in"},
    {"item": "gear oil", "number": 2, "size": "1 L"},
    {"item": "64 mm tube", "size": "64 mm outside, 52 inside"},
]

OFFERS: Rows = [
    {
        "item": "half-shaft ring", "supplier": "Ottermere Seals", "size": "47 x 2.62",
        "for": "half-shaft ring, left", "their number": "R-4726", "price": "0.60", "weight": 5,
    },
    {
        "item": "wheel cylinder", "supplier": "Brockenhay Brakes", "for": "wheel cylinder, left rear",
        "price": "16.20", "weight": "0.4 kg",
    },
    {
        "item": "split pin", "supplier": "Quillbrook Fasteners", "size": "3.2 x 50", "price": "1.50",
        "pack": 10, "weight": 60,
    },
    {
        "item": "cover gasket", "supplier": "Packning Norrvik", "for": "axle cover bolts", "price": "38",
        "weight": 30, "quick": 5, "days": 8, "slow": 15,
    },
]  # fmt: skip

SUPPLIERS: Rows = [
    {
        "supplier": "Ottermere Seals", "post": "3.50 to 1 kg; 4.95", "free above": "60",
        "quick": 1, "days": 2, "slow": 4, "cut-off": "16:00",
    },
    {"supplier": "Brockenhay Brakes", "post": "4.50 to 2 kg; 9", "minimum": "10", "days": 3},
    {"supplier": "Quillbrook Fasteners", "post": "3.10", "quick": 1, "days": 2, "slow": 5},
    {
        "supplier": "Packning Norrvik", "post": "90 to 2 kg", "currency": "SEK", "rate": "0.075",
        "duty": "4.5",
    },
]  # fmt: skip

FILLED: Mapping[str, Sequence[Mapping[str, str | int]]] = {
    "parts": PARTS, "joints": JOINTS, "jobs": JOBS, "stock": STOCK, "offers": OFFERS, "suppliers": SUPPLIERS
}  # fmt: skip


def make(folder: Path) -> list[Path]:
    """Write every example into a folder and hand back the files."""
    for sheet, rows in FILLED.items():
        strangers = {heading for row in rows for heading in row} - set(headings_of(sheet))
        assert not strangers, f"{sheet}: {strangers}"
    write_blank(folder / "spreadsheet-blank.xlsx")
    write_workbook(folder / "spreadsheet-filled.xlsx", FILLED)
    for sheet, rows in FILLED.items():
        write_csv(folder / f"spreadsheet-filled-{sheet}.csv", sheet, rows)
    return sorted(folder.glob("spreadsheet-*"))


if __name__ == "__main__":
    for made in make(EXAMPLES):
        print(made.relative_to(TOP))
