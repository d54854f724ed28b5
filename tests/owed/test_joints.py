"""What one joint owes: renewals, closing, checks, records, findings; and what pays each of them."""

from __future__ import annotations

from tests.building import described, evening, state_of
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.owed.owed import owed_by, word_for
from witnessmark.vehicle.catalogue import catalogue, kind_of
from witnessmark.vehicle.things import Joint

ROD = Joint(name="track rod end, left", kind="ball-joint-taper", place="left front")
AT = (ROD.name,)
TORQUE = (Quantity("40 N·m", 40.0, "N·m"),)


def owed(*facts: f.Doing, joint: Joint = ROD):
    return owed_by(state_of(described(joint), *facts), evening())


def test_a_joint_never_touched_owes_nothing():
    assert owed() == ()


def test_an_opened_joint_owes_all_its_kind_asks():
    kind = kind_of(ROD.kind)
    debts = owed(f.TookOff(at=AT))
    assert {d.item for d in debts if d.sort == "renew"} == {r.item for r in kind.renew if r.always}
    assert {d.item for d in debts if d.sort == "check"} == {c.name for c in kind.check}
    assert {d.item for d in debts if d.sort == "record"} == {r.name for r in kind.record}
    assert {d.item for d in debts if d.sort == "put_right"} == {u.name for u in kind.upset}
    assert [d.what for d in debts if d.sort == "close"] == ["put back and tighten to figure"]
    assert all(d.line == 3 and d.where for d in debts)


def test_each_act_pays_its_own_debt():
    kind = kind_of(ROD.kind)
    open_ = {d.key for d in owed(f.TookOff(at=AT))}
    pin = next(r.item for r in kind.renew if r.always)
    renewed = {d.key for d in owed(f.TookOff(at=AT), f.Fitted(at=AT, item=pin, new=True))}
    assert open_ - renewed == {f"renew/{ROD.name}/{pin}"}
    tight = {d.key for d in owed(f.TookOff(at=AT), f.Tightened(at=AT, figures=TORQUE))}
    assert f"close/{ROD.name}/close" in open_ - tight
    assert f"record/{ROD.name}/figure" not in tight
    proved = {d.key for d in owed(f.TookOff(at=AT), f.Tightened(at=AT), f.Proved(at=AT, seen=True))}
    assert not any(key.startswith("check/") for key in proved)


def test_tight_is_not_proven():
    state = state_of(described(ROD), f.TookOff(at=AT), f.Tightened(at=AT))
    assert word_for(state, ROD.name) == "tight"
    proven = state_of(described(ROD), f.TookOff(at=AT), f.Tightened(at=AT), f.Proved(at=AT, seen=True))
    assert word_for(proven, ROD.name) == "proven"


def test_a_joint_of_unsaid_kind_owes_tighten_record_and_a_look_and_counts_as_lets_go():
    """Project decision: a joint whose kind was not said may always be written."""
    strange = Joint(name="odd bracket", kind="unsaid")
    at = (strange.name,)
    debts = owed(f.TookOff(at=at), joint=strange)
    assert {d.sort for d in debts} == {"close", "record"}
    assert {d.if_missed for d in debts} == {"lets_go"}
    after = owed(
        f.TookOff(at=at), f.Tightened(at=at, figures=TORQUE, marked=True), f.Ran(km=60), joint=strange
    )
    assert "look_again" in {d.sort for d in after}


def test_a_finding_is_owed_even_on_a_joint_never_opened():
    debts = owed(f.Found(at=AT, condition="worn"))
    assert [d.sort for d in debts] == ["finding"]


def test_a_conditional_renewal_is_no_debt_until_found_so():
    conditional = next(r for r in kind_of(ROD.kind).renew if not r.always)
    assert conditional.item not in {d.item for d in owed(f.TookOff(at=AT))}
    found = owed(f.TookOff(at=AT), f.Found(at=AT, condition="cut", item=conditional.item))
    assert [d.what for d in found if d.sort == "finding"] == [f"put right: {conditional.item} found cut"]
    paid = f.Fitted(at=AT, item=conditional.item, new=True)
    assert not [
        d
        for d in owed(f.TookOff(at=AT), f.Found(at=AT, condition="cut", item=conditional.item), paid)
        if d.sort == "finding"
    ]


def test_a_scrapped_joint_owes_nothing():
    assert not [d for d in owed(f.TookOff(at=AT), f.Scrapped(at=AT)) if d.joint]


def test_finger_tight_is_said_so():
    (close,) = [d for d in owed(f.TookOff(at=AT), f.DownedTools(at=AT)) if d.sort == "close"]
    assert close.what.startswith("finger-tight")


def test_debts_come_heaviest_first_and_what_is_apart_before_what_is_tight():
    light = Joint(name="trim screws", kind="plain-fixing")
    tight = Joint(name="track rod end, right", kind="ball-joint-taper")
    state = state_of(
        described(light, ROD, tight),
        f.TookOff(at=("trim screws",)),
        f.TookOff(at=(tight.name,)),
        f.Tightened(at=(tight.name,)),
        f.TookOff(at=AT),
    )
    names = [d.joint for d in owed_by(state, evening()) if d.joint and d.overdue]
    assert names.index(ROD.name) < names.index(tight.name) < names.index("trim screws")


def test_every_kind_of_the_catalogue_owes_and_can_be_paid():
    for key in catalogue():
        joint = Joint(name="thing", kind=key)
        at = ("thing",)
        opened = owed(f.TookOff(at=at), joint=joint)
        assert any(d.sort == "close" for d in opened), key
        closed = owed(f.TookOff(at=at), f.Closed(at=at, seen=True), joint=joint)
        assert not [d for d in closed if d.sort in ("renew", "close", "check", "record")], key
