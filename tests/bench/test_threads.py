"""Thread sizes against sums done another way, arrays, and what is refused."""

import math
from collections.abc import Callable
from typing import Any

import numpy
import pytest

from witnessmark.bench.thread_list import all_threads, find_thread
from witnessmark.bench.threads import diameter_at, pitch_of, stress_area, tap_drill, ten_pitches
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm, PerInch, Ratio


def test_sixty_degree_depths_follow_from_the_triangle() -> None:
    thread = find_thread("M10")
    high = thread.pitch * math.sqrt(3) / 2
    assert thread.pitch_diameter == pytest.approx(10 - 2 * 3 / 8 * high)
    assert thread.bore == pytest.approx(10 - 2 * 5 / 8 * high)
    assert thread.root_diameter == pytest.approx(10 - 2 * 17 / 24 * high)


def test_an_inch_holds_its_threads() -> None:
    assert pitch_of(PerInch(24)) * 24 == pytest.approx(25.4)
    assert find_thread("5/16 UNF").diameter == pytest.approx(7.9375)


def test_whitworth_depth_follows_from_its_rounded_triangle() -> None:
    thread = find_thread("1/2 BSW")
    high = thread.pitch / 2 / math.tan(math.radians(27.5))
    assert (thread.diameter - thread.root_diameter) / 2 == pytest.approx(high * 2 / 3, rel=1e-5)


def test_formulas_take_arrays_element_by_element() -> None:
    pitches: Any = numpy.array([1.0, 1.25])
    tens: Any = ten_pitches(pitches)
    assert list(tens) == [10.0, 12.5]
    sizes: Any = numpy.array([6.0, 8.0])
    drills: Any = tap_drill(sizes, pitches)
    assert list(drills) == [5.0, 6.75]
    outer: Any = numpy.array([5.35, 7.188])
    inner: Any = numpy.array([4.77, 6.466])
    areas = stress_area(outer, inner)
    assert areas == pytest.approx([20.1, 36.6], abs=0.05)


def test_one_nan_in_an_array_is_refused() -> None:
    pitches: Any = numpy.array([1.0, math.nan])
    with pytest.raises(BadInput, match="pitch is nan"):
        ten_pitches(pitches)


@pytest.mark.parametrize(
    ("call", "word"),
    [
        (lambda: pitch_of(PerInch(0)), "threads_per_inch"),
        (lambda: diameter_at(Mm(math.inf), Mm(1), Ratio(0.6)), "diameter"),
        (lambda: diameter_at(Mm(8), Mm(-1), Ratio(0.6)), "pitch"),
        (lambda: stress_area(Mm(6), Mm(7)), "depth of thread"),
        (lambda: tap_drill(Mm(1), Mm(1.25)), "drill"),
    ],
)
def test_what_no_thread_has_is_refused(call: Callable[[], object], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        call()


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("M8", "M8 x 1.25"),
        ("m8 × 1,25", "M8 x 1.25"),
        ("M10x1", "M10 x 1"),
        ("5/16 UNF", "5/16 UNF"),
        ('5/16"-24 UNF', "5/16 UNF"),
        ("UNF 5/16", "5/16 UNF"),
        ("No 10 UNF", "No 10 UNF"),
        ("#10-32 UNF", "No 10 UNF"),
        ("1/4 Whitworth", "1/4 BSW"),
        ("1/4 W", "1/4 BSW"),
        ("2BA", "2 BA"),
        ("G 1/4", "1/4 BSP"),
        ("1/4 BSPP", "1/4 BSP"),
        ("5/16 CEI", "5/16 BSC"),
        ("7/16 BSC 20 tpi", "7/16-20 BSC"),
    ],
)
def test_a_thread_is_known_by_its_usual_names(typed: str, name: str) -> None:
    assert find_thread(typed).name == name


def test_a_metric_size_that_is_not_tabled_follows_the_form() -> None:
    thread = find_thread("M30 x 2")
    assert not thread.tabled
    assert thread.area == pytest.approx(math.pi / 4 * (30 - 0.938194 * 2) ** 2, rel=1e-5)
    assert thread.all_sources == ("thread-metric-form",)


@pytest.mark.parametrize("typed", ["M3 x 2", "M400 x 2", "M8 x 0.1"])
def test_a_metric_size_beyond_sense_is_refused(typed: str) -> None:
    with pytest.raises(BadInput, match="third of it"):
        find_thread(typed)


def test_an_unknown_thread_is_told_with_near_ones() -> None:
    with pytest.raises(BadInput) as trouble:
        find_thread("5/16 UNG")
    assert "5/16 UNF" in trouble.value.near
    with pytest.raises(BadInput, match="Measure it"):
        find_thread("a bolt of some kind")


def test_every_thread_is_sound() -> None:
    for thread in all_threads():
        assert 0 < thread.root_diameter < thread.pitch_diameter < thread.diameter
        assert find_thread(thread.name) == thread
        if thread.jaw is not None:
            assert max(thread.jaw) > thread.diameter
