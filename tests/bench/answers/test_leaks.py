"""A drip, asked as a person asks."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.bench.slip import Slip
from witnessmark.ground.errors import BadInput

PLACES = "rear seal 40 % 20 min 80 %; cover gasket 30 % 5 min 90 %; breather 15 % 2 min 95 %"


def order(results: str = "") -> Slip:
    return asked("leaks", "order", suspects=PLACES, **({"results": results} if results else {}))


def test_the_order_and_what_is_left_over() -> None:
    slip = order()
    assert [row["name"] for row in slip.rows("order")] == ["breather", "cover gasket", "rear seal"]
    assert slip.rows("chances")[-1] == pytest.approx(
        {"name": "elsewhere", "chance": 15, "if_all_dry": 56.07}, abs=0.01
    )
    assert slip.band("expected_minutes").value == pytest.approx(18.04, abs=0.01)


def test_dry_looks_are_remembered() -> None:
    slip = order("breather no, Cover Gasket no")
    assert slip.rows("order")[0]["name"] == "rear seal"
    chances = {row["name"]: row["chance"] for row in slip.rows("chances")}
    assert chances["rear seal"] == pytest.approx(68.09, abs=0.01)
    twice = order("breather no, cover gasket no, rear seal no, rear seal no, rear seal no")
    assert twice.rows("chances")[-1]["chance"] > chances["elsewhere"]  # type: ignore[operator]


def test_a_look_that_shows_it_ends_the_search() -> None:
    slip = order("rear seal yes")
    assert slip.rows("order") == ()
    assert slip.rows("chances")[0]["chance"] == 100
    assert "look again before closing up" in slip.because


def test_nothing_left_over_is_not_told() -> None:
    slip = asked("leaks", "order", suspects="a 50 % 5 min 90 %; b 50 % 2 min 90 %")
    assert "not on the list" not in slip.because


def test_every_place_cleared_for_sure_is_refused() -> None:
    with pytest.raises(BadInput, match="leaks somewhere"):
        asked("leaks", "order", suspects="a 60 % 5 min 100 %; b 40 % 2 min 100 %", results="a no, b no")


def test_a_result_of_a_place_not_named_is_refused() -> None:
    with pytest.raises(BadInput, match="sump"):
        order("sump no")
