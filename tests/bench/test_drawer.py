"""The own drawer: what of a person's kit the bench can use, and what it must leave alone."""

import pytest

from witnessmark.bench.drawer import INPUTS, Drawer, drawer_of, lengths_in
from witnessmark.bench.own_lists import Driver
from witnessmark.bench.questions import ask, find_question
from witnessmark.ground.units import Mm


def sized(drivers: tuple[Driver, ...]) -> list[tuple[float, float, float | None]]:
    """Inside, outside and length of each driver."""
    return [(d.inside, d.outside, d.length) for d in drivers]


def test_each_thing_goes_to_its_own_shelf() -> None:
    drawer = drawer_of(
        [
            ("seal tube", 1, "32 x 36 mm"),
            ("socket", 1, "30 x 38 x 60 mm"),
            ("half-shaft o-ring", 5, "2.62 x 45.69"),
            ("steering box shims", 4, "0.05 mm"),
            ("shim", 2, "0.10 mm"),
            ("welding wire", 1, "0.8 mm"),
        ]
    )
    assert sized(drawer.drivers) == [(32, 36, None), (30, 38, 60)]
    assert [(r.inside, r.section) for r in drawer.rings] == [(Mm(45.69), Mm(2.62))]
    assert all(d.own for d in drawer.drivers)
    assert all(r.own for r in drawer.rings)
    assert drawer.shims == ((0.05, 4), (0.10, 2))
    assert drawer.wires == (Mm(0.8),)


def test_a_tube_typed_outside_first_is_the_same_tube() -> None:
    drawer = drawer_of([("tube", 1, "36 x 32 mm"), ("tube", 1, "32 x 36 mm")])
    assert sized(drawer.drivers) == [(32, 36, None), (32, 36, None)]


@pytest.mark.parametrize(
    ("item", "size"),
    [
        ("bearing drift", "59 mm"),
        ("socket", "30 mm"),
        ("tube", ""),
        ("tube", "32 x 32 mm"),
        ("shims", "0.05"),
        ("shims", "0.05 x 12 mm"),
        ("o-rings", "45.69 mm"),
        ("o-rings", "1.5 x 2"),
        ("o-rings", "40 x 45 mm"),
        ("piston rings", "80 x 2 mm"),
        ("snap ring", "40 x 2 mm"),
        ("wire brush", "50 mm"),
        ("earth wire", "2.5 mm"),
        ("axle stands", ""),
    ],
)
def test_what_lacks_its_sizes_or_is_something_else_stays_out(item: str, size: str) -> None:
    assert drawer_of([(item, 1, size)]) == Drawer()


@pytest.mark.parametrize(
    ("size", "lengths"),
    [
        ("32 mm x 36 mm", (32, 36)),
        ("44.5 × 65 × 8 mm", (44.5, 65, 8)),
        ("1 1/2 x 2 in", (38.1, 50.8)),
        ('1.5" x 2"', (38.1, 50.8)),
        ("38 x 60 x 10", (38, 60, 10)),
        ("1.5 x 2.375 x 0.375", ()),
        ("3/8 UNF", ()),
        ("", ()),
        ("x", ()),
        ("32 x big mm", ()),
    ],
)
def test_sizes_are_read_only_where_they_are_plain(size: str, lengths: tuple[float, ...]) -> None:
    assert lengths_in(size) == pytest.approx(lengths)


def test_every_question_that_searches_a_drawer_takes_such_a_list() -> None:
    for (subject, question), (name, shelf) in INPUTS.items():
        assert name in {i.name for i in find_question(subject, question).inputs}
        assert isinstance(getattr(Drawer(), shelf), tuple)


def test_the_own_tube_is_found_first() -> None:
    drawer = drawer_of([("seal tube", 1, "32 x 36 mm")])
    slip = ask("seals", "driver", {"bore": "36.2 mm", "shaft": "31.8 mm"}, drawer=drawer)
    assert slip.rows()[0]["driver"] == "seal tube 32 x 36"
    assert slip.rows()[0]["own"] is True
    assert slip.asked["have"].typed == "own kit"


def test_what_was_typed_stands_beside_the_drawer() -> None:
    drawer = drawer_of([("seal tube", 1, "29 x 41 mm")])
    given = {"bore": "36.2 mm", "shaft": "31.8 mm", "have": "32x36 mm"}
    slip = ask("seals", "driver", given, drawer=drawer)
    assert {"32x36", "seal tube 29 x 41"} <= {row["driver"] for row in slip.rows()}
    assert slip.asked["have"].typed == "32x36 mm and own kit"


def test_own_rings_are_tried_in_the_groove() -> None:
    groove = {"gland": "radial static", "diameter": "47 mm", "depth": "2 mm", "width": "3.2 mm"}
    drawer = drawer_of([("o-ring", 1, "45.69 x 2.62 mm")])
    slip = ask("orings", "match", groove, drawer=drawer)
    assert any(row["own"] and row["inside"] == 45.69 for row in slip.rows())
    assert not any(row["own"] for row in ask("orings", "match", groove).rows())


def test_own_shims_need_not_be_typed() -> None:
    gap = {"measured": "0.62 mm", "wanted_low": "0.05 mm", "wanted_high": "0.10 mm"}
    drawer = drawer_of([("shims", 5, "0.05 mm"), ("shims", 2, "0.30 mm")])
    slip = ask("shims", "stack", gap, drawer=drawer)
    assert slip.found
    assert 0.05 <= slip.band("result").value <= 0.10


def test_shims_of_one_thickness_typed_and_owned_are_both_there() -> None:
    gap = {"measured": "0.25 mm", "wanted_low": "0.04 mm", "wanted_high": "0.06 mm"}
    drawer = drawer_of([("shims", 2, "0.05 mm")])
    slip = ask("shims", "stack", {**gap, "shims": "0.05x2 mm"}, drawer=drawer)
    assert slip.rows("stack") == ({"thickness": 0.05, "count": 4},)


def test_a_question_that_searches_none_is_answered_as_ever() -> None:
    drawer = drawer_of([("seal tube", 1, "32 x 36 mm")])
    assert ask("threads", "size", {"thread": "M8"}, drawer=drawer) == ask("threads", "size", {"thread": "M8"})
