"""Tonight's order on a page: what it says, and that each of its keys is a line the record understands."""

from __future__ import annotations

import re
from datetime import datetime
from html import unescape
from pathlib import Path
from urllib.parse import parse_qs, urlsplit
from urllib.request import urlopen

from tests.web.running import running
from witnessmark.demo.telling import tell
from witnessmark.journal.facts import WHOLE_PARCEL, Came, Ordered
from witnessmark.restoration.at_hand import AtHand

ASKED = datetime(2026, 11, 25, 15, 0)


def test_the_page_tells_the_order_and_its_keys_are_understood(tmp_path: Path) -> None:
    tell(tmp_path / "demo")
    at_hand = AtHand(tmp_path / "demo", lambda: ASKED)
    with running(at_hand) as address:
        with urlopen(f"{address}/buy") as answer:
            page = answer.read().decode("utf-8")
        with urlopen(f"{address}/buy?worth=0.01") as answer:
            cheap = answer.read().decode("utf-8")
    assert "post included. No session is lost." in page
    assert "Lost if parcels come at their latest" in re.findall(r'class="headline">(.*?)<', cheap)[0]
    assert page.count("<svg xmlns") == 2
    links = [unescape(link) for link in re.findall(r'class="small-key" href="(/line\?[^"]+)"', page)]
    lines = [parse_qs(urlsplit(link).query)["words"][0] for link in links]
    with at_hand.opened() as restoration:
        heard = [restoration.hear(line) for line in lines]
    assert all(h.understood.best.sure for h in heard)
    facts = [h.facts[0] for h in heard]
    assert {type(fact) for fact in facts} == {Ordered, Came}
    assert all(f.supplier for f in facts if isinstance(f, Ordered | Came))
    assert {f.item for f in facts if isinstance(f, Came)} == {WHOLE_PARCEL}
