"""Every rule on one page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.rules.begun_twice import second_beginnings
from witnessmark.journal.rules.blanking import more_out_than_in
from witnessmark.journal.rules.clock import malformed_times
from witnessmark.journal.rules.finite import endless_figures
from witnessmark.journal.rules.future_day import done_after_written
from witnessmark.journal.rules.numbering import broken_numbering, shared_ids
from witnessmark.journal.rules.orphans import strikes_that_orphan
from witnessmark.journal.rules.strikes import strikes_at_nothing
from witnessmark.journal.rules.undescribed import names_never_described

Rule = Callable[[Sequence[Entry]], Iterator[Fault]]

RULES: tuple[Rule, ...] = (
    broken_numbering,
    shared_ids,
    malformed_times,
    done_after_written,
    second_beginnings,
    strikes_at_nothing,
    strikes_that_orphan,
    names_never_described,
    more_out_than_in,
    endless_figures,
)


def all_faults(entries: Iterable[Entry]) -> tuple[Fault, ...]:
    """Every fault in a record, by line; those of the whole record first. A sound record has none."""
    every = tuple(entries)
    found = [fault for rule in RULES for fault in rule(every)]
    return tuple(sorted(found, key=lambda fault: (fault.line or 0, fault.rule)))
