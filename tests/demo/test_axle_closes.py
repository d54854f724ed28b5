"""The demo's rear axle, once its parts are in: few lines close it, and what lets go is answered singly."""

from __future__ import annotations

from datetime import datetime, timedelta

from tests.building import entry
from witnessmark.demo.telling import ASKED
from witnessmark.restoration.flow import Flow
from witnessmark.words.read import read_line

MOST_ACTS = 12
ACTS = (
    "fitted new half-shaft o-ring left",
    "fitted new hub seal left",
    "fitted half-shaft left",
    "closed half-shaft retainers left 32 lbf ft",
    "fitted propshaft",
    "closed propshaft bolts 35 lbf ft",
    "closed axle u-bolts left 42 lbf ft",
    "filled axle 1.2 L gear oil",
    "found axle breather clean",
    "closed drive axle",
)
# What is looked at after use, and what was upset elsewhere, is no part of closing.
AFTERWARDS = ("look_again", "put_right")


def after(told, acts):
    day = ASKED.date() + timedelta(days=3)
    entries = list(told.entries)
    for number, words in enumerate(acts):
        understood = read_line(words, told.flow().vehicle, today=day)
        assert understood.best.sure, (words, understood.best.doubts)
        entries += [
            entry(fact, len(entries) + 1, day, f"10:{number:02d}", words) for fact in understood.best.facts
        ]
    return Flow(entries, datetime(day.year, day.month, day.day, 18, 0))


def owed_on_axle(flow):
    return [d for d in flow.owed if d.assembly == "drive axle" and d.sort not in AFTERWARDS]


def test_the_axle_closes_in_few_acts(told, flow):
    assert len(ACTS) <= MOST_ACTS
    assert len(owed_on_axle(flow)) > 30
    assert owed_on_axle(after(told, ACTS)) == []


def test_what_lets_go_is_not_swept(told):
    left = after(told, [a for a in ACTS if "propshaft bolts" not in a and "u-bolts" not in a])
    joints = {d.joint for d in owed_on_axle(left)}
    assert joints == {"propshaft bolts", "axle u-bolts, left"}
