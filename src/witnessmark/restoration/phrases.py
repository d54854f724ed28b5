"""Pass phrases: what one must be, how it is hashed, how it is compared."""

from __future__ import annotations

import gzip
import unicodedata
from functools import cache
from importlib.resources import files
from threading import Lock

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from witnessmark.ground.errors import BadInput

SHORTEST, LONGEST = 12, 128
FEWEST_DIFFERENT = 5

_HASHER = PasswordHasher()  # Argon2id with the library's own bounds: RFC 9106, low memory
_ONE_AT_A_TIME = Lock()  # a hash takes 64 MiB; many at once would be a way to press the machine


def usable_phrase(typed: str, name: str = "") -> str:
    """A pass phrase as it is hashed: the same letters however a device composes them, nothing cut off.

    >>> usable_phrase("four rusty bolts and tea")
    'four rusty bolts and tea'

    Raises BadInput for one that is short, endless, or among the first that others try.
    """
    phrase = unicodedata.normalize("NFC", typed)
    why = _weakness(phrase, name)
    if why:
        raise BadInput(
            given=f"a pass phrase {why}",
            holds=f"{SHORTEST} to {LONGEST} letters, spaces allowed, that nobody would try first",
            do="Take four or five words that do not belong together.",
        )
    return phrase


def _weakness(phrase: str, name: str) -> str:
    plain = phrase.casefold()
    if len(phrase) < SHORTEST:
        return f"of {len(phrase)} letters"
    if len(phrase) > LONGEST:
        return f"of {len(phrase)} letters"
    if any(unicodedata.category(letter) in ("Cc", "Cs", "Cn") for letter in phrase):
        return "with a sign in it that cannot be typed"
    if len(set(plain)) < FEWEST_DIFFERENT:
        return "of few different letters"
    if plain in _tried_first() or (name and plain.replace(name.casefold(), "").strip(" 0123456789") == ""):
        return "that others try first"
    return ""


@cache
def _tried_first() -> frozenset[str]:
    """The common pass words that the web library brings along, those long enough to be taken here."""
    packed = (files("django.contrib.auth") / "common-passwords.txt.gz").read_bytes()
    words = gzip.decompress(packed).decode("utf-8").split("\n")
    return frozenset(word.strip() for word in words if len(word.strip()) >= SHORTEST)


def hashed(phrase: str) -> str:
    """The hash to keep, with its own salt and bounds."""
    with _ONE_AT_A_TIME:
        return _HASHER.hash(phrase)


def is_right(kept: str, typed: str) -> bool:
    """Whether what was typed is the phrase; it takes as long where there is no hash to compare with."""
    phrase = unicodedata.normalize("NFC", typed)[: LONGEST + 1]
    with _ONE_AT_A_TIME:
        try:
            return _HASHER.verify(kept or _nobodys(), phrase) and bool(kept)
        except (VerificationError, InvalidHashError, UnicodeEncodeError):
            return False


def is_old(kept: str) -> bool:
    """Whether a hash was made with other bounds than today's."""
    return _HASHER.check_needs_rehash(kept)


@cache
def _nobodys() -> str:
    return _HASHER.hash("nobody's pass phrase")
