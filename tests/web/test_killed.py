"""The server killed at random while lines and photos come in: what was acknowledged is there, once, whole.

WM_KILLS says how often; docs/decisions/9-photos.md holds the result of fifty.
"""

from __future__ import annotations

import os
import random
from collections import Counter
from pathlib import Path

from tests.web.killed import Hand, run_and_kill
from tests.web.van import van
from witnessmark.exchange.pictures import smaller
from witnessmark.journal.facts import Photographed
from witnessmark.restoration.checking import faults_in
from witnessmark.store.photo_folder import photo_file

KILLS = int(os.environ.get("WM_KILLS", "6"))


def test_killed_at_random_every_acknowledged_line_and_photo_is_there(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    hands = [Hand("one"), Hand("two")]
    draw = random.Random(20260314)
    for _ in range(KILLS):
        run_and_kill(tmp_path, hands, draw)
        assert faults_in(tmp_path) == ()
    acknowledged = hands[0].acknowledged | hands[1].acknowledged
    assert len(acknowledged) > KILLS
    assert 0 < sum(acknowledged.values()) < len(acknowledged)
    with at_hand.opened() as restoration:
        entries = restoration.entries
    kept = Counter(entry.words for entry in entries)
    photos = {e.fact.of: e.fact.photos for e in entries if isinstance(e.fact, Photographed)}
    lines = {entry.words: entry.line for entry in entries}
    for words, with_photo in acknowledged.items():
        assert kept[words] == 1
        assert len(photos.get(lines[words], ())) == with_photo
    for names in photos.values():
        assert smaller(photo_file(tmp_path, names[0]).read_bytes())
    print(f"{KILLS} kills: {len(acknowledged)} lines and {sum(acknowledged.values())} photos acknowledged")
