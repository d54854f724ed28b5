"""Everything from one command: `python3 start.py`. Needs Python 3.11 or newer and nothing else."""

import sys

if sys.version_info < (3, 11):  # noqa: UP036  read by whatever Python is at hand
    sys.exit("Witness Mark needs Python 3.11 or newer; this is " + sys.version.split()[0] + ".")

import hashlib
import importlib.util
import os
import shlex
import subprocess
import time
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Literal, TextIO
from xml.etree import ElementTree

Level = Literal["run", "test"]

HOUSE = Path(__file__).resolve().parent
VENV = HOUSE / ".venv"
ON_WINDOWS = os.name == "nt"
SCRIPTS = VENV / ("Scripts" if ON_WINDOWS else "bin")
PYTHON = SCRIPTS / ("python.exe" if ON_WINDOWS else "python")
INSTALLER_PINS = "requirements-uv.txt"
PINS: dict[Level, str] = {"run": "requirements.txt", "test": "requirements-test.txt"}
COUNTS = VENV / "counts.xml"

USAGE = """\
python3 start.py install   brings what is needed into .venv, beside this file
python3 start.py demo      shows an invented vehicle, two years apart
python3 start.py test      runs every check and every test
python3 start.py check     runs the quick checks only: style, types, imports"""

NO_VENV = """\
This Python cannot make a virtual environment. On Debian or Ubuntu this brings it:
    sudo apt install python3-venv
Then run the same command again."""

NO_LIBRARIES = """\
The libraries could not be brought. The first run needs a way to the Python package index;
later runs need none. What was said is above. Nothing outside .venv was touched; run it again."""


def main(words: Sequence[str]) -> int:
    """Do what the first word says; give the exit code."""
    for stream in (sys.stdout, sys.stderr):
        speak_utf8(stream)
    if not words:
        print(USAGE)
        return 0
    asked, rest = words[0], list(words[1:])
    if asked == "demo":
        return demo(rest)
    plain = {"install": install, "test": test, "check": check}
    if asked in plain and not rest:
        return plain[asked]()
    print(f"Not understood: {' '.join(words)}\n{USAGE}", file=sys.stderr)
    return 2


def demo(rest: Sequence[str]) -> int:
    """Show the invented vehicle; its exit code is ours."""
    make_ready("run")
    return subprocess.call([PYTHON, "-m", "witnessmark", "demo", *rest])


def speak_utf8(stream: TextIO) -> None:
    """Let an old console print any sign: UTF-8, with a stand-in for what it cannot show."""
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(encoding="utf-8", errors="replace")


# --- bringing what is needed ---------------------------------------------------------------------


def install() -> int:
    """Bring what running needs, and say how to start."""
    make_ready("run")
    print(f"Ready. Begin with: {shlex.quote(str(launcher()))} --help")
    return 0


def make_ready(level: Level) -> None:
    """Bring the pinned libraries unless the stamp says that they are there already."""
    if is_ready(level):
        return
    began = time.monotonic()
    print(f"Bringing what is needed into {VENV} ...", flush=True)
    make_venv()
    bring(PINS[level])
    bring_witnessmark()
    stamp(level).write_text(fingerprint(level), encoding="utf-8")
    if level == "test":
        stamp("run").write_text(fingerprint("run"), encoding="utf-8")
    print(f"That took {time.monotonic() - began:.0f} s; it is not needed again until the pins change.")


def is_ready(level: Level) -> bool:
    """Tell whether .venv holds what the pins, this Python and this folder ask for."""
    if not (PYTHON.exists() and stamp(level).exists()):
        return False
    return stamp(level).read_text(encoding="utf-8") == fingerprint(level)


def stamp(level: Level) -> Path:
    """Where the last installation for this level left its mark."""
    return VENV / f"ready-{level}.txt"


def fingerprint(level: Level) -> str:
    """Give one digest of all that would make an installation stale."""
    digest = hashlib.sha256(f"{sys.version_info[:2]} {VENV}".encode())
    for name in (INSTALLER_PINS, PINS["run"], PINS[level], Path(__file__).name):
        digest.update((HOUSE / name).read_bytes())
    return digest.hexdigest()


def make_venv() -> None:
    """Make .venv, or make it anew when its Python is gone or another one."""
    if venv_works():
        return
    if importlib.util.find_spec("ensurepip") is None:
        sys.exit(NO_VENV)
    run_or_stop([sys.executable, "-m", "venv", "--clear", str(VENV)], NO_VENV)


def venv_works() -> bool:
    """Tell whether the Python in .venv starts and is of the version that runs this file."""
    if not PYTHON.exists():
        return False
    asked = [str(PYTHON), "-c", "import pip, sys; print(*sys.version_info[:2])"]
    answer = subprocess.run(asked, capture_output=True, encoding="utf-8", errors="replace", check=False)
    return answer.stdout.split() == [str(n) for n in sys.version_info[:2]]


def bring(pins: str) -> None:
    """Install a hashed file of pins: with uv where it can be had, else with pip."""
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--require-hashes"]
    uv = [str(PYTHON), "-m", "uv", "pip", "install", "--quiet", "--python", str(PYTHON), "--require-hashes"]
    fast = subprocess.run([*pip, "-r", INSTALLER_PINS], cwd=HOUSE, capture_output=True, check=False)
    if fast.returncode == 0 and subprocess.run([*uv, "-r", pins], cwd=HOUSE, check=False).returncode == 0:
        return
    print("The quick installer did not manage it; trying with pip, which takes longer.", flush=True)
    run_or_stop([*pip, "-r", pins], NO_LIBRARIES)


def bring_witnessmark() -> None:
    """Let the Python in .venv find src/, and put the command beside it.

    The path is written relative, so that a folder with any letters in its name will do.
    """
    asked = [str(PYTHON), "-X", "utf8", "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    packages = Path(subprocess.check_output(asked, encoding="utf-8").strip())
    road = os.path.relpath(HOUSE / "src", packages)
    (packages / "witnessmark.pth").write_text(road + "\n", encoding="utf-8")
    if ON_WINDOWS:
        launcher().write_text('@"%~dp0python.exe" -m witnessmark %*\n', encoding="utf-8")
    else:
        command = f'#!/bin/sh\nexec {shlex.quote(str(PYTHON))} -m witnessmark "$@"\n'
        launcher().write_text(command, encoding="utf-8")
        launcher().chmod(0o755)


def launcher() -> Path:
    """Where the command is."""
    return SCRIPTS / ("witnessmark.cmd" if ON_WINDOWS else "witnessmark")


def run_or_stop(command: Sequence[str], plainly: str) -> None:
    """Run a command in the house; stop with a plain sentence when it does not end well."""
    if subprocess.run(command, cwd=HOUSE, check=False).returncode != 0:
        sys.exit(plainly)


# --- checking ------------------------------------------------------------------------------------


def check() -> int:
    """Style, types and imports."""
    make_ready("test")
    return 1 if quick_checks() else 0


def quick_checks() -> list[str]:
    """Run the three quick checks; give the names of those that found something."""
    lint_imports = SCRIPTS / ("lint-imports.exe" if ON_WINDOWS else "lint-imports")
    checks = {
        "style": [str(PYTHON), "-m", "ruff", "check", "--quiet", "."],
        "types": [str(PYTHON), "-m", "mypy"],
        "imports": [str(lint_imports)],
    }
    return [name for name, command in checks.items() if not ends_well(name, command)]


def ends_well(name: str, command: Sequence[str], settings: Mapping[str, str] | None = None) -> bool:
    """Run one check, quiet while all is in order, and say how it went."""
    began = time.monotonic()
    said = subprocess.run(
        command,
        cwd=HOUSE,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        env={**in_utf8(), **(settings or {})},
        check=False,
    )
    well = said.returncode == 0
    if not well:
        print(said.stdout.decode("utf-8", "replace").rstrip())
    print(f"{name}: {'in order' if well else 'NOT in order'}, {time.monotonic() - began:.1f} s", flush=True)
    return well


def in_utf8() -> dict[str, str]:
    """The surroundings for a tool whose words are caught and printed again."""
    return {**os.environ, "PYTHONIOENCODING": "utf-8:replace"}


def test() -> int:
    """Run every check and every test; the last line counts them."""
    make_ready("test")
    wrong = quick_checks()
    if subprocess.call(pytest_command(), cwd=HOUSE) != 0:
        wrong.append("tests")
    if not ends_well("compiled loops, run as plain Python", loops_command(), {"NUMBA_DISABLE_JIT": "1"}):
        wrong.append("compiled loops")
    if not ends_well("coverage of the core", coverage_command()):
        wrong.append("coverage of the core")
    passed, failed, skipped = counted()
    if passed == 0:
        wrong.append("no test passed")
    if skipped and os.environ.get("WM_ALL") == "1":
        wrong.append("tests skipped where none may be (WM_ALL=1)")
    if wrong:
        print("Not in order: " + ", ".join(wrong) + ".")
    print(f"tests: {passed} passed, {failed} failed, {skipped} skipped")
    return 1 if wrong else 0


def pytest_command() -> list[str]:
    """All tests, spread over at most four cores, measured, with each skip named."""
    COUNTS.unlink(missing_ok=True)
    cores = max(1, min(4, os.cpu_count() or 1))
    measured = ["--cov", "--cov-report=", f"--junitxml={COUNTS}"]
    return [str(PYTHON), "-m", "pytest", "-rs", "-n", str(cores), *measured]


def loops_command() -> list[str]:
    """The loops that are compiled, as they stand: so it is seen which of their lines a test goes down."""
    measured = ["--cov", "--cov-append", "--cov-report=", "-p", "no:cacheprovider"]
    chosen = "dispatch or two_sprays or taken_up or out_of_sessions or circle or same_seed"
    return [str(PYTHON), "-m", "pytest", "-q", "tests/engines", "-k", chosen, *measured]


def coverage_command() -> list[str]:
    """The branches of the core that some test goes down: 95 in 100, or more."""
    floors = ",".join(f"src/witnessmark/{floor}/*" for floor in core_floors())
    return [str(PYTHON), "-m", "coverage", "report", f"--include={floors}", "--fail-under=95"]


def core_floors() -> list[str]:
    """The floors that the import contracts call the core."""
    house = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))
    contracts = house["tool"]["importlinter"]["contracts"]
    core = next(contract for contract in contracts if contract["id"] == "core")
    return [module.rpartition(".")[2] for module in core["source_modules"]]


def counted() -> tuple[int, int, int]:
    """Count the tests that passed, failed and were skipped, from the file that pytest wrote."""
    if not COUNTS.exists():
        return 0, 0, 0
    cases = list(ElementTree.parse(COUNTS).iter("testcase"))
    failed = sum(1 for case in cases if case.find("failure") is not None or case.find("error") is not None)
    skipped = sum(1 for case in cases if case.find("skipped") is not None)
    return len(cases) - failed - skipped, failed, skipped


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)
