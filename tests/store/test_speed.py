"""Reading a long record costs little more than fetching its rows and decoding their JSON."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

import msgspec

from tests.journal.lines import unwritten
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Proved, Remarked, Tightened, TookOff
from witnessmark.store.schema import COLUMNS, FILE
from witnessmark.store.sqlite_record import create, open_record

LINES = 20_000
TIMES = 2.0  # about 1.2 when measured alone; the rest is room for a busy machine
NUT = ("hub nut, left rear",)
FACTS: tuple[AnyFact, ...] = (
    Tightened(at=NUT, figures=(Quantity("47 N·m", 47.0, "N·m"),), marked=True),
    TookOff(at=("brake drum, left rear",)),
    Proved(at=NUT, check="pin bent", seen=True),
    Remarked(remark="thread looks tired"),
)


def quickest(work: Callable[[], object], turns: int = 5) -> float:
    def once() -> float:
        start = perf_counter()
        work()
        return perf_counter() - start

    return min(once() for _ in range(turns))


def test_reading_a_long_record(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        record.append([unwritten(n, FACTS[n % len(FACTS)]) for n in range(LINES)], 0)
    decode = msgspec.json.Decoder(AnyFact).decode
    raw = sqlite3.connect(tmp_path / FILE)

    def bare() -> object:
        rows = raw.execute(f"SELECT {COLUMNS} FROM entries ORDER BY line").fetchall()
        return rows, [decode(row[-1]) for row in rows]

    with open_record(tmp_path) as record:
        assert len(record.read()) == LINES
        assert quickest(record.read) < TIMES * quickest(bare)
    raw.close()
