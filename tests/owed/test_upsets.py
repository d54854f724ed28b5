"""What opening upsets elsewhere: one debt a thing, paid by putting it right afterwards."""

from __future__ import annotations

from tests.building import described, evening, state_of
from witnessmark.journal import facts as f
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.things import Joint

UNIONS = [Joint(name=f"brake union, {corner}", kind="brake-union") for corner in ("left rear", "right rear")]
AT = tuple(j.name for j in UNIONS)
BLED = f.PutRight(what="bleed brakes")


def upsets(*facts: f.Doing):
    return [d for d in owed_by(state_of(described(*UNIONS), *facts), evening()) if d.sort == "put_right"]


def test_two_unions_upset_the_bleeding_once():
    found = [d for d in upsets(f.Opened(at=AT[:1]), f.Opened(at=AT[1:])) if d.item == "bleed brakes"]
    assert len(found) == 1
    assert found[0].line == 4
    assert "left rear" in found[0].because
    assert "right rear" in found[0].because


def test_it_is_put_right_after_closing_not_before():
    shut = (f.Opened(at=AT), f.Tightened(at=AT))
    assert "bleed brakes" not in {d.item for d in upsets(*shut, BLED)}
    assert "bleed brakes" in {d.item for d in upsets(f.Opened(at=AT), BLED)}
    assert "bleed brakes" in {
        d.item for d in upsets(*shut, BLED, f.Opened(at=AT[:1]), f.Tightened(at=AT[:1]))
    }
