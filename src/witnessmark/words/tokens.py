"""A line parted into words, numbers and marks, each with its place in the text."""

from __future__ import annotations

import re

from msgspec import Struct

_TOKEN = re.compile(
    r"(?P<short>(?:[A-Za-z]/)+[A-Za-z]+(?![\w/]))"
    r"|(?P<with>[wW]/(?=\s|$))"
    r"|(?P<number>[0-9]+(?:[.,:/][0-9]+)*|[½¼¾⅛⅜⅝⅞⅓⅔])"
    r"|(?P<word>[^\W\d_][^\W_]*(?:['’`][^\W\d_]+)*)"
    r"|(?P<mark>\S)"
)
_JOINED = re.compile(r"(?<=\w)[-/](?=\w)")
_STOPS = frozenset(".;!?:")


class Token(Struct, frozen=True):
    """One word, number or mark.

    low   as compared: lower case, without apostrophes or slashes; "&" and "+" are "and"
    sort  "word", "number" or "mark"
    """

    start: int
    end: int
    text: str
    low: str
    sort: str


def tokens_of(text: str) -> tuple[Token, ...]:
    """Every token, in order. A hyphen or slash inside a word parts it and is no token itself.

    >>> [t.low for t in tokens_of("U-bolts n/s/f, wasn't 4.5 mm")]
    ['u', 'bolts', 'nsf', ',', 'wasnt', '4.5', 'mm']
    """
    found = []
    for match in _TOKEN.finditer(text):
        if match.lastgroup == "mark" and _JOINED.match(text, match.start()):
            continue
        sort = "word" if match.lastgroup in ("short", "with", "word") else str(match.lastgroup)
        low, sort = _low(match[0], sort)
        found.append(Token(match.start(), match.end(), match[0], low, sort))
    return tuple(found)


def _low(text: str, sort: str) -> tuple[str, str]:
    if text in ("&", "+"):
        return "and", "word"
    if sort == "mark":
        return text, sort
    plain = text.lower()
    for sign in "'’`/":
        plain = plain.replace(sign, "")
    return plain, sort


def is_stop(token_low: str) -> bool:
    """Whether a mark ends a sentence or parts it hard.

    >>> is_stop("."), is_stop(",")
    (True, False)
    """
    return token_low in _STOPS
