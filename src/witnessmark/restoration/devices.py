"""Lines that come from a device with an id of their own, so that sending one twice writes it once."""

from __future__ import annotations

import re
import uuid
from collections.abc import Callable, Sequence
from itertools import count

from witnessmark.journal.entry import Entry
from witnessmark.restoration.heard import Heard
from witnessmark.restoration.restoration import Restoration

_ID = re.compile(r"[0-9a-z]{16,64}")


def new_id() -> str:
    """An id for a line about to be typed."""
    return uuid.uuid4().hex


def usable_id(typed: str) -> str:
    """The id a device made, or a new one where it is none.

    >>> usable_id("0123456789abcdef0123")
    '0123456789abcdef0123'
    """
    return typed if _ID.fullmatch(typed) else new_id()


def ids_from(first: str) -> Callable[[], str]:
    """Ids for the facts of one line: the device's own, then its followers.

    >>> make = ids_from("0123456789abcdef"); make(), make()
    ('0123456789abcdef', '0123456789abcdef.2')
    """
    numbers = count(1)
    return lambda: first if (n := next(numbers)) == 1 else f"{first}.{n}"


def written_as(entries: Sequence[Entry], device_id: str, words: str) -> tuple[Entry, ...]:
    """The lines already written under a device's id in these words; none where it is new."""
    return tuple(
        e
        for e in entries
        if e.id.startswith(device_id)
        and (e.id == device_id or e.id.startswith(f"{device_id}."))
        and _plain(e.words) == _plain(words)
    )


def write_once(restoration: Restoration, heard: Heard, device_id: str) -> tuple[Entry, ...]:
    """Write a line under its device's id; where it is written already, hand back what stands there."""
    before = written_as(restoration.entries, device_id, heard.words)
    if before:
        return before
    taken = any(e.id == device_id for e in restoration.entries)
    restoration.new_id = ids_from(new_id() if taken else device_id)
    return restoration.write(heard)


def _plain(words: str) -> str:
    return " ".join(words.split())
