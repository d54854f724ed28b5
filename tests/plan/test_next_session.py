"""What fits the next session: on vehicles small enough to see why."""

import random
from datetime import datetime

import pytest

from tests.building import described
from tests.jobs.garages import from_lists
from tests.plan.sessions import ids, read, reasons, session
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.plan.chance import simulate
from witnessmark.plan.overrun import Overrun
from witnessmark.plan.stops import safe_stops
from witnessmark.vehicle.things import Joint, Part

TAPERS = described(*(Joint(name=f"track rod end, {s}", kind="ball-joint-taper") for s in ("left", "right")))
BOTH_APART = tuple(f.Opened(at=(f"track rod end, {s}",)) for s in ("left", "right"))
UNION = described(
    Joint(name="brake union", kind="brake-union"), Joint(name="bleed nipple", kind="brake-bleed")
)
CORNER = from_lists(("drum-brake-corner", "left rear"))
AXLE = from_lists(("drive-axle", ""))
BUMPER = described(Joint(name="bumper bolts", kind="plain-fixing", holds=("bumper",)), Part(name="bumper"))


# ---- what is in hand


def test_a_joint_is_closed_when_its_new_pin_is_in_hand() -> None:
    without = session(TAPERS, *BOTH_APART)
    assert "close/track rod end, left" not in ids(without)
    assert reasons(without)["track rod end, left"] == "not in hand: split pin"
    assert "2 × split pin (track rod end, left and track rod end, right)" in without.order
    both = session(TAPERS, *BOTH_APART, f.Came(item="split pins", number=2))
    assert {"close/track rod end, left", "close/track rod end, right"} <= set(ids(both))
    assert "2 × split pin" in both.bring
    assert both.order == ()


def test_one_pin_closes_one_joint() -> None:
    plan = session(TAPERS, *BOTH_APART, f.Owned(item="split pin", number=1))
    assert len([i for i in ids(plan) if i.startswith("close/")]) == 1


def test_what_is_in_the_post_is_not_in_hand_and_not_ordered_again() -> None:
    plan = session(TAPERS, *BOTH_APART, f.Ordered(item="split pins", number=2))
    assert "close/track rod end, left" not in ids(plan)
    assert plan.order == ()


def test_nothing_is_opened_that_could_not_be_closed_again_for_want_of_parts() -> None:
    wanted = f.Wanted(at=("track rod end, left",), job="renew")
    assert not any(i.startswith("open/") for i in ids(session(TAPERS, wanted)))
    ready = session(TAPERS, wanted, f.Owned(item="split pin"))
    assert ids(ready).index("open/track rod end, left") < ids(ready).index("close/track rod end, left")


# ---- hands, stages, hours


def test_what_takes_two_waits_for_the_helper() -> None:
    facts: tuple[AnyFact, ...] = (UNION, f.Opened(at=("brake union",)), f.Owned(item="brake fluid"))
    alone, helped = session(*facts, hours=6), session(*facts, hours=6, helper=True)
    assert "put_right/bleed brakes" not in ids(alone)
    assert "needs a helper" in {row.because for row in alone.waiting}
    assert "prove/pedal hold/brake union" in ids(helped)
    assert ids(helped).index("put_right/bleed brakes") < ids(helped).index("prove/pedal hold/brake union")


def test_with_a_helper_there_what_takes_two_comes_as_early_as_it_can() -> None:
    hinge = described(Joint(name="door hinge", kind="body-mount"), Joint(name="cover", kind="plain-fixing"))
    plan = session(
        hinge, f.Opened(at=("cover",)), f.Opened(at=("door hinge",)), f.Owned(item="body mount locking nut"),
        helper=True,
    )  # fmt: skip
    assert ids(plan)[0] == "close/door hinge"


def test_what_is_done_creeping_or_on_the_road_waits() -> None:
    shoes = described(Joint(name="shoes", kind="shoes-and-drum"))
    plan = session(shoes, f.Opened(at=("shoes",)), hours=6)
    assert "done creeping, on private ground" in {row.because for row in plan.waiting}
    assert all(o.stage not in ("creeping", "road") for o in plan.operations)


def test_heaviest_comes_first_when_the_hours_are_short() -> None:
    pins = f.Owned(item="split pin", number=2)
    plan = session(TAPERS, BUMPER, *BOTH_APART, f.TookOff(at=("bumper",)), pins, work_minutes=40)
    assert ids(plan)[0].startswith("close/track rod end")
    assert "close/bumper bolts" not in ids(plan)
    assert reasons(plan)["bumper bolts"] == "does not fit the hours"


def test_two_thirds_of_a_session_are_work_until_the_owner_says_otherwise() -> None:
    assert session(BUMPER).work_minutes == 120
    assert session(BUMPER, hours=4.5).work_minutes == 180
    assert session(BUMPER, work_minutes=150).work_minutes == 150


def test_a_coat_waits_until_the_one_below_has_cured() -> None:
    panel = described(Part(name="door skin"))
    coated = f.Coated(at=("door skin",), product="primer", recoat_from_hours=4, recoat_until_hours=168)
    early = session(panel, coated, now=datetime(2026, 3, 10, 1, 0))
    assert "must cure until" in reasons(early)["door skin"]
    later = session(panel, coated, now=datetime(2026, 3, 10, 5, 0))
    assert "coat/recoat door skin" in ids(later)


def test_work_longer_than_a_session_gets_a_spell_and_what_follows_waits() -> None:
    cover = described(Joint(name="gearbox cover", kind="gasketed-cover"))
    items = (f.Owned(item="cover gasket"), f.Owned(item="cover sealing washers", number=2))
    guess = f.Guessed(at=("gearbox cover",), low=335, likely=340, high=345)
    wanted = f.Wanted(at=("gearbox cover",), job="refurbish")
    plan = session(cover, f.Opened(at=("gearbox cover",)), guess, *items, wanted, work_minutes=240)
    spell = next(o for o in plan.operations if o.id == "work/gearbox cover/refurbish")
    assert spell.what.startswith("a spell at it")
    assert spell.minutes.likely == 60
    assert "close/gearbox cover" not in ids(plan)


# ---- left safe


ARM = described(
    Joint(name="arm bolts", kind="running-gear-bolts", holds=("arm",)),
    Joint(name="cover", kind="plain-fixing", behind=(("arm",),)),
    Part(name="arm"),
)


def test_no_joint_that_lets_go_is_left_loose() -> None:
    """The arm hangs on bolts that cannot be closed without new parts: lifted off, it is not put back."""
    facts = (ARM, f.Opened(at=("arm bolts",)), f.Wanted(at=("cover",), job="renew"))
    without = session(*facts)
    assert "lift/arm" in ids(without)
    assert "fit/arm" not in ids(without)
    assert without.left_loose == ()
    ready = session(*facts, f.Owned(item="running-gear locking parts"))
    assert ids(ready).index("fit/arm") < ids(ready).index("close/arm bolts")


def test_nothing_is_closed_over_what_another_job_leaves_apart() -> None:
    """Two jobs behind one wheel: the second cannot be closed for want of a part, so neither is the wheel."""
    wheel = Joint(name="wheel nuts", kind="wheel-nuts", holds=("wheel",))
    first = Joint(name="drum screws", kind="plain-fixing", behind=(("wheel",),))
    second = Joint(name="hose clip", kind="plain-fixing", behind=(("wheel",),))
    facts = (
        described(wheel, first, second, Part(name="wheel")),
        f.Wanted(at=("drum screws",), job="renew"), f.Wanted(at=("hose clip",), job="renew"),
    )  # fmt: skip
    plan = session(*facts, work_minutes=60)
    opened = {i.partition("/")[2] for i in ids(plan) if i.startswith("open/")}
    closed = {i.partition("/")[2] for i in ids(plan) if i.startswith("close/")}
    assert "wheel nuts" in opened
    assert opened == closed


def test_a_long_job_behind_the_same_wheel_is_not_shut_in() -> None:
    """The hose clip is a job of weeks: the wheel goes on over it only where it was not opened."""
    wheel = Joint(name="wheel nuts", kind="wheel-nuts", holds=("wheel",))
    first = Joint(name="drum screws", kind="plain-fixing", behind=(("wheel",),))
    second = Joint(name="hose clip", kind="plain-fixing", behind=(("wheel",),))
    plan = session(
        described(wheel, first, second, Part(name="wheel")),
        f.Wanted(at=("drum screws",), job="renew"),
        f.Wanted(at=("hose clip",), job="renew"),
        f.Guessed(at=("hose clip",), low=90, likely=100, high=110),
        work_minutes=110,
    )
    assert "close/wheel nuts" in ids(plan)
    assert "open/hose clip" not in ids(plan)


def test_what_stood_loose_before_is_told() -> None:
    assert session(TAPERS, f.NippedUp(at=("track rod end, left",))).left_loose == ("track rod end, left",)


def test_a_job_that_fits_is_opened_worked_and_closed_in_one_session() -> None:
    plan = session(
        *CORNER, f.Wanted(at=("brake drum screws, left rear",), job="renew"),
        f.Owned(item="wheel nuts", number=5),
    )  # fmt: skip
    opened = {i.removeprefix("open/") for i in ids(plan) if i.startswith("open/")}
    closed = {i.removeprefix("close/") for i in ids(plan) if i.startswith("close/")}
    assert opened == closed == {"wheel nuts, left rear", "brake drum screws, left rear"}


def test_safe_stops_begin_with_the_start_and_grow_less_sure() -> None:
    plan = session(*CORNER, f.Wanted(at=("brake drum screws, left rear",), job="renew"))
    assert plan.safe_stops[0].after == 0
    assert plan.safe_stops[0].chance == 1
    assert plan.safe_stops[-1].after == len(plan.operations)
    assert plan.safe_stops[-1].chance == plan.chance
    assert plan.safe_stops[-1].what == "all that was opened is tight"


def test_between_opening_and_closing_it_is_said_what_is_apart() -> None:
    plan = session(
        *CORNER, f.Wanted(at=("brake drum screws, left rear",), job="renew"),
        f.Wanted(at=("grease cap, left rear",), job="renew"), hours=6,
    )  # fmt: skip
    assert (
        any("apart, bagged and labelled" in stop.what for stop in plan.safe_stops) or len(plan.safe_stops) > 2
    )


def test_after_hot_work_the_stop_comes_when_it_is_watched_out() -> None:
    patch = described(Joint(name="bracket weld", kind="plug-weld-seam"))
    facts = (patch, f.Opened(at=("bracket weld",)))
    plan = session(*facts, hours=6)
    weld, watch = ids(plan).index("close/bracket weld"), ids(plan).index("watch/bracket weld")
    assert weld < watch
    forecast = simulate(plan.operations, 240, Overrun(), random.Random(1))
    for last, safe in ((weld, False), (watch, True)):
        stops = safe_stops(read(*facts)[0], plan.operations[: last + 1], forecast)
        assert (stops[-1].after == last + 1) is safe


def test_a_blanking_plug_comes_out_only_to_close_its_joint() -> None:
    banjo = described(Joint(name="banjo", kind="banjo-union"))
    facts = (banjo, f.Opened(at=("banjo",)), f.Blanked(at=("banjo",), number=2))
    assert "blank/blanks banjo" not in ids(session(*facts))
    plan = session(*facts, f.Owned(item="sealing washers", number=2))
    out, closed = ids(plan).index("blank/blanks banjo"), ids(plan).index("close/banjo")
    assert out < closed
    assert not any(out < stop.after <= closed for stop in plan.safe_stops)


def test_many_jobs_that_wait_are_told_a_dozen_at_a_time() -> None:
    many = described(*(Joint(name=f"track rod end {n}", kind="ball-joint-taper") for n in range(20)))
    plan = session(many, *(f.Opened(at=(f"track rod end {n}",)) for n in range(20)))
    assert len(plan.waiting) == 13
    assert plan.waiting[-1].what == "and 8 more jobs"


# ---- the short session


def test_thirty_five_minutes_open_nothing_that_lets_go_and_start_nothing_wet() -> None:
    facts: tuple[AnyFact, ...] = (
        *CORNER, *AXLE, described(Part(name="door skin")), f.Bared(at=("door skin",)),
        f.Wanted(at=("wheel nuts, left rear",), job="renew"),
        f.Found(at=("flange nut",), condition="seized"), f.Wanted(at=("pinion seal",), job="renew"),
        f.Opened(at=("axle breather",)),
    )  # fmt: skip
    plan = session(*facts, hours=35 / 60)
    assert not any(o.sort == "open" for o in plan.operations)
    assert all(o.put_down for o in plan.operations)
    assert any(o.sort == "garage" for o in plan.operations)
    assert "not begun in a short session" in {row.because for row in plan.waiting}


def test_a_short_evening_is_for_soaking_labels_and_the_order() -> None:
    facts: tuple[AnyFact, ...] = (
        *AXLE, f.Found(at=("flange nut",), condition="seized"), f.Wanted(at=("pinion seal",), job="renew"),
        f.Opened(at=("axle u-bolts, left",)),
    )  # fmt: skip
    said = " ".join(o.what for o in session(*facts, hours=1.2, helper=False).operations if o.sort == "garage")
    assert "soak flange nut" in said
    assert "bag and label" in said
    assert "prepare the order" in said


def test_a_small_proof_is_worth_a_short_evening() -> None:
    end = ("track rod end, left",)
    facts = (TAPERS, f.Opened(at=end), f.Fitted(at=end, item="split pin"), f.Tightened(at=end))
    assert any(o.sort == "prove" for o in session(*facts, hours=35 / 60).operations)


# ---- chance


def test_the_chance_is_said_in_words_and_the_band_is_in_order() -> None:
    plan = session(TAPERS, *BOTH_APART, f.Owned(item="split pins", number=2))
    assert plan.chance_words.startswith(("about", "nearly", "hardly"))
    low, likely, high = plan.minutes
    assert low < likely < high
    assert 0.5 < plan.chance <= 1


def test_the_same_seed_gives_the_same_plan() -> None:
    facts: tuple[AnyFact, ...] = (TAPERS, *BOTH_APART, f.Owned(item="split pins", number=2))
    assert session(*facts, seed=5) == session(*facts, seed=5)


def test_the_owners_factor_is_told_where_it_counts() -> None:
    facts: tuple[AnyFact, ...] = (BUMPER, f.TookOff(at=("bumper",)))
    assert session(*facts).factor_words == ""
    typed = session(*facts, f.Guessed(at=("bumper bolts",), low=5, likely=10, high=30))
    assert "your guesses count 1.3 times" in typed.factor_words


def test_nothing_owed_and_nothing_wanted_is_an_empty_plan() -> None:
    plan = session(BUMPER)
    assert plan.operations == ()
    assert (plan.chance, plan.chance_words) == (1.0, "nearly certain")


def test_the_usual_cautions_come_along() -> None:
    plan = session(TAPERS, *BOTH_APART, f.Owned(item="split pins", number=2))
    assert "steering" in plan.cautions


@pytest.mark.parametrize("hours", [0.5, 3.0])
def test_reading_again_changes_nothing(hours: float) -> None:
    facts: tuple[AnyFact, ...] = (*CORNER, f.Wanted(at=("brake drum screws, left rear",), job="renew"))
    assert read(*facts) == read(*facts)
    assert session(*facts, hours=hours) == session(*facts, hours=hours)
