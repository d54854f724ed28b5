"""Looking ahead: the futures drawn, the rule run through them, and what is told of it."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from datetime import date, datetime, timedelta
from math import exp, log
from typing import Any

import numpy as np
import pytest
from scipy import stats

from benchmarks.calibration import coverage, naive_coverage
from tests.building import described, state_of
from witnessmark.engines.dispatch import run
from witnessmark.engines.dispatch_model import Sessions, work_of
from witnessmark.jobs.findings import LEAST_NEVER_APART, beta_of
from witnessmark.jobs.operation import Job, Minutes, Operation
from witnessmark.journal.facts import Came, Found, Ordered, TookOff
from witnessmark.plan.arrivals import LATE, LATE_BY, Lateness, Thing, awaited, lateness
from witnessmark.plan.coming import Coming
from witnessmark.plan.futures import Drawn, Odds, draw, owners
from witnessmark.plan.outlook import Outlook, outlook
from witnessmark.plan.overrun import Overrun, learned
from witnessmark.plan.ranking import ranked
from witnessmark.state.turned_up import FIGHTS, NEVER_APART
from witnessmark.vehicle.things import Joint

SURE = Odds(
    overrun=Overrun(), findings={}, least={}, held=(1e9, 1e-9), helped=(1e-9, 1e9),
    lateness=Lateness(LATE, LATE_BY),
)  # fmt: skip
NOW = datetime(2026, 3, 7, 22, 0)


def operation(number: int, likely: float, **more: Any) -> Operation:
    minutes = more.pop("minutes", Minutes(likely, likely, likely))
    fixed: dict[str, Any] = {"what": "undo", "sort": "open", "job": "renew/x"}
    return Operation(id=f"open/{number}", name=f"{number}", minutes=minutes, **fixed, **more)


def weekly(number: int, minutes: int = 90) -> tuple[Coming, ...]:
    return tuple(Coming(date(2026, 3, 14) + timedelta(7 * n), 540, minutes) for n in range(number))


def drawn(operations: list[Operation], odds: Odds = SURE, samples: int = 4, seed: int = 1) -> Drawn:
    return draw(operations, [], [False] * 9, odds, np.random.default_rng(seed), samples=samples)


def looked(operations: list[Operation], samples: int = 2_000, **more: Any) -> Outlook:
    job = Job(id="renew/x", job="renew", name="x", operations=tuple(operations))
    order = ranked(state_of(), [job], [])
    every = frozenset(o.id for o in operations)
    return outlook(
        state_of(), order, {"road": every}, weekly(100), "by your calendar", now=NOW,
        sources=np.random.default_rng(5).spawn(2), samples=samples, **more,
    )  # fmt: skip


# ---- what is drawn


def test_without_any_spread_it_is_the_plain_walk_to_the_minute() -> None:
    """Eight operations in order, sixty hands-on minutes a week: packed one after another by hand."""
    likely = [25, 30, 10, 45, 20, 60, 5, 40]
    operations = [operation(n, m, after=(f"open/{n - 1}",) if n else ()) for n, m in enumerate(likely)]
    future = drawn(operations)
    rows = [{"planned": m, "before": [n - 1] if n else []} for n, m in enumerate(likely)]
    calendar = Sessions(np.arange(9, dtype=np.int32) * 10080, np.full(9, 60, dtype=np.int32))
    ran = run(work_of(rows, 60), calendar, future.futures)
    for row in range(4):
        assert ran.session[row].tolist() == [0, 0, 1, 1, 2, 3, 4, 4]
        assert ran.minute[row].tolist() == [25, 55, 10, 55, 20, 60, 5, 45]


def test_the_three_guesses_come_out_as_the_tenth_the_half_and_the_ninetieth() -> None:
    got = drawn([operation(1, 0, minutes=Minutes(43, 120, 335))], samples=20_000).futures.taken[:, 0]
    assert np.quantile(got, (0.1, 0.5, 0.9)) == pytest.approx((43, 120, 335), rel=0.04)


def test_parts_of_one_guess_share_their_luck() -> None:
    parts = [operation(n, 0, minutes=Minutes(10, 20, 80, guess="x")) for n in range(2)]
    taken = drawn(parts, samples=50).futures.taken
    assert (taken[:, 0] == taken[:, 1]).all()


def test_five_minutes_on_a_joint_not_apart_for_decades_take_two_hours_once_in_a_hundred_at_least() -> None:
    """Known of the trade (common practice, no source); even where a record was lucky three hundred times."""
    lucky = Odds(
        overrun=Overrun(), findings={NEVER_APART: (2.0, 318.0)}, least={NEVER_APART: LEAST_NEVER_APART},
        held=(9, 1), helped=(1, 9), lateness=Lateness(LATE, LATE_BY),
    )  # fmt: skip
    asked = operation(1, 0, minutes=Minutes(3, 5, 10), finding=0.1, turns_up=NEVER_APART)
    futures = drawn([asked], lucky, samples=40_000).futures
    assert (futures.taken[:, 0] + futures.extra[:, 0] >= 120).mean() >= 0.01


def test_a_finding_brings_its_own_minutes_and_stretches_nothing() -> None:
    often = Odds(
        overrun=Overrun(), findings={FIGHTS: (1e6, 1e6)}, least={}, held=(9, 1), helped=(1, 9),
        lateness=Lateness(LATE, LATE_BY),
    )  # fmt: skip
    asked = operation(1, 7, finding=0.5, turns_up=FIGHTS)
    futures = drawn([asked], often, samples=4_000).futures
    assert (futures.taken == 7).all()
    assert (futures.extra > 0).mean() == pytest.approx(0.5, abs=0.03)
    assert np.median(futures.extra[futures.extra > 0]) == pytest.approx(30, rel=0.1)


def test_openings_that_turned_something_up_move_the_chance() -> None:
    joints = [Joint(name=f"bolt {n}", kind="plain-fixing") for n in range(6)]
    opened = [TookOff(at=(j.name,)) for j in joints]
    found = [Found(at=(f"bolt {n}",), condition="sheared") for n in range(3)]
    state = state_of(described(*joints), *opened, *found)
    assert beta_of(state, NEVER_APART) == pytest.approx((2 + 3, 18 + 3))


# ---- the owner


def test_the_owners_factor_is_students_t_as_scipy_has_it() -> None:
    """The predictive of a normal-inverse-gamma is t with 2 alpha degrees of freedom."""
    known = learned([0.4, 0.9, 0.2, 0.7])
    mean, spread = owners(known, np.random.default_rng(3), 200_000)
    future = mean + spread * np.random.default_rng(4).standard_normal(200_000)
    scale = (known.scale * (known.weight + 1) / (known.shape * known.weight)) ** 0.5
    law = stats.t(2 * known.shape, loc=known.centre, scale=scale)
    for part in (0.1, 0.5, 0.9):
        assert np.quantile(future, part) == pytest.approx(law.ppf(part), abs=0.01)
    assert known.factor_high == pytest.approx(exp(law.ppf(0.9)), rel=1e-6)


def test_what_is_not_finished_counts_as_having_lasted_so_long() -> None:
    """Against the same posterior by weighting a fine grid of means and variances with scipy."""
    start = learned([0.1, 0.3, 0.2])
    lasting = Overrun(
        centre=start.centre, weight=start.weight, shape=start.shape, scale=start.scale, lasted=(1.2, 0.9)
    )
    variances = stats.invgamma(start.shape, scale=start.scale).ppf((np.arange(400) + 0.5) / 400)
    total = worth = 0.0
    for variance in variances:
        means = stats.norm(start.centre, (variance / start.weight) ** 0.5).ppf((np.arange(400) + 0.5) / 400)
        weight = np.prod([stats.norm.sf(y, means, variance**0.5) for y in lasting.lasted], axis=0)
        total, worth = total + float((means * weight).sum()), worth + float(weight.sum())
    wanted = total / worth
    assert wanted > start.centre + 0.1
    mean, _ = owners(lasting, np.random.default_rng(3), 40_000)
    assert mean.mean() == pytest.approx(wanted, abs=0.02)
    assert log(lasting.factor) == pytest.approx(wanted, abs=0.05)


@pytest.mark.parametrize("finished", [0, 10])
def test_nine_in_ten_sums_lie_under_their_p90(finished: int) -> None:
    """300 worlds: two standard deviations are 0.035; the long run of 2,000 stands in docs/performance.md."""
    assert coverage(300, finished, 7, draws=300) == pytest.approx(0.9, abs=0.045)


def test_unfinished_things_do_not_spoil_it() -> None:
    assert coverage(300, 3, 8, lasting=5, draws=300) == pytest.approx(0.9, abs=0.045)


def test_the_naive_ways_cover_too_little() -> None:
    naive = naive_coverage(150, 3, 7)
    assert naive["as guessed"] < 0.3
    assert naive["fitted and plugged in"] < 0.75
    assert naive["drawn for every operation"] < 0.87


# ---- what must come


def test_orders_that_came_late_are_counted_by_their_days() -> None:
    orders = [Ordered(item=f"ring {n}", due="2026-03-11") for n in range(3)]
    came = [Came(item=f"ring {n}") for n in range(3)]
    state = state_of(*orders, *came, days_apart=1)
    assert lateness(state.supply).late == (1 + 2, 3 + 1)


def test_what_is_in_the_post_is_awaited_on_its_day_and_the_rest_has_to_be_ordered() -> None:
    state = state_of(
        described(Joint(name="hub nut", kind="taper-roller-bearing")),
        Ordered(item="hub split pin", number=1, due="2026-03-20"),
    )
    asked = [Operation(id="close/hub nut", what="", sort="close", name="hub nut", job="j",
                       minutes=Minutes(1, 2, 3), needs=("hub split pin", "hub grease seal"))]  # fmt: skip
    things, waits = awaited(state, asked, date(2026, 3, 8))
    assert things == (Thing("hub split pin", date(2026, 3, 20)), Thing("hub grease seal", None))
    assert waits == {"close/hub nut": (0, 1)}


# ---- the outlook


def test_the_same_seed_gives_the_same_answer_however_the_parts_are_run() -> None:
    operations = [operation(n, 30, minutes=Minutes(10, 30, 90)) for n in range(12)]
    with ThreadPoolExecutor(2) as pool:
        assert looked(operations, spread=pool.map) == looked(operations)


def test_less_work_is_done_sooner_and_its_band_is_narrower() -> None:
    operations = [operation(n, 30, minutes=Minutes(10, 30, 120)) for n in range(24)]
    (whole,) = looked(operations).gates
    (half,) = looked(operations[:12]).gates
    assert whole.likely is not None
    assert whole.high is not None
    assert half.likely is not None
    assert half.high is not None
    assert half.likely < whole.likely
    assert half.high.day - half.likely.day < whole.high.day - whole.likely.day


def test_the_likely_session_lies_beyond_the_sum_of_likely_minutes() -> None:
    """720 likely minutes in weeks of 60 are twelve sessions; skewed minutes and cancelled weeks take more."""
    (band,) = looked([operation(n, 30, minutes=Minutes(10, 30, 120)) for n in range(24)]).gates
    assert band.likely is not None
    assert band.likely.day > weekly(13)[-1].day


def test_a_delay_moves_it_by_about_as_much() -> None:
    operations = [operation(n, 30) for n in range(4)]
    (now,) = looked(operations).gates
    (later,) = looked(operations, delays={"open/3": 70}).gates
    assert now.high is not None
    assert later.likely is not None
    assert later.likely.day >= date(2026, 3, 7) + timedelta(days=70)
    assert now.high.day < later.likely.day


def test_an_evening_more_helps_where_hours_are_short() -> None:
    seen = looked([operation(n, 30) for n in range(40)])
    hands, evenings = seen.bought
    assert evenings.weeks >= 8
    assert hands.weeks == 0


def test_what_drives_it_is_what_was_made_to() -> None:
    """Only the weeks that are called off differ between futures here."""
    seen = looked([operation(n, 30) for n in range(24)])
    assert seen.drivers[0].says == "how often a session is called off"
    assert seen.drivers[0].goes_with > 0.5


def test_what_no_usual_session_holds_is_named_and_yet_done() -> None:
    seen = looked([operation(1, 200, put_down=False)])
    assert seen.too_long == ("undo",)
    assert seen.gates[0].likely is not None
