"""The rule run through futures: against a plain loop that shares nothing with it, and against small cases."""

from __future__ import annotations

import random
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchmarks.plain_loop import Future
from witnessmark.engines.dispatch import run
from witnessmark.engines.dispatch_model import Futures, Sessions, even, work_of
from witnessmark.engines.first_that_fits import NOTHING, empty_row, first_from, put

WEEK = 7 * 24 * 60


def sessions_of(*lengths: int) -> Sessions:
    starts = np.array([n * WEEK for n in range(len(lengths))], dtype=np.int32)
    return Sessions(starts, np.array(lengths, dtype=np.int32))


def made(seed: int, count: int, futures: int, weeks: int) -> tuple[list[dict[str, Any]], Sessions, Futures]:
    """Operations of every sort, with futures in which everything happens."""
    chance, draw = random.Random(seed), np.random.default_rng(seed)
    rows: list[dict[str, Any]] = []
    for n in range(count):
        row: dict[str, Any] = {"planned": chance.randint(1, 70), "hands": 1 + (chance.random() < 0.15)}
        row["before"] = sorted({chance.randrange(n) for _ in range(chance.randint(0, 2))}) if n else []
        row["needs"] = [chance.randrange(4)] if chance.random() < 0.2 else []
        row["more"] = chance.randint(1, 60)
        row["whole"] = chance.random() < 0.2
        row["long"] = not row["whole"] and chance.random() < 0.15
        row["planned"] *= 3 if row["long"] else 1
        rows.append(row)
    for n in range(count - 1):
        if chance.random() < 0.1 and not rows[n]["long"] and not rows[n + 1]["long"]:
            rows[n]["bound"] = [n + 1]
            rows[n + 1]["before"] = [n]
            rows[n + 1]["needs"] = []
    shape = (futures, count)
    extra = np.where(draw.random(shape) < 0.2, draw.integers(1, 90, shape), 0)
    return (
        rows,
        sessions_of(*(chance.choice((60, 100, 140)) for _ in range(weeks))),
        Futures(
            taken=draw.integers(1, 160, shape).astype(np.int32),
            extra=extra.astype(np.int32),
            wait=np.where(draw.random(shape) < 0.3, 9 * 24 * 60, 0).astype(np.int32),
            arrival=draw.integers(0, 5 * WEEK, (futures, 4)).astype(np.int32),
            held=(draw.random((futures, weeks)) < 0.8).astype(np.uint8),
            helped=(draw.random((futures, weeks)) < 0.4).astype(np.uint8),
            dry=np.ones((futures, weeks), dtype=np.uint8),
        ),
    )


@pytest.mark.parametrize("seed", range(12))
def test_it_ends_everything_when_a_plain_loop_of_the_same_rule_does(seed: int) -> None:
    rows, sessions, futures = made(seed, count=30, futures=6, weeks=60)
    usual = int(sessions.lengths.max())
    ran = run(work_of(rows, usual), sessions, futures)
    pairs = list(zip(sessions.starts.tolist(), sessions.lengths.tolist(), strict=True))
    for f in range(6):
        lists = {k: getattr(futures, k)[f].tolist() for k in futures._fields if k != "dry"}
        ended = Future(rows, pairs, **lists).run()
        got = {
            n: (int(s), int(m))
            for n, (s, m) in enumerate(zip(ran.session[f], ran.minute[f], strict=True))
            if s >= 0
        }
        assert got == ended


def test_without_any_spread_it_is_the_sum_of_what_is_planned_to_the_minute() -> None:
    rows = [{"planned": m, "before": [n - 1] if n else []} for n, m in enumerate((17, 23, 40, 5, 31))]
    ran = run(work_of(rows), sessions_of(60, 60, 60), even(work_of(rows), 3))
    assert ran.session.tolist() == [[0, 0, 1, 1, 2]]
    assert ran.minute.tolist() == [[17, 40, 40, 45, 31]]


def test_it_decides_on_what_is_planned_and_only_then_sees_what_it_takes() -> None:
    """Of two that fit by plan the first is begun, though only the second would in truth have been done."""
    work = work_of([{"planned": 50}, {"planned": 55}])
    futures = even(work, 2)._replace(taken=np.array([[90, 55]], dtype=np.int32))
    assert run(work, sessions_of(60, 120), futures).session.tolist() == [[1, 1]]
    assert run(work, sessions_of(60, 120), futures).minute.tolist() == [[30, 85]]


def test_what_cannot_be_put_down_is_ended_after_packing_up_time() -> None:
    work = work_of([{"planned": 50, "whole": True}, {"planned": 5}])
    futures = even(work, 2)._replace(taken=np.array([[90, 5]], dtype=np.int32))
    assert run(work, sessions_of(60, 60), futures).session.tolist() == [[0, 1]]


def test_hot_work_is_not_begun_where_its_watch_has_no_room() -> None:
    work = work_of([{"planned": 40}, {"planned": 30, "bound": [2]}, {"planned": 60, "before": [1]}], 100)
    ran = run(work, sessions_of(100, 100), even(work, 2))
    assert ran.session.tolist() == [[0, 1, 1]]


def test_two_pairs_of_hands_come_first_when_the_helper_is_there() -> None:
    work = work_of([{"planned": 50}, {"planned": 50, "hands": 2}])
    futures = even(work, 2)._replace(helped=np.array([[1, 0]], dtype=np.uint8))
    assert run(work, sessions_of(60, 60), futures).session.tolist() == [[1, 0]]


def test_what_it_turns_up_waits_for_its_part_and_holds_what_comes_after() -> None:
    work = work_of([{"planned": 20, "more": 30}, {"planned": 10, "before": [0]}, {"planned": 10}])
    futures = even(work, 3)._replace(
        extra=np.array([[30, 0, 0]], dtype=np.int32), wait=np.array([[8 * 24 * 60, 0, 0]], dtype=np.int32)
    )
    assert run(work, sessions_of(60, 60, 60), futures).session.tolist() == [[2, 2, 0]]


def test_what_waits_for_its_day_is_passed_over() -> None:
    work = work_of([{"planned": 20, "needs": [0]}, {"planned": 50}])
    futures = even(work, 2)._replace(arrival=np.array([[60]], dtype=np.int32))
    assert run(work, sessions_of(60, 60), futures).session.tolist() == [[1, 0]]


def test_clock_time_between_two_is_kept() -> None:
    """Eight days from the end of the one: the second session is too soon by a day."""
    work = work_of([{"planned": 20}, {"planned": 20, "before": [0], "lag": [8 * 24 * 60]}])
    assert run(work, sessions_of(60, 60, 60), even(work, 3)).session.tolist() == [[0, 2]]


def test_rain_puts_off_what_must_be_dry() -> None:
    work = work_of([{"planned": 20, "dry": True}, {"planned": 20}])
    futures = even(work, 2)._replace(dry=np.array([[0, 1]], dtype=np.uint8))
    assert run(work, sessions_of(60, 60), futures).session.tolist() == [[1, 0]]


def test_what_no_session_is_left_for_is_never_ended() -> None:
    work = work_of([{"planned": 50}, {"planned": 50}])
    assert run(work, sessions_of(60), even(work, 1)).session.tolist() == [[0, -1]]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(1, 40), min_size=1, max_size=40), st.data())
def test_the_first_that_fits_is_the_first_that_fits(numbers: list[int], data: st.DataObject) -> None:
    row = empty_row(len(numbers))
    kept = list(numbers)
    for at, number in enumerate(numbers):
        put(row, at, number)
    for _ in range(6):
        out = data.draw(st.integers(0, len(numbers) - 1))
        put(row, out, NOTHING)
        kept[out] = NOTHING
        start, most = data.draw(st.integers(0, len(numbers))), data.draw(st.integers(0, 45))
        wanted = next((n for n in range(start, len(kept)) if kept[n] <= most), -1)
        assert first_from(row, start, most) == wanted
