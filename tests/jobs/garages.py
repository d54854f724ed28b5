"""Records of a vehicle built from starting lists, with anything done to it and anything wanted."""

from __future__ import annotations

from datetime import timedelta

from hypothesis import strategies as st

from tests.building import FIRST_DAY, entry
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Doing
from witnessmark.vehicle.starting_lists import expand
from witnessmark.vehicle.things import Joint, Part, Vehicle

LISTS = (
    ("drum-brake-corner", "left rear"),
    ("drum-brake-corner", "right rear"),
    ("drive-axle", ""),
    ("outrigger-repair", "left rear"),
    ("floor-patch", "left front"),
    ("fuel-tank-and-lines", ""),
)


def from_lists(*lists: tuple[str, str]) -> list[f.Described]:
    """Facts that bring these starting lists to one vehicle."""
    parts: dict[str, Part] = {}
    joints: dict[str, Joint] = {}
    facts = []
    for key, side in lists:
        new_parts, new_joints = expand(key, side, Vehicle(parts=dict(parts), joints=dict(joints)))
        parts |= {p.name: p for p in new_parts}
        joints |= {j.name: j for j in new_joints}
        facts.append(f.Described(parts=new_parts, joints=new_joints, from_list=key))
    return facts


DESCRIBED = from_lists(*LISTS)
JOINTS = tuple(j.name for fact in DESCRIBED for j in fact.joints)
PARTS = tuple(p.name for fact in DESCRIBED for p in fact.parts)
ASSEMBLIES = tuple(dict.fromkeys(j.assembly for fact in DESCRIBED for j in fact.joints if j.assembly))

one_joint = st.sampled_from(JOINTS).map(lambda n: (n,))
one_part = st.sampled_from(PARTS).map(lambda n: (n,))
anything = st.sampled_from(JOINTS + PARTS + ASSEMBLIES).map(lambda n: (n,))
JOBS = ("renew", "refurbish", "make good", "refit", "coat", "prove")

doings = st.one_of(
    st.builds(f.TookOff, at=one_part | one_joint),
    st.builds(f.Opened, at=one_joint),
    st.builds(f.NippedUp, at=one_joint),
    st.builds(
        f.Found, at=one_part | one_joint, condition=st.sampled_from(["worn", "seized", "loose", "good"])
    ),
    st.builds(f.Fitted, at=one_part | one_joint, new=st.booleans()),
    st.builds(f.Tightened, at=one_joint),
    st.builds(f.Closed, at=one_joint, seen=st.booleans()),
    st.builds(f.Proved, at=one_joint, seen=st.booleans()),
    st.builds(f.Bagged, at=one_joint),
    st.builds(f.Blanked, at=one_joint),
    st.builds(f.Bared, at=one_joint),
    st.builds(f.Drained, at=one_joint),
    st.builds(f.Ran, km=st.sampled_from([1.0, 60.0])),
    st.builds(f.SentAway, at=one_part, with_whom=st.just("the plater")),
    st.builds(
        f.Came, item=st.sampled_from(["split pins", "pinion seal", "sheet steel"]), number=st.integers(1, 9)
    ),
    st.builds(f.Guessed, at=one_joint, low=st.just(20.0), likely=st.just(45.0), high=st.just(200.0)),
    st.builds(f.TookTime, at=one_joint, minutes=st.just(90.0)),
    st.builds(f.Left, at=anything, why=st.just("next year")),
)
wants = st.builds(f.Wanted, at=anything, job=st.sampled_from(JOBS))
LAST_DAY = FIRST_DAY + timedelta(days=40)


BASE = [
    entry(f.DescribedVehicle(name="test", body="pickup"), 1),
    *(entry(fact, n) for n, fact in enumerate(DESCRIBED, 2)),
]


@st.composite
def garages(draw: st.DrawFn, most: int = 18) -> list[Entry]:
    """Lines that follow on BASE: what was wanted, and up to `most` things done, on any days."""
    lines: list[Entry] = []
    wanted: list[Doing] = draw(st.lists(wants, max_size=4))
    done: list[Doing] = draw(st.lists(doings, min_size=3, max_size=most))
    for fact in [*wanted, *done]:
        day = FIRST_DAY + timedelta(days=draw(st.integers(0, 39)))
        lines.append(entry(fact, len(BASE) + len(lines) + 1, day))
    return lines
