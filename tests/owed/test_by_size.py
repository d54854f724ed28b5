"""A need carries the size it can be ordered by, where the record tells one."""

from __future__ import annotations

import pytest

from tests.building import described, evening, state_of
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.owed.by_size import size_of
from witnessmark.owed.needs import Need, needs_from
from witnessmark.owed.owed import owed_by
from witnessmark.owed.stock import Held, Item, answers
from witnessmark.vehicle.things import Joint, Part

SEALS = (Joint(name="hub seal, left", kind="shaft-seal"), Joint(name="hub seal, right", kind="shaft-seal"))
RING = Joint(name="half-shaft o-ring, left", kind="o-ring")
BOLTS = Joint(name="propshaft bolts", kind="propshaft-flange", thread="3/8 UNF", grade="8.8")
SEAM = Joint(name="outrigger seam", kind="mount-area-weld", holds=("closing plate",))
SHIMS = Part(name="steering box shims")


def needs(*facts: AnyFact) -> list[Need]:
    """Everything needed after these facts."""
    state = state_of(described(*SEALS, RING, BOLTS, SEAM, SHIMS, Part(name="closing plate")), *facts)
    return list(needs_from(owed_by(state, evening()), state))


def size_needed(what: str, *facts: AnyFact) -> str:
    (size,) = [n.size for n in needs(*facts) if n.what == what]
    return size


def test_a_seal_found_with_its_size_is_ordered_by_it() -> None:
    found = f.Found(at=("hub seal, left",), condition="worn", size="44.5 x 65 x 8")
    assert size_needed("shaft seal", f.Opened(at=("hub seal, left",)), found) == "44.5 x 65 x 8"


def test_a_ring_that_was_measured_is_ordered_by_it() -> None:
    measured = f.Measured(at=("half-shaft o-ring, left",), size="45.69 x 2.62")
    assert size_needed("O-ring", f.Opened(at=("half-shaft o-ring, left",)), measured) == "45.69 x 2.62"


def test_a_size_nobody_told_stays_open() -> None:
    assert size_needed("shaft seal", f.Opened(at=("hub seal, left",))) == ""


def test_two_seals_of_one_size_are_one_order_and_of_two_sizes_are_two() -> None:
    both = ("hub seal, left", "hub seal, right")
    same = needs(f.Opened(at=both), f.Found(at=both, condition="worn", size="44.5 x 65 x 8"))
    assert [(n.what, n.quantity, n.for_) for n in same if n.what == "shaft seal"] == [("shaft seal", 2, both)]
    other = f.Measured(at=("hub seal, right",), size="44.5 x 65 x 10")
    unlike = needs(f.Opened(at=both), f.Found(at=both, condition="worn", size="44.5 x 65 x 8"), other)
    assert [n.size for n in unlike if n.what == "shaft seal"] == ["44.5 x 65 x 8", "44.5 x 65 x 10"]


def test_a_nut_has_its_joints_thread_and_a_bolt_its_grade_too() -> None:
    opened = f.Opened(at=("propshaft bolts",))
    found = f.Found(at=("propshaft bolts",), condition="bent", item="propshaft bolt")
    assert size_needed("propshaft locking nuts", opened) == "3/8 UNF"
    assert size_needed("propshaft bolt", opened, found) == "3/8 UNF, 8.8"


def test_a_thread_that_was_measured_serves_where_none_was_described() -> None:
    joint = Joint(name="seat bolts", kind="body-mount")
    state = state_of(
        described(joint), f.Opened(at=("seat bolts",)), f.Measured(at=("seat bolts",), size="5/16 UNC")
    )
    sizes = {n.what: n.size for n in needs_from(owed_by(state, evening()), state)}
    assert sizes["body mount locking nut"] == "5/16 UNC"


def test_sheet_steel_is_ordered_by_the_thickness_measured() -> None:
    measured = f.Measured(at=("closing plate",), what="thickness", figures=(Quantity("1.5 mm", 1.5, "mm"),))
    opened = f.CutOut(at=("outrigger seam",))
    assert size_needed("sheet steel, gauge as built", opened, measured) == "1.5 mm"


def test_a_shim_found_bad_is_ordered_by_its_thickness() -> None:
    found = f.Found(
        at=("steering box shims",), condition="cracked", figures=(Quantity("0.25 mm", 0.25, "mm"),)
    )
    assert size_needed("steering box shims", found) == "0.25 mm"


@pytest.mark.parametrize("typed", ["44.5x65x8 mm", "44.5 × 65 × 8", "8 x 44.5 x 65"])
def test_one_size_typed_in_other_ways_is_the_same(typed: str) -> None:
    held = Held(what="shaft seal", size=typed, at=(), line=1, number=1)
    assert answers(held, Item(what="shaft seal", size="44.5 x 65 x 8", for_="hub seal, left"), own=False)
    assert not answers(held, Item(what="shaft seal", size="38 x 60 x 10", for_="hub seal, left"), own=False)


def test_what_is_a_joint_of_its_own_has_that_joints_size() -> None:
    nut, seal = (
        Joint(name="flange nut", kind="pinion-seal"),
        Joint(name="pinion seal", kind="shaft-seal", assembly="another"),
    )
    found = f.Found(at=("pinion seal",), condition="worn", size="38 x 60 x 10")
    state = state_of(described(nut, seal), f.Opened(at=("flange nut",)), found)
    assert size_of(state, nut, "pinion seal") == "38 x 60 x 10"
    assert size_of(state, nut, "flange nut") == ""


def test_a_size_found_on_what_is_renewed_is_its_own() -> None:
    opened = f.Opened(at=("propshaft bolts",))
    found = f.Found(at=("propshaft bolts",), condition="bent", item="propshaft bolt", size="3/8 x 2 in")
    assert size_needed("propshaft bolt", opened, found) == "3/8 x 2 in"
