"""Paint: what goes in comes out, and times keep to the sheet at its own points."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import paint
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import M2, Celsius, M2PerLitre, Micrometre, Percent

SHEET = [(10.0, 2880.0), (20.0, 1440.0), (30.0, 900.0)]


@given(st.floats(10, 500), st.floats(10, 100), st.floats(0, 60))
def test_solids_are_what_stays(dry: float, solids: float, thinner: float) -> None:
    wet = paint.wet_film(Micrometre(dry), Percent(solids), Percent(thinner))
    left = paint.solids_thinned(Percent(solids), Percent(thinner))
    assert wet * left / 100 == pytest.approx(dry)


@given(st.floats(0.1, 50), st.floats(1, 20), st.floats(0, 80))
def test_paint_on_the_work_covers_the_area(area: float, rate: float, loss: float) -> None:
    litres = paint.paint_volume(M2(area), M2PerLitre(rate), Percent(loss))
    assert litres * (1 - loss / 100) * rate == pytest.approx(area)


@pytest.mark.parametrize(("warm", "time"), SHEET)
def test_the_sheets_own_points_come_back(warm: float, time: float) -> None:
    first, second = paint.nearest_pair(Celsius(warm), SHEET)
    assert paint.cure_between(Celsius(warm), first, second) == pytest.approx(time)


@given(st.floats(10, 29), st.floats(0.1, 1))
def test_warmer_is_quicker(warm: float, more: float) -> None:
    def took(at: float) -> float:
        return paint.cure_between(Celsius(at), *paint.nearest_pair(Celsius(at), SHEET))

    assert took(warm + more) < took(warm)


@pytest.mark.parametrize(
    ("warm", "pair"),
    [(0, (10, 20)), (10, (10, 20)), (25, (20, 30)), (40, (20, 30))],
)
def test_the_nearest_pair_is_taken(warm: float, pair: tuple[float, float]) -> None:
    first, second = paint.nearest_pair(Celsius(warm), SHEET)
    assert (first[0], second[0]) == pair


@pytest.mark.parametrize("second", [(10.0, 2880.0), (20.0, 3000.0), (20.0, 0.0)])
def test_a_sheet_that_cannot_be_is_refused(second: tuple[float, float]) -> None:
    with pytest.raises(BadInput):
        paint.cure_between(Celsius(15), (10.0, 2880.0), second)


def test_a_sheet_may_tell_the_warmer_point_first_and_the_same_time_twice() -> None:
    assert paint.cure_between(Celsius(15), (20.0, 1440.0), (10.0, 2880.0)) == pytest.approx(
        paint.cure_between(Celsius(15), (10.0, 2880.0), (20.0, 1440.0))
    )
    assert paint.cure_between(Celsius(15), (10.0, 60.0), (20.0, 60.0)) == pytest.approx(60)


def test_a_little_slower_when_a_little_warmer_is_refused() -> None:
    with pytest.raises(BadInput, match="shorter time"):
        paint.cure_between(Celsius(10), (10.0, 100.0), (10.5, 101.0))


def test_at_a_point_of_the_sheet_the_pair_below_it_is_taken() -> None:
    assert [p[0] for p in paint.nearest_pair(Celsius(20), SHEET)] == [10, 20]
