"""The bench's short lines under a joint: what is known, with its standing, and never more than three."""

from __future__ import annotations

import re

import pytest

from tests.building import described, state_of
from witnessmark.bench.drawer import Drawer, drawer_of
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.sheets.rows import Number
from witnessmark.sheets.slip_lines import MOST, SlipLines
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.things import Figure, Joint

TORQUE = Figure(low=17.6, high=17.6, unit="N·m", typed="13 lbf ft", standing="owner's book", where="p 41")
EMPTY = Drawer()


def lines(joint: Joint, sort: str = "close", *facts: AnyFact, drawer: Drawer = EMPTY) -> dict[str, Number]:
    """The lines by their labels, as one joint stands after these facts."""
    sizes = state_of(described(joint), *facts).sizes
    made = SlipLines(catalogue(), sizes, drawer)(sort, joint)
    assert len(made) <= MOST
    return {line.label: line for line in made}


def drawn(*owned: tuple[str, float, str]) -> Drawer:
    return drawer_of(owned)


# ---- figure and spanner


def test_a_figure_stands_with_its_standing_and_its_plausibility() -> None:
    got = lines(Joint(name="bolts", kind="gasketed-cover", thread="M8", grade="8.8", figure=TORQUE))
    assert got["figure"].pedigree == "owner's book, p 41; plausibility: within"


def test_a_slip_of_units_is_named_beside_it() -> None:
    joint = Joint(
        name="bolts", kind="gasketed-cover", thread="M12", grade="8.8",
        figure=Figure(low=13, high=13, unit="N·m", typed="13 Nm", standing="guess"),
    )  # fmt: skip
    figure = lines(joint)["figure"]
    assert figure.hollow
    assert figure.plausibility == "low, perhaps meant 13 lbf ft (17.6 N·m)"


@pytest.mark.parametrize("kind", ["plain-fixing", "brake-union"])
def test_nothing_is_said_where_it_cannot_be_told(kind: str) -> None:
    thread = "3/8 UNF" if kind == "brake-union" else ""
    assert lines(Joint(name="x", kind=kind, thread=thread, figure=TORQUE))["figure"].plausibility == ""


def test_a_level_is_no_torque() -> None:
    level = Figure(low=1.2, high=1.2, unit="L", typed="1.2 L", standing="owner's book")
    joint = Joint(name="fill plug", kind="fill-and-drain-plug", figure=level, fluid="gear oil 90")
    got = lines(joint)
    assert (got["level"].value, got["level"].plausibility) == ("1.2 L", "")
    assert got["fluid"].value == "gear oil 90"


def test_the_spanner_comes_from_the_thread_with_its_standing() -> None:
    spanner = lines(Joint(name="bolts", thread="3/8 UNF", grade="8.8", number=4), "open")["spanner to try"]
    assert spanner.value == "9/16 in AF"
    assert spanner.pedigree == "standard, for 3/8 UNF, 8.8, 4 off"


def test_a_thread_that_was_measured_serves_where_none_was_described() -> None:
    measured = f.Measured(at=("bolts",), size="5/16 UNF")
    assert lines(Joint(name="bolts"), "open", measured)["spanner to try"].value == "1/2 in AF"


@pytest.mark.parametrize(
    ("kind", "thread"),
    [("brake-union", "3/8 UNF"), ("plain-fixing", "24 tpi"), ("plain-fixing", "3/4 BSP")],
)
def test_no_spanner_is_made_up(kind: str, thread: str) -> None:
    got = lines(Joint(name="x", kind=kind, thread=thread), "open")
    assert {label: line.value for label, line in got.items()} == {"thread": thread}


def test_an_operation_that_closes_nothing_has_no_figure() -> None:
    assert list(lines(Joint(name="bolts", figure=TORQUE, thread="M8"), "open")) == ["spanner to try"]


# ---- seals and rings

SEAL = Joint(name="hub seal, left", kind="shaft-seal", size="38 x 60 x 10")


def test_a_driver_of_ones_own_comes_first() -> None:
    driver = lines(SEAL, drawer=drawn(("tube", 1, "45 x 59.75 mm"), ("tube", 1, "30 x 50 mm")))["driver"]
    assert driver.value == "tube 45 x 59.75"
    assert driver.where == "own kit; 59.6 to 59.9 mm outside is asked"


def test_a_doubtful_driver_says_its_doubt() -> None:
    driver = lines(SEAL, drawer=drawn(("tube", 1, "38.5 x 59.75 mm")))["driver"]
    assert "check that it bears on the case, not the lip" in driver.where


def test_what_would_have_to_be_made_is_told_where_nothing_fits() -> None:
    for drawer in (EMPTY, drawn(("tube", 1, "20 x 30 mm"))):
        driver = lines(SEAL, drawer=drawer)["driver"]
        assert driver.value == "59.6 to 59.9 mm outside, to pass over 38 mm"
        assert driver.pedigree == "maker, to be cut or turned up"


@pytest.mark.parametrize("size", ["", "38 x 60", "1.5 x 2.375 x 0.375", "60 x 38 x 10", "2 x 50 x 10"])
def test_no_driver_is_told_for_a_size_that_is_none(size: str) -> None:
    assert "driver" not in lines(Joint(name="hub seal", kind="shaft-seal", size=size))


def test_a_driver_is_only_for_what_is_driven_in() -> None:
    assert "driver" not in lines(SEAL, "open")
    assert "driver" not in lines(Joint(name="hub nut", kind="shaft-seal", size="38 x 60 x 10"))


def test_a_size_that_was_measured_says_so_and_a_described_one_stands_before_it() -> None:
    measured = f.Measured(at=("hub seal, left",), size="44.5 x 65 x 8")
    bare = Joint(name="hub seal, left", kind="shaft-seal")
    size = lines(bare, "close", measured)["size"]
    assert (size.value, size.pedigree) == ("44.5 x 65 x 8", "measured, line 3")
    assert lines(SEAL, "close", measured)["size"].value == "38 x 60 x 10"


def test_a_ring_is_called_one_and_what_was_found_in_a_joint_has_its_own_name() -> None:
    ring = Joint(name="half-shaft o-ring, left", kind="o-ring", size="45.69 x 2.62")
    assert lines(ring)["ring"].value == "45.69 x 2.62"
    pin = f.Found(at=("hub nut",), condition="bent", item="split pin", size="3.2 x 50")
    assert lines(Joint(name="hub nut"), "open", pin)["split pin"].value == "3.2 x 50"


# ---- metal and paint

SEAM = Joint(name="outrigger seam", kind="mount-area-weld", holds=("closing plate",))
THICK = f.Measured(at=("closing plate",), what="thickness", figures=(Quantity("1.5 mm", 1.5, "mm"),))


def test_the_welder_is_set_from_a_measured_thickness() -> None:
    welder = lines(SEAM, "close", THICK)["welder"]
    assert re.fullmatch(r"\d+ to \d+ A, \d+ to \d+ V", welder.value)
    assert welder.pedigree == "maker, for 1.5 mm; a scrap first, the machine's chart rules"


def test_the_wires_feed_is_told_where_one_wire_is_owned() -> None:
    one = lines(SEAM, "close", THICK, drawer=drawn(("welding wire", 1, "0.8 mm")))["welder"].value
    assert re.search(r", 0\.8 mm wire at \d+\.\d to \d+\.\d m/min$", one)
    both = drawn(("welding wire", 1, "0.8 mm"), ("welding wire", 1, "0.6 mm"))
    assert "wire" not in lines(SEAM, "close", THICK, drawer=both)["welder"].value


def test_no_setting_is_told_for_a_thickness_nobody_measured_or_printed() -> None:
    assert "welder" not in lines(SEAM)
    thick = f.Measured(at=("closing plate",), what="thickness", figures=(Quantity("40 mm", 40.0, "mm"),))
    assert "welder" not in lines(SEAM, "close", thick)
    assert "welder" not in lines(SEAM, "open", THICK)


def test_plugs_are_counted_one_for_one() -> None:
    seam = Joint(name="tray spot welds", kind="plug-weld-seam", number=16)
    assert lines(seam)["plugs"].value == "16"
    assert lines(seam)["plugs"].where.endswith("one for one, as built")
    assert "plugs" not in lines(Joint(name="tray spot welds", kind="plug-weld-seam"))
    bare = Joint(name="tray spot welds", kind="plug-weld-seam")
    assert lines(bare, "close", f.Welded(at=(bare.name,), plugs=14))["plugs"].value == "14"
    held = Joint(name="anchor spot welds", kind="plug-weld-seam", number=8, if_missed="lets_go")
    assert lines(held)["plugs"].where.endswith("one for one, as built; certifier where the law asks")


def test_a_coat_asks_for_the_window_and_supplies_nothing() -> None:
    got = lines(Joint(name="floor paint", kind="primed-metal"))
    assert (got["steel, air, humidity"].value, got["steel, air, humidity"].where) == (
        "",
        "first; then: bench paint window",
    )
    assert lines(Joint(name="floor paint", kind="primed-metal"), "open") == {}


# ---- what never stands there


@pytest.mark.parametrize("kind", sorted(catalogue()))
@pytest.mark.parametrize("sort", ["open", "work", "close", "prove", "record"])
def test_three_lines_at_most_and_no_strength(kind: str, sort: str) -> None:
    """A strength figure never stands on a sheet for a joint that lets go; here it stands for none."""
    joint = Joint(
        name="seal and o-ring", kind=kind, thread="M8", grade="8.8", number=6, figure=TORQUE,
        fluid="gear oil", quantity=Quantity("1 L", 1.0, "L"), size="38 x 60 x 10",
    )  # fmt: skip
    thick = f.Measured(at=(joint.name,), what="thickness", figures=(Quantity("1.2 mm", 1.2, "mm"),))
    for line in lines(joint, sort, thick, drawer=drawn(("welding wire", 1, "0.8 mm"))).values():
        assert not re.search(r"\bk?N\b|MPa|proof|%", f"{line.value} {line.pedigree}"), line


def test_where_no_joint_is_meant_there_is_no_line() -> None:
    assert SlipLines(catalogue(), state_of().sizes, EMPTY)("watch", None) == ()
