"""Surfaces, counts, answers and the vehicle's own description."""

from __future__ import annotations

from tests.building import described, state_of
from witnessmark.journal import facts as f
from witnessmark.vehicle.things import Figure, Joint, Part


def test_a_surface_is_bare_until_coated_and_a_weld_bares_it_again():
    bare = state_of(f.Bared(at=("floor",))).surfaces["floor"]
    assert bare.bared_line == 2
    coat = f.Coated(at=("floor",), product="epoxy primer", recoat_until_hours=48)
    coated = state_of(f.Bared(at=("floor",)), coat).surfaces["floor"]
    assert coated.bared_line is None
    assert coated.product == "epoxy primer"
    assert state_of(coat, f.Welded(at=("floor",))).surfaces["floor"].bared_line == 3
    assert not state_of(coat, f.Scrapped(at=("floor",))).surfaces


def test_plugs_are_counted_in_and_out():
    two = f.Blanked(at=("fuel pipe",), number=2)
    assert state_of(two, f.Unblanked(at=("fuel pipe",), number=1)).counts.blanks[0].number == 1
    assert state_of(two, f.Unblanked(at=("fuel pipe",), number=2)).counts.blanks == ()
    assert state_of(two, f.Blanked(at=("fuel pipe",), number=1)).counts.blanks[0].line == 2


def test_bags_stay_until_emptied():
    bag = f.Bagged(at=("hub nut",), what="hub nut and washer", number=2)
    assert state_of(bag).counts.bags[0].what == "hub nut and washer"
    assert state_of(bag, f.Unbagged(at=("hub nut",))).counts.bags == ()


def test_braces_stands_drains_and_tins():
    state = state_of(
        f.Braced(at=("door gap",)),
        f.Lifted(at=("rear",)),
        f.Drained(at=("axle",)),
        f.OpenedTin(what="brake fluid"),
    )
    assert [t.at for t in state.counts.braces] == ["door gap"]
    assert [t.at for t in state.counts.lifted] == ["rear"]
    assert [t.at for t in state.counts.drained] == ["axle"]
    assert state.counts.tins["brake fluid"].line == 5
    undone = state_of(
        f.Braced(at=("door gap",)),
        f.Unbraced(),
        f.Lifted(at=("rear",)),
        f.LetDown(),
        f.Drained(at=("axle",)),
        f.Filled(at=("axle",), fluid="gear oil"),
    )
    counts = undone.counts
    assert [*counts.braces, *counts.lifted, *counts.drained] == []


def test_looks_after_sparks_are_kept_with_the_spark():
    state = state_of(f.Welded(at=("floor",)), f.WatchedFire())
    assert len(state.counts.sparks[0].looks) == 1


def test_filling_puts_the_level_right():
    assert "oil level" in state_of(f.Filled(at=("axle",), fluid="gear oil")).answers.put_right
    assert "coolant level" in state_of(f.Filled(at=("radiator",), fluid="coolant")).answers.put_right


def test_an_ask_answered_keeps_its_line_and_distance():
    answers = state_of(f.Ran(km=12), f.Proved(check="pedal reserve")).answers
    assert answers.asks["pedal reserve"].line == 3
    assert answers.asks["pedal reserve"].km == 12
    assert answers.first_run is not None


def test_a_later_description_replaces_an_earlier_and_a_book_figure_stays_with_it():
    joint = Joint(name="hub nut", kind="unsaid")
    figure = Figure(low=140, high=140, unit="N·m", typed="140 N·m", standing="owner's book", where="p. 37")
    state = state_of(
        described(joint),
        f.ReadFigure(at=("hub nut",), figure=figure, thread="M20"),
        described(Joint(name="hub nut", kind="tapered-drive-hub")),
        f.FoundBehind(at=("hub nut",), routes=(("wheel",),)),
    )
    known = state.vehicle.joints["hub nut"]
    assert known.kind == "tapered-drive-hub"
    assert known.figure == figure
    assert known.thread == "M20"
    assert known.behind == (("wheel",),)


def test_what_a_vehicle_has_follows_its_body_and_what_is_said():
    trailer = state_of(body="trailer").vehicle
    assert "fuel" not in trailer.systems
    assert "fuel" in state_of(body="car").vehicle.systems
    assert "restraint" not in state_of(f.DescribedVehicle(has_not=("restraint",))).vehicle.systems
    assert state_of(f.DescribedVehicle(has_not=("restraint",))).vehicle.name == "test"


def test_places_and_assemblies_are_told_by_the_vehicle():
    vehicle = state_of(
        described(Part(name="horn", place="front"), Joint(name="cap", assembly="tank"))
    ).vehicle
    assert vehicle.place_of("horn") == "front"
    assert vehicle.place_of("unknown") == ""
    assert vehicle.assemblies == ("tank",)
    assert vehicle.in_assembly("tank") == ("cap",)


def test_supply_keeps_its_lines_by_subject():
    supply = state_of(f.Wanted(at=("horn",), job="renew"), f.Ordered(item="horn"), f.Paid(amount=3.5)).supply
    assert supply.wanted[0].fact.job == "renew"
    assert supply.ordered[0].line == 3
    assert supply.paid[0].fact.amount == 3.5


def test_filling_anywhere_of_an_assembly_answers_its_drain():
    axle = described(Joint(name="drain plug", assembly="axle"), Joint(name="fill plug", assembly="axle"))
    drained = f.Drained(at=("drain plug",))
    assert state_of(axle, drained).counts.drained
    for name in ("fill plug", "axle", "drain plug"):
        assert not state_of(axle, drained, f.Filled(at=(name,))).counts.drained
    assert state_of(axle, drained, f.Filled(at=("sump",))).counts.drained
