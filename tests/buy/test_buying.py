"""What to order tonight: the choices, the worth of a session, what rides along, what cannot be used."""

from datetime import date, datetime

import pytest

from tests.buy.markets import SATURDAYS, bought, need, offer, terms
from witnessmark.journal.facts import AnyFact, Offered, PostStep, Quoted

QUICK, SLOW = (1, 2, 3), (5, 7, 9)
RING = "47 x 2.62"


def seal_dear_and_quick_or_cheap_and_slow() -> list[AnyFact]:
    return [
        terms("Quick", 5.0, QUICK),
        terms("Slow", 1.0, SLOW),
        offer("pinion seal", "Quick", 8.0),
        offer("pinion seal", "Slow", 6.0),
    ]


def test_both_ends_are_told_and_the_owners_worth_of_a_session_decides() -> None:
    facts = seal_dear_and_quick_or_cheap_and_slow()
    cheap, quick = 700, 1300
    for worth, taken in ((40, cheap), (4000, quick), (600, quick), (599, cheap)):
        answer = bought(facts, [need("pinion seal")], worth)
        assert [c.money.minor for c in answer.choices] == [cheap, quick]
        assert [c.lost for c in answer.choices] == [SATURDAYS[:1], ()]
        assert answer.choice is not None
        assert answer.choice.money.minor == taken


def test_without_a_worth_the_fewest_lost_are_taken_and_the_even_point_is_told() -> None:
    answer = bought(seal_dear_and_quick_or_cheap_and_slow(), [need("pinion seal")])
    assert answer.choice is not None
    assert (answer.choice.lost, answer.worth) == ((), None)
    assert answer.even is not None
    assert answer.even.minor == 600


def test_what_the_session_can_do_without_is_bought_cheap() -> None:
    answer = bought(seal_dear_and_quick_or_cheap_and_slow(), [need("pinion seal", holds=False)], 4000)
    assert [c.money.minor for c in answer.choices] == [700]


def test_a_need_of_a_later_session_may_come_later() -> None:
    answer = bought(seal_dear_and_quick_or_cheap_and_slow(), [need("pinion seal", by=2)], 4000)
    assert [(c.money.minor, c.lost) for c in answer.choices] == [(700, ())]


def test_after_the_cut_off_it_goes_a_day_later() -> None:
    facts: list[AnyFact] = [terms("Quick", 5.0, (1, 2, 4), cut_off="16:00"), offer("pinion seal", "Quick", 8)]
    early = bought(facts, [need("pinion seal")], now=datetime(2026, 11, 24, 15, 59)).choice
    late = bought(facts, [need("pinion seal")], now=datetime(2026, 11, 24, 16, 1)).choice
    assert early is not None
    assert late is not None
    assert (early.parcels[0].cut_off, early.parcels[0].latest, early.lost) == ("16:00", SATURDAYS[0], ())
    assert (late.parcels[0].cut_off, late.parcels[0].latest) == ("", date(2026, 11, 30))
    assert late.lost == SATURDAYS[:1]


def test_what_is_for_later_rides_along_only_where_the_post_stays() -> None:
    steps = (PostStep(price=3.0, most_grams=1000), PostStep(price=9.0))
    facts: list[AnyFact] = [
        Quoted(supplier="Post", post=steps, days=1),
        offer("pinion seal", "Post", 6.0, grams=100),
        offer("brake drum", "Post", 30.0, grams=4000),
        offer("cover gasket", "Post", 2.0, grams=20),
    ]
    answer = bought(facts, [need("pinion seal"), need("brake drum", by=4), need("cover gasket", by=4)])
    assert [(a.line.need.what, a.now.minor, a.later.minor) for a in answer.adding] == [
        ("cover gasket", 200, 500)
    ]


def test_what_brings_the_parcel_over_free_post_says_that_post_falls() -> None:
    facts: list[AnyFact] = [
        terms("Free", 4.0, QUICK, free_above=10.0),
        offer("pinion seal", "Free", 6.0),
        offer("half-shaft seal", "Free", 5.0),
    ]
    answer = bought(facts, [need("pinion seal"), need("half-shaft seal", by=4)])
    assert answer.choice is not None
    assert answer.choice.parcels[0].to_free_post is not None
    assert answer.choice.parcels[0].to_free_post.minor == 400
    assert [(a.now.minor, a.later.minor, a.post.minor) for a in answer.adding] == [(100, 900, -400)]


def test_another_currency_comes_by_the_owners_rate_and_duty() -> None:
    facts: list[AnyFact] = [
        terms("Abroad", 90.0, QUICK, currency="SEK", rate="0.075", duty=10.0),
        offer("pinion seal", "Abroad", 100.0),
    ]
    answer = bought(facts, [need("pinion seal")])
    assert answer.choice is not None
    parcel = answer.choice.parcels[0]
    assert (parcel.goods.minor, parcel.post.minor, parcel.duty.minor) == (750, 675, 75)


def test_packs_are_bought_whole() -> None:
    facts: list[AnyFact] = [terms("Box", 0, QUICK), offer("split pin", "Box", 1.5, pack=10)]
    answer = bought(facts, [need("split pin", pieces=12)])
    assert answer.choice is not None
    assert [(line.packs, line.price.minor) for line in answer.choice.parcels[0].lines] == [(2, 300)]


def test_what_nobody_offers_is_named() -> None:
    answer = bought([offer("pinion seal", "Quick", 8.0)], [need("pinion seal"), need("speedometer cable")])
    assert [one.need.what for one in answer.nobody] == ["speedometer cable"]
    assert answer.choice is not None


def test_a_newer_offer_takes_the_place_of_the_older() -> None:
    facts: list[AnyFact] = [offer("pinion seal", "Quick", 8.0), offer("pinion seal", "Quick", 7.0)]
    answer = bought(facts, [need("pinion seal")])
    assert answer.choice is not None
    assert answer.choice.money.minor == 700


@pytest.mark.parametrize(
    ("offered", "size", "found"),
    [
        (offer("O-ring", "A", 1.0, "47 × 2.62 mm"), RING, True),
        (offer("ring", "A", 1.0, RING), RING, True),
        (offer("O-ring", "A", 1.0, "45 x 2.5"), RING, False),
        (offer("seal thing", "A", 1.0, number="R-4726"), "R-4726", True),
        (offer("O-ring", "A", 1.0), "", False),
    ],
)
def test_an_offer_answers_by_size_or_by_number(offered: Offered, size: str, found: bool) -> None:
    assert bool(bought([offered], [need("O-ring", size)]).choices) is found


BAD: list[tuple[Offered, Quoted | None, str]] = [
    (offer("pinion seal", "A", -6.4), None, "the price is -6.4"),
    (Offered(item="pinion seal", supplier="A"), None, "no price"),
    (offer("pinion seal", "", 6.4), None, "names no supplier"),
    (offer("pinion seal", "A", 6.4, pack=0), None, "a pack holds 0"),
    (offer("pinion seal", "A", 6.4, grams=-1), None, "weighs -1"),
    (offer("pinion seal", "A", 6.4, currency="XYZ"), None, "'XYZ'"),
    (offer("pinion seal", "A", 6.4, currency="EUR"), None, "no rate"),
    (offer("pinion seal", "A", 6.4, post=-3.0), None, "the post is -3"),
    (offer("pinion seal", "A", 6.4), terms("A", -1, QUICK), "a sum in the terms is -1"),
    (offer("pinion seal", "A", 6.4), terms("A", 1, QUICK, minimum=-5.0), "a sum in the terms is -5"),
    (offer("pinion seal", "A", 6.4), terms("A", 1, QUICK, currency="EUR", rate="0"), "the rate is 0"),
    (offer("pinion seal", "A", 6.4), terms("A", 1, QUICK, duty=-5.0), "the duty is -5"),
    (offer("pinion seal", "A", 6.4), terms("A", 1, QUICK, currency="DOUBLOON"), "'DOUBLOON'"),
]


@pytest.mark.parametrize(("bad", "told", "given"), BAD, ids=[given for _, _, given in BAD])
def test_an_offer_that_cannot_be_used_is_told_in_three_parts_and_the_rest_is_bought(
    bad: Offered, told: Quoted | None, given: str
) -> None:
    facts: list[AnyFact] = [bad, *([told] if told else []), offer("cover gasket", "Good", 3.0)]
    answer = bought(facts, [need("pinion seal"), need("cover gasket")])
    assert len(answer.unusable) == 1
    one = answer.unusable[0]
    assert given in one.given
    assert one.holds
    assert one.do
    assert one.line == 2
    assert answer.choice is not None
    assert [line.need.what for line in answer.choice.parcels[0].lines] == ["cover gasket"]


def test_a_sender_that_asks_for_more_than_is_needed_does_not_stop_the_rest() -> None:
    facts: list[AnyFact] = [
        terms("Big", 1, QUICK, minimum=500.0),
        offer("pinion seal", "Big", 6.0),
        offer("cover gasket", "Small", 3.0),
    ]
    answer = bought(facts, [need("pinion seal"), need("cover gasket")])
    assert answer.choice is not None
    assert [p.supplier for p in answer.choice.parcels] == ["Small"]
    assert [one.need.what for one in answer.unsent] == ["pinion seal"]
