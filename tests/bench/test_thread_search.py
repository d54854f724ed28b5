"""A measured thread is told, worn crests forgiven; close pairs are told apart."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.answers.threads import identify as answer
from witnessmark.bench.answers.threads import size
from witnessmark.bench.thread_list import Thread, all_threads, find_thread
from witnessmark.bench.thread_search import identify, look_alikes, tell_apart
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Mm


@given(st.sampled_from(all_threads()), st.floats(0.0, 1.0))
def test_a_worn_bolt_with_its_gauge_reading_is_among_the_candidates(thread: Thread, wear: float) -> None:
    worn = thread.diameter - wear * (0.12 + 0.2 * thread.pitch)
    if worn < 1:
        return
    found = identify(Mm(worn), thread.pitch, thread.form.angle, internal=False)
    assert thread in [c.thread for c in found]


@given(st.sampled_from(all_threads()))
def test_a_nut_read_in_its_bore_is_found_as_well(thread: Thread) -> None:
    found = identify(Mm(thread.bore + 0.05), thread.pitch, thread.form.angle, internal=True)
    assert thread in [c.thread for c in found]


@pytest.mark.parametrize(
    ("diameter", "pitch", "angle", "best"),
    [
        (7.85, 25.4 / 24, None, "5/16 UNF"),
        (7.85, 25.4 / 22, None, "5/16 BSF"),
        (7.80, 1.25, None, "M8 x 1.25"),
        (6.25, 25.4 / 20, 55, "1/4 BSW"),
        (6.25, 25.4 / 20, 60, "1/4 UNC"),
        (5.9, 1.0, 47.5, "0 BA"),
        (5.9, 1.0, 60, "M6 x 1"),
        (13.05, 25.4 / 19, None, "1/4 BSP"),
        (6.3, 25.4 / 26, 60, "1/4 BSC"),
        (6.3, 25.4 / 26, 55, "1/4 BSF"),
    ],
)
def test_close_pairs_are_told_by_pitch_and_angle(
    diameter: float, pitch: float, angle: float | None, best: str
) -> None:
    found = identify(Mm(diameter), Mm(pitch), None if angle is None else Degree(angle), internal=False)
    assert found[0].thread.name == best


def test_a_crest_cannot_read_large() -> None:
    names = [c.thread.name for c in identify(Mm(8.2), Mm(1.25), internal=False)]
    assert "M8 x 1.25" not in names


def cost_of(name: str, **measured: float) -> float:
    """The cost of one thread for a bolt of 7.85 mm and 24 to the inch, with changes."""
    given = {"diameter": 7.85, "pitch": 25.4 / 24, **measured}
    angle, flats = given.get("angle"), given.get("flats")
    found = identify(
        Mm(given["diameter"]),
        Mm(given["pitch"]),
        None if angle is None else Degree(angle),
        None if flats is None else Mm(flats),
        internal=False,
    )
    return next(c.cost for c in found if c.thread.name == name)


def test_every_disagreement_costs_and_the_greater_costs_more() -> None:
    name = "5/16 UNF"
    good = cost_of(name)
    pitches = [cost_of(name, pitch=25.4 / 24 * (1 + off)) for off in (0, 0.01, 0.02, 0.035)]
    assert pitches == sorted(pitches)
    assert pitches[1] - good == pytest.approx(1, rel=0.01)
    assert pitches[2] - good == pytest.approx(4, rel=0.01)
    angles = [cost_of(name, angle=a) for a in (60, 58, 55)]
    assert angles[1] - angles[0] == pytest.approx(1)
    assert angles[2] - angles[0] == pytest.approx(6.25)
    flats = [cost_of(name, flats=f) - good for f in (12.7, 13.1, 13.5, 30)]
    assert flats == pytest.approx([0, 1, 4, 4])


def test_a_crest_reads_best_a_little_under_and_large_costs_most() -> None:
    pitch = 25.4 / 24
    usual = find_thread("5/16 UNF").diameter - (0.03 + 0.06 * pitch)
    assert cost_of("5/16 UNF", diameter=usual) == pytest.approx(0, abs=1e-9)
    slack_worn, slack_large = 0.06 + 0.1 * pitch, 0.03 + 0.03 * pitch
    assert cost_of("5/16 UNF", diameter=usual - slack_worn) == pytest.approx(1)
    nominal = find_thread("5/16 UNF").diameter
    at_nominal = ((nominal - usual) / slack_worn) ** 2
    assert cost_of("5/16 UNF", diameter=nominal) == pytest.approx(at_nominal)
    over = slack_large / 2
    steep = ((nominal + over - usual) / slack_worn) ** 2 + 0.25
    assert cost_of("5/16 UNF", diameter=nominal + over) == pytest.approx(steep)


def test_a_thread_of_its_very_nominal_size_and_pitch_comes_before_a_worn_neighbour() -> None:
    """As a shop for old motorcycles prints the pair, 0.190 in at 32 to the inch and 0.196 in at 31.75."""
    assert identify(Mm(4.826), Mm(25.4 / 32), internal=False)[0].thread.name == "No 10 UNF"
    assert identify(Mm(4.978), Mm(25.4 / 31.75), internal=False)[0].thread.name == "M5 x 0.8"


@pytest.mark.parametrize(
    ("diameter", "pitch", "angle", "found"),
    [
        (8.09, 1.25, 60, True),
        (8.11, 1.25, 60, False),
        (7.52, 1.25, 60, True),
        (7.50, 1.25, 60, False),
        (7.9, 1.25 * 1.039, 60, True),
        (7.9, 1.25 * 1.041, 60, False),
        (7.9, 1.25, 54, True),
        (7.9, 1.25, 53.9, False),
    ],
)
def test_how_far_off_a_candidate_may_be(diameter: float, pitch: float, angle: float, found: bool) -> None:
    names = [c.thread.name for c in identify(Mm(diameter), Mm(pitch), Degree(angle), internal=False)]
    assert ("M8 x 1.25" in names) is found


def test_signs_are_told_only_where_they_differ() -> None:
    told = tell_apart(find_thread("1/4 BSW"), find_thread("1/4 UNC"))
    assert "ten pitches" not in told
    assert "crests" not in told
    assert "55° against 60°" in told
    same_angle = tell_apart(find_thread("M8"), find_thread("5/16 UNC"))
    assert "flank angle" not in same_angle
    assert "spanner 13 mm against 1/2 in AF" in same_angle
    assert "spanner" not in tell_apart(find_thread("1/4 BSP"), find_thread("M14 x 1.25"))


def test_without_an_angle_a_quarter_inch_of_twenty_stays_open() -> None:
    slip = answer(diameter=6.25, pitch=1.27)
    assert slip.verdict == "marginal"
    assert {"1/4 UNC", "1/4 BSW"} == {str(r["thread"]) for r in slip.rows("candidates")}
    assert "60° against 55°" in slip.because or "55° against 60°" in slip.because


def test_the_head_decides_where_nothing_else_does() -> None:
    whitworth = answer(diameter=6.25, pitch=1.27, across_flats=11.3)
    assert whitworth.rows("candidates")[0]["thread"] in ("1/4 BSW", "1/4 UNC")
    wide = answer(diameter=6.25, pitch=1.27, across_flats=13.34)
    assert wide.rows("candidates")[0]["thread"] == "1/4 BSW"


def test_ten_pitches_tell_a_metric_from_an_inch_pitch() -> None:
    told = tell_apart(find_thread("M8 x 1"), find_thread("5/16 BSC"))
    assert "10.00 mm against 9.77 mm" in told
    assert tell_apart(find_thread("M8"), find_thread("M8")).startswith("nothing on the thread")


def test_look_alikes_come_nearest_first() -> None:
    assert look_alikes(find_thread("5/16 UNF"))[0].name in ("M8 x 1", "5/16 BSF", "5/16 BSC")


def test_nothing_found_says_so_and_draws_nothing() -> None:
    slip = answer(diameter=50, pitch=0.5)
    assert not slip.found
    assert slip.rows("candidates") == ()
    assert slip.picture is None


def test_a_nut_is_answered_as_a_nut() -> None:
    slip = answer(diameter=6.7, pitch=1.25, internal="yes")
    assert slip.rows("candidates")[0]["thread"] == "M8 x 1.25"
    assert "full-depth bore" in str(slip.rows("candidates")[0]["because"])


@pytest.mark.parametrize(
    ("given", "word"),
    [
        ({"diameter": -3, "pitch": 1.25}, "diameter"),
        ({"diameter": 8, "pitch": 30}, "pitch"),
        ({"diameter": 8, "pitch": 1.25, "angle": 5}, "angle"),
        ({"diameter": 8, "pitch": 1.25, "across_flats": 900}, "across_flats"),
    ],
)
def test_absurd_measures_are_refused(given: dict[str, Any], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        answer(**given)


def test_sizes_of_a_thread_without_a_head_say_so() -> None:
    slip = size(thread="1/4 BSP")
    assert "measure it" in str(slip.results["across_flats"])
    assert "comparison only" in slip.because
    assert "stress-area-convention" in slip.sources


def test_two_jaws_in_use_are_a_band() -> None:
    flats = size(thread="M10").band("across_flats")
    assert (flats.low, flats.high) == (16, 17)
    assert size(thread="M8").band("across_flats").low is None


def test_a_size_that_is_not_tabled_says_so() -> None:
    assert "not in the tables" in size(thread="M30 x 2").because
