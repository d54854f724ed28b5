"""The pages as the house network reaches them: people, a browser that logs in, every address."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

import argon2
import pytest
from django.test import Client
from django.urls import URLPattern, get_resolver

from tests.web.van import browser, van
from witnessmark.restoration import phrases
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.people import People
from witnessmark.web.floor import lay_floor
from witnessmark.web.house import HOUSE, House

ADDRESS = "192.168.1.20"
PHRASE = "four rusty bolts and tea"
# What stands for each kind of thing an address may name.
SAMPLES = {
    "photo": "0" * 64 + ".jpg",
    "number": "2",
    "slug": "wall",
    "str": "x",
    "int": "2",
    "path": "x",
    "uuid": "0" * 32,
}


@pytest.fixture
def quick_hash(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A hash that takes a millisecond; its strength is tested with the people."""
    monkeypatch.setattr(phrases, "_HASHER", argon2.PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))
    phrases._nobodys.cache_clear()
    yield
    phrases._nobodys.cache_clear()


def house_with(folder: Path) -> tuple[AtHand, House]:
    """The small record, and an owner, a helper and an onlooker to it."""
    at_hand = van(folder)
    people = People(folder)
    for name, role in (("Ada", "owner"), ("Ott", "helper"), ("Eve", "onlooker")):
        people.add(name, role, PHRASE)
    return at_hand, House(people=people, hosts=(ADDRESS, "shed.local"))


def caller(
    at_hand: AtHand, house: House, *, source: str = "192.168.1.77", checks_forms: bool = False
) -> Client:
    """A browser somewhere in the house."""
    client = browser(at_hand, checks_forms=checks_forms)
    client.defaults |= {HOUSE: house, "HTTP_HOST": ADDRESS, "REMOTE_ADDR": source}  # type: ignore[dict-item]
    return client


def log_in(client: Client, name: str, phrase: str = PHRASE, **more: str) -> Any:
    sent = urlencode({"name": name, "phrase": phrase, **more})
    return client.post("/in", sent, content_type="application/x-www-form-urlencoded")


def every_address() -> list[str]:
    """Each address of the table of routes, with something standing for what it may name."""
    lay_floor()
    patterns = get_resolver().url_patterns
    assert all(isinstance(pattern, URLPattern) for pattern in patterns)
    return [
        "/" + re.sub(r"<(?:(\w+):)?\w+>", lambda m: SAMPLES.get(m[1] or "str", "x"), str(pattern.pattern))
        for pattern in patterns
    ]
