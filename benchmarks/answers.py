"""How long the answers take on the demo vehicle, warm and as whole commands, each as a ratio to its bound.

Warm: each answer beside its bound of 0.2 s. Cold: each command beside its bound, and beside a bare
`python -c pass` on the same machine in the same run. Reading one line: beside 5 ms.

    .venv/bin/python benchmarks/answers.py
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from witnessmark.demo.telling import story, tell
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.sheet import Asked, make_sheet
from witnessmark.words.lines import read_lines
from witnessmark.words.read import read_line
from witnessmark.words.vocabulary import vocabulary_of

WARM_BOUND = 0.2
COLD_BOUNDS = {"--help": 0.3, "owed": 0.5, "gate road": 0.5, "needs": 0.5, "session": 1.5, "sheet wall": 1.5}
LINE_BOUND = 0.005


def main() -> None:
    """Tell the demo once, then time everything on it."""
    with tempfile.TemporaryDirectory() as folder:
        told = timed(lambda: tell(Path(folder) / "first"), times=1)
        restoration = tell(Path(folder) / "demo")
        print(f"telling the demo, {len(restoration.entries)} lines   {told:5.2f} s")
        warm(restoration)
        lines(restoration)
        cold(Path(folder) / "demo")


def warm(restoration: Restoration) -> None:
    """Each answer from the facts up, in a process that has answered before."""
    answers: dict[str, Callable[[Flow], object]] = {
        "state": lambda flow: flow.state,
        "owed": lambda flow: flow.owed,
        "gate road": lambda flow: flow.gate("road"),
        "needs": lambda flow: flow.needs,
        "reach": lambda flow: flow.reach(("pinion seal",)),
        "jobs": lambda flow: flow.jobs,
        "session": lambda flow: flow.session(3.0),
        "wall sheet": lambda flow: make_sheet(flow, Asked(kind="wall")),
    }
    print(f"\nwarm, from the facts up (bound {WARM_BOUND} s)")
    for name, answer in answers.items():
        answer(restoration.flow())
        row(name, timed(lambda answer=answer: answer(restoration.flow())), WARM_BOUND)


def lines(restoration: Restoration) -> None:
    """The typed lines of the whole story, each read against the whole vehicle."""
    vocabulary = vocabulary_of(restoration.flow().vehicle)
    typed = [line.words for line in read_lines(story())]
    today = restoration.now.date()
    whole = timed(lambda: [read_line(words, vocabulary, today=today) for words in typed], times=1)
    print(f"\none typed line, mean of {len(typed)} (bound {LINE_BOUND} s)")
    row("read a line", whole / len(typed), LINE_BOUND)


def cold(folder: Path) -> None:
    """Whole commands, each a process of its own."""
    bare = timed(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True))
    print(f"\ncold, whole commands (python -c pass takes {bare:.3f} s)")
    for words, bound in COLD_BOUNDS.items():
        command = [sys.executable, "-m", "witnessmark", "--in", str(folder), *words.split()]
        taken = timed(lambda command=command: subprocess.run(command, capture_output=True, check=False))
        row(words, taken, bound, f"   {taken / bound:4.2f} x bound, {taken / bare:4.1f} x bare python")


def row(name: str, taken: float, bound: float, said: str = "") -> None:
    print(f"  {name:12s} {taken:7.4f} s" + (said or f"   {taken / bound:4.2f} x bound"))


def timed(act: Callable[[], object], times: int = 5) -> float:
    """The shortest of a few runs, seconds."""
    found = []
    for _ in range(times):
        start = time.perf_counter()
        act()
        found.append(time.perf_counter() - start)
    return min(found)


if __name__ == "__main__":
    main()
