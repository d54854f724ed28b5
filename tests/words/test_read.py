"""One line, one fact: what each way of typing becomes (common practice, no source)."""

from __future__ import annotations

from datetime import date

import pytest
from msgspec.structs import replace

from tests.words.garage import TODAY, best, garage, understood
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import (
    AnyFact,
    Came,
    Closed,
    Coated,
    CutOut,
    Described,
    DescribedVehicle,
    DownedTools,
    Drained,
    Filled,
    Fitted,
    Found,
    FoundBehind,
    Guessed,
    Held,
    LastSpark,
    Left,
    Lifted,
    LookedAt,
    Marked,
    Measured,
    NippedUp,
    Offered,
    Opened,
    OpenedTin,
    Ordered,
    Owned,
    Paid,
    Photographed,
    Proved,
    PutRight,
    Ran,
    ReadFigure,
    Remarked,
    Scrapped,
    SentAway,
    Slackened,
    Stored,
    Struck,
    Tightened,
    TookOff,
    TookTime,
    Turned,
    Wanted,
    WatchedFire,
)
from witnessmark.vehicle.things import Figure
from witnessmark.words.read import read_line

HUB = ("hub nut, left rear",)
NM140 = Quantity("140 Nm", 140.0, "N·m")

SAID: list[tuple[str, AnyFact]] = [
    ("left rear hub nut off", TookOff(at=HUB)),
    ("hub nut left rear took off", TookOff(at=HUB)),
    ("whipped hub nut l/r off", TookOff(at=HUB)),
    ("hub nut n/s/r undone", TookOff(at=HUB)),
    (
        "took off wheel nuts and drum left rear",
        TookOff(at=("wheel nuts, left rear", "brake drum, left rear")),
    ),
    ("both wheels off", TookOff(at=("wheel, left rear", "wheel, right rear"))),
    ("opened axle drain plug", Opened(at=("axle drain plug",))),
    ("slackened flange nut", Slackened(at=("flange nut",))),
    ("found split pin missing hub nut left rear", Found(at=HUB, condition="missing", item="hub split pin")),
    ("brake hose ends weeping osr", Found(at=("brake hose ends, right rear",), condition="weeping")),
    ("drained axle", Drained(at=("axle",))),
    ("dropped the axle oil", Drained(at=("axle",), fluid="axle oil")),
    ("cut out axle breather", CutOut(at=("axle breather",))),
    ("fitted new split pin hub nut left rear", Fitted(at=HUB, item="hub split pin", new=True)),
    ("fitted new pinion seal", Fitted(at=("pinion seal",), new=True)),
    ("put propshaft back up", Fitted(at=("propshaft",))),
    ("hub nut left rear finger tight", NippedUp(at=HUB)),
    ("hub nut left rear not tight yet", NippedUp(at=HUB)),
    ("tight hub nut left rear 140 Nm marked", Tightened(at=HUB, figures=(NM140,), marked=True)),
    ("hub nut left rear 140 Nm", Tightened(at=HUB, figures=(NM140,))),
    ("1.1 L EP90 into axle", Filled(at=("axle",), fluid="ep90", figures=(Quantity("1.1 L", 1.1, "L"),))),
    ("proved pedal hold", Proved(check="pedal hold")),
    ("proved pedal reserve", Proved(check="pedal reserve")),
    ("proved end float hub nut left rear", Proved(at=HUB, check="end float")),
    ("looked at wheel nuts left rear", LookedAt(at=("wheel nuts, left rear",))),
    ("bled brakes", PutRight(what="bleed brakes")),
    ("put right toe", PutRight(what="toe")),
    ("tracking set", PutRight(what="toe")),
    ("marked hub nut left rear", Marked(at=HUB)),
    ("photo of hub nut left rear", Photographed(at=HUB)),
    ("closed hub nut left rear 140 Nm", Closed(at=HUB, figures=(NM140,))),
    ("closed pinion seal seen", Closed(at=("pinion seal",), seen=True)),
    (
        "closed drive axle all but breather, drain plug",
        Closed(at=("drive axle",), but=("axle breather", "axle drain plug")),
    ),
    ("stored axle on top shelf", Stored(at=("axle",), where="top shelf")),
    (
        "axle away at the blaster, back by 3 Apr",
        SentAway(at=("axle",), with_whom="blaster", due_back="2026-04-03"),
    ),
    ("turned axle", Turned(at=("axle",))),
    ("binned brake hose left rear", Scrapped(at=("brake hose, left rear",))),
    ("jacked front", Lifted(at=("front",))),
    ("opened brake fluid tin", OpenedTin(what="brake fluid")),
    ("down tools: hub nut left rear finger tight", DownedTools(at=HUB)),
    ("held 9:00-12:30 with helper", Held(start="09:00", end="12:30", helper=True)),
    (
        "held 9 to 12:30 with Ann and Joe",
        Held(start="09:00", end="12:30", people=("Ann", "Joe"), helper=True),
    ),
    ("ran 52 km", Ran(km=52.0, figures=(Quantity("52 km", 52.0, "km"),))),
    ("3 heat cycles", Ran(heat_cycles=3)),
    ("wanted renew pinion seal", Wanted(at=("pinion seal",), job="renew")),
    ("want to refurbish axle", Wanted(at=("axle",), job="refurbish")),
    ("left axle cover as is because it is dry", Left(at=("axle cover",), why="it is dry")),
    (
        "guessed pinion seal 60 150 400 min",
        Guessed(
            at=("pinion seal",),
            low=60,
            likely=150,
            high=400,
            figures=(
                Quantity("60", 60.0, "min"),
                Quantity("150", 150.0, "min"),
                Quantity("400 min", 400.0, "min"),
            ),
        ),
    ),
    (
        "took 3 h over pinion seal",
        TookTime(at=("pinion seal",), minutes=180, figures=(Quantity("3 h", 180.0, "min"),)),
    ),
    (
        "ordered 2 pinion seals from Ottermere Seals £6.40 due 3 Apr",
        Ordered(
            at=("pinion seal",),
            item="pinion seal",
            number=2,
            supplier="Ottermere Seals",
            price=6.4,
            due="2026-04-03",
        ),
    ),
    ("came pinion seal", Came(at=("pinion seal",), item="pinion seal")),
    (
        "Ottermere quote £6.40 for pinion seal, post £3.50, 4 days",
        Offered(at=("pinion seal",), item="pinion seal", supplier="Ottermere", price=6.4, post=3.5, days=4),
    ),
    ("paid £42.50 to Tansyfield for sheet steel", Paid(amount=42.5, what="sheet steel", to="Tansyfield")),
    ("have a hub puller already", Owned(item="hub puller")),
    ("watched fire", WatchedFire()),
    ("this vehicle has no belts", DescribedVehicle(has_not=("belts",))),
    ("vehicle is a pickup", DescribedVehicle(body="pickup")),
    ("country is GB", DescribedVehicle(country="GB")),
    (
        "hub nut left rear is behind wheel and hub cap",
        FoundBehind(at=HUB, routes=(("wheel, left rear", "hub cap, left rear"),)),
    ),
    (
        "pinion seal behind pinion flange or axle cover",
        FoundBehind(at=("pinion seal",), routes=(("pinion flange",), ("axle cover",))),
    ),
    (
        "can't get at pinion seal until pinion flange off",
        FoundBehind(at=("pinion seal",), routes=(("pinion flange",),)),
    ),
    ("strike 12: that was the other side", Struck(line=12, why="that was the other side")),
]


@pytest.mark.parametrize(("line", "fact"), SAID, ids=[line for line, _ in SAID])
def test_a_line_becomes_its_fact(line: str, fact: AnyFact) -> None:
    reading = best(line)
    assert _without_remark(reading.facts[-1]) == fact
    assert reading.sure, reading.doubts
    assert reading.verb == fact.__struct_config__.tag


def _without_remark(fact: AnyFact) -> AnyFact:
    return replace(fact, remark="")


def test_the_figure_of_the_book_keeps_page_and_standing() -> None:
    fact = best("book says hub nut left rear 140 Nm p 37").fact
    assert isinstance(fact, ReadFigure)
    assert fact.figure == Figure(
        low=140, high=140, unit="N·m", typed="140 Nm", standing="owner's book", where="p 37"
    )


def test_a_band_in_the_book_is_kept_as_a_band() -> None:
    fact = best("book says flange nut 120-140 Nm").fact
    assert isinstance(fact, ReadFigure)
    assert fact.figure is not None
    assert (fact.figure.low, fact.figure.high) == (120, 140)


def test_a_dimension_is_told_apart_from_its_figure() -> None:
    fact = best("hub end float .005 in nsr").fact
    assert isinstance(fact, Measured)
    assert (fact.what, fact.at) == ("end float", ("hub, left rear",))
    assert fact.figures[0].value == pytest.approx(0.127)


def test_a_coat_keeps_product_window_and_weather() -> None:
    reading = best("epoxy primer on axle cover, 11C, RH 70%, recoat 4 h to 7 days")
    assert isinstance(reading.fact, Coated)
    assert (reading.fact.product, reading.fact.recoat_from_hours, reading.fact.recoat_until_hours) == (
        "epoxy primer",
        4,
        168,
    )
    assert [(q.value, q.unit) for q in reading.figures] == [(11, "°C"), (70, "%")]


def test_a_thing_back_with_something_new_is_two_facts() -> None:
    facts = best("hub nut left rear back on with new split pin").facts
    assert facts == (Fitted(at=HUB), Fitted(at=HUB, item="hub split pin", new=True))


# ---- new things


def test_a_name_that_tells_its_kind_needs_no_question() -> None:
    reading = understood("track rod end rh undone")
    assert reading.ask is None
    described = reading.best.facts[0]
    assert isinstance(described, Described)
    assert [(j.name, j.kind, j.side) for j in described.joints] == [
        ("track rod end, right", "ball-joint-taper", "right")
    ]
    assert reading.best.facts[1] == TookOff(at=("track rod end, right",))


def test_a_name_that_tells_nothing_is_asked_about_once() -> None:
    asked = understood("swarf guard off")
    assert not asked.best.sure
    assert asked.ask is not None
    assert (asked.ask.asks, asked.ask.thing) == ("kind", "swarf guard")
    assert len(asked.ask.choices) <= 5
    assert {"part", "unsaid"} <= {key for key, _ in asked.ask.choices}


@pytest.mark.parametrize(
    ("answer", "kind"), [("plain-fixing", "plain-fixing"), ("rubber seal", None), ("unsaid", "unsaid")]
)
def test_the_answer_completes_the_reading(answer: str, kind: str | None) -> None:
    if kind is None:
        with pytest.raises(BadInput) as refused:
            best("swarf guard off", kind="no such kind of thing at all")
        assert refused.value.holds
        return
    reading = best("swarf guard off", kind=answer)
    assert reading.sure
    described = reading.facts[0]
    assert isinstance(described, Described)
    assert [j.kind for j in described.joints] == [kind]


def test_part_is_an_answer_too() -> None:
    described = best("swarf guard off", kind="part").facts[0]
    assert isinstance(described, Described)
    assert [p.name for p in described.parts] == ["swarf guard"]


def test_the_other_side_of_a_known_thing_is_described_like_it() -> None:
    vehicle = garage(("drum-brake-corner", "left rear"))
    reading = read_line("hub nut right rear off", vehicle, today=TODAY).best
    described = reading.facts[0]
    assert isinstance(described, Described)
    joint = described.joints[0]
    assert (joint.name, joint.kind, joint.holds) == (
        "hub nut, right rear",
        "taper-roller-bearing",
        ("hub, right rear",),
    )
    assert joint.assembly == "drum brake corner, right rear"
    assert reading.sure


def test_new_things_can_be_said_outright() -> None:
    part = best("new part: tool tray").fact
    joint = best("new joint: tool tray bolts, plain fixing").fact
    assert isinstance(part, Described)
    assert isinstance(joint, Described)
    assert [p.name for p in part.parts] == ["tool tray"]
    assert [(j.name, j.kind) for j in joint.joints] == [("tool tray bolts", "plain-fixing")]


def test_a_starting_list_brings_every_part_and_joint_of_its_corner() -> None:
    fact = best("brought in drum brake corner left front").fact
    assert isinstance(fact, Described)
    assert fact.from_list == "drum-brake-corner"
    assert "hub nut, left front" in {j.name for j in fact.joints}
    assert {j.assembly for j in fact.joints} == {"drum brake corner, left front"}


def test_a_list_without_its_corner_is_not_sure() -> None:
    reading = best("brought in drum brake corner")
    assert not reading.sure
    assert "which corner is not told" in reading.doubts


def test_a_list_brought_in_twice_brings_nothing_twice() -> None:
    fact = best("brought in drum brake corner left rear").fact
    assert isinstance(fact, Described)
    assert (fact.parts, fact.joints) == ((), ())


# ---- sides


CORNER = "n/s/r|nsr|l/r|LR|left rear|rear left|back left|near side rear|nearside rear|l/rear|rear lh|lh rear"


@pytest.mark.parametrize("typed", CORNER.split("|"))
def test_a_corner_has_many_spellings(typed: str) -> None:
    assert best(f"hub nut {typed} off").fact == TookOff(at=HUB)
    assert best(f"{typed} hub nut off").fact == TookOff(at=HUB)


def test_nearside_is_the_other_hand_in_another_country() -> None:
    vehicle = garage(country="DE")
    assert read_line("hub nut n/s/r off", vehicle, today=TODAY).best.side == "right rear"


def test_nearside_without_a_country_is_not_sure() -> None:
    reading = read_line("hub nut n/s/r off", garage(country=""), today=TODAY).best
    assert not reading.sure


def test_a_side_not_typed_is_a_doubt_and_the_other_side_is_offered() -> None:
    read = understood("hub nut off")
    assert not read.best.sure
    assert {read.best.side, *(o.side for o in read.others)} >= {"left rear", "right rear"}


def test_what_was_lately_written_about_settles_which_is_shown_first() -> None:
    assert best("hub nut off", recent=("brake drum, right rear",)).side == "right rear"
    assert not best("hub nut off", recent=("brake drum, right rear",)).sure


def test_a_line_without_a_name_is_taken_to_go_on_about_the_last_thing() -> None:
    reading = best("tightened to 140 Nm", recent=HUB)
    assert (reading.fact, reading.sure) == (Tightened(at=HUB, figures=(NM140,)), False)


# ---- days


@pytest.mark.parametrize(
    ("line", "day", "time"),
    [
        ("yesterday hub nut left rear off", date(2026, 3, 17), None),
        ("hub nut left rear off on Friday", date(2026, 3, 13), None),
        ("hub nut left rear off 14 March", date(2026, 3, 14), None),
        ("hub nut left rear off 3 days ago", date(2026, 3, 15), None),
        ("hub nut left rear off at 10:40", None, "10:40"),
        ("hub nut left rear off", None, None),
    ],
)
def test_day_and_time_are_those_typed(line: str, day: date | None, time: str | None) -> None:
    reading = best(line)
    assert (reading.fact, reading.day, reading.time) == (TookOff(at=HUB), day, time)


def test_the_last_spark_carries_its_time() -> None:
    reading = best("last spark 11:47")
    assert (reading.fact, reading.time, reading.sure) == (LastSpark(), "11:47", True)


# ---- doubt


@pytest.mark.parametrize(
    "line",
    [
        "didnt get hub nut left rear off",
        "hub nut left rear wont come off",
        "will fit pinion seal tomorrow",
        "hub nut left rear off?",
        "fit pinion seal",
        "hub nut left rear off but drum still on",
        "need hub nut left rear off next week",
        "think hub nut left rear is tight",
        "cracked off hub nut left rear",
        "torqued hub nut left rear and fitted drum left rear",
        "hub nut left rear off, hub nut right rear still on",
        "took the tension off the spring",
        "almost got hub nut left rear off",
        "hub nut tight",
        "seal fitted",
        "hub nut front off",
        "frnt hub nut left rear off",
    ],
)
def test_a_line_that_may_mean_something_else_is_not_sure(line: str) -> None:
    assert not best(line).sure, best(line).sentence


def test_a_line_that_looks_like_no_fact_is_a_remark_word_for_word() -> None:
    reading = best("radio was good today, kettle wasnt")
    assert reading.fact == Remarked(remark="radio was good today, kettle wasnt")


def test_a_line_that_tells_nothing_of_the_thing_it_names_is_not_sure() -> None:
    reading = best("hub nut left rear, funny story")
    assert not reading.sure


@pytest.mark.parametrize("typed", ["pinoin seal fitted", "pinion seel fited", "pinion seal fiited"])
def test_a_slip_of_spelling_is_forgiven(typed: str) -> None:
    reading = best(typed)
    assert (reading.verb, reading.joint) == ("fitted", "pinion seal")


def test_nothing_typed_says_so() -> None:
    reading = best("   ")
    assert (reading.verb, reading.sure, reading.sentence) == ("remarked", False, "Nothing was typed.")


def test_a_corrected_line_is_read_as_a_line() -> None:
    fact = best("line 12 should read: hub nut right rear off").fact
    assert fact == Struck(
        line=12, why="corrected", instead=TookOff(at=("hub nut, right rear",)), words="hub nut right rear off"
    )
