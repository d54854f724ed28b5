"""Break each law on purpose, once, and see which test goes red; writes docs/laws.md.

    .venv/bin/python scripts/break_laws.py           try them all, write the page
    .venv/bin/python scripts/break_laws.py state     only those whose name holds the word; writes nothing

Each break is one replacement in one file of a copy of the source. A break whose words are no longer
in the file, or after which the law's test stays green, ends the run with an error.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path
from typing import NamedTuple

TOP = Path(__file__).resolve().parent.parent
BREAKS = TOP / "scripts" / "breaks.toml"
PAGE = TOP / "docs" / "laws.md"
COPIED = ("src", "tests", "pyproject.toml", "docs", "scripts", "start.py", "README.md")
HEAD = """# Laws, each broken once

What must hold whatever a person writes, and proof that the tests would see it fail. For each law the
script `scripts/break_laws.py` breaks one place of the source on purpose, in a copy, and runs the law's test.
This page is its output.

| law | what was broken | the test that went red |
|---|---|---|
"""


class Break(NamedTuple):
    """One law, the place that is broken, and the test that must see it."""

    law: str
    broken: str
    file: str
    find: str
    put: str
    test: str


def breaks() -> list[Break]:
    """Every named break of the data file."""
    rows = tomllib.loads(BREAKS.read_text(encoding="utf-8"))["break"]
    return [Break(**row) for row in rows]


def copied(place: Path) -> None:
    """A copy of all that a test run reads."""
    for name in COPIED:
        source = TOP / name
        if source.is_dir():
            shutil.copytree(source, place / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy2(source, place / name)


def run(place: Path, test: str) -> bool:
    """Whether a test passes in the copy."""
    environment = {**os.environ, "PYTHONDONTWRITEBYTECODE": "1", "PYTHONPATH": str(place / "src")}
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", test]
    done = subprocess.run(command, cwd=place, env=environment, capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1):
        raise SystemExit(f"{test} could not be run:\n{done.stdout[-2000:]}{done.stderr[-2000:]}")
    return done.returncode == 0


def tried(place: Path, one: Break) -> bool:
    """Break the copy, run the law's test, mend the copy; True when the test went red."""
    file = place / one.file
    whole = file.read_text(encoding="utf-8")
    if whole.count(one.find) != 1:
        raise SystemExit(f"{one.law}: the words to break stand {whole.count(one.find)} times in {one.file}")
    file.write_text(whole.replace(one.find, one.put), encoding="utf-8")
    try:
        return not run(place, one.test)
    finally:
        file.write_text(whole, encoding="utf-8")


def main() -> None:
    """Try the breaks asked for; write the page when all were tried."""
    word = sys.argv[1] if len(sys.argv) > 1 else ""
    chosen = [b for b in breaks() if word.lower() in b.law.lower()]
    green: list[str] = []
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        copied(place)
        for one in chosen:
            red = tried(place, one)
            print(f"{'red  ' if red else 'GREEN'}  {one.law}: {one.broken}", flush=True)
            if not red:
                green.append(one.law)
    if green:
        raise SystemExit(f"{len(green)} laws did not see their break")
    if not word:
        rows = [f"| {b.law} | {b.broken} (`{b.file}`) | `{b.test.split('::')[-1]}` |\n" for b in chosen]
        PAGE.write_text(HEAD + "".join(rows), encoding="utf-8")


if __name__ == "__main__":
    main()
