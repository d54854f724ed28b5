"""What must be in hand, and whether what came or is owned answers it."""

import pytest

from tests.building import described, evening, state_of
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.owed.needs import Need, needs_from
from witnessmark.owed.owed import owed_by
from witnessmark.owed.stock import Held, Item, answers
from witnessmark.vehicle.things import Joint, Part

TAPERS = (
    Joint(name="track rod end, left", kind="ball-joint-taper"),
    Joint(name="track rod end, right", kind="ball-joint-taper"),
)
SEAL = Joint(name="pinion seal", kind="shaft-seal", size="38 x 60 x 10")
UNION = Joint(name="banjo, left front", kind="banjo-union")


def needs(*facts: AnyFact, extra: tuple[Item, ...] = ()) -> dict[str, Need]:
    """Needs by name after these facts on the test joints."""
    state = state_of(described(*TAPERS, SEAL, UNION, Part(name="brake drum, left rear")), *facts)
    return {need.what: need for need in needs_from(owed_by(state, evening()), state, extra)}


def test_what_is_always_renewed_is_needed_once_opened_and_merged() -> None:
    got = needs(f.Opened(at=("track rod end, left", "track rod end, right")))
    assert got["split pin"].quantity == 2
    assert got["split pin"].for_ == ("track rod end, left", "track rod end, right")
    assert got["split pin"].short == 2


def test_a_banjo_needs_two_washers() -> None:
    assert needs(f.Opened(at=("banjo, left front",)))["sealing washer"].quantity == 2


def test_what_is_owned_and_what_came_is_to_hand() -> None:
    opened = f.Opened(at=("track rod end, left", "track rod end, right"))
    assert needs(f.Owned(item="split pins", number=10), opened)["split pin"].have == 2
    got = needs(opened, f.Ordered(item="split pin", number=2), f.Came(item="split pins", number=1))[
        "split pin"
    ]
    assert (got.have, got.ordered, got.short) == (1, 1, 0)


def test_what_was_fitted_is_used_up() -> None:
    got = needs(
        f.Owned(item="split pins", number=2),
        f.Opened(at=("track rod end, left",)),
        f.Fitted(at=("track rod end, left",), item="split pin", new=True),
        f.Opened(at=("track rod end, right",)),
    )
    assert got["split pin"].have == 1
    used_up = needs(
        f.Owned(item="split pins", number=1),
        f.Opened(at=("track rod end, left",)),
        f.Fitted(at=("track rod end, left",), item="split pin", new=True),
        f.Opened(at=("track rod end, right",)),
    )
    assert used_up["split pin"].have == 0


def test_what_came_after_was_not_fitted_before() -> None:
    got = needs(
        f.Opened(at=("track rod end, left",)),
        f.Fitted(at=("track rod end, left",), item="split pin", new=True),
        f.Came(item="split pin", number=1),
        f.Opened(at=("track rod end, right",)),
    )
    assert got["split pin"].have == 1


def test_a_seal_named_after_its_joint_answers_the_need_of_that_joint() -> None:
    got = needs(f.Opened(at=("pinion seal",)), f.Came(item="pinion seal"))["shaft seal"]
    assert (got.size, got.have) == ("38 x 60 x 10", 1)


def test_a_finding_needs_the_new_one() -> None:
    assert (
        needs(f.Found(at=("track rod end, left",), condition="bent", item="split pin"))["split pin"].quantity
        == 1
    )
    assert needs(f.Found(at=("brake drum, left rear",), condition="cracked"))["brake drum"].short == 1


def test_a_part_found_bad_and_one_in_stock() -> None:
    got = needs(f.Found(at=("brake drum, left rear",), condition="cracked"), f.Came(item="brake drum"))
    assert got["brake drum"].have == 1


def test_further_items_are_needs_too() -> None:
    got = needs(extra=(Item(what="gear oil", for_="pinion seal"), Item(what="gear oil", for_="fill plug")))
    assert got["gear oil"].quantity == 2


def test_seals_of_unknown_size_are_not_taken_for_one_another() -> None:
    gearbox, hub = (Joint(name=n, kind="shaft-seal") for n in ("gearbox seal", "hub seal"))
    state = state_of(described(gearbox, hub), f.Opened(at=("gearbox seal",)), f.Opened(at=("hub seal",)))
    found = [n for n in needs_from(owed_by(state, evening()), state) if n.what == "shaft seal"]
    assert [n.for_ for n in found] == [("gearbox seal",), ("hub seal",)]


def test_one_thing_to_hand_is_set_aside_once() -> None:
    got = needs(f.Owned(item="split pin"), f.Opened(at=("track rod end, left", "track rod end, right")))
    assert (got["split pin"].have, got["split pin"].short) == (1, 1)


@pytest.mark.parametrize(
    ("held", "size", "what", "for_", "yes"),
    [
        ("split pins", "", "split pin", "hub nut, left rear", True),
        ("box of split pins", "", "split pin", "hub nut", True),
        ("roll pin", "", "split pin", "hub nut", False),
        ("cover gasket", "", "gasket or O-ring", "thermostat housing", False),
        ("thermostat housing gasket", "", "gasket or O-ring", "thermostat housing", True),
        ("O-ring", "", "O-ring", "half-shaft o-ring, left", False),
        ("O-ring", "47 x 2.5", "O-ring", "half-shaft o-ring, left", False),
        ("half-shaft O-ring", "", "O-ring", "half-shaft o-ring, left", True),
        ("wheel cylinder left rear", "", "wheel cylinder", "cylinder, right rear", False),
        ("wheel cylinder left rear", "", "wheel cylinder", "cylinder, left rear", True),
        ("gear oil", "", "all the oil", "gearbox fill plug", True),
    ],
)  # fmt: skip
def test_words_are_compared_with_care(held: str, size: str, what: str, for_: str, yes: bool) -> None:
    thing = Held(what=held, size=size, at=(), line=1, number=1)
    assert answers(thing, Item(what=what, for_=for_), own=False) is yes


def test_another_size_is_another_thing() -> None:
    thing = Held(what="O-ring", size="47 x 2.5", at=(), line=1, number=1)
    assert answers(thing, Item(what="O-ring", size="47 x 2.5", for_="spigot"), own=False)
    assert not answers(thing, Item(what="O-ring", size="46 x 2.4", for_="spigot"), own=False)


def test_what_was_got_for_one_joint_is_not_spent_on_another() -> None:
    thing = Held(what="split pin", size="", at=("track rod end, left",), line=1, number=1)
    assert answers(thing, Item(what="split pin", for_="track rod end, left"), own=False)
    assert not answers(thing, Item(what="split pin", for_="track rod end, right"), own=False)
