"""O-rings: volume kept, laws of squeeze and fill, the search against trying every size, advice on rubber."""

import math
from collections.abc import Callable
from typing import Any

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.answers.orings import check, match
from witnessmark.bench.orings import fill, squeeze, stretch, stretched_section
from witnessmark.bench.own_lists import Ring, rings
from witnessmark.bench.ring_material import advice
from witnessmark.bench.ring_search import (
    GLANDS,
    Gland,
    fit_of,
    fits_in,
    limits,
    standard_rings,
    with_tolerances,
)
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm

INSIDES, SECTIONS = st.floats(5, 300), st.floats(1.5, 7)


def volume(inside: float, section: float) -> float:
    """Of a torus, mm³."""
    return math.pi**2 / 4 * (inside + section) * section**2


@given(INSIDES, SECTIONS, st.floats(1.0, 1.5))
def test_stretching_keeps_the_volume(inside: float, section: float, by: float) -> None:
    thin = stretched_section(Mm(section), Mm(inside), Mm(inside * by))
    assert volume(inside * by, thin) == pytest.approx(volume(inside, section), rel=1e-9)
    assert thin <= section


@given(INSIDES, SECTIONS)
def test_a_loose_ring_keeps_its_section(inside: float, section: float) -> None:
    assert stretched_section(Mm(section), Mm(inside), Mm(inside * 0.9)) == pytest.approx(section)


def test_formulas_take_arrays() -> None:
    sections: Any = numpy.array([2.62, 3.53])
    thin: Any = stretched_section(sections, Mm(47.22), Mm(50))
    assert list(thin < sections) == [True, True]
    seats: Any = numpy.array([49.0, 52.0])
    held: Any = stretched_section(sections, Mm(50), seats)
    assert held[0] == pytest.approx(2.62)
    squeezed: Any = squeeze(sections, Mm(2.0))
    assert squeezed[1] > squeezed[0]
    filled: Any = fill(sections, Mm(2.0), Mm(4.8))
    assert filled.shape == (2,)
    insides: Any = numpy.array([50.0, 40.0])
    assert stretch(Mm(50), insides) == pytest.approx([0, 25])


@pytest.mark.parametrize(
    ("call", "word"),
    [
        (lambda: stretch(Mm(0), Mm(50)), "seat"),
        (lambda: stretched_section(Mm(3.5), Mm(10), Mm(50)), "seat over inside"),
        (lambda: squeeze(Mm(3.5), Mm(math.nan)), "depth"),
        (lambda: fill(Mm(3.5), Mm(2.9), Mm(0)), "width"),
    ],
)
def test_impossible_grooves_are_refused(call: Callable[[], object], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        call()


def gland(kind: str = "radial static", seat: float = 46, depth: float = 2.9, width: float = 4.8) -> Gland:
    """A groove."""
    return Gland(kind=kind, seat=Mm(seat), depth=Mm(depth), width=Mm(width), within=Mm(0.05))


@given(
    st.sampled_from(GLANDS), st.floats(8, 300), st.sampled_from((1.4, 2.1, 2.9, 4.3, 5.8)), st.floats(1.3, 2)
)
def test_the_search_finds_what_trying_every_size_finds(
    kind: str, seat: float, depth: float, wide: float
) -> None:
    place = gland(kind, seat, depth, depth * wide)
    found = fits_in(place, standard_rings())
    near = [r for r in standard_rings() if 0.6 < seat / r.inside < 1.7]
    good = {r.name for r in near if fit_of(place, limits(kind), r).verdict != "no"}
    assert {f.ring.name for f in found if f.verdict != "no"} == good
    order = [("fits", "marginal", "no").index(f.verdict) for f in found]
    assert order == sorted(order)


def test_349_sizes_are_known() -> None:
    assert len(standard_rings()) == 349


@given(st.sampled_from(standard_rings()[3::7]))
def test_the_worst_case_holds_the_nominal(ring: Ring) -> None:
    place = gland(seat=max(ring.inside * 1.02, 1.2), depth=ring.section * 0.8, width=ring.section * 1.4)
    fit = fit_of(place, limits(place.kind), ring)
    for span in (fit.stretch, fit.squeeze, fit.fill):
        assert span.low <= span.value <= span.high


def test_the_worst_case_is_every_tolerance_at_its_end() -> None:
    ring = next(r for r in standard_rings() if r.name == "-224")
    place = gland(seat=46)
    fit = fit_of(place, limits(place.kind), ring)
    thin = stretched_section(Mm(3.53 - 0.10), Mm(44.04 - 0.38), Mm(46.05))
    thick = stretched_section(Mm(3.53 + 0.10), Mm(44.04 + 0.38), Mm(45.95))
    assert fit.squeeze.low == pytest.approx((1 - 2.95 / thin) * 100)
    assert fit.squeeze.high == pytest.approx((1 - 2.85 / thick) * 100)
    assert fit.fill.low == pytest.approx(math.pi / 4 * thin**2 / (2.95 * 4.9) * 100)
    assert fit.fill.high == pytest.approx(math.pi / 4 * thick**2 / (2.85 * 4.7) * 100)
    assert fit.stretch.low == pytest.approx((45.95 / 44.42 - 1) * 100)
    assert fit.stretch.high == pytest.approx((46.05 / 43.66 - 1) * 100)


def test_a_tolerance_somebody_gave_is_kept() -> None:
    text = "name,inside mm,section mm,inside_tolerance mm,section_tolerance mm\nx,45,3.5,0,0.02\n"
    ring = with_tolerances(rings("sizes", text).value[0])
    assert ring.inside_tolerance == pytest.approx(0)
    assert ring.section_tolerance == pytest.approx(0.02)
    plain = with_tolerances(rings("sizes", "45x3.5 mm").value[0])
    assert (plain.inside_tolerance, plain.section_tolerance) == (0.38, 0.1)


def test_among_rings_of_one_verdict_the_one_nearest_the_middle_comes_first() -> None:
    place = gland(seat=45.5)
    costs = [f.cost for f in fits_in(place, standard_rings()) if f.verdict == "no"]
    assert costs == sorted(costs)


def test_a_ring_for_a_common_groove() -> None:
    slip = match(gland="radial static", diameter=45, depth=2.9, width=4.8)
    assert slip.rows()[0]["ring"] == "-224"
    assert slip.verdict == "fits"


@pytest.mark.parametrize(
    ("ring", "words"),
    [
        ({"inside": 46, "section": 3.53, "depth": 2.9, "width": 3.3}, "over-filled"),
        ({"inside": 50, "section": 3.53, "depth": 2.9, "width": 4.8}, "loose on its seat"),
        ({"inside": 45, "section": 3.0, "depth": 2.9, "width": 4.8}, "barely squeezed"),
        ({"inside": 45, "section": 5.33, "depth": 2.9, "width": 7.0}, "crushed"),
        ({"inside": 40, "section": 3.53, "depth": 2.9, "width": 4.8}, "stretched too far"),
        ({"inside": 45, "section": 2.95, "depth": 2.9, "width": 4.8}, "may not touch"),
        ({"inside": 45, "section": 3.53, "depth": 2.5, "width": 3.9}, "cannot close"),
    ],
)
def test_a_ring_that_will_not_do_is_told_why(ring: dict[str, float], words: str) -> None:
    slip = check(gland="radial static", diameter=46, **ring)
    assert slip.verdict != "fits"
    assert words in slip.because


def test_margins_are_marginal() -> None:
    slip = check(gland="radial static", diameter=46, inside=45, section=3.53, depth=3.17, width=4.8)
    assert slip.verdict == "marginal"
    assert "12 to 30 is better" in slip.because
    worst = check(gland="piston", diameter=46, inside=45, section=3.53, depth=3.2, width=4.8, within=0.1)
    assert "at worst" in worst.because
    full = check(gland="radial static", diameter=46, inside=45, section=3.53, depth=2.9, width=3.85)
    assert full.verdict == "marginal"
    assert "fills 86 %" in full.because
    nearly = check(
        gland="radial static", diameter=46, inside=45, section=3.53, depth=2.9, width=4.1, within=0.12
    )
    assert "at worst" in nearly.because


def test_squeeze_stands_on_the_stretched_and_on_the_free_section() -> None:
    slip = check(gland="radial static", diameter=46, inside=44.04, section=3.53, depth=2.9, width=4.8)
    assert slip.band("squeeze").value < slip.band("squeeze_free").value
    assert slip.band("squeeze_free").value == pytest.approx((3.53 - 2.9) / 3.53 * 100)


def test_ones_own_ring_is_searched_first() -> None:
    own = rings("sizes", "45.2x3.5 mm").value
    slip = match(gland="radial static", diameter=46, depth=2.9, width=4.8, sizes=own)
    assert slip.rows()[0]["ring"] == "45.2 x 3.5"
    assert slip.rows()[0]["own"] is True
    assert with_tolerances(own[0]).section_tolerance == 0.1


def test_no_ring_is_an_answer() -> None:
    slip = match(gland="radial static", diameter=46, depth=2.9, width=3.0)
    assert not slip.found
    assert slip.verdict is None
    assert "the nearest is" in slip.because
    far = match(gland="radial static", diameter=690, depth=9, width=12)
    assert "comes near" in far.because
    assert far.picture is None


@pytest.mark.parametrize(
    ("fluid", "temperature", "words"),
    [
        ("gear oil", 90, "nitrile (NBR) or fluoroelastomer (FKM)"),
        ("gear oil", 150, "fluoroelastomer (FKM)"),
        ("coolant", 110, "ethylene-propylene (EPDM)"),
        ("brake fluid", None, "never NBR, FKM"),
        ("gear oil", 300, "no rubber of the table"),
        ("dandelion wine", 20, "no advice"),
        (None, None, "say fluid and temperature"),
    ],
)
def test_the_rubber_follows_fluid_and_heat(fluid: str | None, temperature: float | None, words: str) -> None:
    assert words in advice(temperature, fluid)[0]


@pytest.mark.parametrize(
    ("given", "word"),
    [
        ({"diameter": -1, "depth": 2.9, "width": 4.8}, "diameter"),
        ({"diameter": 46, "depth": 99, "width": 4.8}, "depth"),
        ({"diameter": 46, "depth": 2.9, "width": 0}, "width"),
        ({"diameter": 46, "depth": 2.9, "width": 4.8, "within": 2}, "within"),
    ],
)
def test_a_groove_no_ring_lies_in_is_refused(given: dict[str, Any], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        match(gland="piston", **given)
