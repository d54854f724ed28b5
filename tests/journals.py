"""Random records for properties: one small vehicle, any facts about it, on any days."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import strategies as st

from tests.building import FIRST_DAY, described, entry
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.vehicle.things import Joint, Part

HUB = Joint(
    name="hub nut, left rear",
    kind="tapered-drive-hub",
    holds=("hub, left rear",),
    assembly="left rear corner",
)
NUTS = Joint(
    name="wheel nuts, left rear", kind="wheel-nuts", holds=("wheel, left rear",), assembly="left rear corner"
)
UNION = Joint(name="brake union, left rear", kind="brake-union", behind=(("wheel, left rear",),))
SEAL = Joint(name="pinion seal", kind="pinion-seal", assembly="rear axle")
PLUG = Joint(name="fill plug", kind="fill-and-drain-plug", assembly="rear axle")
PATCH = Joint(name="floor patch", kind="welded-patch")
SKIN = Joint(name="floor paint", kind="primed-metal")
BOLTS = Joint(name="bumper bolts, front", kind="plain-fixing", holds=("bumper, front",))
JOINTS = (HUB, NUTS, UNION, SEAL, PLUG, PATCH, SKIN, BOLTS)
PARTS = tuple(Part(name=n) for n in ("hub, left rear", "wheel, left rear", "bumper, front", "rear axle"))
VEHICLE: tuple[f.Doing, ...] = (f.DescribedVehicle(name="test", body="car"), described(*JOINTS, *PARTS))

JOINT_NAMES = tuple(j.name for j in JOINTS)
NAMES = JOINT_NAMES + tuple(p.name for p in PARTS)
at_joint = st.sampled_from(JOINT_NAMES).map(lambda n: (n,))
at_any = st.sampled_from(NAMES).map(lambda n: (n,))
figures = st.sampled_from([(), (Quantity("47 N·m", 47.0, "N·m"),), (Quantity("2 min", 2.0, "min"),)])
items = st.sampled_from(["", "split pin", "pinion seal", "sealing washer"])

doings = st.one_of(
    st.builds(f.TookOff, at=at_any),
    st.builds(f.Opened, at=at_joint),
    st.builds(f.Slackened, at=at_joint),
    st.builds(f.Found, at=at_any, condition=st.sampled_from(["worn", "stuck", "good", "loose"])),
    st.builds(f.Fitted, at=at_any, item=items, new=st.booleans()),
    st.builds(f.NippedUp, at=at_joint),
    st.builds(f.Tightened, at=at_joint, figures=figures, marked=st.booleans()),
    st.builds(f.Filled, at=at_joint, fluid=st.just("gear oil")),
    st.builds(f.Drained, at=at_joint),
    st.builds(f.Welded, at=st.just(("floor patch",))),
    st.builds(f.Bared, at=st.just(("floor paint",))),
    st.builds(f.Coated, at=st.just(("floor paint",)), recoat_until_hours=st.sampled_from([None, 48.0])),
    st.builds(f.Proved, at=at_joint, seen=st.booleans(), figures=figures),
    st.builds(f.LookedAt, at=at_joint),
    st.builds(f.PutRight, what=st.sampled_from(["bleed brakes", "oil level"])),
    st.builds(f.Marked, at=at_joint),
    st.builds(f.Closed, at=st.one_of(at_joint, st.just(("rear axle",))), seen=st.booleans()),
    st.builds(f.DownedTools, at=at_joint),
    st.builds(f.Bagged, at=at_joint, number=st.integers(0, 9)),
    st.builds(f.Unbagged, at=at_joint),
    st.builds(f.Blanked, at=at_joint, number=st.integers(1, 3)),
    st.builds(f.Unblanked, at=at_joint, number=st.integers(1, 3)),
    st.builds(f.Stored, at=at_any, where=st.just("top shelf")),
    st.builds(f.Scrapped, at=st.just(("bumper, front",))),
    st.builds(f.Ran, km=st.sampled_from([1.0, 12.0, 60.0]), heat_cycles=st.integers(0, 1)),
    st.builds(f.Remarked, remark=st.just("rain all day")),
)
days = st.integers(0, 40).map(lambda n: FIRST_DAY + timedelta(days=n))
LAST_DAY = FIRST_DAY + timedelta(days=41)


@st.composite
def journals(draw: st.DrawFn, *, strikes: bool = False, most: int = 14) -> list[Entry]:
    """A record of the test vehicle with up to `most` facts on any days, sometimes with strikes."""
    lines = [entry(fact, n) for n, fact in enumerate(VEHICLE, 1)]
    for fact in draw(st.lists(doings, max_size=most)):
        lines.append(entry(fact, len(lines) + 1, draw(days), draw(st.sampled_from(["09:00", "24:00"]))))
    if strikes and len(lines) > 2:
        for _ in range(draw(st.integers(0, 2))):
            struck = draw(st.integers(3, len(lines)))
            lines.append(entry(f.Struck(line=struck, why="wrong side"), len(lines) + 1, LAST_DAY))
    return lines


def day_after(entries: list[Entry]) -> date:
    """A day after all of them."""
    return max(e.day for e in entries) + timedelta(days=1)
