"""The own kit a record tells of, as the bench's drawer: from a folder with nothing else worked out."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from witnessmark.bench.drawer import EMPTY, Drawer, drawer_of
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Owned
from witnessmark.journal.order import standing
from witnessmark.state.supply import Supply
from witnessmark.store.opening import holds_record, open_record


def drawer_owned(supply: Supply) -> Drawer:
    """What a state says is owned and has a size."""
    return drawer_of((line.fact.item, line.fact.number, line.fact.size) for line in supply.owned)


def drawer_from(entries: Iterable[Entry]) -> Drawer:
    """What these lines say is owned and has a size; struck lines do not count."""
    owned = (e.fact for e in standing(list(entries)) if isinstance(e.fact, Owned))
    return drawer_of((fact.item, fact.number, fact.size) for fact in owned)


def drawer_in(folder: Path) -> Drawer:
    """The drawer of the record in a folder; an empty one where there is no record.

    Raises BadInput or RecordDamaged where a record stands there that cannot be read.
    """
    if not holds_record(folder):
        return EMPTY
    with open_record(folder) as record:
        return drawer_from(record.read())
