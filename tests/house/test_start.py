"""start.py: nothing but the standard library, plain words, and never the same work twice."""

import ast
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import start
from tests.house.source import HOUSE, tree

SOURCE = (HOUSE / "start.py").read_text(encoding="utf-8")
OLDEST_THAT_CAN_READ_IT = (3, 6)


def imported(module: ast.Module) -> set[str]:
    """The top names of all that a module imports."""
    found: set[str] = set()
    for node in ast.walk(module):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        if isinstance(node, ast.ImportFrom):
            found.add((node.module or "").partition(".")[0])
    return found


def test_it_imports_the_standard_library_only() -> None:
    assert imported(tree(HOUSE / "start.py")) - sys.stdlib_module_names == set()


def test_an_old_python_can_read_it_and_is_told_first_of_all() -> None:
    module = ast.parse(SOURCE, feature_version=OLDEST_THAT_CAN_READ_IT)
    docstring, only_import, question = module.body[:3]
    assert isinstance(docstring, ast.Expr)
    assert ast.unparse(only_import) == "import sys"
    assert ast.unparse(question).startswith("if sys.version_info < (3, 11):\n    sys.exit(")


def test_an_old_python_gets_one_plain_sentence() -> None:
    asks = f"import sys; sys.version_info = (3, 9, 2); exec(compile({SOURCE!r}, 'start.py', 'exec'))"
    answer = subprocess.run([sys.executable, "-c", asks], capture_output=True, encoding="utf-8", check=False)
    assert answer.returncode == 1
    assert answer.stdout == ""
    assert answer.stderr.startswith("Witness Mark needs Python 3.11 or newer; this is ")
    assert len(answer.stderr.splitlines()) == 1


@pytest.fixture
def workshop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A house of its own, in a folder with a space and an umlaut, with a program that says one word."""
    house = tmp_path / "Großes Möbel lager"
    package = house / "src" / "witnessmark"
    package.mkdir(parents=True)
    (package / "__main__.py").write_text("import sys\nprint('spoke', *sys.argv[1:])\n", encoding="utf-8")
    for name in ("start.py", "pyproject.toml", *start.PINS.values(), start.INSTALLER_PINS):
        shutil.copy(HOUSE / name, house)
    scripts = house / ".venv" / start.SCRIPTS.name
    monkeypatch.setattr(start, "HOUSE", house)
    monkeypatch.setattr(start, "VENV", house / ".venv")
    monkeypatch.setattr(start, "SCRIPTS", scripts)
    monkeypatch.setattr(start, "PYTHON", scripts / start.PYTHON.name)
    monkeypatch.setattr(start, "COUNTS", house / ".venv" / "counts.xml")
    return house


@pytest.fixture
def bare_venv(workshop: Path) -> Path:
    """A virtual environment in that house, with no library in it."""
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", start.VENV], check=True)
    return start.VENV


def on_an_old_console(house: Path, *words: str) -> subprocess.CompletedProcess[bytes]:
    """Run start.py as a console of code page 1252 would."""
    old = {**os.environ, "PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    command = [sys.executable, str(house / "start.py"), *words]
    return subprocess.run(command, capture_output=True, env=old, check=False)


def test_no_word_prints_the_four_with_one_line_each(workshop: Path) -> None:
    answer = on_an_old_console(workshop)
    lines = answer.stdout.decode("utf-8").splitlines()
    assert answer.returncode == 0
    assert [line.split()[2] for line in lines] == ["install", "demo", "test", "check"]


def test_a_word_it_does_not_know_is_said_again_with_the_four(workshop: Path) -> None:
    answer = on_an_old_console(workshop, "Prüfung", "→")
    said = answer.stderr.decode("utf-8")
    assert answer.returncode == 2
    assert said.startswith("Not understood: Prüfung →\n")
    assert "start.py demo" in said


def test_the_command_runs_from_a_folder_with_a_space_and_an_umlaut(bare_venv: Path) -> None:
    start.bring_witnessmark()
    answer = subprocess.run(
        [start.launcher(), "two words", "ü"], capture_output=True, encoding="utf-8", check=False
    )
    assert (answer.returncode, answer.stdout) == (0, "spoke two words ü\n")


def test_the_road_to_the_source_is_written_in_plain_letters(bare_venv: Path) -> None:
    start.bring_witnessmark()
    (road,) = bare_venv.rglob("witnessmark.pth")
    assert road.read_bytes().isascii()


def test_what_is_ready_is_not_brought_again(bare_venv: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    brought: list[str] = []
    monkeypatch.setattr(start, "venv_works", lambda: True)
    monkeypatch.setattr(start, "bring", brought.append)
    start.make_ready("run")
    start.make_ready("run")
    assert brought == ["requirements.txt"]
    start.make_ready("test")
    start.make_ready("run")
    assert brought == ["requirements.txt", "requirements-test.txt"]


@pytest.mark.parametrize("changed", ["requirements.txt", "requirements-uv.txt", "start.py"])
def test_a_changed_pin_is_brought(bare_venv: Path, monkeypatch: pytest.MonkeyPatch, changed: str) -> None:
    monkeypatch.setattr(start, "venv_works", lambda: True)
    monkeypatch.setattr(start, "bring", lambda pins: None)
    start.make_ready("test")
    assert start.is_ready("test")
    with (start.HOUSE / changed).open("a", encoding="utf-8") as pins:
        pins.write("# newer\n")
    assert not start.is_ready("run")
    assert not start.is_ready("test")


def test_a_failed_installation_leaves_no_stamp(bare_venv: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_way_out(pins: str) -> None:
        raise SystemExit(start.NO_LIBRARIES)

    monkeypatch.setattr(start, "venv_works", lambda: True)
    monkeypatch.setattr(start, "bring", no_way_out)
    with pytest.raises(SystemExit, match="could not be brought"):
        start.make_ready("run")
    assert not start.is_ready("run")


def test_a_python_without_its_venv_part_names_the_command_that_brings_it(
    workshop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    with pytest.raises(SystemExit, match="sudo apt install python3-venv"):
        start.make_venv()


def test_a_venv_whose_python_is_gone_does_not_count(bare_venv: Path) -> None:
    start.PYTHON.unlink()
    assert not start.venv_works()


COUNTED = """<testsuites><testsuite>
<testcase name="a"/><testcase name="b"><system-out>said</system-out></testcase>
<testcase name="c"><failure/></testcase><testcase name="d"><error/></testcase>
<testcase name="e"><skipped/></testcase></testsuite></testsuites>"""


def test_it_counts_what_pytest_wrote(workshop: Path) -> None:
    assert start.counted() == (0, 0, 0)
    start.COUNTS.parent.mkdir()
    start.COUNTS.write_text(COUNTED, encoding="utf-8")
    assert start.counted() == (2, 2, 1)


@pytest.mark.parametrize(
    ("counts", "all_or_nothing", "code"),
    [((9, 0, 0), "1", 0), ((9, 0, 1), "", 0), ((9, 0, 1), "1", 1), ((0, 0, 0), "", 1), ((0, 0, 3), "", 1)],
)
def test_a_skip_counts_against_it_only_where_none_may_be(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    counts: tuple[int, int, int],
    all_or_nothing: str,
    code: int,
) -> None:
    monkeypatch.setenv("WM_ALL", all_or_nothing)
    monkeypatch.setattr(start, "make_ready", lambda level: None)
    monkeypatch.setattr(start, "quick_checks", list)
    monkeypatch.setattr(start, "ends_well", lambda *_: True)
    monkeypatch.setattr("subprocess.call", lambda command, cwd: 0)
    monkeypatch.setattr(start, "counted", lambda: counts)
    assert start.test() == code
    passed, failed, skipped = counts
    last = capsys.readouterr().out.splitlines()[-1]
    assert last == f"tests: {passed} passed, {failed} failed, {skipped} skipped"


def test_pytest_that_ran_nothing_is_a_failure(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(start, "make_ready", lambda level: None)
    monkeypatch.setattr(start, "quick_checks", list)
    monkeypatch.setattr(start, "ends_well", lambda *_: True)
    monkeypatch.setattr("subprocess.call", lambda command, cwd: 5)
    monkeypatch.setattr(start, "counted", lambda: (9, 0, 0))
    assert start.test() == 1


def test_the_demo_passes_on_its_words_and_its_exit_code(
    bare_venv: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    start.bring_witnessmark()
    (start.HOUSE / "src" / "witnessmark" / "__main__.py").write_text(
        "import sys\nsys.exit(7 if sys.argv[1:] == ['demo', '--quick'] else 8)\n", encoding="utf-8"
    )
    monkeypatch.setattr(start, "make_ready", lambda level: None)
    assert start.main(["demo", "--quick"]) == 7


def test_the_core_is_what_the_contract_calls_it() -> None:
    assert {"ground", "state", "owed"} <= set(start.core_floors())
    assert "cli" not in start.core_floors()
