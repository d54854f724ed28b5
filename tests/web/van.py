"""A small record for the pages: a van with a corner apart, a bag, a part on the shelf; and a browser."""

from __future__ import annotations

import re
from datetime import date, datetime
from pathlib import Path
from typing import Any

from django.test import Client

from witnessmark.journal.facts import (
    AnyFact,
    Bagged,
    Bared,
    Described,
    Found,
    NippedUp,
    Opened,
    Stored,
    Tightened,
    TookOff,
)
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.begin import begin
from witnessmark.vehicle.things import Joint, Part
from witnessmark.web.floor import lay_floor
from witnessmark.web.record import AT_HAND

NOW = datetime(2026, 3, 14, 11, 20)
FIRST = date(2025, 11, 1)
CORNER = "left rear corner"

WHEEL, HUB, SEAL, CLIP = (
    "wheel nuts, left rear",
    "hub nut, left rear",
    "shaft seal, left rear",
    "fuel hose clips",
)

FACTS: tuple[tuple[AnyFact, str], ...] = (
    (
        Described(
            parts=(
                Part(name="brake drum, left rear", assembly=CORNER, place="left rear"),
                Part(name="gearbox", place="under the floor"),
            ),
            joints=(
                Joint(name=WHEEL, kind="wheel-nuts", assembly=CORNER, side="left rear"),
                Joint(name=HUB, kind="taper-roller-bearing", assembly=CORNER, side="left rear"),
                Joint(name=SEAL, kind="shaft-seal", assembly=CORNER, side="left rear", place="rear axle"),
                Joint(name=CLIP, kind="fuel-hose", place="front", number=2),
            ),
        ),
        "what the van has",
    ),
    (TookOff(at=(WHEEL,)), "took off wheel nuts left rear"),
    (TookOff(at=("brake drum, left rear",)), "took off brake drum left rear"),
    (Bagged(at=(WHEEL,), what="wheel nuts", number=5, where="blue tin"), "bagged 5 wheel nuts in blue tin"),
    (TookOff(at=(HUB,)), "took off hub nut left rear"),
    (Opened(at=(SEAL,)), "opened shaft seal left rear"),
    (Found(at=(SEAL,), condition="weeping"), "found shaft seal left rear <weeping>"),
    (Bared(at=("brake drum, left rear",)), "bared brake drum left rear"),
    (TookOff(at=("gearbox",)), "took off gearbox"),
    (Stored(at=("gearbox",), where="top shelf"), "put gearbox on the top shelf"),
    (Tightened(at=(CLIP,)), "tightened fuel hose clips"),
    (NippedUp(at=(HUB,)), "nipped up hub nut left rear"),
)


def van(folder: Path) -> AtHand:
    """The small record, told through the one writer."""
    begin(folder, "the van", now=NOW, body="van", country="GB")
    at_hand = AtHand(folder, lambda: NOW)
    with at_hand.opened() as restoration:
        restoration.write_facts(FACTS, day=FIRST)
    return at_hand


def bare(folder: Path) -> AtHand:
    """A record with nothing in it but the vehicle's name."""
    begin(folder, "the bare van", now=NOW)
    return AtHand(folder, lambda: NOW)


def browser(at_hand: AtHand, *, checks_forms: bool = False) -> Client:
    """What a browser of this machine asks with."""
    lay_floor()
    client = Client(enforce_csrf_checks=checks_forms, SERVER_NAME="127.0.0.1")
    client.defaults[AT_HAND] = at_hand  # type: ignore[assignment]
    return client


def text_of(answer: Any) -> str:
    """What a person reads of a page: no marks, no attributes."""
    body = answer.content.decode("utf-8")
    return " ".join(
        re.sub(r"<[^>]+>", " ", re.sub(r"<(script|style|svg)\b.*?</\1>", " ", body, flags=re.S)).split()
    )


def hidden(answer: Any, name: str) -> str:
    """The value of a hidden field, as the form would send it."""
    body = answer.content.decode("utf-8")
    found = re.search(rf'<input type="hidden" name="{name}" value="([^"]*)">', body)
    assert found, f"no hidden {name}"
    return found[1].replace("&#39;", "'").replace("&#34;", '"').replace("&amp;", "&")


def words_in(at_hand: AtHand) -> list[str]:
    """Every line's words."""
    with at_hand.opened() as restoration:
        return [entry.words for entry in restoration.entries]
