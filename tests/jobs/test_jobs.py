"""Jobs on small vehicles: what is opened, in which order, what closes it again and what that pays."""

from tests.building import described, evening, state_of
from tests.jobs.garages import from_lists
from witnessmark.jobs.jobs import jobs_of
from witnessmark.jobs.operation import Job, Operation
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.things import Joint, Part

CORNER = from_lists(("drum-brake-corner", "left rear"))
BOTH = from_lists(("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"))
AXLE = from_lists(("drive-axle", ""))


def jobs(*facts: AnyFact, days_apart: int = 1) -> dict[str, Job]:
    state = state_of(*facts, days_apart=days_apart)
    return {job.id: job for job in jobs_of(state, owed_by(state, evening()))}


def ids(job: Job) -> list[str]:
    return [o.id for o in job.operations]


def operation(found: dict[str, Job], id: str) -> Operation:
    return next(o for job in found.values() for o in job.operations if o.id == id)


def comes_before(found: dict[str, Job], one: str, other: str) -> bool:
    """Whether one operation must come before another, by what each comes after."""
    seen, todo = set(), [other]
    while todo:
        now = todo.pop()
        if now == one:
            return True
        if now not in seen:
            seen.add(now)
            todo += operation(found, now).after
    return False


# ---- wanted


def test_it_is_opened_outermost_first_and_closed_in_reverse() -> None:
    found = jobs(*AXLE, f.Wanted(at=("pinion seal",), job="renew"))
    job = found["renew/pinion seal"]
    assert job.opens == ("propshaft bolts", "flange nut", "pinion seal")
    acts = [i for i in ids(job) if i.startswith(("open/", "work/", "close/"))]
    assert acts == [
        "open/propshaft bolts", "open/flange nut", "open/pinion seal", "work/pinion seal/renew",
        "close/pinion seal", "close/flange nut", "close/propshaft bolts",
    ]  # fmt: skip
    assert job.wanted == 3


def test_what_is_apart_is_not_opened_again() -> None:
    found = jobs(*AXLE, f.TookOff(at=("propshaft",)), f.Wanted(at=("pinion seal",), job="renew"))
    assert found["renew/pinion seal"].opens == ("flange nut", "pinion seal")
    assert "close/flange nut" in operation(found, "close/propshaft bolts").follows


def test_closing_needs_what_it_fits_new_and_pays_what_it_pays() -> None:
    found = jobs(*AXLE, f.Opened(at=("pinion seal",)))
    closing = operation(found, "close/pinion seal")
    assert closing.needs == ("shaft seal",)
    state = state_of(*AXLE, f.Opened(at=("pinion seal",)), days_apart=1)
    paid = {d.sort for d in owed_by(state, evening()) if d.id in closing.pays}
    assert {"renew", "close", "record"} <= paid


def test_a_loose_joint_is_tightened_not_put_back() -> None:
    found = jobs(*CORNER, f.NippedUp(at=("wheel nuts, left rear",)))
    assert operation(found, "close/wheel nuts, left rear").what.startswith("tighten wheel nuts")


def test_debts_alone_are_a_job_of_their_assembly() -> None:
    found = jobs(*CORNER, f.NippedUp(at=("wheel nuts, left rear",)))
    job = found["close/drum brake corner, left rear"]
    assert job.wanted is None
    assert "close/wheel nuts, left rear" in ids(job)


def test_a_joint_without_assembly_is_a_job_of_its_own() -> None:
    bolts = described(Joint(name="bumper bolts", kind="plain-fixing"))
    assert "close/bumper bolts" in jobs(bolts, f.Opened(at=("bumper bolts",)))


def test_a_job_done_and_proven_since_is_no_job() -> None:
    bolts = described(Joint(name="bumper bolts", kind="plain-fixing"))
    done = (f.Opened(at=("bumper bolts",)), f.Closed(at=("bumper bolts",), seen=True))
    assert "renew/bumper bolts" not in jobs(bolts, f.Wanted(at=("bumper bolts",), job="renew"), *done)
    assert "renew/bumper bolts" in jobs(bolts, *done, f.Wanted(at=("bumper bolts",), job="renew"))


def test_tight_and_not_proven_is_not_done() -> None:
    tight = (f.Opened(at=("wheel nuts, left rear",)), f.Tightened(at=("wheel nuts, left rear",)))
    found = jobs(*CORNER, f.Wanted(at=("wheel nuts, left rear",), job="refit"), *tight)
    assert "prove/nuts counted/wheel nuts, left rear" in ids(found["refit/wheel nuts, left rear"])


def test_a_job_left_later_is_dropped() -> None:
    wanted = f.Wanted(at=("pinion seal",), job="renew")
    assert "renew/pinion seal" not in jobs(*AXLE, wanted, f.Left(at=("pinion seal",), why="dry"))
    assert "renew/pinion seal" in jobs(*AXLE, f.Left(at=("pinion seal",), why="dry"), wanted)


def test_two_jobs_share_an_opening_and_each_debt_has_one_operation() -> None:
    found = jobs(
        *CORNER,
        f.Wanted(at=("brake pipe union, left rear",), job="renew"),
        f.Wanted(at=("shoe anchors and springs, left rear",), job="refurbish"),
    )
    first = found["renew/brake pipe union, left rear"]
    second = found["refurbish/shoe anchors and springs, left rear"]
    assert "open/wheel nuts, left rear" in ids(first)
    assert "open/wheel nuts, left rear" not in ids(second)
    drum = operation(found, "open/brake drum screws, left rear")
    assert "open/wheel nuts, left rear" in drum.after
    assert "close/brake drum screws, left rear" in operation(found, "close/wheel nuts, left rear").follows


def test_whoever_opens_a_loose_joint_closes_it() -> None:
    found = jobs(
        *CORNER,
        f.NippedUp(at=("wheel nuts, left rear",)),
        f.Wanted(at=("wheel nuts, left rear",), job="refit"),
        f.Wanted(at=("wheel nuts, left rear",), job="renew"),
    )
    assert list(found) == ["renew/wheel nuts, left rear"]


def test_an_assembly_wanted_is_all_its_joints() -> None:
    found = jobs(*CORNER, f.Wanted(at=("drum brake corner, left rear",), job="refurbish"))
    opened = found["refurbish/drum brake corner, left rear"].opens
    assert {"wheel nuts, left rear", "backplate bolts, left rear"} <= set(opened)


def test_a_wish_to_prove_opens_nothing() -> None:
    found = jobs(*CORNER, f.Wanted(at=("wheel nuts, left rear",), job="prove"))
    assert {o.sort for o in found["prove/wheel nuts, left rear"].operations} == {"prove"}


# ---- parts and findings


def test_a_part_renewed_comes_off_and_its_joint_is_closed_again() -> None:
    found = jobs(*CORNER, f.Wanted(at=("brake drum, left rear",), job="renew"))
    job = found["renew/brake drum, left rear"]
    assert operation(found, "work/brake drum, left rear/renew").needs == ("brake drum",)
    assert comes_before(found, "open/brake drum screws, left rear", "work/brake drum, left rear/renew")
    assert comes_before(found, "work/brake drum, left rear/renew", "close/brake drum screws, left rear")
    assert job.opens == ("wheel nuts, left rear", "brake drum screws, left rear")


def test_a_joint_cannot_be_closed_over_a_part_that_is_away() -> None:
    found = jobs(
        *CORNER,
        f.TookOff(at=("brake drum, left rear",)),
        f.SentAway(at=("brake drum, left rear",), with_whom="the machinist"),
    )
    assert operation(found, "close/brake drum screws, left rear").needs == ("brake drum, left rear",)


def test_a_part_whose_joints_are_apart_is_lifted_and_put_back() -> None:
    found = jobs(
        *CORNER, f.Opened(at=("wheel nuts, left rear",)), f.Wanted(at=("brake drum, left rear",), job="renew")
    )
    assert comes_before(found, "lift/wheel, left rear", "open/brake drum screws, left rear")
    assert comes_before(found, "fit/wheel, left rear", "close/wheel nuts, left rear")


def test_a_finding_opens_the_joint_again_and_is_put_right() -> None:
    found = jobs(*AXLE, f.Found(at=("pinion seal",), condition="weeping"))
    job = found["close/drive axle"]
    assert job.opens == ("propshaft bolts", "flange nut", "pinion seal")
    assert operation(found, "close/pinion seal").pays
    assert not any(i.startswith("mend/") for i in ids(job))


def test_a_finding_that_no_new_item_answers_is_mended() -> None:
    found = jobs(*CORNER, f.Found(at=("brake drum screws, left rear",), condition="rounded"))
    mend = operation(found, "mend/brake drum screws, left rear")
    assert mend.pays
    assert mend.fights


def test_what_was_not_renewed_on_a_tight_joint_is_renewed_in_place() -> None:
    track = described(Joint(name="track rod end", kind="ball-joint-taper"))
    found = jobs(track, f.Opened(at=("track rod end",)), f.Tightened(at=("track rod end",)))
    renewal = operation(found, "renew/track rod end")
    assert renewal.needs == ("split pin",)
    assert not any(o.sort == "open" for job in found.values() for o in job.operations)


def test_what_is_upset_is_put_right_once_after_what_upset_it() -> None:
    found = jobs(
        *BOTH,
        f.Opened(at=("brake pipe union, left rear",)),
        f.Opened(at=("brake pipe union, right rear",)),
    )
    bleed = operation(found, "put_right/bleed brakes")
    assert {"close/brake pipe union, left rear", "close/brake pipe union, right rear"} <= set(bleed.after)
    assert bleed.hands == 2
    assert not bleed.put_down


# ---- minutes


def test_an_owners_guess_covers_the_joint_it_names_and_not_the_way_in() -> None:
    guess = f.Guessed(at=("pinion seal",), job="renew", low=60, likely=100, high=300)
    found = jobs(*AXLE, f.Wanted(at=("pinion seal",), job="renew"), guess)
    mine = [o for o in found["renew/pinion seal"].operations if o.minutes.owner]
    assert {o.name for o in mine} == {"pinion seal"}
    assert sum(o.minutes.likely for o in mine if o.sort in ("open", "work", "close")) == 90
    assert {o.minutes.guess for o in mine} == {"pinion seal"}


def test_a_joint_never_apart_is_likelier_to_turn_something_up() -> None:
    fresh = operation(jobs(*AXLE, f.Wanted(at=("pinion seal",), job="renew")), "open/flange nut")
    known = operation(
        jobs(
            *AXLE, f.Opened(at=("flange nut",)), f.Closed(at=("flange nut",), seen=True),
            f.Wanted(at=("pinion seal",), job="renew"),
        ),
        "open/flange nut",
    )  # fmt: skip
    seized = operation(
        jobs(
            *AXLE, f.Found(at=("flange nut",), condition="seized"), f.Wanted(at=("pinion seal",), job="renew")
        ),
        "open/flange nut",
    )
    assert known.finding < fresh.finding < seized.finding
    assert seized.minutes.likely > fresh.minutes.likely


def test_a_part_on_its_own_can_be_refitted() -> None:
    found = jobs(described(Part(name="ash tray")), f.TookOff(at=("ash tray",)))
    assert operation(found, "fit/ash tray").pays
