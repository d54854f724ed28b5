"""Bad input about oils, welds, metal, paint, wire, brakes, pulls and leaks, as typed in a terminal.

Each gives the three parts on standard error, nothing on standard output, and exit code 2.
"""

from pathlib import Path

import pytest
from click.testing import CliRunner

from witnessmark.cli.bench import bench_command

VISCOSITY = ("oils", "viscosity", "at1=32 cSt @ 40 C", "at2=5.4 cSt @ 100 C", "temperature=80 C")
FILL = ("oils", "fill", "case_volume=1 L", "fill=0.9 L", "temperature_cold=15 C", "temperature_hot=90 C")
GROUP = ("welds", "group", "lines=0,0 0,50; 100,0 100,50 mm", "load=0,-7.5,0 kN", "at=200,50,0 mm")
BEND = ("sheet", "bend", "thickness=1 mm", "radius=2 mm", "angle=90 deg", "legs=20x30 mm")
WINDOW = ("paint", "window", "air=12 C", "humidity=70 %", "steel=11 C")
WIRE = ("wires", "size", "current=8 A", "length=4 m", "supply=12 V", "fraction=3 %")
PATCH = ("welds", "order", "panel=120x80 mm", "thickness=1 mm", "run=20 mm")
DRIP = ("leaks", "order", "suspects=rear seal 40 % 20 min 80 %; cap 20 % 1 min 95 %")

BAD: list[tuple[tuple[str, ...], tuple[str, ...]]] = [
    # without a unit, or with the wrong kind of unit
    (VISCOSITY, ("temperature=80",)),
    (VISCOSITY, ("temperature=80 mm",)),
    (VISCOSITY, ("at1=32 @ 40 C",)),
    (FILL, ("case_volume=1",)),
    (FILL, ("case_volume=1 kg",)),
    (GROUP, ("load=0,-7.5,0",)),
    (GROUP, ("load=0,-7.5,0 mm",)),
    (BEND, ("radius=2",)),
    (BEND, ("legs=20x30",)),
    (WINDOW, ("air=12",)),
    (WINDOW, ("humidity=70 C",)),
    (WIRE, ("current=8",)),
    (WIRE, ("length=4 V",)),
    (PATCH, ("pause=10",)),
    # negative, not a number, infinite, absurd
    (VISCOSITY, ("temperature=-900 C",)),
    (BEND, ("thickness=-1 mm",)),
    (WIRE, ("current=-8 A",)),
    (WINDOW, ("humidity=nan %",)),
    (WINDOW, ("humidity=170 %",)),
    (WINDOW, ("steel=inf C",)),
    (GROUP, ("throat=1e9 mm",)),
    (("brakes", "line", "pedal_force=400 N", "ratio=nan", "bore=7/8 in"), ()),
    (("brakes", "line", "pedal_force=9 kN", "ratio=5", "bore=7/8 in"), ()),
    (("loads", "towing", "mass=1 kg"), ()),
    (("coolant", "freeze", "glycol=140 %", "kind=ethylene"), ()),
    # unknown names
    (("oils", "visosity", "at1=32 cSt @ 40 C"), ()),
    (("oyls", "viscosity"), ()),
    (VISCOSITY, ("tempertature=80 C",)),
    (("coolant", "freeze", "glycol=40 %", "kind=ethyl"), ()),
    (("sheet", "gauge", "gauge=18", "system=swag"), ()),
    (("oils", "suits", "api_class=GL-7", "metals=brass"), ()),
    (("loads", "towing", "mass=1500 kg", "ground=ice"), ()),
    (("welds", "heat", "voltage=15 V", "current=60 A", "speed=5 mm/s", "process=soldering"), ()),
    (("steel", "equivalent", "composition=C 0.1, Unobtainium 3"), ()),
    (DRIP, ("results=gearbox no",)),
    # impossible
    (VISCOSITY, ("at1=5.4 cSt @ 40 C", "at2=32 cSt @ 100 C")),
    (FILL, ("fill=1.4 L",)),
    (FILL, ("temperature_hot=5 C",)),
    (GROUP, ("lines=0,0 0,0 mm",)),
    (GROUP, ("load=0,0,0 kN",)),
    (BEND, ("angle=179 deg",)),
    (PATCH, ("panel=2x2 mm",)),
    (("paint", "cure", "sheet=24 h @ 10 C, 48 h @ 20 C", "temperature=15 C"), ()),
    (("leaks", "order", "suspects=a 90 % 5 min 80 %; b 90 % 5 min 80 %"), ()),
    (("sheet", "gauge", "gauge=99", "system=swg"), ()),
    (("steering", "toe", "toe=3", "at_diameter=400 mm"), ()),
    # missing, twice, nameless, unreadable
    (("oils", "viscosity"), ()),
    ((*VISCOSITY, "temperature=90 C"), ()),
    ((*VISCOSITY, "warm"), ()),
    (WINDOW, ("forecast=@there-is-no-such-file.csv",)),
    (WIRE, ("drop=0.3 V",)),
]


def with_changes(whole: tuple[str, ...], changes: tuple[str, ...]) -> list[str]:
    """The words of a sound question, with some inputs replaced or added."""
    names = {change.partition("=")[0] for change in changes}
    return [word for word in whole if word.partition("=")[0] not in names] + list(changes)


@pytest.mark.parametrize(
    ("whole", "changes"), BAD, ids=[f"{i}-{' '.join((*w[:2], *c))}"[:60] for i, (w, c) in enumerate(BAD)]
)
def test_bad_input_is_told_in_three_parts(whole: tuple[str, ...], changes: tuple[str, ...]) -> None:
    answer = CliRunner().invoke(bench_command, with_changes(whole, changes))
    assert answer.exit_code == 2, answer.output
    assert answer.stdout == ""
    lines = answer.stderr.splitlines()
    assert [line.split(":")[0] for line in lines[:3]] == ["Given", "Would hold", "Do"]
    assert all(line.split(":", 1)[1].strip() for line in lines[:3])
    assert "Traceback" not in answer.output


def test_every_sound_question_above_is_sound() -> None:
    for whole in (VISCOSITY, FILL, GROUP, BEND, WINDOW, WIRE, PATCH, DRIP):
        answer = CliRunner().invoke(bench_command, list(whole))
        assert answer.exit_code == 0, answer.output


def test_a_file_that_is_not_text_is_told(tmp_path: Path) -> None:
    odd = tmp_path / "hours.csv"
    odd.write_bytes(b"\xff\xfe\x00\x01")
    answer = CliRunner().invoke(bench_command, [*WINDOW, f"forecast=@{odd}"])
    assert answer.exit_code == 2
    assert "Would hold" in answer.stderr


def test_near_names_are_offered() -> None:
    answer = CliRunner().invoke(bench_command, ["oils", "visosity"])
    assert "viscosity" in answer.stderr


def test_nothing_found_is_another_code() -> None:
    starved = with_changes(WIRE, ("current=300 A",))
    answer = CliRunner().invoke(bench_command, starved)
    assert answer.exit_code == 3
    assert "even 35 mm²" in answer.stdout
