"""Lines are numbered from 1 without gaps, and no two carry the same id."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry

_RESTORE = "Take the record back from an archive or a copy that reads back whole."


def broken_numbering(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Places where a line is missing, or stands twice."""
    wanted = 1
    for line in sorted(entry.line for entry in entries):
        if line < wanted:
            yield Fault(line=line, rule="numbering", what=f"Line {line} stands twice.", do=_RESTORE)
        elif line > wanted:
            gap = f"Line {wanted} is" if line == wanted + 1 else f"Lines {wanted} to {line - 1} are"
            yield Fault(line=line, rule="numbering", what=f"{gap} missing before line {line}.", do=_RESTORE)
        wanted = max(wanted, line + 1)


def shared_ids(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines that carry the id of an earlier one."""
    first: dict[str, int] = {}
    for entry in sorted(entries, key=lambda entry: entry.line):
        other = first.setdefault(entry.id, entry.line)
        if other != entry.line:
            what = f"Line {entry.line} carries the same id as line {other}."
            yield Fault(line=entry.line, rule="id", what=what, do=_RESTORE)
