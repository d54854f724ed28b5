"""A slip as plain values and as text."""

import json

import pytest

from witnessmark.bench.slip import Asked, Band, Slip, to_plain
from witnessmark.bench.slip_text import as_text, band_text, figure

SLIP = Slip(
    subject="bolts",
    question="check",
    asked={"thread": Asked("M8", "M8"), "torque": Asked("13 lbf ft", 17.63, "N·m")},
    results={
        "preload": Band(13_560.0, "N", 10_015.0, 18_360.0),
        "state": "within",
        "rows": ({"grade": "8.8", "own": True, "off": None, "because": "it stands"},),
        "none": (),
    },
    units={"off": "mm"},
    verdict="fits",
    because="it can be right",
    working=("one step",),
    sources=("torque-short-form", "common-practice"),
    cautions=("torque-scatter",),
)


def test_the_plain_slip_has_the_keys_of_the_contract_and_no_others() -> None:
    plain = to_plain(SLIP)
    assert list(plain) == [
        "subject", "question", "asked", "results", "units", "verdict", "because", "working", "sources",
        "cautions",
    ]  # fmt: skip
    assert plain["asked"]["torque"] == {"typed": "13 lbf ft", "value": 17.63, "unit": "N·m"}
    assert plain["results"]["preload"] == {"value": 13_560.0, "unit": "N", "low": 10_015.0, "high": 18_360.0}
    assert plain["results"]["state"] == "within"
    assert plain["results"]["rows"][0]["own"] is True
    source = plain["sources"][0]
    assert (source["key"], source["standing"], source["seen"]) == ("torque-short-form", "handbook", "excerpt")
    assert "equation 8-27" in source["where"]
    assert plain["sources"][1]["title"] == "common practice, no source"
    assert plain["cautions"][0]["id"] == "torque-scatter"
    assert json.loads(json.dumps(plain)) == plain


def test_a_bare_value_has_neither_low_nor_high() -> None:
    slip = Slip(subject="a", question="b", results={"x": Band(1.0, "mm")}, because="c")
    assert to_plain(slip)["results"]["x"] == {"value": 1.0, "unit": "mm"}


def test_results_are_asked_for_by_what_they_are() -> None:
    assert SLIP.band("preload").unit == "N"
    assert SLIP.rows("none") == ()
    with pytest.raises(TypeError, match="not a number"):
        SLIP.band("state")
    with pytest.raises(TypeError, match="not a list"):
        SLIP.rows("preload")


def test_the_text_tells_everything() -> None:
    text = as_text(SLIP)
    for words in (
        "Asked: thread M8, torque 13 lbf ft.", "Fits: it can be right", "preload  13560 N (10015 to 18360)",
        "state    within", "grade  own  off mm", "8.8    yes  –", "it stands", "  none", "one step",
        "[handbook, seen: excerpt]", "Caution:",
    ):  # fmt: skip
        assert words in text
    assert max(len(line) for line in text.splitlines()) <= 96
    assert not any(line.endswith(" ") for line in text.splitlines())
    assert "\n\n\n" not in text


def test_a_slip_without_verdict_says_only_why() -> None:
    text = as_text(Slip(subject="a", question="b", results={}, because="because of this"))
    assert "\nbecause of this" in text
    assert "Working" not in text


@pytest.mark.parametrize(
    ("value", "told"),
    [
        (0, "0"), (0.00001234, "1.23e-05"), (0.012345, "0.01235"), (-12.345, "-12.35"), (999.96, "1000"),
        (1_234_567, "1234567"), (2e12, "2e+12"),
    ],
)  # fmt: skip
def test_figures_are_told_to_four_places(value: float, told: str) -> None:
    assert figure(value) == told


def test_degrees_stand_close() -> None:
    assert band_text(Band(55.0, "°")) == "55°"
