"""Short codes for paper: four characters a gloved hand can type, without 0, O, 1 or I."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import lru_cache

ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
LENGTH = 4
REMEMBERED = 65536


@lru_cache(maxsize=REMEMBERED)
def code_of(text: str, turn: int = 0) -> str:
    """A code that is always the same for the same text.

    turn moves on to the next code for that text when the first is taken.

    >>> len(code_of("hub nut, left rear")), code_of("a") == code_of("a"), code_of("a") == code_of("a", 1)
    (4, True, False)
    """
    number = int.from_bytes(hashlib.sha256(f"{turn}:{text}".encode()).digest()[:8], "big")
    letters = []
    for _ in range(LENGTH):
        number, rest = divmod(number, len(ALPHABET))
        letters.append(ALPHABET[rest])
    return "".join(letters)


def codes_for(texts: Iterable[str]) -> dict[str, str]:
    """One code each, no two alike; the order the texts come in settles who moves on."""
    taken: set[str] = set()
    codes: dict[str, str] = {}
    for text in texts:
        if text in codes:
            continue
        turn = 0
        while (code := code_of(text, turn)) in taken:
            turn += 1
        taken.add(code)
        codes[text] = code
    return codes
