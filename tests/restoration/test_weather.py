"""Weather for coats: judged by the bench's own window, day by day; it puts a coat off in the look ahead."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest

from tests.building import state_of
from witnessmark.ground.errors import BadInput
from witnessmark.jobs.operation import Job, Minutes, Operation
from witnessmark.plan.coming import Coming
from witnessmark.plan.outlook import outlook
from witnessmark.plan.ranking import ranked
from witnessmark.restoration.weather import wet_days


def test_a_day_is_wet_where_no_hour_of_it_will_do(tmp_path: Path) -> None:
    """4 °C at 95 % is near its dew point, 18 °C at 50 % ten degrees clear of it; one good hour is enough."""
    file = tmp_path / "week.csv"
    rows = [
        "2026-11-28 10:00,4,95",
        "2026-11-28 11:00,5,93",
        "2026-12-05 09:00,4,95",
        "2026-12-05 12:00,18,50",
    ]
    file.write_text("\n".join(["time,air,humidity", *rows, "2026-12-12,3,96", ""]), encoding="utf-8")
    assert wet_days(file) == {date(2026, 11, 28), date(2026, 12, 12)}


@pytest.mark.parametrize("text", ["", "time,air\n2026-11-28,4\n", "time,air,humidity\n10:00,4,95\n", "x"])
def test_a_file_that_tells_no_weather_is_refused(tmp_path: Path, text: str) -> None:
    file = tmp_path / "week.csv"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(BadInput):
        wet_days(file)
    with pytest.raises(BadInput):
        wet_days(tmp_path / "none.csv")


def test_no_coat_goes_on_on_a_wet_day() -> None:
    coat = Operation(id="coat/x", what="", sort="protect", name="x", job="coat/x", minutes=Minutes(9, 9, 9))
    sessions = [Coming(date(2026, 3, 14) + timedelta(7 * n), 540, 180) for n in range(30)]
    order = ranked(state_of(), [Job(id="coat/x", job="coat", name="x", operations=(coat,))], [])
    wet = frozenset(one.day for one in sessions[:4])
    bands = [
        outlook(
            state_of(), order, {"road": frozenset({"coat/x"})}, sessions, "", now=datetime(2026, 3, 7, 22),
            sources=[np.random.default_rng(1)], samples=400, wet=days,
        ).gates[0]
        for days in (frozenset(), wet)
    ]  # fmt: skip
    assert bands[0].likely == sessions[0]
    assert bands[1].likely == sessions[4]
