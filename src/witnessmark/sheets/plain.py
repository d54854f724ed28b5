"""A sheet as plain values, ready for JSON, as typed or made fit to show."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import msgspec

from witnessmark.sheets.rows import Sheet


def as_plain(sheet: Sheet) -> dict[str, Any]:
    """The whole sheet as dictionaries, lists, words and numbers, every word as it was typed."""
    plain: dict[str, Any] = msgspec.to_builtins(sheet)
    return plain


def reworded(sheet: Sheet, change: Callable[[str], str]) -> Sheet:
    """The same sheet with every text put through `change`: made fit to show, or written in plain letters."""
    return msgspec.convert(_changed(as_plain(sheet), change), Sheet)


def _changed(value: Any, change: Callable[[str], str]) -> Any:
    if isinstance(value, str):
        return change(value)
    if isinstance(value, dict):
        return {key: _changed(item, change) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_changed(item, change) for item in value]
    return value
