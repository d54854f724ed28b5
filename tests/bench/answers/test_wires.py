"""A wire to choose."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput
from witnessmark.tables.numbers import table


def test_a_drop_and_its_fraction_are_the_same_question() -> None:
    by_drop = asked("wires", "size", current="8 A", length="4 m", supply="12 V", drop="0.36 V")
    by_part = asked("wires", "size", current="8 A", length="4 m", supply="12 V", fraction="3 %")
    assert by_drop.results == by_part.results
    assert by_drop.band("drop").value <= 0.36


def test_the_chosen_wire_is_the_thinnest_that_holds_both() -> None:
    for amps in (2, 6, 10, 15, 20):
        slip = asked("wires", "size", current=f"{amps} A", length="3 m", supply="12 V", fraction="4 %")
        wire, fuse, bears = (slip.band(n).value for n in ("wire", "fuse", "bears"))
        assert amps * 1.25 <= fuse <= bears
        assert slip.band("drop").value <= 0.48
        thinner = [r for r in table("wire/conductors").rows if r["area"] < wire]
        if thinner:
            lost = amps * 6 * thinner[-1]["resistance"] / 1000
            rated = max(
                r["current"] for r in table("wire/continuous").rows if r["area"] <= thinner[-1]["area"]
            )
            assert (
                lost > 0.48
                or amps > rated
                or not any(amps * 1.25 <= r["rating"] <= rated for r in table("wire/fuses").rows)
            )


def test_a_warm_wire_needs_more_copper() -> None:
    cool = asked("wires", "size", current="8 A", length="4 m", supply="12 V", fraction="3 %")
    warm = asked(
        "wires", "size", current="8 A", length="4 m", supply="12 V", fraction="3 %", temperature="70 C"
    )
    assert warm.band("area").value == pytest.approx(1.2 * cool.band("area").value)


@pytest.mark.parametrize(
    ("current", "length", "said"),
    [
        ("300 A", "4 m", "even 35 mm²"),
        ("120 A", "0.1 m", "no size here is rated"),
        ("45 A", "0.1 m", "no blade fuse"),
    ],
)
def test_where_nothing_fits_it_says_why(current: str, length: str, said: str) -> None:
    slip = asked("wires", "size", current=current, length=length, supply="6 V", drop="0.3 V")
    assert not slip.found
    assert said in slip.because
    assert slip.picture is not None


@pytest.mark.parametrize(
    "typed", [{}, {"drop": "0.3 V", "fraction": "3 %"}, {"drop": "20 V"}, {"fraction": "0 %"}]
)
def test_a_drop_that_cannot_be_is_refused(typed: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        asked("wires", "size", current="8 A", length="4 m", supply="12 V", **typed)
