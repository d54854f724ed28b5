"""Run a command in this process, as a shell would, and read what it said."""

from __future__ import annotations

import contextlib
import io
import json
from pathlib import Path
from typing import Any, NamedTuple

from witnessmark.cli.main import group
from witnessmark.cli.trouble import guarded


class Said(NamedTuple):
    """Exit code, standard output, standard error."""

    code: int
    out: str
    err: str

    def json(self) -> Any:
        return json.loads(self.out)


def run(folder: Path, *words: str) -> Said:
    """Run `witnessmark --in folder words...`."""
    out, err = io.StringIO(), io.StringIO()
    code = 0
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            guarded(group, ["--in", str(folder), *words])
        except SystemExit as end:
            code = end.code if isinstance(end.code, int) else 0
    return Said(code, out.getvalue(), err.getvalue())
