"""Shims: the pack that leaves what is wanted, against trying every combination."""

from collections.abc import Callable
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.answers.shims import stack
from witnessmark.bench.shim_search import Stack, stacks_between, to_microns
from witnessmark.bench.shims import left_with, pack_for
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm

Shims = tuple[tuple[float, int], ...]

TIN: Shims = ((0.05, 4), (0.10, 4), (0.30, 2))


@given(st.floats(0, 20), st.floats(-1, 10), st.floats(0, 20))
def test_what_is_left_with_the_pack_is_what_was_wanted(measured: float, wanted: float, fitted: float) -> None:
    pack = pack_for(Mm(measured), Mm(wanted), Mm(fitted))
    if 0 <= pack <= 50:
        assert left_with(Mm(measured), pack, Mm(fitted)) == pytest.approx(wanted, abs=1e-9)


TINS = st.lists(st.tuples(st.sampled_from((50, 80, 100, 120, 150, 300)), st.integers(0, 3)), max_size=4)


@given(TINS, st.integers(0, 900), st.integers(0, 300))
def test_the_search_finds_every_total_in_its_fewest_pieces(
    tin: list[tuple[int, int]], low: int, wide: int
) -> None:
    ours = {s.total: len(s.pieces) for s in stacks_between([(t / 1000, n) for t, n in tin], low, low + wide)}
    joined: dict[int, int] = {}
    for thick, many in tin:
        joined[thick] = joined.get(thick, 0) + many
    best: dict[int, int] = {}
    for counts in product(*(range(n + 1) for n in joined.values())):
        total = sum(t * c for t, c in zip(joined, counts, strict=True))
        if sum(counts) <= 12 and low <= total <= low + wide:
            best[total] = min(best.get(total, 99), sum(counts))
    assert ours == best


def test_the_pack_nearest_the_middle_is_chosen() -> None:
    slip = stack(measured=0.62, wanted_low=0.05, wanted_high=0.15, shims=TIN)
    assert slip.band("pack").value == pytest.approx(0.5)
    assert slip.band("result").value == pytest.approx(0.12)
    assert [row["count"] for row in slip.rows("stack")] == [1, 2]
    assert len(slip.rows("alternatives")) == 1


def test_a_fitted_pack_counts_with_what_was_measured() -> None:
    slip = stack(measured=0.32, wanted_low=0.05, wanted_high=0.15, shims=TIN, fitted=0.30)
    assert slip.band("pack").value == pytest.approx(0.5)


def test_a_pack_that_opens_the_gap_works_the_other_way() -> None:
    slip = stack(measured=0.02, wanted_low=0.05, wanted_high=0.08, shims=TIN, fitted=0.30, sense="open")
    assert slip.band("pack").value == pytest.approx(0.35)
    assert slip.band("result").value == pytest.approx(0.07)
    assert "opens the gap" in slip.working[1]


def test_a_preload_is_a_gap_below_nothing() -> None:
    slip = stack(measured=0.40, wanted_low=-0.06, wanted_high=-0.04, shims=TIN)
    assert slip.band("result").value == pytest.approx(-0.05)
    assert "preload" in (slip.picture or "")


def test_no_shim_may_be_the_pack() -> None:
    slip = stack(measured=0.07, wanted_low=0.05, wanted_high=0.10, shims=TIN)
    assert slip.rows("stack") == ()
    assert "no shim" in slip.because


@pytest.mark.parametrize(
    ("measured", "shims", "words"),
    [
        (0.02, TIN, "metal has to come off"),
        (9.0, TIN, "all the shims together"),
        (0.62, ((0.4, 2),), "make no pack of 0.520"),
    ],
)
def test_where_no_pack_does_it_says_why(measured: float, shims: Shims, words: str) -> None:
    slip = stack(measured=measured, wanted_low=0.05, wanted_high=0.10, shims=shims)
    assert not slip.found
    assert slip.verdict is None
    assert words in slip.because


def test_near_misses_are_told() -> None:
    slip = stack(measured=0.62, wanted_low=0.05, wanted_high=0.10, shims=((0.4, 1), (0.2, 1)))
    assert [row["total"] for row in slip.rows("nearest")] == [0.6, 0.4, 0.2]


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"wanted_low": 0.2}, "lies above"),
        ({"measured": -1}, "measured"),
        ({"wanted_high": 999}, "wanted_high"),
        ({"wanted_low": -9}, "wanted_low"),
        ({"fitted": -0.1}, "fitted"),
        ({"shims": ((0.0, 3),)}, "a shim of 0 mm"),
        ({"shims": ((50.0, 3),)}, "a shim of 50 mm"),
    ],
)
def test_impossible_packs_are_refused(change: dict[str, Any], word: str) -> None:
    given: dict[str, Any] = {
        "measured": 0.62,
        "wanted_low": 0.05,
        "wanted_high": 0.10,
        "shims": TIN,
        **change,
    }
    with pytest.raises(BadInput, match=word):
        stack(**given)


def test_a_spongy_pack_is_not_offered() -> None:
    assert stacks_between(((0.05, 20),), 600, 600) == (Stack(pieces=(50,) * 12),)
    assert stacks_between(((0.05, 20),), 650, 650) == ()


def test_a_stack_is_called_for_in_words() -> None:
    assert Stack(pieces=(1250, 127, 127)).words() == "1.25 + 2 of 0.127"
    assert to_microns(0.1 + 0.2) == 300


@pytest.mark.parametrize(
    ("call", "word"),
    [
        (lambda: pack_for(Mm(-1), Mm(0), Mm(0)), "measured"),
        (lambda: left_with(Mm(1), Mm(99), Mm(0)), "pack"),
    ],
)
def test_formulas_refuse_nonsense(call: Callable[[], object], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        call()
