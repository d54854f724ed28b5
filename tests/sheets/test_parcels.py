"""The basket drawn: every parcel and sum on it, in both widths, nothing beyond the paper."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from tests.buy.markets import bought, need, offer, terms
from witnessmark.buy.buying import Buying
from witnessmark.journal.facts import AnyFact
from witnessmark.sheets.parcels import BROAD, NARROW, parcels_svg

SVG = "{http://www.w3.org/2000/svg}"


def some(senders: int, things: int) -> Buying:
    facts: list[AnyFact] = [terms(f"Sender {n}", 3.0, (1, 2 + n, 4 + n)) for n in range(senders)]
    facts += [offer(f"thing {t} of {n}", f"Sender {n}", 1 + t) for n in range(senders) for t in range(things)]
    return bought(facts, [need(f"thing {t} of {n}") for n in range(senders) for t in range(things)])


@pytest.mark.parametrize("wide", [BROAD, NARROW])
@pytest.mark.parametrize(("senders", "things"), [(1, 1), (3, 2), (5, 12)])
def test_every_parcel_is_drawn_with_its_sum_and_stays_on_the_paper(
    wide: float, senders: int, things: int
) -> None:
    buying = some(senders, things)
    root = ElementTree.fromstring(parcels_svg(buying, wide))
    words = [element.text or "" for element in root.iter(f"{SVG}text")]
    assert buying.choice is not None
    for parcel in buying.choice.parcels:
        assert parcel.supplier in words
        assert parcel.paid.said in words
    assert ("and 4 more" in words) == (things == 12)
    height = float(root.attrib["height"].removesuffix("mm"))
    for element in root.iter():
        for key, most in (("x", wide), ("y", height)):
            if key in element.attrib:
                assert 0 <= float(element.attrib[key]) <= most
    assert re.search(r"session 28 Nov", " ".join(words))


def test_nothing_ordered_is_no_picture() -> None:
    assert parcels_svg(bought([], [need("pinion seal")])) == ""
