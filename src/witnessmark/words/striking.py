"""A line struck: which one, why, and what it should have read."""

from __future__ import annotations

import re

from msgspec import Struct

_HEAD = re.compile(
    r"^\s*(?:(?:strike|struck|scrub(?:bed)?|scratch(?:ed)?|delete|cancel|ignore|undo|cross(?:ed)?(?: out)?"
    r"|strike out|struck out)\s+)?"
    r"(?:out\s+)?(?:line|entry|no\.?|number|#)?\s*([0-9]{1,7})\b\s*",
    re.I,
)
_VERB = re.compile(r"^\s*(strike|struck|scrub|scratch|delete|cancel|ignore|undo|cross)", re.I)
_LINE = re.compile(r"^\s*(?:line|entry)\s+[0-9]", re.I)
_SHOULD = re.compile(
    r"(?:should|ought to|must)\s+(?:have\s+)?(?:be|been|read|say|said|have read|have been)\b\s*:?\s*", re.I
)


class Strike(Struct, frozen=True):
    """What a strike says; `instead` is the line as it should have read, "" where there is none."""

    line: int
    why: str
    instead: str


def find_strike(text: str) -> Strike | None:
    """A strike, or None where the line is none.

    >>> find_strike("strike 12: that was the other side")
    Strike(line=12, why='that was the other side', instead='')
    >>> find_strike("line 12 should read: hub nut right rear off").instead
    'hub nut right rear off'
    """
    head = _HEAD.match(text)
    if head is None or not (_VERB.match(text) or _LINE.match(text)):
        return None
    rest = text[head.end() :]
    should = _SHOULD.search(rest)
    if (
        should is None
        and not _VERB.match(text)
        and not re.match(r"\s*(?:is|was|wrong|not|never)\b", rest, re.I)
    ):
        return None
    instead = rest[should.end() :].strip() if should else ""
    why = rest[: should.start()] if should else rest
    return Strike(int(head[1]), _tidied(why), instead)


def _tidied(why: str) -> str:
    return why.strip().lstrip(":,;–—- ").rstrip(" :,;")
