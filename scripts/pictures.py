"""Make the pictures of the docs from the demo vehicle: the first page of some sheets, as PNG.

.venv/bin/python scripts/pictures.py            makes them
.venv/bin/python scripts/pictures.py --check    makes them beside and compares; exit 1 where one is stale
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from witnessmark.demo.telling import tell
from witnessmark.press.printing import to_png_pages
from witnessmark.restoration.sheet import Asked, make_sheet

TOP = Path(__file__).resolve().parent.parent
PLACE = TOP / "docs" / "pictures"
PICTURES = {
    "wall-sheet.png": Asked(kind="wall"),
    "session-sheet.png": Asked(kind="session"),
    "gate-sheet.png": Asked(kind="gate"),
    "closing-sheet.png": Asked(kind="closing", assembly="drum brake corner left rear"),
    "bag-labels.png": Asked(kind="labels"),
}
DOTS = 80


def made() -> dict[str, bytes]:
    """Every picture by its name."""
    with tempfile.TemporaryDirectory() as folder:
        flow = tell(Path(folder) / "demo").flow()
        return {name: to_png_pages(make_sheet(flow, asked), ppi=DOTS)[0] for name, asked in PICTURES.items()}


def stale() -> list[str]:
    """The pictures that are missing or no longer what the demo shows."""
    return [name for name, raw in made().items() if not _same(PLACE / name, raw)]


def _same(file: Path, raw: bytes) -> bool:
    return file.is_file() and file.read_bytes() == raw


def main() -> None:
    """Make them, or say which are stale."""
    if "--check" in sys.argv:
        found = stale()
        print("stale: " + ", ".join(found) if found else "the pictures are as the demo shows them")
        raise SystemExit(1 if found else 0)
    PLACE.mkdir(parents=True, exist_ok=True)
    for name, raw in made().items():
        (PLACE / name).write_bytes(raw)
        print(PLACE / name)


if __name__ == "__main__":
    main()
