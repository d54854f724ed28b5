"""How long a large record takes to read, check and fold, beside reading its rows and their JSON alone.

Prints ratios measured in one run on one machine; the bound is 3 for the whole.

    .venv/bin/python benchmarks/record.py [--facts 100000]
"""

from __future__ import annotations

import argparse
import json
import random
import sqlite3
import tempfile
import time
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.rules.every import all_faults
from witnessmark.state.standing import state_from
from witnessmark.store.sqlite_record import create, open_record
from witnessmark.vehicle.things import Joint, Part

KINDS = ("wheel-nuts", "brake-union", "shaft-seal", "structural-bolts", "ball-joint-taper", "gasketed-cover")


def main() -> None:
    """Make a record of the size asked for, then time each way of reading it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--facts", type=int, default=100_000)
    size = parser.parse_args().facts
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder)
        with create(path) as record:
            record.append(made_up(size), 0)
        bare = best_of(lambda: rows_and_json(path))
        read = best_of(lambda: open_and_read(path))
        entries = open_and_read(path)
        checked = best_of(lambda: all_faults(entries))
        folded = best_of(lambda: state_from(entries))
    print(f"{size:,} facts")
    print(f"rows and their JSON alone  {bare:6.2f} s   1.0")
    print(f"read as entries            {read:6.2f} s   {read / bare:.1f} x")
    print(f"checked for faults         {checked:6.2f} s   {checked / bare:.1f} x")
    print(f"folded into a state        {folded:6.2f} s   {folded / bare:.1f} x")
    whole = read + checked + folded
    print(f"all three                  {whole:6.2f} s   {whole / bare:.1f} x   (bound 3)")


def best_of(act: Callable[[], Any], times: int = 3) -> float:
    """The shortest of a few runs, seconds."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        act()
        taken.append(time.perf_counter() - start)
    return min(taken)


def rows_and_json(path: Path) -> int:
    """The bound: fetch every row, decode its fact with the standard library's JSON."""
    connection = sqlite3.connect(path / "journal.db")
    decoded = [
        (row, json.loads(row[-1])) for row in connection.execute("SELECT * FROM entries ORDER BY line")
    ]
    connection.close()
    return len(decoded)


def open_and_read(path: Path) -> tuple[Entry, ...]:
    with open_record(path) as record:
        return record.read()


def made_up(size: int) -> list[Entry]:
    """A long-lived record: a few hundred joints, opened and closed over years."""
    draw = random.Random(7)
    joints = [Joint(name=f"joint {n}", kind=KINDS[n % len(KINDS)], holds=(f"part {n}",)) for n in range(300)]
    parts = [Part(name=f"part {n}") for n in range(300)]
    facts: list[f.AnyFact] = [f.DescribedVehicle(name="long-lived", body="car")]
    facts.append(f.Described(parts=tuple(parts), joints=tuple(joints)))
    torque = (Quantity("47 N·m", 47.0, "N·m"),)
    while len(facts) < size:
        name = f"joint {draw.randrange(300)}"
        facts += [
            f.TookOff(at=(name,)),
            f.Found(at=(name,), condition="stuck"),
            f.Fitted(at=(name,), new=True),
            f.Tightened(at=(name,), figures=torque),
            f.Proved(at=(name,), seen=True),
        ]
    first = date(2010, 1, 2)
    return [
        Entry(
            id=f"id-{n}",
            day=first + timedelta(days=n // 20),
            time=END_OF_DAY,
            written="2026-01-01T10:00:00",
            line=n,
            who="you",
            words="as typed that day",
            fact=fact,
        )
        for n, fact in enumerate(facts[:size], 1)
    ]


if __name__ == "__main__":
    main()
