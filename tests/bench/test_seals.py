"""Seals: what a driver must clear, stacks, what to make, and which size it is."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.answers.seals import driver, identify
from witnessmark.bench.own_lists import Driver, drivers
from witnessmark.bench.seal_driver import could_be_turned, judge, order, search, seat_of, stacks, tubes
from witnessmark.bench.seal_list import inches_near, limits_of, seals_like
from witnessmark.bench.seals import clearance_in_bore, clearance_on_shaft, lip_width, press_allowance
from witnessmark.bench.slip import Row
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm

TUBE = (Driver(name="32x36", inside=Mm(32), outside=Mm(36)),)


def of_tube(bore: float, shaft: float) -> Row:
    """The row of a tube 32 mm inside and 36 mm outside."""
    slip = driver(bore=bore, shaft=shaft, have=TUBE)
    return next(row for row in slip.rows() if row["driver"] == "32x36")


def test_common_practice_no_source_the_tube_of_the_trade_passes() -> None:
    """A shaft seal goes in with a tube 32 mm inside and 36 mm outside: common practice, no source."""
    assert of_tube(36.2, 31.8)["verdict"] in ("fits", "marginal")
    assert "lip" in str(of_tube(36.2, 31.8)["because"])


def test_common_practice_no_source_the_tube_is_refused_for_a_smaller_bore_or_a_larger_shaft() -> None:
    assert of_tube(35.0, 31.8)["verdict"] == "no"
    assert of_tube(36.2, 33.0)["verdict"] == "no"


def test_common_practice_no_source_sockets_are_stacked_a_small_one_over_a_larger() -> None:
    have = drivers("have", "32x36x40 33x35x60 mm").value
    slip = driver(bore=36.2, shaft=31.8, reach=70, have=have)
    stack = next(row for row in slip.rows() if "below" in str(row["driver"]))
    assert stack["driver"] == "32x36 below, 33x35 above"
    assert stack["verdict"] in ("fits", "marginal")
    assert "100 mm together" in str(stack["because"])


@pytest.mark.parametrize(
    ("inside", "verdict"), [(38.0, "no"), (38.5, "marginal"), (44.5, "marginal"), (44.7, "fits")]
)
def test_passing_the_shaft_and_clearing_the_lip_are_two_questions(inside: float, verdict: str) -> None:
    seat = seat_of(Mm(38), Mm(60))
    assert seat.clear_inside == pytest.approx(44.6)
    assert judge(seat, Driver(name="x", inside=Mm(inside), outside=Mm(59.75))).verdict == verdict


@pytest.mark.parametrize(
    ("outside", "verdict"),
    [
        (60.0, "no"),
        (59.95, "marginal"),
        (59.9, "fits"),
        (59.6, "fits"),
        (59.4, "marginal"),
        (58.9, "no"),
    ],
)
def test_the_outside_is_a_little_under_the_bore(outside: float, verdict: str) -> None:
    seat = seat_of(Mm(38), Mm(60))
    assert judge(seat, Driver(name="x", inside=Mm(48), outside=Mm(outside))).verdict == verdict


@given(st.floats(20, 60), st.floats(6, 30), st.floats(0.1, 0.4))
def test_what_is_told_to_be_made_fits(shaft: float, space: float, under: float) -> None:
    bore = shaft + space
    slip = driver(bore=bore, shaft=shaft)
    inside, outside = slip.band("make_inside").value, bore - under
    seat = seat_of(Mm(shaft), Mm(bore))
    assert judge(seat, Driver(name="made", inside=Mm(inside), outside=Mm(outside))).verdict == "fits"


def test_a_short_driver_wants_a_second_piece_and_a_shallow_hollow_is_refused() -> None:
    seat = seat_of(Mm(30), Mm(50), depth=Mm(6), reach=Mm(70))
    short = judge(seat, Driver(name="x", inside=Mm(40), outside=Mm(49.8), length=Mm(40)))
    assert short.verdict == "marginal"
    assert "second piece" in short.because
    socket = judge(seat, Driver(name="x", inside=Mm(40), outside=Mm(49.8), length=Mm(90), hollow=Mm(30)))
    assert socket.verdict == "no"
    assert "its hollow ends" in socket.because


def test_a_stack_must_stand_pass_and_enter() -> None:
    seat = seat_of(Mm(30), Mm(50), depth=Mm(20), reach=Mm(70))
    lower = Driver(name="low", inside=Mm(40), outside=Mm(49.8), length=Mm(10))
    assert stacks(seat, [lower, Driver(name="wide", inside=Mm(44), outside=Mm(60))]) == ()
    assert stacks(seat, [lower, Driver(name="thin", inside=Mm(34), outside=Mm(41))]) == ()
    assert stacks(seat, [lower, Driver(name="tight", inside=Mm(25), outside=Mm(45))]) == ()
    assert [s.driver for s in stacks(seat, [lower, Driver(name="up", inside=Mm(36), outside=Mm(46))])] == [
        "low below, up above"
    ]
    long = Driver(name="long", inside=Mm(40), outside=Mm(49.8), length=Mm(90))
    solid = Driver(name="solid", inside=Mm(0), outside=Mm(45), length=Mm(30))
    assert [s.verdict for s in stacks(seat, [long, solid])] == ["fits"]


def test_a_stack_still_too_short_says_so() -> None:
    seat = seat_of(Mm(30), Mm(50), reach=Mm(200))
    pieces = drivers("have", "40x49.8x40 36x46x60 mm").value
    found = stacks(seat, pieces)
    assert found[0].verdict == "marginal"
    assert "still short" in found[0].because


def piece(name: str, inside: float, outside: float, length: float | None = None) -> Driver:
    """A driver of the drawer."""
    return Driver(
        name=name, inside=Mm(inside), outside=Mm(outside), length=None if length is None else Mm(length)
    )


def test_ends_of_the_rules_count_as_inside() -> None:
    seat = seat_of(Mm(38), Mm(60), lip=Mm(3))
    assert judge(seat, piece("x", 44, 59.9)).verdict == "fits"
    assert judge(seat, piece("x", 44, 59.6)).verdict == "fits"
    assert judge(seat, piece("x", 44, 59.0)).verdict == "marginal"
    assert judge(seat, piece("x", 38.0, 59.8)).verdict == "no"
    exact = seat_of(Mm(30), Mm(50), reach=Mm(70))
    assert exact.length == 80
    assert judge(exact, piece("x", 40, 49.8, 80)).verdict == "fits"
    assert judge(exact, piece("x", 40, 49.8, 79)).verdict == "marginal"
    just = Driver(name="x", inside=Mm(40), outside=Mm(49.8), length=Mm(90), hollow=Mm(70))
    assert judge(exact, just).verdict == "fits"
    assert seat_of(Mm(30), Mm(50), Mm(6), Mm(70)).length == 80
    assert seat_of(Mm(30), Mm(50), Mm(90), Mm(70)).length == 100


def test_the_band_is_the_wall_that_bears() -> None:
    tried = judge(seat_of(Mm(38), Mm(60)), piece("x", 45, 59.8))
    assert tried.band == pytest.approx((59.8 - 45) / 2)


def test_what_refuses_is_told_before_what_only_warns() -> None:
    because = judge(seat_of(Mm(38), Mm(60)), piece("x", 39, 61)).because
    assert because.index("does not enter") < because.index("check that it bears")


def test_the_best_is_the_one_nearest_a_quarter_under() -> None:
    slip = driver(
        bore=50, shaft=30, have=(piece("a", 40, 49.65), piece("b", 40, 49.75), piece("c", 40, 49.88))
    )
    assert [row["driver"] for row in slip.rows()][:3] == ["b", "a", "c"]


def test_one_piece_comes_before_two_and_ones_own_before_the_tables() -> None:
    tried = search(seat_of(Mm(30), Mm(42.3)), (piece("own", 35, 42.05, 50), piece("up", 34, 40, 50)))
    names = [t.driver for t in tried if t.verdict == "fits"]
    assert names[:2] == ["own", "own below, up above"]
    assert all("copper" in n or "plastic" in n for n in names[2:])


def test_pieces_on_end_may_be_of_one_size_and_must_lap_by_two_millimetres() -> None:
    seat = seat_of(Mm(30), Mm(50), reach=Mm(70))
    assert stacks(seat, [piece("a", 40, 49.8, 40), piece("b", 40, 49.8, 40)])
    assert stacks(seat, [piece("a", 40, 49.8, 40), piece("b", 31, 42, 40)])
    assert stacks(seat, [piece("a", 40, 49.8, 40), piece("b", 31, 41.9, 40)]) == ()
    assert stacks(seat, [piece("a", 40, 49.8, 40), piece("b", 30, 45, 40)]) == ()
    deep = seat_of(Mm(30), Mm(50), depth=Mm(40))
    assert stacks(deep, [piece("a", 40, 49.8, 40), piece("b", 36, 49.8, 40)])
    deeper = seat_of(Mm(30), Mm(50), depth=Mm(41))
    assert stacks(deeper, [piece("a", 40, 49.8, 40), piece("b", 36, 49.8, 40)])


def test_a_stack_of_unmeasured_pieces_promises_no_length() -> None:
    seat = seat_of(Mm(30), Mm(50), reach=Mm(70))
    found = stacks(seat, [piece("a", 40, 49.8), piece("b", 36, 46, 30)])
    assert found[0].because.startswith("reaches past the shaft;")
    assert found[0].verdict == "fits"
    whole = stacks(seat, [piece("a", 40, 49.8, 40), piece("b", 36, 46, 40)])
    assert whole[0].because.startswith("reaches past the shaft, 80 mm together")
    assert len(stacks(seat, [piece(str(n), 36 + n / 10, 49.7, 40) for n in range(5)])) == 4


def test_a_copper_tube_is_hollow_by_twice_its_wall() -> None:
    tube = next(t for t in tubes() if t.name == "35 x 1.2 copper tube")
    assert tube.inside == pytest.approx(32.6)
    assert tube.outside == pytest.approx(35)
    assert not tube.own


def test_what_can_be_turned_down_is_the_smallest_that_leaves_a_wall() -> None:
    seat = seat_of(Mm(38), Mm(60))
    own = (piece("same", 50, 60.0), piece("thin", 57.8, 61), piece("wall", 57.7, 61), piece("small", 38, 62))
    names = [d.name for d in could_be_turned(seat, own)]
    assert names[:2] == ["same", "wall"]
    assert len(names) == 3
    assert "thin" not in names
    assert "small" not in names


def test_the_drawer_comes_before_the_tables() -> None:
    seat = seat_of(Mm(31.8), Mm(36.2))
    tried = search(seat, TUBE)
    assert list(tried) == sorted(tried, key=order)
    assert tried[0].own
    assert all(t.inside < t.outside for t in tubes())


def test_a_table_tube_that_fits_is_offered() -> None:
    slip = driver(bore=42.3, shaft=30)
    assert any(not row["own"] for row in slip.rows())
    assert slip.found
    assert {"tube-plastic", "tube-copper"} & set(slip.sources)


def test_nothing_that_fits_is_an_answer_without_verdict() -> None:
    slip = driver(bore=60, shaft=38)
    assert not slip.found
    assert slip.verdict is None
    assert "turn up or cut" in str(slip.results["make"])
    assert "To turn down: 2 in plastic pipe" in str(slip.results["make"])


def test_a_measured_lip_needs_no_choice() -> None:
    slip = driver(bore=60, shaft=38, lip=2.0)
    assert slip.band("make_inside").value == 42
    assert "seal-lip-choice" not in slip.sources


@pytest.mark.parametrize(
    ("seal_od", "bore", "words"),
    [(50.2, 50, "0.1 to 0.2"), (50.0, 50, "will not hold"), (520.3, 520, "+0.30 mm")],
)
def test_how_tight_the_seal_sits(seal_od: float, bore: float, words: str) -> None:
    slip = driver(bore=bore, shaft=bore * 0.7, seal_od=seal_od)
    assert words in str(slip.results["press"])


def test_a_measured_shaft_and_bore_find_their_seal() -> None:
    slip = identify(shaft=34.9, bore=47.02, width=7)
    assert slip.rows("candidates")[0]["shaft"] == 35
    assert slip.rows("candidates")[0]["standing"] == "read in a list"
    assert slip.verdict == "fits"


def test_a_size_from_memory_is_printed_hollow() -> None:
    slip = identify(shaft=38, bore=52, width=7)
    assert "from memory, measure first" in slip.because
    assert "from-memory" in slip.sources


def test_wear_and_an_old_seal_are_told() -> None:
    slip = identify(shaft=34.7, bore=47.2, width=8)
    because = str(slip.rows("candidates")[0]["because"])
    assert "worn" in because
    assert "over the old seal" in because
    assert "narrower" in because
    assert "wider" in seals_like(Mm(35), Mm(47), Mm(6))[0].because


@pytest.mark.parametrize(
    ("shaft", "bore", "width", "found"),
    [
        (34.6, 47, 7, True),
        (34.59, 47, 7, False),
        (35.05, 47, 7, True),
        (35.07, 47, 7, False),
        (35, 47.35, 7, True),
        (35, 47.36, 7, False),
        (35, 46.95, 7, True),
        (35, 46.93, 7, False),
        (35, 47, 9, True),
        (35, 47, 9.1, False),
    ],
)
def test_how_far_a_measured_seal_may_be_off(shaft: float, bore: float, width: float, found: bool) -> None:
    sizes = [(s.shaft, s.bore) for s in seals_like(Mm(shaft), Mm(bore), Mm(width))]
    assert ((Mm(35), Mm(47)) in sizes) is found


def test_deviations_are_measured_less_nominal() -> None:
    one = seals_like(Mm(34.9), Mm(47.03), Mm(7.5))[0]
    assert one.shaft_off == pytest.approx(-0.1)
    assert one.bore_off == pytest.approx(0.03)
    assert one.width_off == pytest.approx(0.5)
    assert one.because == "0.5 mm narrower than measured: look at the seat"
    assert seals_like(Mm(35), Mm(47), Mm(6.5))[0].because == "0.5 mm wider than measured: look at the seat"
    assert seals_like(Mm(35), Mm(47), Mm(7.2))[0].verdict == "fits"


@pytest.mark.parametrize(
    ("shaft", "bore", "verdict"),
    [
        (34.84, 47, "fits"),
        (34.83, 47, "fits"),
        (34.81, 47, "marginal"),
        (35, 47.039, "fits"),
        (35, 47.055, "fits"),
        (35, 47.065, "marginal"),
    ],
)
def test_the_standard_limits_decide_with_a_little_for_measuring(
    shaft: float, bore: float, verdict: str
) -> None:
    assert seals_like(Mm(shaft), Mm(bore), Mm(7))[0].verdict == verdict


def test_the_nearest_width_comes_first_then_what_was_read() -> None:
    widths = [s.width for s in seals_like(Mm(40), Mm(52), Mm(7.4))]
    assert widths == sorted(widths, key=lambda w: abs(w - 7.4))
    both = seals_like(Mm(35), Mm(52), Mm(7))
    assert [s.verdict for s in both] == sorted((s.verdict for s in both), key=("fits", "marginal").index)


def test_a_whole_millimetre_is_not_taken_for_an_inch() -> None:
    assert inches_near(Mm(40)) is None
    assert inches_near(Mm(38.15)) == "1 1/2 in"
    assert inches_near(Mm(38.2)) is None


def test_an_inch_seal_is_guessed_at() -> None:
    slip = identify(shaft=38.1, bore=60.3, width=9.5)
    assert not slip.found
    assert "shaft 1 1/2 in" in slip.because
    assert "ask by its marks" in identify(shaft=43.6, bore=71.7, width=9).because
    assert inches_near(Mm(25.4)) == "1 in"
    assert inches_near(Mm(15.87)) == "5/8 in"


def test_limits_end_where_the_table_ends() -> None:
    assert limits_of(Mm(50)) == (-0.16, 0.039)
    assert limits_of(Mm(30)) == (-0.13, 0.033)
    assert limits_of(Mm(30.1)) == (-0.16, 0.039)
    assert limits_of(Mm(900)) == (0.0, 0.0)


@pytest.mark.parametrize(
    ("call", "word"),
    [
        (lambda: clearance_in_bore(Mm(-1), Mm(3)), "bore"),
        (lambda: clearance_on_shaft(Mm(0), Mm(3)), "shaft"),
        (lambda: lip_width(Mm(40), Mm(41)), "space"),
        (lambda: press_allowance(Mm(1e6), Mm(50)), "seal_outside"),
        (lambda: driver(bore=30, shaft=40), "space"),
        (lambda: driver(bore=60, shaft=38, lip=30), "lip"),
        (lambda: driver(bore=60, shaft=38, depth=-2), "depth"),
        (lambda: driver(bore=60, shaft=38, reach=9e9), "reach"),
        (lambda: identify(shaft=1, bore=47, width=7), "shaft"),
    ],
)
def test_impossible_seats_are_refused(call: Callable[[], object], word: str) -> None:
    with pytest.raises(BadInput, match=word):
        call()
