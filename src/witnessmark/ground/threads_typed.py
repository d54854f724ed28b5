"""Screw threads as they are typed: "5/16 UNF", "M8 x 1.25", "2 BA", "24 tpi"."""

from __future__ import annotations

import re

from msgspec import Struct

from witnessmark.ground.measures import INCH
from witnessmark.ground.numerals import NUMBER, read_number

_SERIES = {
    "unf": "UNF",
    "unc": "UNC",
    "unef": "UNEF",
    "un": "UN",
    "bsf": "BSF",
    "bsw": "BSW",
    "bsc": "BSC",
    "bsb": "BSB",
    "bsp": "BSP",
    "bspp": "BSP",
    "bspt": "BSPT",
    "npt": "NPT",
    "npsf": "NPSF",
    "cei": "CEI",
    "whit": "BSW",
    "whitworth": "BSW",
    "ba": "BA",
}
_NAMES = "|".join(sorted(_SERIES, key=len, reverse=True))
_METRIC = re.compile(
    r"(?<![\w.])M\s?([0-9]{1,2}(?:[.,][0-9])?)(?:\s?[x×]\s?([0-9](?:[.,][0-9]{1,2})?))?(?![\w/]|[.,][0-9])",
    re.I,
)
_INCH = re.compile(
    rf"(?<![\w./])({NUMBER})\s?(?:\"|''|in\b)?\s?-?\s?(?:([0-9]{{1,2}})\s?)?({_NAMES})(?![\w/])", re.I
)
_TPI = re.compile(
    r"(?<![\w./])([0-9]{1,2}(?:\.[0-9])?)\s?(?:tpi\b|t\.p\.i\.?|threads? (?:per|to the) inch\b)", re.I
)


class FoundThread(Struct, frozen=True, omit_defaults=True):
    """A thread found in a text.

    thread    tidied, "5/16 UNF", "M8 x 1.25", "24 tpi"
    diameter  mm, the nominal size; None where only a pitch was told, or the size is a number of its series
    pitch     mm; None where it was not told
    """

    start: int
    end: int
    thread: str
    diameter: float | None = None
    pitch: float | None = None


def find_thread(text: str) -> FoundThread | None:
    """The first thread in a text, or None.

    >>> find_thread("undid 4 5/16 UNF bolts").thread, find_thread("M8x1.25 stud").pitch
    ('5/16 UNF', 1.25)
    """
    found = find_threads(text)
    return found[0] if found else None


def find_threads(text: str) -> tuple[FoundThread, ...]:
    """Every thread in a text, in order."""
    found = [t for m in _INCH.finditer(text) if (t := _inch(m))]
    found += [_metric(m) for m in _METRIC.finditer(text)]
    taken = [(t.start, t.end) for t in found]
    for match in _TPI.finditer(text):
        count = read_number(match[1])
        if count and not any(a < match.end() and match.start() < b for a, b in taken):
            found.append(FoundThread(match.start(), match.end(), f"{match[1]} tpi", pitch=INCH / count))
    return tuple(sorted(found, key=lambda t: t.start))


def _metric(match: re.Match[str]) -> FoundThread:
    size, pitch = match[1].replace(",", "."), (match[2] or "").replace(",", ".")
    name = f"M{size} x {pitch}" if pitch else f"M{size}"
    return FoundThread(match.start(), match.end(), name, float(size), float(pitch) if pitch else None)


def _inch(match: re.Match[str]) -> FoundThread | None:
    size, start = _one_size(match[1], match.start())
    series = _SERIES[match[3].lower()]
    count = int(match[2]) if match[2] else 0
    if series == "BA":
        return FoundThread(start, match.end(), f"{size} BA") if size.isdigit() and not count else None
    if "/" in size and size.rpartition("/")[2].strip("0") == "":
        return None
    name = f"{size}-{count} {series}" if count else f"{size} {series}"
    pipe = series in ("BSP", "BSPT", "NPT", "NPSF")
    return FoundThread(
        start, match.end(), name, None if pipe else read_number(size) * INCH, INCH / count if count else None
    )


def _one_size(typed: str, start: int) -> tuple[str, int]:
    """Part a count from a size: "4 5/16" are four of 5/16, "1 1/4" is one size."""
    whole, space, fraction = typed.partition(" ")
    if space and "/" in fraction and whole != "1":
        return fraction, start + len(whole) + 1
    return typed, start
