"""Text that a spreadsheet program would take for a formula, made harmless and made itself again."""

from __future__ import annotations

import re

_FORMULA = re.compile(r"'*[=+\-@\t\r]")
_GUARDED = re.compile(r"'+[=+\-@\t\r]")


def guarded(text: str) -> str:
    """The text with a quote before it where it would count as a formula.

    >>> guarded("=1+1"), guarded("-5 mm"), guarded("M8"), guarded("'=x")
    ("'=1+1", "'-5 mm", 'M8', "''=x")
    """
    return f"'{text}" if _FORMULA.match(text) else text


def unguarded(text: str) -> str:
    """The text as it was before it was guarded.

    >>> unguarded("'=1+1"), unguarded("'tis"), unguarded("''=x")
    ('=1+1', "'tis", "'=x")
    """
    return text[1:] if _GUARDED.match(text) else text
