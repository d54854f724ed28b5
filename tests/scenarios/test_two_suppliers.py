"""A Tuesday evening: what to order from which of two suppliers so that Saturday is not lost.

Prices, days and the worth of a session are invented for this check; the sums were done by hand.
"""

from tests.buy.markets import SATURDAYS, bought, need, offer, terms
from witnessmark.journal.facts import AnyFact, Offered
from witnessmark.restoration.buying import buy_plain
from witnessmark.sheets.buy import buy_sheet
from witnessmark.sheets.text import as_text

PRICES = {
    "lip seal": (6.40, "38 x 60 x 10"),
    "bearing": (24.90, "30 x 62 x 16"),
    "gasket": (3.10, "rear cover"),
    "split pins": (1.50, "3.2 x 50"),
    "O-ring": (0.60, "47 x 2.62"),
}


def offers() -> list[AnyFact]:
    """Seals has all but the ring, Rings all but the bearing; Rings is the slower."""
    both: list[Offered] = []
    for item, (price, size) in PRICES.items():
        if item != "O-ring":
            both.append(offer(item, "Ottermere Seals", price, size))
        if item != "bearing":
            both.append(offer(item, "Fenwater Rubber", price, size))
    later = [offer("brake disc", "Ottermere Seals", 14.0), offer("primer", "Ottermere Seals", 9.0)]
    return [
        terms("Ottermere Seals", 4.95, (1, 2, 4), cut_off="20:00"),
        terms("Fenwater Rubber", 3.50, (2, 4, 8)),
        *both,
        *later,
    ]


def wanted():
    """The ring only keeps the cover dry-side out: the cover goes on without it, tagged."""
    things = [need(item, size) for item, (_, size) in PRICES.items() if item != "O-ring"]
    ring = need("O-ring", PRICES["O-ring"][1], pieces=2, holds=False)
    return [*things, ring, need("brake disc", pieces=2, by=4), need("primer", by=4)]


def test_saturday_is_not_lost_and_the_sum_is_that_of_the_hand() -> None:
    answer = bought(offers(), wanted(), worth=4000)
    choice = answer.choice
    assert choice is not None
    assert choice.proven
    assert (choice.money.minor, choice.lost) == (3710 + 495 + 350, ())
    assert {p.supplier: sorted(x.need.what for x in p.lines) for p in choice.parcels} == {
        "Ottermere Seals": ["bearing", "gasket", "lip seal", "split pins"],
        "Fenwater Rubber": ["O-ring"],
    }


def test_leaving_the_ring_out_saves_its_post_and_its_price_today() -> None:
    without = [one for one in wanted() if one.need.what != "O-ring"]
    both, alone = bought(offers(), wanted(), 4000).choice, bought(offers(), without, 4000).choice
    assert both is not None
    assert alone is not None
    assert both.money.minor - alone.money.minor == 470


def test_the_discs_and_the_primer_ride_along_and_the_hour_is_told() -> None:
    answer = bought(offers(), wanted(), 4000)
    assert [(a.line.need.what, a.supplier, a.now.minor) for a in answer.adding] == [
        ("brake disc", "Ottermere Seals", 2800),
        ("primer", "Ottermere Seals", 900),
    ]
    told = as_text(buy_sheet(answer, vehicle="the van", today=SATURDAYS[0], line=9))
    assert "£45.55 in 2 parcels" in told
    assert "No session is lost." in told
    assert "Order by 20:00 today." in told
    assert "about 9 in 10" in told
    assert "can go together dry, tagged" in " ".join(told.split())
    assert buy_plain(answer)["chosen"]["money"] == 4555
