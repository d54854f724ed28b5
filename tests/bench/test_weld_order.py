"""The order of short runs: the warmth is right by three other routes, and the search beats its seeds."""

import itertools
import time

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import weld_order
from witnessmark.bench.weld_order import Array, Plate, Runs
from witnessmark.ground.errors import BadInput

MILD = Plate(thickness=1.0, conductivity=50.67, density=7850.0, heat=487.6, loss=10.0)


def patch(run: float = 25, pause: float = 10, wide: float = 300, deep: float = 200) -> Runs:
    """Runs all round a patch."""
    starts, ends = weld_order.along([(0, 0), (wide, 0), (wide, deep), (0, deep)], run, closed=True)
    return Runs(starts=starts, ends=ends, energy=74.0, speed=7.92, pause=pause)


def test_the_heat_put_in_stays_in_but_for_what_the_faces_lose() -> None:
    """Summed over the plate, a dab's warmth holds its energy, less the share lost by then."""
    step = 1.0
    x = np.arange(-150, 150, step)
    away = np.hypot(x[:, None], x[None, :])
    warm = weld_order.rise(MILD, 1000.0, away, 30.0)
    held = float(warm.sum()) * step**2 * MILD.density * MILD.heat * 1e-9 * MILD.thickness
    assert held == pytest.approx(1000 * np.exp(-MILD.cooling * 30), rel=1e-6)


def test_dabs_in_a_long_row_come_to_the_steady_field_of_a_moving_line() -> None:
    """Against the closed form with the Bessel function, for a plate that loses heat from both faces."""
    special = pytest.importorskip("scipy.special")
    power, speed, a = 600.0, 8.0, MILD.diffusivity
    beside = np.array([[-20.0, 6.0], [-10.0, 10.0], [0.0, 8.0], [-40.0, 12.0]])
    steps = 400_000
    ages = (np.arange(steps) + 0.5) / steps * 400.0
    ours = [
        float(weld_order.rise(MILD, power * 400.0 / steps, np.hypot(x + speed * ages, y), ages).sum())
        for x, y in beside
    ]
    slowed = np.sqrt((speed / (2 * a)) ** 2 + MILD.cooling / a)
    far = np.hypot(beside[:, 0], beside[:, 1])
    base = power / (2 * np.pi * MILD.conductivity / 1000 * MILD.thickness)
    steady = base * np.exp(-speed * beside[:, 0] / (2 * a)) * special.k0(slowed * far)
    assert ours == pytest.approx(list(steady), rel=2e-3)


def on_a_grid(runs: Runs, order: list[int], step: float, margin: float) -> list[float]:
    """A second route: the plate cut into cells, heat carried from cell to cell, the arc moved along each run.

    Gives the rise that each run meets, on average along it, in that order.
    """
    a, cooling = MILD.diffusivity, MILD.cooling
    every = np.array([*runs.starts, *runs.ends])
    low, high = every.min(axis=0) - margin, every.max(axis=0) + margin
    shape = tuple(int(n) for n in np.ceil((high - low) / step))
    warm = np.zeros(shape)
    tick = 0.2 * step**2 / a
    content = MILD.density * MILD.heat * 1e-9 * MILD.thickness * step**2
    took, met = runs.length / runs.speed, []

    def cell(point: Array) -> tuple[int, int]:
        i, j = np.floor((point - low) / step).astype(int)
        return int(i), int(j)

    for run in order:
        start, end = np.array(runs.starts[run]), np.array(runs.ends[run])
        shares = (np.arange(12) + 0.5) / 12
        met.append(float(np.mean([warm[cell(start + (end - start) * s)] for s in shares])))
        clock = 0.0
        while clock < runs.cadence - 1e-9:
            now = min(tick, runs.cadence - clock)
            edge = np.pad(warm, 1, mode="edge")
            spread = edge[2:, 1:-1] + edge[:-2, 1:-1] + edge[1:-1, 2:] + edge[1:-1, :-2] - 4 * warm
            warm = warm + now * (a / step**2 * spread - cooling * warm)
            if clock < took:
                burning = min(now, took - clock)
                at = start + (end - start) * min(1.0, (clock + burning / 2) / took)
                warm[cell(at)] += runs.energy * runs.speed * burning / content
            clock += now
    return met


@pytest.mark.parametrize("order", [[0, 1, 2, 3, 4, 5], [0, 2, 4, 1, 3, 5], [5, 0, 3, 1, 4, 2]])
def test_heat_carried_from_cell_to_cell_gives_the_same_warmth(order: list[int]) -> None:
    starts, ends = weld_order.along([(0, 0), (75, 0), (75, 75)], 25, closed=False)
    runs = Runs(starts=starts, ends=ends, energy=74.0, speed=7.92, pause=8.0)
    ours = weld_order.met(weld_order.kernel(MILD, runs), order)
    cells = on_a_grid(runs, order, 1.5, 90.0)
    assert list(ours) == pytest.approx(cells, abs=max(cells) * 0.02)


def test_the_table_is_the_plain_double_sum() -> None:
    """Added up again, pair by pair and step by step, without the table."""
    runs = patch(run=50, pause=6)
    order = [3, 0, 7, 12, 5, 9, 1, 14, 16, 2, 4, 6, 8, 10, 11, 13, 15, 17, 18, 19][: len(runs.starts)]
    shares = [(k + 0.5) / weld_order.STEPS for k in range(weld_order.STEPS)]

    def place(run: int, share: float) -> Array:
        a, b = np.array(runs.starts[run]), np.array(runs.ends[run])
        return np.asarray(a + (b - a) * share)

    dab = runs.energy * runs.length / weld_order.STEPS
    plain = []
    for turn, run in enumerate(order):
        total = 0.0
        for before in range(turn):
            for s, t in itertools.product(shares, shares):
                gap = float(np.hypot(*(place(run, s) - place(order[before], t))))
                age = (turn - before) * runs.cadence - t * runs.length / runs.speed
                total += float(weld_order.rise(MILD, dab, gap, age)) / len(shares)
        plain.append(total)
    assert list(weld_order.met(weld_order.kernel(MILD, runs), order)) == pytest.approx(plain, rel=1e-9)


@given(st.integers(2, 90))
def test_every_named_order_lays_each_run_once(count: int) -> None:
    for name, order in weld_order.named_orders(count).items():
        assert sorted(order) == list(range(count)), name


def test_names_mean_what_they_say() -> None:
    named = weld_order.named_orders(16)
    assert named["skip"][:8] == (0, 2, 4, 6, 8, 10, 12, 14)
    assert named["bisecting"][:5] == (0, 8, 4, 12, 2)
    assert weld_order.named_orders(7)["opposite sides"] == (0, 4, 1, 5, 2, 6, 3)


@pytest.mark.parametrize("pause", [4, 12, 30])
def test_the_search_never_ends_worse_than_it_began(pause: float) -> None:
    table = weld_order.kernel(MILD, patch(pause=pause))
    seeds = list(weld_order.named_orders(table.shape[0]).values())
    best = weld_order.coolest(table, seeds)
    assert sorted(best) == list(range(table.shape[0]))
    ours = float(weld_order.burden(weld_order.met(table, best)))
    assert ours <= min(float(weld_order.burden(weld_order.met(table, seed))) for seed in seeds) + 1e-9
    assert weld_order.coolest(table, seeds) == best


def test_for_few_runs_the_search_finds_what_trying_every_order_finds() -> None:
    starts, ends = weld_order.along([(0, 0), (140, 0)], 20, closed=False)
    table = weld_order.kernel(MILD, Runs(starts=starts, ends=ends, energy=74.0, speed=7.92, pause=8.0))
    every = np.array(list(itertools.permutations(range(7))))
    least = float(weld_order.burden(weld_order.met_by_all(table, every)).min())
    best = weld_order.coolest(table, list(weld_order.named_orders(7).values()))
    assert float(weld_order.burden(weld_order.met(table, best))) <= least * 1.02


def test_without_work_left_the_best_seed_is_kept() -> None:
    table = weld_order.kernel(MILD, patch(run=50))
    seeds = list(weld_order.named_orders(table.shape[0]).values())
    best = min(seeds, key=lambda s: (float(weld_order.burden(weld_order.met(table, s))), s))
    assert weld_order.coolest(table, seeds, work=0) == best


def test_forty_runs_with_the_search_in_two_seconds() -> None:
    start = time.process_time()
    table = weld_order.kernel(MILD, patch())
    weld_order.coolest(table, list(weld_order.named_orders(table.shape[0]).values()))
    assert table.shape[0] == 40
    assert time.process_time() - start < 2


def test_waiting_costs_time_only_where_the_metal_is_warm() -> None:
    runs = patch()
    named = weld_order.named_orders(len(runs.starts))
    straight = len(runs.starts) * runs.cadence - runs.pause
    took = {
        name: weld_order.seconds_waiting(MILD, runs, named[name], 40.0)
        for name in ("skip", "one after another")
    }
    assert took["skip"] == pytest.approx(straight)
    assert took["one after another"] > 3 * straight


def test_a_seam_is_cut_into_like_runs_that_join() -> None:
    starts, ends = weld_order.along([(0, 0), (100, 0), (100, 60)], 24, closed=True)
    assert all(end == start for end, start in zip(ends, [*starts[1:], starts[0]], strict=True))
    lengths = [float(np.hypot(b[0] - a[0], b[1] - a[1])) for a, b in zip(starts, ends, strict=True)]
    assert min(lengths) > 18
    assert max(lengths) < 31


def test_a_moment_before_the_heat_is_refused() -> None:
    with pytest.raises(BadInput, match="before the heat"):
        weld_order.rise(MILD, 100.0, 5.0, np.array([1.0, 0.0]))


@pytest.mark.parametrize(
    ("runs", "plate"),
    [
        (patch(run=190, wide=20, deep=20), MILD),
        (patch(run=5, wide=900, deep=900), MILD),
        (patch(pause=0.1), MILD),
        (patch(), Plate(thickness=8.0, conductivity=50.0, density=7850.0, heat=490.0, loss=10.0)),
        (patch(), Plate(thickness=1.0, conductivity=50.0, density=7850.0, heat=490.0, loss=900.0)),
    ],
)
def test_what_the_reckoning_does_not_hold_for_is_refused(runs: Runs, plate: Plate) -> None:
    if len(runs.starts) == 4:
        runs = Runs(starts=runs.starts[:1], ends=runs.ends[:1], energy=74.0, speed=7.92, pause=10.0)
    with pytest.raises(BadInput):
        weld_order.demand_runs(plate, runs)
