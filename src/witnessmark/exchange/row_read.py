"""A row understood."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.exchange.grid import Row
from witnessmark.journal.facts import AnyFact


class Read(Struct, frozen=True, kw_only=True):
    """A row understood: its facts, and the names it leans on."""

    row: Row
    facts: tuple[AnyFact, ...]
    leans_on: tuple[tuple[str, str], ...] = ()  # heading, name
