"""A command that needs no optimiser loads none: neither the solver nor what compiles loops."""

import subprocess
import sys
from pathlib import Path

HEAVY = ("ortools", "numba", "pandas")
CALLS = (
    ["journal"], ["owed"], ["gate", "road"], ["state"], ["needs"], ["check"], ["session"],
    ["sheet", "wall"], ["write", "took off hub cap", "--yes"], ["plan", "--help"],
)  # fmt: skip
CODE = """
import sys
from witnessmark.cli.main import group
for words in {calls!r}:
    try:
        group.main(["--in", {folder!r}, *words], standalone_mode=False)
    except SystemExit:
        pass
print("LOADED", sorted(set({heavy!r}) & set(sys.modules)))
"""


def test_nothing_heavy_is_loaded_by_what_needs_no_plan(tmp_path: Path) -> None:
    begun = [sys.executable, "-m", "witnessmark", "--in", str(tmp_path), "begin", "the trailer"]
    subprocess.run(begun, check=True, capture_output=True)
    code = CODE.format(calls=CALLS, folder=str(tmp_path), heavy=HEAVY)
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, encoding="utf-8")
    assert done.stderr == ""
    assert done.stdout.splitlines()[-1] == "LOADED []"
