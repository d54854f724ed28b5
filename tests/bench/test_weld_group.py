"""A weld group: what its lines carry holds the force, whatever the lines and wherever it pulls."""

import math
import time

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from witnessmark.bench import weld_group
from witnessmark.bench.weld_group import Group, Line, Load, Vector
from witnessmark.ground.errors import BadInput

places = st.tuples(st.floats(-200, 200), st.floats(-200, 200))
forces = st.tuples(*[st.floats(-20_000, 20_000)] * 3)
points = st.tuples(*[st.floats(-300, 300)] * 3)


@st.composite
def groups(draw: st.DrawFn) -> Group:
    """Random lines, not all on one straight line."""
    lines: list[Line] = draw(st.lists(st.tuples(places, places), min_size=2, max_size=7))
    assume(all(math.dist(a, b) > 5 for a, b in lines))
    assume(len({frozenset(line) for line in lines}) == len(lines))
    group = weld_group.group_of(lines)
    assume(group.along_x * group.along_y - group.mixed**2 > 1e-3 * group.polar**2)
    return group


def gathered(group: Group, load: Load) -> tuple[Vector, Vector]:
    """Force and moment about the centre that the lines give back, by Simpson's rule (exact here)."""
    force, moment = [0.0] * 3, [0.0] * 3
    for a, b in group.lines:
        long = math.dist(a, b)
        for share, weight in ((0.0, 1 / 6), (0.5, 4 / 6), (1.0, 1 / 6)):
            x, y = a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
            fx, fy, fz = weld_group.field_at(group, load, x, y)
            dx, dy, ds = x - group.x, y - group.y, long * weight
            for i, part in enumerate((fx, fy, fz)):
                force[i] += part * ds
            for i, part in enumerate((dy * fz, -dx * fz, dx * fy - dy * fx)):
                moment[i] += part * ds
    return (force[0], force[1], force[2]), (moment[0], moment[1], moment[2])


@given(groups(), forces, points)
def test_the_lines_hold_the_force_and_its_turning(group: Group, force: Vector, at: Vector) -> None:
    load = weld_group.load_on(group, force, at)
    held, turned = gathered(group, load)
    size = 1 + max(map(abs, force))
    assert held == pytest.approx(force, abs=1e-6 * size)
    assert turned == pytest.approx(load.moment, abs=1e-6 * size * 500)


def turned(group: Group, angle: float) -> Group:
    c, s = math.cos(angle), math.sin(angle)

    def round_about(p: tuple[float, float]) -> tuple[float, float]:
        return p[0] * c - p[1] * s, p[0] * s + p[1] * c

    return weld_group.group_of([(round_about(a), round_about(b)) for a, b in group.lines])


@given(groups(), forces, points, st.floats(0, 6.28))
def test_turning_everything_changes_no_figure(group: Group, force: Vector, at: Vector, angle: float) -> None:
    c, s = math.cos(angle), math.sin(angle)

    def both(v: Vector) -> Vector:
        return v[0] * c - v[1] * s, v[0] * s + v[1] * c, v[2]

    other = turned(group, angle)
    mine = weld_group.load_on(group, force, at)
    theirs = weld_group.load_on(other, both(force), both(at))
    for line, other_line in zip(group.lines, other.lines, strict=True):
        ours = weld_group.carried_at(group, mine, line, 1)
        there = weld_group.carried_at(other, theirs, other_line, 1)
        assert there.vector == pytest.approx(ours.vector, rel=1e-6, abs=1e-6)
        assert there.directional == pytest.approx(ours.directional, rel=1e-6, abs=1e-6)


@given(groups(), forces, points)
def test_twice_the_force_is_twice_the_figure_and_no_inner_point_carries_more(
    group: Group, force: Vector, at: Vector
) -> None:
    load = weld_group.load_on(group, force, at)
    double = weld_group.load_on(group, (2 * force[0], 2 * force[1], 2 * force[2]), at)
    for line in group.lines:
        ends = [weld_group.carried_at(group, load, line, e).vector for e in (0, 1)]
        assert weld_group.carried_at(group, double, line, 0).vector == pytest.approx(2 * ends[0], abs=1e-6)
        (x1, y1), (x2, y2) = line
        inner = math.hypot(*weld_group.field_at(group, load, (x1 + 2 * x2) / 3, (y1 + 2 * y2) / 3))
        assert inner <= max(ends) + 1e-6


@given(groups())
def test_principal_moments_keep_the_sum_and_bound_both(group: Group) -> None:
    great, small, turn = group.principal()
    assert great + small == pytest.approx(group.polar)
    assert great >= max(group.along_x, group.along_y) - 1e-6 * great
    straight = turned(group, -math.radians(turn))
    assert straight.mixed == pytest.approx(0, abs=1e-6 * group.polar)
    assert straight.along_x == pytest.approx(great, rel=1e-6)


def test_the_directional_figure_takes_the_worse_side() -> None:
    """By hand: √(σ² + 3(τ⊥² + τ∥²)) on a throat at 45°, both signs of the side."""
    along, across, out = 30.0, 40.0, -25.0
    sides = []
    for side in (1, -1):
        pull, slide = (across + side * out) / math.sqrt(2), (across - side * out) / math.sqrt(2)
        sides.append(math.sqrt(pull**2 + 3 * (slide**2 + along**2)))
    assert weld_group.Carried(along, across, out).directional == pytest.approx(max(sides))
    assert weld_group.Carried(0, 10, -20).throat_pull == pytest.approx(30 / math.sqrt(2))


LONE = weld_group.group_of([((0.0, 0.0), (60.0, 80.0))])


def test_a_lone_line_bears_bending_along_itself() -> None:
    load = weld_group.load_on(LONE, (0, 0, 1000), (30 + 30, 40 + 40, 0))
    held, turned_by = gathered(LONE, load)
    assert held == pytest.approx((0, 0, 1000), abs=1e-6)
    assert turned_by == pytest.approx(load.moment, abs=1e-3)


@pytest.mark.parametrize("end", [(80.0, 0.0), (0.0, 80.0), (60.0, 80.0)])
def test_a_lone_line_is_not_rolled_about_itself(end: tuple[float, float]) -> None:
    group = weld_group.group_of([((0.0, 0.0), end)])
    beside = (group.x - end[1], group.y + end[0], 0.0)
    load = weld_group.load_on(group, (0, 0, 1000), beside)
    with pytest.raises(BadInput, match="no strength against being rolled"):
        weld_group.field_at(group, load, 0.0, 0.0)


@pytest.mark.parametrize(
    "lines",
    [
        [],
        [((0.0, 0.0), (0.0, 0.05))],
        [((0.0, 0.0), (0.0, 50_000.0))],
        [((0.0, 0.0), (float("nan"), 10.0))],
        [((0.0, 0.0), (0.0, 50.0)), ((0.0, 50.0), (0.0, 0.0))],
    ],
)
def test_lines_that_cannot_be_are_refused(lines: list[Line]) -> None:
    with pytest.raises(BadInput):
        weld_group.group_of(lines)


def test_a_hundred_lines_in_a_hundredth_of_a_second() -> None:
    lines = [((i * 7.0 % 90, i * 3.0), (i * 5.0 % 70, 40 + i * 2.0)) for i in range(100)]
    took = []
    for _ in range(3):
        start = time.perf_counter()
        group = weld_group.group_of(lines)
        load = weld_group.load_on(group, (1000, -5000, 300), (200, 50, 40))
        ends = [weld_group.carried_at(group, load, line, end) for line in group.lines for end in (0, 1)]
        took.append(time.perf_counter() - start)
    assert len(ends) == 200
    assert min(took) < 0.01


def test_a_weld_library_agrees_on_a_box() -> None:
    """The library cuts lines into patches and reads each in its middle: a little below the ends."""
    ezweld = pytest.importorskip("ezweld")
    box = [((0, 0), (60, 0)), ((60, 0), (60, 100)), ((60, 100), (0, 100)), ((0, 100), (0, 0))]
    theirs = ezweld.WeldGroup(PATCH_SIZE=0.5)
    for a, b in box:
        theirs.add_line(start=list(a), end=list(b), thickness=1)
    group = weld_group.group_of([((float(a), float(b)), (float(c), float(d))) for (a, b), (c, d) in box])
    load = weld_group.load_on(group, (1000.0, -4000.0, 2500.0), (150.0, 90.0, 70.0))
    (fx, fy, fz), (mx, my, mz) = load.force, load.moment
    found = theirs.solve(Vx=fx, Vy=fy, Vz=fz, Mx=mx, My=my, Mz=mz)
    ours = max(weld_group.carried_at(group, load, line, end).vector for line in group.lines for end in (0, 1))
    assert float(found["v_resultant"].max()) == pytest.approx(ours, rel=0.02)
