"""What is typed is read with its unit or refused in three parts; nothing is guessed."""

import pytest

from witnessmark.bench.kinds import (
    angle,
    count,
    counted,
    csv_rows,
    force,
    fraction,
    length,
    number,
    one_of,
    pitch,
    points,
    sizes,
    stress,
    temperature,
    torque,
    vector,
    words,
)
from witnessmark.bench.question import Reader
from witnessmark.ground.errors import BadInput


@pytest.mark.parametrize(
    ("read", "typed", "value"),
    [
        (torque, "50 lbf ft", 67.79),
        (torque, "50 lb-ft", 67.79),
        (torque, "67.79 N·m", 67.79),
        (torque, "6.913 kgf m", 67.79),
        (length, "7.9mm", 7.9),
        (length, "5/16 in", 7.9375),
        (length, "10 thou", 0.254),
        (length, "7,9 mm", 7.9),
        (pitch, "24 tpi", 1.0583),
        (pitch, "1.25 mm", 1.25),
        (angle, "55°", 55),
        (temperature, "9C", 9),
        (temperature, "48 °F", 8.889),
        (stress, "210 GPa", 210_000),
        (force, "20 kN", 20_000),
        (number, "0.15", 0.15),
        (number, "12e-6", 12e-6),
        (fraction, "75 %", 0.75),
        (fraction, "0.75", 0.75),
        (count, "12", 12),
    ],
)
def test_usual_spellings_are_read(read: Reader, typed: str, value: float) -> None:
    asked = read("x", typed)
    assert asked.value == pytest.approx(value, rel=1e-3)
    assert asked.typed == typed


@pytest.mark.parametrize(
    ("read", "typed", "word"),
    [
        (torque, "50", "Add the unit"),
        (torque, "50 mm", "a torque is asked"),
        (torque, "", "x"),
        (length, "NaN mm", "x"),
        (length, "inf mm", "x"),
        (length, "1e99 mm", "x"),
        (length, "9999999 mm", "beyond all sense"),
        (number, "fast", "not a number"),
        (number, "nan", "not a number"),
        (count, "1.5", "whole number"),
        (fraction, "lots %", "not a number"),
        (words, "   ", "empty"),
    ],
)
def test_what_cannot_be_read_is_refused(read: Reader, typed: str, word: str) -> None:
    with pytest.raises(BadInput, match=word) as trouble:
        read("x", typed)
    assert trouble.value.holds
    assert trouble.value.do


def test_one_word_of_a_few_with_the_near_ones() -> None:
    read = one_of("radial static", "face static", "rod", "piston")
    assert read("gland", "Radial  Static").value == "radial static"
    with pytest.raises(BadInput) as trouble:
        read("gland", "pistn")
    assert trouble.value.near == ("piston",)
    with pytest.raises(BadInput, match="Give one of these"):
        read("gland", "zzz")


def test_lists_carry_their_unit_once() -> None:
    assert sizes(2, holds="")("have", "32x36 1.5x2 in").value[1] == pytest.approx((38.1, 50.8))
    lines = points(2, 2, holds="")("lines", "0,0 0,50; 100,0 100,50 mm").value
    assert lines[1] == ((100, 0), (100, 50))
    assert vector(3, "force", holds="")("load", "0,-7.5,0 kN").value == (0, -7500, 0)
    assert counted(holds="")("shims", "4 of 0.05, 0.30x2; 0.1 mm").value == ((0.05, 4), (0.3, 2), (0.1, 1))


@pytest.mark.parametrize(
    ("read", "typed", "word"),
    [
        (sizes(2, holds="h"), "32x36", "without a unit"),
        (sizes(2, holds="h"), "32x36x2 mm", "Part the sizes"),
        (sizes(2, holds="h"), "1..2x3 mm", "not a number"),
        (points(2, 2, holds="h"), "0,0,0 0,50 mm", "2 numbers a point"),
        (points(2, 2, holds="h"), "0,0 0,50 1,1 mm", "2 points a group"),
        (vector(3, "force", holds="h"), "1,2,3; 4,5,6 kN", "one point"),
        (counted(holds="h"), "0.05x1.5 mm", "whole count"),
        (counted(holds="h"), "0.05x-4 mm", "whole count"),
        (counted(holds="h"), "1x2x3 mm", "size and count"),
        (counted(holds="h"), "0.05x4", "without a unit"),
    ],
)
def test_lists_that_cannot_be_read_are_refused(read: Reader, typed: str, word: str) -> None:
    with pytest.raises(BadInput, match=word):
        read("x", typed)


def test_points_of_any_number_a_group() -> None:
    assert len(points(None, 2, holds="")("seam", "0,0 1,0 2,0 mm").value[0]) == 3


def test_rows_of_a_file() -> None:
    text = "# hours\nHour, Air\n\n18,9.5\n19\n"
    assert list(csv_rows("forecast", text, needed=("hour", "air"), holds="h")) == [
        {"hour": "18", "air": "9.5"},
        {"hour": "19", "air": ""},
    ]
    with pytest.raises(BadInput, match="no column air or humidity"):
        list(csv_rows("forecast", "hour\n1\n", needed=("hour", "air", "humidity"), holds="h"))
    with pytest.raises(BadInput, match="no column hour"):
        list(csv_rows("forecast", "", needed=("hour",), holds="h"))
