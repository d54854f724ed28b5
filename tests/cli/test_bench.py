"""The bench on the command line: exit codes, JSON, picture, the list of moments, thirty bad inputs."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from witnessmark.bench.questions import SUBJECTS, every_question
from witnessmark.cli.bench import bench_command


def run(*words: str) -> Result:
    """Call the command with these words."""
    return CliRunner().invoke(bench_command, list(words))


def test_alone_it_lists_the_moments_not_the_formulas() -> None:
    result = run()
    assert result.exit_code == 0
    assert "a seal to drive in" in result.output
    assert all(q.moment in result.output for q in every_question())


@pytest.mark.parametrize("subject", SUBJECTS)
def test_a_subject_alone_tells_what_each_question_is_given(subject: str) -> None:
    result = run(subject)
    assert result.exit_code == 0
    for question in every_question():
        if question.subject == subject:
            assert all(f"    {one.name}: {one.help}" in result.output for one in question.inputs)
            assert question.call() in result.output


def test_a_question_is_answered_as_text_and_as_json() -> None:
    asked = ("bolts", "check", "thread=M8", "grade=8.8", "torque=13 lbf ft")
    assert "Fits: within" in run(*asked).output
    plain = json.loads(run(*asked, "--json").output)
    assert plain["verdict"] == "fits"
    assert plain["asked"]["torque"] == {
        "typed": "13 lbf ft",
        "value": pytest.approx(17.6256, abs=1e-3),
        "unit": "N·m",
    }
    assert plain["results"]["fraction_of_proof"]["low"] == pytest.approx(0.4717, abs=1e-3)


def test_nothing_found_leaves_with_three_and_says_why() -> None:
    result = run(
        "shims", "stack", "measured=9 mm", "wanted_low=0 mm", "wanted_high=0.1 mm", "shims=0.1x2 mm", "--json"
    )
    assert result.exit_code == 3
    plain = json.loads(result.output)
    assert plain["verdict"] is None
    assert "all the shims together" in plain["because"]


def test_a_verdict_of_no_leaves_with_nothing() -> None:
    result = run("bolts", "check", "thread=M6", "grade=8.8", "torque=13 lbf ft", "--json")
    assert result.exit_code == 0
    assert json.loads(result.output)["verdict"] == "no"


def test_the_picture_is_written_beside_and_renamed(tmp_path: Path) -> None:
    file = tmp_path / "seal.svg"
    assert run("threads", "size", "thread=M8", "--picture", str(file)).exit_code == 0
    assert file.read_text(encoding="utf-8").startswith("<svg")
    assert [p.name for p in tmp_path.iterdir()] == ["seal.svg"]


def test_a_file_of_ones_own_is_read(tmp_path: Path) -> None:
    file = tmp_path / "drivers.csv"
    file.write_text("\ufeffname,inside mm,outside mm\npipe,32,36\n", encoding="utf-8")
    result = run("seals", "driver", "bore=36.2mm", "shaft=31.8mm", f"have=@{file}", "--json")
    assert json.loads(result.output)["results"]["rows"][0]["driver"] == "pipe"


BAD = {
    "no unit": ("bolts", "check", "thread=M8", "grade=8.8", "torque=50"),
    "wrong kind of unit": ("bolts", "check", "thread=M8", "grade=8.8", "torque=50 mm"),
    "negative torque": ("bolts", "check", "thread=M8", "grade=8.8", "torque=-50 N·m"),
    "not a number": ("bolts", "check", "thread=M8", "grade=8.8", "torque=NaN N·m"),
    "infinite": ("bolts", "check", "thread=M8", "grade=8.8", "torque=inf N·m"),
    "absurd": ("bolts", "check", "thread=M8", "grade=8.8", "torque=99999 N·m"),
    "unknown thread": ("threads", "size", "thread=5/16 UNG"),
    "unknown grade": ("bolts", "check", "thread=M8", "grade=9.9", "torque=20 N·m"),
    "unknown name": ("bolts", "check", "thread=M8", "grade=8.8", "torqe=20 N·m"),
    "unknown subject": ("bolt", "check"),
    "unknown question": ("bolts", "chek", "thread=M8"),
    "missing": ("bolts", "check", "thread=M8"),
    "two ways of friction": (
        "bolts", "check", "thread=M8", "grade=8.8", "torque=20 N·m", "nut_factor=0.2", "friction_thread=0.1",
    ),
    "absurd friction": ("bolts", "check", "thread=M8", "grade=8.8", "torque=20 N·m", "nut_factor=20"),
    "not name and value": ("bolts", "check", "thread", "M8"),
    "twice": ("bolts", "check", "thread=M8", "thread=M10", "grade=8.8", "torque=20 N·m"),
    "grade too small": ("bolts", "check", "thread=M20", "grade=4.8", "torque=20 N·m"),
    "no friction to tighten by": ("bolts", "tighten", "thread=M8", "grade=8.8"),
    "adapter past the grip": (
        "bolts", "adapter", "torque=20 N·m", "wrench_length=300 mm", "extension=400 mm", "angle=180°",
    ),
    "adapter asked nothing": ("bolts", "adapter", "wrench_length=300 mm", "extension=40 mm"),
    "hub inside its shaft": (
        "fits", "press", "shaft_diameter=50 mm", "hub_diameter=40 mm", "interference=0.02 mm",
        "shaft_modulus=210 GPa", "hub_modulus=210 GPa", "shaft_poisson=0.3", "hub_poisson=0.3",
    ),
    "bore inside its shaft": ("seals", "driver", "bore=30 mm", "shaft=40 mm"),
    "driver inside out": ("seals", "driver", "bore=60 mm", "shaft=38 mm", "have=36x32 mm"),
    "list without a unit": ("seals", "driver", "bore=60 mm", "shaft=38 mm", "have=32x36"),
    "file not there": ("seals", "driver", "bore=60 mm", "shaft=38 mm", "have=@nowhere.csv"),
    "no such gland": ("orings", "check", "gland=radial", "section=3 mm", "inside=40 mm", "diameter=41 mm",
                      "depth=2.4 mm", "width=4 mm"),
    "groove without depth": ("orings", "match", "gland=rod", "diameter=41 mm", "depth=0 mm", "width=4 mm"),
    "window upside down": (
        "shims", "stack", "measured=0.6 mm", "wanted_low=0.2 mm", "wanted_high=0.1 mm", "shims=0.1x2 mm",
    ),
    "shim of no thickness": (
        "shims", "stack", "measured=0.6 mm", "wanted_low=0.1 mm", "wanted_high=0.2 mm", "shims=0x2 mm",
    ),
    "half a shim": (
        "shims", "stack", "measured=0.6 mm", "wanted_low=0.1 mm", "wanted_high=0.2 mm", "shims=0.1x1.5 mm",
    ),
    "thread no gauge reads": ("threads", "identify", "diameter=8 mm", "pitch=400 tpi"),
    "pitch as torque": ("threads", "identify", "diameter=8 mm", "pitch=20 N·m"),
    "modulus of nothing": ("bolts", "turn", "thread=M8", "grip=40 mm", "preload=10 kN", "modulus=0 GPa"),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_bad_input_is_told_in_three_parts_and_leaves_with_two(name: str) -> None:
    result = run(*BAD[name])
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    said = [line.partition(":")[0] for line in result.stderr.splitlines()]
    assert said[:3] == ["Given", "Would hold", "Do"]
    assert all(len(line.partition(":")[2]) > 4 for line in result.stderr.splitlines()[:3])
    assert "Traceback" not in result.output


def test_bad_input_as_json() -> None:
    result = run("threads", "size", "thread=5/16 UNG", "--json")
    error = json.loads(result.stderr)["error"]
    assert set(error) == {"given", "holds", "do", "near"}
    assert "5/16 UNF" in error["near"]
    assert "Near:" in run("threads", "size", "thread=5/16 UNG").stderr


def test_a_file_that_is_not_text_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "drawer.csv"
    file.write_bytes(b"\xff\xfe\x00\x81")
    result = run("seals", "driver", "bore=60 mm", "shaft=38 mm", f"have=@{file}")
    assert result.exit_code == 2
    assert "not UTF-8 text" in result.stderr


def test_a_picture_that_cannot_be_drawn_or_written_is_refused(tmp_path: Path) -> None:
    none = run("bolts", "adapter", "torque=20 N·m", "wrench_length=300 mm", "extension=40 mm",
               "--picture", str(tmp_path / "x.svg"))  # fmt: skip
    assert none.exit_code == 2
    assert "Ask without --picture" in none.stderr
    nowhere = run("threads", "size", "thread=M8", "--picture", str(tmp_path / "no" / "x.svg"))
    assert nowhere.exit_code == 2
    assert "cannot be written" in nowhere.stderr
    assert list(tmp_path.iterdir()) == []


def test_one_question_reads_neither_arrays_nor_solvers() -> None:
    script = (
        "import sys\n"
        "from witnessmark.cli.bench import bench_command\n"
        "bench_command(['orings', 'match', 'gland=rod', 'diameter=40 mm', 'depth=3.05 mm', 'width=4.8 mm'],"
        " standalone_mode=False)\n"
    )
    check = "assert not {'numpy', 'scipy', 'highspy', 'witnessmark.bench.answers.bolts'} & set(sys.modules)\n"
    wrapped = f"try:\n    exec({script!r})\nexcept SystemExit:\n    pass\nimport sys\n{check}"
    done = subprocess.run(
        [sys.executable, "-c", wrapped], capture_output=True, check=False, env=with_source()
    )
    assert done.returncode == 0, done.stderr.decode()


def with_source() -> dict[str, str]:
    """The environment, with this tree's source first."""
    return {**os.environ, "PYTHONPATH": str(Path(__file__).resolve().parents[2] / "src")}
