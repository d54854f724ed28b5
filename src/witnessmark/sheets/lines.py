"""Lines of text: wrapped, hung, with a tail at the right edge, and written in plain letters."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterable, Iterator

_IN_ASCII = str.maketrans(
    {
        "—": "-",
        "–": "-",
        "−": "-",
        "‑": "-",
        "·": ".",
        "×": "x",
        "“": '"',
        "”": '"',
        "‘": "'",
        "’": "'",
        "…": "...",
        "½": "1/2",
        "¼": "1/4",
        "¾": "3/4",
        "°": "deg",
        "≥": ">=",
        "≤": "<=",
        "→": "->",
        "µ": "u",
        "⌀": "dia ",
        "ß": "ss",
        "æ": "ae",
        "Æ": "AE",
        "ø": "o",
        "Ø": "O",
        "ł": "l",
        "Ł": "L",
        "£": "GBP ",
        "€": "EUR ",
    }
)
_GAP = 2


def wrapped(text: str, wide: int, first: str = "", then: str | None = None) -> list[str]:
    """Text in lines of at most `wide`, the first behind `first`, the others behind `then`.

    >>> wrapped("nip up, then to figure", 14, "- ", "  ")
    ['- nip up, then', '  to figure']
    """
    hung = first if then is None else then
    return textwrap.wrap(
        text,
        wide,
        initial_indent=first,
        subsequent_indent=hung,
        break_on_hyphens=False,
        break_long_words=True,
    ) or [first]


def right(lines: Iterable[str], tail: str, wide: int) -> Iterator[str]:
    """Lines with a tail at the right edge of the last, or on a line of its own where it does not fit.

    >>> list(right(["hub nut"], "K7QM", 14)), list(right(["a long name"], "K7QM", 14))
    (['hub nut   K7QM'], ['a long name', '          K7QM'])
    """
    *before, last = lines
    yield from before
    room = wide - len(last) - len(tail)
    if not tail:
        yield last
    elif room >= _GAP:
        yield last + " " * room + tail
    else:
        yield last
        yield tail.rjust(wide)


def ascii_safe(text: str) -> str:
    """Text in letters and signs that every console has; what has no near letter becomes a question mark.

    >>> ascii_safe("47 N·m, ½ in, Łódź, 🔧")
    '47 N.m, 1/2 in, Lodz, ?'
    """
    if text.isascii():
        return text
    plain = unicodedata.normalize("NFKD", text.translate(_IN_ASCII))
    kept = "".join(c for c in plain if not unicodedata.combining(c))
    return kept.encode("ascii", "replace").decode("ascii")
