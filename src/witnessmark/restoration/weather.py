"""Weather that bounds coats: a file of hours or days, judged by the bench's own paint window."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from witnessmark.bench.answers.paint_window import answer_window
from witnessmark.bench.readings import hours
from witnessmark.ground.errors import BadInput

FITS = "fits"


def wet_days(file: Path) -> frozenset[date]:
    """The days of a file on which no hour will do; days it does not tell are taken as they come.

    Columns: time (2026-11-28 or 2026-11-28 10:00), air, humidity and perhaps steel, as the bench's paint
    window reads them; without steel it is taken to be as warm as the air, and it is often colder.
    """
    try:
        text = file.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as trouble:
        raise BadInput(
            given=f"{file} cannot be read: {trouble}",
            holds="a file of text with the columns time, air, humidity",
            do="Look at the name; save it as CSV.",
        ) from trouble
    rows = hours(file.name, text).value
    good: dict[date, bool] = {}
    for time, air, humidity, steel in rows:
        day = _day(str(time))
        good[day] = good.get(day, False) or _fits(air, humidity, air if steel is None else steel)
    return frozenset(day for day, fits in good.items() if not fits)


def _fits(air: float, humidity: float, steel: float) -> bool:
    return bool(answer_window(air=air, humidity=humidity, steel=steel).verdict == FITS)


def _day(time: str) -> date:
    try:
        return date.fromisoformat(time.strip()[:10])
    except ValueError:
        raise BadInput(
            given=f"{time!r} tells no day",
            holds="a day first, as 2026-11-28 or 2026-11-28 10:00",
            do="Write the day in the column time.",
        ) from None
