"""What is worth doing while it is open: time now and later, parts, the cap, and the kept no."""

from msgspec.structs import replace

from tests.building import described, evening, state_of
from witnessmark.jobs.while_open import NOTHING, TO_HAND, TO_ORDER, WhileOpen, while_open
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.owed.owed import owed_by
from witnessmark.reach.way_in import way_in
from witnessmark.vehicle.things import Joint, Part

BOLTS = Joint(name="front panel bolts", kind="structural-bolts", holds=("front panel",))
BEHIND = (("front panel",),)
UNION = Joint(name="brake pipe union", kind="brake-union", behind=BEHIND)
HOSE = Joint(name="heater hose", kind="coolant-gasket", behind=BEHIND)
HORN = Joint(name="horn wiring", kind="earth-point", behind=BEHIND)
RADIATOR = Joint(name="radiator mounts", kind="radiator", behind=BEHIND)
FRONT = described(BOLTS, UNION, HOSE, HORN, RADIATOR, Part(name="front panel"))
SHORT = f.Guessed(at=("heater hose",), low=8, likely=15, high=40)
GUESS = f.Guessed(at=("front panel bolts",), low=60, likely=360, high=600)


def worth_doing(*facts: AnyFact) -> WhileOpen:
    """What is worth doing on the way to the radiator mounts."""
    state = state_of(FRONT, GUESS, SHORT, *facts)
    owed = owed_by(state, evening())
    return while_open(state, owed, way_in(["radiator mounts"], state, debts=owed))


def test_what_nobody_has_touched_is_worth_a_look_and_costs_the_whole_way_later() -> None:
    found = {one.name: one for one in worth_doing().worth}
    assert set(found) == {"brake pipe union", "heater hose", "horn wiring"}
    pipe = found["brake pipe union"]
    assert (pipe.now, pipe.parts) == (5, NOTHING)
    assert pipe.later > 4 * 60


def test_what_lets_go_stands_first_and_is_not_bound_by_the_cap() -> None:
    more = worth_doing(f.Wanted(at=("brake pipe union",), job="renew"), f.Guessed(
        at=("brake pipe union",), low=300, likely=400, high=500
    ))  # fmt: skip
    assert more.worth[0].name == "brake pipe union"
    assert more.worth[0].now > more.cap
    assert len(more.worth) == 3


def test_what_goes_beyond_the_cap_is_told_and_not_dropped() -> None:
    more = worth_doing(
        f.Wanted(at=("horn wiring",), job="renew"),
        f.Guessed(at=("horn wiring",), low=900, likely=1000, high=1100),
    )
    assert [one.name for one in more.beyond] == ["horn wiring"]
    assert more.cap == round(more.planned / 4)


def test_a_part_to_hand_and_one_to_order_are_told_apart() -> None:
    wanted = f.Wanted(at=("heater hose",), job="renew")
    ordered = {one.name: one for one in worth_doing(wanted).worth}["heater hose"]
    assert ordered.parts == TO_ORDER
    box = [f.Owned(item=f"{need.split(' × ')[1]} for heater hose", number=9) for need in ordered.needs]
    assert box
    here = {one.name: one for one in worth_doing(wanted, *box).worth}["heater hose"]
    assert here.parts == TO_HAND


def test_a_no_is_kept_with_its_reason_until_it_is_wanted_again() -> None:
    no = f.Left(at=("heater hose",), why="two years old")
    more = worth_doing(no)
    assert [(one.name, one.why) for one in more.refused] == [("heater hose", "two years old")]
    assert "heater hose" not in {one.name for one in more.worth}
    again = worth_doing(no, f.Wanted(at=("heater hose",), job="renew"))
    assert again.refused == ()
    assert "heater hose" in {one.name for one in again.worth}


def test_what_could_be_reached_before_is_no_news() -> None:
    more = worth_doing(f.TookOff(at=("front panel bolts", "front panel")))
    assert more.worth == ()


def test_the_line_that_refuses_is_one_the_record_understands() -> None:
    from witnessmark.words.read import read_line

    state = state_of(FRONT, GUESS)
    for one in worth_doing().worth:
        typed = one.refuse.replace("REASON", "two years old")
        fact = read_line(typed, state.vehicle, today=evening().date()).best.facts[0]
        assert isinstance(fact, f.Left)
        assert fact.at == (one.name,)
        assert "two years old" in fact.why


def test_a_cut_short_way_says_how_far_it_may_be_from_the_best() -> None:
    from datetime import date

    from witnessmark.sheets.reach import reach_sheet

    state = state_of(FRONT, GUESS)
    way = replace(way_in(["radiator mounts"], state), proven=False, at_least=60)
    sheet = reach_sheet(way, worth_doing(), vehicle="", today=date(2026, 3, 7), line=3)
    assert "none takes less than 1 h" in sheet.headline
