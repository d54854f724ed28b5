"""A figure is judged when it is written: within, over, doubtful, low; unit slips named with care."""

import pytest

from witnessmark.bench.plausible import figure_plausible, states_said
from witnessmark.bench.slip import Slip
from witnessmark.bench.slip_text import as_text
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantities import read_quantity
from witnessmark.ground.quantity import Quantity


def judged(thread: str, grade: str | None, torque: str) -> Slip:
    """The slip for a figure as typed."""
    return figure_plausible(thread, grade, read_quantity(torque, "torque"))


def test_common_practice_no_source_thirteen_pound_feet_suit_m8_and_not_m6() -> None:
    """Cover bolts of a cast steering housing go to 13 lbf ft: common practice, no source."""
    assert judged("M8", "8.8", "13 lbf ft").results["state"] == "within"
    assert judged("M6", "8.8", "13 lbf ft").results["state"] in ("over", "doubtful")


@pytest.mark.parametrize(
    ("torque", "state", "verdict"),
    [
        ("18 Nm", "within", "fits"),
        ("25 Nm", "doubtful", "marginal"),
        ("60 Nm", "over", "no"),
        ("3 Nm", "low", "marginal"),
    ],
)
def test_the_four_states(torque: str, state: str, verdict: str) -> None:
    slip = judged("M8", "8.8", torque)
    assert slip.results["state"] == state
    assert slip.verdict == verdict


def test_a_planted_slip_of_units_is_caught() -> None:
    slip = judged("M10", "8.8", "350 lbf ft")
    assert "350 lbf in (39.5 N·m)" in str(slip.results["unit_slip"])
    assert "350 lbf in" in slip.because


def test_pound_feet_and_newton_metres_are_told_apart_where_that_can_be() -> None:
    assert "18 N·m (18.0 N·m)" in str(judged("M8", "8.8", "18 lbf ft").results["unit_slip"])
    low = judged("M10", "8.8", "7 Nm")
    assert low.results["state"] == "low"
    assert "7 lbf ft (9.5 N·m)" in str(low.results["unit_slip"])


def test_no_slip_is_named_where_the_figure_is_inside() -> None:
    assert judged("M8", "8.8", "18 Nm").results["unit_slip"] == "none seen"


def test_it_says_that_it_cannot_tell() -> None:
    assert "cannot tell" in str(judged("M6", "8.8", "13 lbf ft").results["unit_slip"])
    strange = figure_plausible("M8", "8.8", Quantity("sixty or so", 60.0, "N·m"))
    assert "cannot tell" in str(strange.results["unit_slip"])


def test_an_unread_grade_is_answered_for_three() -> None:
    slip = judged("M8", None, "18 Nm")
    assert [row["grade"] for row in slip.rows("grades")] == ["4.8", "5.8", "8.8"]
    assert slip.results["state"] == "cannot tell"
    assert slip.verdict == "marginal"
    assert judged("M8", None, "9 Nm").results["state"] == "within"
    assert judged("M8", None, "300 Nm").verdict == "no"


@pytest.mark.parametrize(
    "typed", ["13 lbf ft", "17,6 N·m", "1.8 kgf m", "156 lbf in", "13 1/2 lb ft", "180 kgf cm"]
)
def test_each_spelling_of_the_same_figure_is_within(typed: str) -> None:
    assert judged("M8", "8.8", typed).results["state"] == "within"


def test_nonsense_is_refused() -> None:
    with pytest.raises(BadInput, match="torque is 0"):
        figure_plausible("M8", "8.8", Quantity("0 Nm", 0.0, "N·m"))
    with pytest.raises(BadInput, match="tables do not know"):
        judged("a thread", "8.8", "18 Nm")
    with pytest.raises(BadInput, match="grade is"):
        judged("M8", "Z", "18 Nm")


def test_the_slip_reads_whole_and_draws_each_grade() -> None:
    slip = judged("M8", None, "18 Nm")
    assert "bolts plausible" in as_text(slip)
    assert slip.picture is not None
    assert slip.picture.count("proof ") == 3


def test_a_grade_that_is_not_made_so_large_is_not_answered_for() -> None:
    slip = judged("3/4 UNF", None, "95 lbf ft")
    assert [row["grade"] for row in slip.rows("grades")] == ["5.8", "8.8"]
    with pytest.raises(BadInput, match=r"8\.8 on a thread of 42"):
        judged("M42 x 4.5", None, "95 lbf ft")


def test_how_it_stands_is_said_in_a_few_words() -> None:
    assert states_said(judged("M8", "8.8", "13 lbf ft")) == "within"
    assert states_said(judged("M8", None, "13 lbf ft")) == "doubtful at 4.8 and 5.8, within at 8.8"
    assert states_said(judged("M8", None, "60 Nm")) == "over at 4.8 to 8.8"
