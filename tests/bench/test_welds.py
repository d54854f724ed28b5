"""Plugs in a row and the order to weld them in."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import welds
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm


@given(st.integers(1, 80))
def test_an_order_names_every_plug_once(count: int) -> None:
    assert sorted(welds.spread_order(count)) == list(range(count))


@given(st.integers(4, 60))
def test_no_plug_follows_its_neighbour_while_there_is_room(count: int) -> None:
    order = welds.spread_order(count)
    assert all(abs(a - b) > 1 for a, b in itertools.pairwise(order[:3]))


@given(st.floats(60, 900), st.floats(5, 25), st.integers(2, 30))
def test_plugs_stand_like_distances_apart(length: float, edge: float, count: int) -> None:
    places = welds.plug_places(Mm(length), Mm(edge), count)
    assert places[0] == pytest.approx(edge)
    assert places[-1] == pytest.approx(length - edge)
    assert {round(b - a, 6) for a, b in itertools.pairwise(places)} == {round(welds.pitches(places), 6)} or (
        max(b - a for a, b in itertools.pairwise(places)) == pytest.approx(welds.pitches(places))
    )


def test_one_plug_stands_in_the_middle() -> None:
    assert welds.plug_places(Mm(40), Mm(12), 1) == (20,)
    assert welds.pitches((20.0,)) == 0


def test_a_row_shorter_than_its_edges_is_refused() -> None:
    with pytest.raises(BadInput, match="too short"):
        welds.plug_places(Mm(20), Mm(12), 2)


def test_a_plate_hole_grows_with_the_plate() -> None:
    assert welds.plug_hole(Mm(3)) == pytest.approx((10.9375, 14.1125))
    assert welds.plug_hole(Mm(12))[1] == pytest.approx(2.25 * 12)


def test_of_three_plugs_the_middle_one_is_last() -> None:
    assert welds.spread_order(3) == (0, 2, 1)
