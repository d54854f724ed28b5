"""Needs by session, own stock and donor first."""

from datetime import date

from tests.building import described, evening, state_of
from tests.buy.markets import need
from witnessmark.buy.needed import Required, dated, on_donor, required, session_of_each
from witnessmark.jobs.jobs import jobs_of
from witnessmark.jobs.operation import Job, Minutes, Operation
from witnessmark.journal import facts as f
from witnessmark.owed.needs import Need
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.things import Joint, Part

WEDNESDAY = date(2026, 11, 25)


def job(id: str, likely: float, *names: str, wanted: int | None = 1) -> Job:
    operations = tuple(
        Operation(id=f"{id}/{n}", what=n, sort="work", name=n, job=id, minutes=Minutes(1, likely, 999))
        for n in names
    )
    return Job(id=id, job="renew", name=id, operations=operations, wanted=wanted)


def test_jobs_fill_one_session_after_the_other_and_wanted_ones_come_first() -> None:
    jobs = [job("close", 10, "c", wanted=None), job("first", 70, "a", "b"), job("second", 50, "a", "d")]
    when = session_of_each(jobs, work_minutes=100)
    assert when == {"a": 0, "b": 0, "d": 1, "c": 2}


def test_a_need_carries_the_day_of_its_session() -> None:
    needs = (Need(what="seal", for_=("a", "b")), Need(what="pin", for_=("c",)), Need(what="tape"))
    days = (date(2026, 11, 28), date(2026, 12, 5))
    assert [n.by for n in dated(needs, {"a": 1, "b": 0, "c": 9}, days)] == ["2026-11-28", "", ""]


def test_own_stock_comes_first_and_what_only_wets_does_not_hold_the_session() -> None:
    ring = Joint(name="axle ring", kind="o-ring", size="47 x 2.62", if_missed="wets")
    nut = Joint(name="flange nut", kind="pinion-seal")
    apart = f.TookOff(at=("axle ring", "flange nut"))
    state = state_of(
        described(ring, nut), apart, f.Owned(item="pinion seal"), f.Wanted(at=("flange nut",), job="renew")
    )
    jobs = jobs_of(state, owed_by(state, evening()))
    found = {one.need.what: one for one in required(state, jobs, session_of_each(jobs), 4)}
    assert "pinion seal" not in found
    assert found["flange nut"].holds
    assert not found["O-ring"].holds


def test_the_donor_is_asked_before_anything_is_bought_and_gives_a_part_once() -> None:
    state = state_of(described(Part(name="wing", where="donor")))
    wanted = [need("wing"), need("mirror")]
    assert [(one.need.what, one.doubt) for one in on_donor(state, wanted)] == [("wing", "")]
    sides = [Need(what="wing", for_=(f"wing, {side}",)) for side in ("left", "right")]
    both = [Required(need=one, pieces=1, by=0, holds=True) for one in sides]
    doubts = [one.doubt for one in on_donor(state, both)]
    assert doubts[0] == ""
    assert "there is one" in doubts[1]
