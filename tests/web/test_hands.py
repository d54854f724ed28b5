"""Eight hands over real connections to a real server, on a file and on a database: the benchmark in short."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from benchmarks.hands import Hand, write_together, wrong_in
from tests.journal.lines import entry
from tests.store.place import new_place
from tests.web.running import running
from tests.web.van import NOW
from witnessmark.journal.facts import Remarked
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.begin import begin, reopen
from witnessmark.restoration.checking import faults_in

HANDS, LINES = 8, 4


@pytest.mark.parametrize("store", ["sqlite", "postgresql"])
def test_hands_at_once_lose_nothing_and_keep_their_order(
    store: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    where = request.getfixturevalue("server").address if store == "postgresql" else ""
    place = new_place(tmp_path, where)
    begin(place.folder, "the van", now=NOW, kept_at=place.kept_at)
    with running(AtHand(place.folder, lambda: NOW)) as address:
        hands = write_together(address, HANDS, lambda turn: turn < LINES)
    entries = reopen(place.folder, now=NOW).entries
    assert wrong_in(hands, entries) == []
    assert len([e for e in entries if e.words.startswith("ran ")]) == HANDS * LINES
    assert faults_in(place.folder) == ()


def test_what_went_wrong_would_be_seen() -> None:
    hand = Hand("http://x/", 1, lambda _: False)
    hand.said = [("ran 1 km", 1), ("ran 2 km", 2)]
    right = [replace(entry(n, Remarked()), words=f"ran {n} km") for n in (1, 2)]
    assert wrong_in([hand], right) == []
    assert wrong_in([hand], [right[0], replace(right[1], words="ran 1 km")])
    assert wrong_in([hand], [*right, replace(right[1], line=3)])
    hand.said = [("ran 2 km", 2), ("ran 1 km", 1)]
    assert wrong_in([hand], right) == ["hand 1 is out of order"]
    hand.odd = ["500"]
    assert "500" in wrong_in([hand], right)
