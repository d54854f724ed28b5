"""Lines about buying as a whole: a supplier's whole parcel, and what a lost session is worth."""

from datetime import date

import pytest

from tests.building import described, state_of
from witnessmark.journal.facts import WHOLE_PARCEL, AnyFact, Came, Offered, Ordered, Valued
from witnessmark.owed.stock import Item, Stock
from witnessmark.state.parts import BENCH, POST
from witnessmark.vehicle.things import Joint, Part, Vehicle
from witnessmark.words.read import read_line

TODAY = date(2026, 11, 25)


def read(words: str) -> AnyFact:
    understood = read_line(words, Vehicle(), today=TODAY)
    assert understood.best.sure
    assert understood.ask is None
    return understood.best.facts[0]


@pytest.mark.parametrize(
    "words",
    [
        "parcel came from Ottermere Seals",
        "the order from Ottermere Seals arrived",
        "came parcel from Ottermere Seals",
    ],
)
def test_a_parcel_that_came_is_one_line(words: str) -> None:
    assert read(words) == Came(item=WHOLE_PARCEL, supplier="Ottermere Seals")


@pytest.mark.parametrize(
    ("words", "amount"),
    [
        ("a lost session is worth £40", 40),
        ("lost saturday costs me £35.50", 35.5),
        ("losing a session costs 40 quid", 40),
    ],
)
def test_a_lost_sessions_worth_is_a_line(words: str, amount: float) -> None:
    fact = read(words)
    assert isinstance(fact, Valued)
    assert (fact.amount, fact.currency) == (amount, "GBP")


def test_an_offer_keeps_the_size_it_was_made_in() -> None:
    fact = read("offered pinion seal 38 x 60 x 10 by Ottermere Seals £6.40 post £3.50, 3 days")
    assert isinstance(fact, Offered)
    assert "38" in fact.size
    assert "60" in fact.size


def test_the_parcel_brings_all_that_its_sender_still_owed_and_nobody_elses() -> None:
    stock = Stock(
        state_of(
            Ordered(item="split pin", number=20, supplier="Quillbrook Fasteners"),
            Ordered(item="flange nut", supplier="Quillbrook Fasteners"),
            Ordered(item="pinion seal", supplier="Ottermere Seals"),
            Came(item="flange nut", supplier="Quillbrook Fasteners"),
            Came(item=WHOLE_PARCEL, supplier="Quillbrook"),
            Ordered(item="tab washer", supplier="Quillbrook Fasteners"),
        )
    )
    assert stock.take(Item(what="split pin", quantity=30)) == (20, 0)
    assert stock.take(Item(what="flange nut", quantity=2)) == (1, 0)
    assert stock.take(Item(what="pinion seal")) == (0, 1)
    assert stock.take(Item(what="tab washer")) == (0, 1)


def test_a_part_in_the_post_is_on_the_workbench_once_its_parcel_came() -> None:
    wing = (
        described(Part(name="wing", where="donor")),
        Ordered(at=("wing",), item="wing", supplier="Fenwater Rubber"),
    )
    assert state_of(*wing).parts["wing"].where == POST
    other, own = Came(item=WHOLE_PARCEL, supplier="Ottermere"), Came(item=WHOLE_PARCEL, supplier="Fenwater")
    assert state_of(*wing, other).parts["wing"].where == POST
    assert state_of(*wing, own).parts["wing"].where == BENCH


def test_what_is_ordered_under_its_own_joints_name_answers_the_need_beside_it() -> None:
    nut, seal = Joint(name="flange nut", kind="pinion-seal"), Joint(name="pinion seal", kind="pinion-seal")
    stock = Stock(state_of(described(nut, seal), Ordered(at=("pinion seal",), item="pinion seal")))
    assert stock.take(Item(what="pinion seal", for_="flange nut")) == (0, 1)
