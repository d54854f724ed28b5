"""Run as a child process: appends three lines at a time for ever, and prints each acknowledgement."""

from __future__ import annotations

import sys
from pathlib import Path

from tests.journal.lines import unwritten
from witnessmark.journal.facts import Remarked
from witnessmark.store.opening import open_record
from witnessmark.store.record_store import NotWritten

TOGETHER = 3


def append_for_ever(folder: Path, name: str, limit: int) -> None:
    with open_record(folder) as record:
        last = record.last_line()
        turn = 0
        while turn < limit:
            ids = [f"{name}-{turn}-{piece}" for piece in range(TOGETHER)]
            lines = [unwritten(0, Remarked(remark=id_), id=id_, words=f"{name}-{turn}") for id_ in ids]
            try:
                last = record.append(lines, last)[-1].line
            except NotWritten as lost:
                last = lost.last
                continue
            print(f"{name}-{turn}", flush=True)
            turn += 1


if __name__ == "__main__":
    append_for_ever(Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
