"""The order of short runs along a seam: which order meets the coolest metal.

Heat of instantaneous lines through a thin plate that loses heat from both faces, superposed and moved
along each run in small steps. It says how warm the metal is where a run is struck; it does not say
how far the panel will move.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import demand_range

Array: TypeAlias = NDArray[np.float64]
Order: TypeAlias = tuple[int, ...]

STEPS = 6
MOST_RUNS = 120
WORK = 40_000_000
CROWD = 4_000_000


class Plate(Struct, frozen=True, kw_only=True):
    """The plate.

    thickness     mm
    conductivity  W/(m·K)
    density       kg/m³
    heat          J/(kg·K)
    loss          W/(m²·K)  of each face
    """

    thickness: float
    conductivity: float
    density: float
    heat: float
    loss: float

    @property
    def diffusivity(self) -> float:
        """mm²/s."""
        return self.conductivity / (self.density * self.heat) * 1e6

    @property
    def cooling(self) -> float:
        """1/s, by both faces."""
        return 2 * self.loss / (self.density * self.heat * self.thickness / 1000)


class Runs(Struct, frozen=True, kw_only=True):
    """Short runs along a seam, and how they are laid.

    starts, ends  mm    (x, y) of each, in the direction that they are laid
    energy        J/mm  that stays in the plate
    speed         mm/s
    pause         s     from the end of one run to the start of the next
    """

    starts: tuple[tuple[float, float], ...]
    ends: tuple[tuple[float, float], ...]
    energy: float
    speed: float
    pause: float

    @property
    def length(self) -> float:
        """mm, of one run."""
        (x1, y1), (x2, y2) = self.starts[0], self.ends[0]
        return float(np.hypot(x2 - x1, y2 - y1))

    @property
    def cadence(self) -> float:
        """s, from one start to the next."""
        return self.length / self.speed + self.pause


def rise(plate: Plate, energy: float, distance: Array | float, age: Array | float) -> Array:
    """How far one dab of heat, put through the whole thickness at once, has warmed a place.

    Takes
        plate     Plate
        energy    J    of the dab
        distance  mm   from it; an array is welcome
        age       s    since it; an array is welcome
    Gives
        K
    Refuses
        ages that are not above 0
    Caution
        hot-work
    Source
        instant-line-source
    Example
        >>> mild = Plate(thickness=1.0, conductivity=50.0, density=7850.0, heat=490.0, loss=10.0)
        >>> round(float(rise(mild, 1000.0, 20.0, 10.0)), 1)
        70.0
    """
    old = np.asarray(age, dtype=float)
    if not np.all(old > 0):
        raise BadInput(
            given="a moment before the heat", holds="an age above 0 s", do="Ask for a later moment."
        )
    spread = 4 * plate.diffusivity * old
    peak = energy / (plate.density * plate.heat * 1e-9 * plate.thickness * np.pi * spread)
    away = np.asarray(distance, dtype=float)
    return np.asarray(peak * np.exp(-(away**2) / spread - plate.cooling * old))


def demand_runs(plate: Plate, runs: Runs) -> None:
    """Refuse what the reckoning does not hold for."""
    demand_range("number of runs", len(runs.starts), "", 2, MOST_RUNS, "Make the runs longer.")
    demand_range("thickness", plate.thickness, "mm", 0.4, 6, "Heat is taken as even through the plate.")
    demand_range("loss", plate.loss, "W/(m²·K)", 0, 200, "Still air takes 7 to 15.")
    demand_range("run", runs.length, "mm", 2, 200, "Short runs are 10 to 40 mm.")
    demand_range("pause", runs.pause, "s", 0.5, 3600, "Give the seconds between runs.")
    demand_range("heat", runs.energy, "J/mm", 1, 2000, "Thin sheet takes 40 to 200 J/mm.")
    demand_range("speed", runs.speed, "mm/s", 1, 50, "By hand 3 to 12 mm/s.")


def kernel(plate: Plate, runs: Runs) -> Array:
    """Rise that run i meets, on average along it, when run j was struck m runs before: K[i, j, m].

    m runs from 0 (empty) to one less than the number of runs. Each run is laid in small steps.
    """
    n = len(runs.starts)
    starts, ends = np.array(runs.starts), np.array(runs.ends)
    shares = (np.arange(STEPS) + 0.5) / STEPS
    places = starts[:, None, :] + (ends - starts)[:, None, :] * shares[None, :, None]
    gaps = places[:, None, :, None, :] - places[None, :, None, :, :]
    squares = (gaps**2).sum(axis=-1)
    laid = shares * runs.length / runs.speed
    found = np.zeros((n, n, n))
    dab = runs.energy * runs.length / STEPS
    for m in range(1, n):
        ages = m * runs.cadence - laid
        warm = rise(plate, dab, np.sqrt(squares), ages[None, None, None, :])
        found[:, :, m] = warm.sum(axis=3).mean(axis=2)
    return found


def met(table: Array, order: Sequence[int]) -> Array:
    """The rise that each run of an order meets, in that order; K."""
    return np.asarray(met_by_all(table, np.array([order]))[0])


def met_by_all(table: Array, orders: NDArray[np.int64]) -> Array:
    """The same for many orders at once: one row for each."""
    n = orders.shape[1]
    later, earlier = np.tril_indices(n, -1)
    rises = table[orders[:, later], orders[:, earlier], later - earlier]
    bounds = np.concatenate(([0], np.cumsum(np.arange(1, n))[:-1]))
    summed = np.add.reduceat(rises, bounds, axis=1)
    return np.concatenate([np.zeros((len(orders), 1)), summed], axis=1)


def burden(rises: Array) -> Array:
    """What is made small: greatest and mean rise together."""
    return np.asarray(rises.max(axis=-1) + rises.mean(axis=-1))


def named_orders(count: int) -> Mapping[str, Order]:
    """The orders that have names, for so many runs.

    >>> named_orders(8)["every second, then fill"]
    (0, 2, 4, 6, 1, 3, 5, 7)
    >>> named_orders(8)["opposite sides"]
    (0, 4, 1, 5, 2, 6, 3, 7)
    """
    half = (count + 1) // 2
    stride = max(2, round(count / 8))
    opposite = [i for pair in zip(range(half), range(half, 2 * half), strict=True) for i in pair if i < count]
    return {
        "one after another": tuple(range(count)),
        "skip": tuple(i for first in range(stride) for i in range(first, count, stride)),
        "every second, then fill": (*range(0, count, 2), *range(1, count, 2)),
        "bisecting": _bisecting(count),
        "opposite sides": tuple(opposite),
    }


def _bisecting(count: int) -> Order:
    """0, the middle, the quarters, the eighths: each in the middle of what is still long."""
    bits = max(1, (count - 1).bit_length())
    turned = (int(f"{i:0{bits}b}"[::-1], 2) for i in range(2**bits))
    return tuple(i for i in turned if i < count)


def coolest(table: Array, seeds: Sequence[Order], work: int = WORK) -> Order:
    """The best order found from the seeds by swapping two runs or moving one, until nothing helps.

    Work is counted, never timed: the same seeds give the same order. Not proven to be the best of all.
    """
    starts = sorted({tuple(s) for s in seeds}, key=lambda s: (float(burden(met(table, s))), s))
    n = table.shape[0]
    pairs = n * (n - 1) // 2
    swaps = _moves(n)
    swaps = swaps[:: -(-len(swaps) * pairs // CROWD)]
    each = len(swaps) * pairs
    best, value = starts[0], float(burden(met(table, starts[0])))
    left = work
    for seed in starts:
        here, here_value = seed, float(burden(met(table, seed)))
        while left >= each:
            left -= each
            around = np.array(here)[swaps]
            values = burden(met_by_all(table, around))
            pick = int(values.argmin())
            if values[pick] >= here_value - 1e-9:
                break
            here, here_value = tuple(int(i) for i in around[pick]), float(values[pick])
        if here_value < value - 1e-9:
            best, value = here, here_value
    return best


def _moves(count: int) -> NDArray[np.int64]:
    """Every swap of two places and every move of one to another place, as rows of places."""
    rows = []
    for a in range(count):
        for b in range(count):
            if a < b:
                swap = list(range(count))
                swap[a], swap[b] = swap[b], swap[a]
                rows.append(swap)
            if abs(a - b) > 1:
                moved = list(range(count))
                moved.insert(b, moved.pop(a))
                rows.append(moved)
    return np.array(rows, dtype=np.int64)


def seconds_waiting(plate: Plate, runs: Runs, order: Sequence[int], limit: float, step: float = 5.0) -> float:
    """How long an order takes when no run is struck where the metal is warmer than a limit.

    Takes
        plate  Plate
        runs   Runs
        order  list  of run numbers
        limit  K     above the air
        step   s     looked at again this often
    Gives
        s  from the first start to the last end
    """
    starts, ends = np.array(runs.starts), np.array(runs.ends)
    shares = (np.arange(STEPS) + 0.5) / STEPS
    places = starts[:, None, :] + (ends - starts)[:, None, :] * shares[None, :, None]
    laid = shares * runs.length / runs.speed
    took, dab = runs.length / runs.speed, runs.energy * runs.length / STEPS
    now, when = 0.0, np.empty(0)
    where = np.empty((0, 2))
    for run in order:
        gap = np.sqrt(((places[run][:, None, :] - where[None, :, :]) ** 2).sum(axis=-1))
        while len(where) and float(rise(plate, dab, gap, now - when[None, :]).sum(axis=1).mean()) > limit:
            now += step
        where = np.concatenate([where, places[run]])
        when = np.concatenate([when, now + laid])
        now += took + runs.pause
    return now - runs.pause


def along(points: Sequence[tuple[float, float]], run: float, *, closed: bool) -> tuple[
    tuple[tuple[float, float], ...], tuple[tuple[float, float], ...]
]:  # fmt: skip
    """A seam of straight pieces cut into like runs as near as may be to a wished length: starts and ends.

    No run bends round a corner.

    >>> starts, ends = along([(0, 0), (60, 0)], 20, closed=False)
    >>> starts, ends
    (((0.0, 0.0), (20.0, 0.0), (40.0, 0.0)), ((20.0, 0.0), (40.0, 0.0), (60.0, 0.0)))
    """
    corners = np.array([*points, points[0]] if closed else points, dtype=float)
    starts, ends = [], []
    for a, b in pairwise(corners):
        long = float(np.hypot(*(b - a)))
        pieces = max(1, round(long / run))
        for i in range(pieces):
            p, q = a + (b - a) * i / pieces, a + (b - a) * (i + 1) / pieces
            starts.append((float(p[0]), float(p[1])))
            ends.append((float(q[0]), float(q[1])))
    return tuple(starts), tuple(ends)
