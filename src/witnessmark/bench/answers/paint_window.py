"""Slips about the paint window: may I paint now, and which hours of the night would do."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from witnessmark.bench import air as air_water
from witnessmark.bench.kinds import quantity, temperature
from witnessmark.bench.picture.paint import Hour, night_picture, now_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import degrees, hours
from witnessmark.bench.slip import Band, Result, Row, Slip, Verdict
from witnessmark.ground.units import (
    Celsius,
    Percent,
    demand_range,
)
from witnessmark.tables.numbers import table

SOURCES = ("wmo-magnus", "iso-8502-4-practice", "dew-instruments")
ORDER: tuple[Verdict, ...] = ("no", "marginal", "fits")


class Limits(Struct, frozen=True, kw_only=True):
    """What a coat asks of the air and the steel, and how near to each counts as marginal."""

    margin: float
    margin_near: float
    humidity: float
    humidity_near: float
    steel: float
    steel_near: float


def _limits(sheet_minimum: float | None, sheet_humidity: float | None, sheet_margin: float | None) -> Limits:
    rows = {r["what"]: r for r in table("paint/limits").rows}
    margin, humid, steel = rows["steel above dew point"], rows["humidity"], rows["steel at least"]
    return Limits(
        margin=margin["value"] if sheet_margin is None else sheet_margin,
        margin_near=margin["near"],
        humidity=humid["value"] if sheet_humidity is None else sheet_humidity,
        humidity_near=humid["near"],
        steel=steel["value"] if sheet_minimum is None else sheet_minimum,
        steel_near=steel["near"],
    )


def _judged(over: float, near: float) -> Verdict:
    """Fits when clear of the limit, no when clearly short of it, marginal between."""
    return "fits" if over >= near else "no" if over < -near else "marginal"


def judge(
    humidity: float, steel: float, dew: float, limits: Limits
) -> tuple[Verdict, tuple[tuple[str, Verdict], ...]]:
    """The verdict, and each of the three questions behind it."""
    each = (
        (
            f"steel {steel:.3g} °C is {abs(steel - dew):.1f} °C "
            f"{'above' if steel >= dew else 'below'} dew point, {limits.margin:g} above asked",
            _judged(steel - dew - limits.margin, limits.margin_near),
        ),
        (
            f"humidity {humidity:.3g} %, at most {limits.humidity:g} asked",
            _judged(limits.humidity - humidity, limits.humidity_near),
        ),
        (
            f"steel {steel:.3g} °C, at least {limits.steel:g} asked",
            _judged(steel - limits.steel, limits.steel_near),
        ),
    )
    return next(v for v in ORDER if any(v == one for _, one in each)), each


def answer_window(
    *,
    air: float,
    humidity: float,
    steel: float,
    sheet_minimum: float | None = None,
    sheet_humidity: float | None = None,
    sheet_margin: float | None = None,
    forecast: Sequence[tuple[str, float, float, float | None]] = (),
) -> Slip:
    """Whether steel may be painted, what would make it yes, and the hours that would do."""
    demand_range("humidity", humidity, "%", 1, 100, "Relative humidity, as 78 %.")
    demand_range("air", air, "°C", -30, 55, "Look at the unit again.")
    demand_range("steel", steel, "°C", -30, 90, "A thermometer on the metal, not in the air.")
    limits = _limits(sheet_minimum, sheet_humidity, sheet_margin)
    dew = air_water.dew_point(Celsius(air), Percent(humidity))
    verdict, each = judge(humidity, steel, dew, limits)
    mend = to_make_it_yes(humidity, steel, dew, limits, verdict)
    results: dict[str, Result] = {
        "dew_point": Band(dew, "°C"),
        "margin": Band(steel - dew, "°C"),
        "to_make_it_yes": mend,
    }
    rows = [_hour(one, steel - air, limits) for one in forecast]
    if rows:
        results["hours"] = tuple(_hour_row(r) for r in rows)
        results["spans"] = _spans(rows)
    said = _limit_words(sheet_minimum, sheet_humidity, sheet_margin)
    drawn = now_picture(air, steel, dew, limits.margin, limits.steel)
    return Slip(
        subject="paint",
        question="window",
        results=results,
        units={"air": "°C", "humidity": "%", "steel": "°C", "dew_point": "°C", "margin": "°C"},
        verdict=verdict,
        because="; ".join(said for said, one in each if one == verdict)
        + (f". {_spans(rows)}" if rows else ""),
        working=(
            f"dew point of {air:.3g} °C and {humidity:.3g} %: {dew:.1f} °C, over water",
            *(f"{said}: {one}" for said, one in each),
            f"within {limits.margin_near:g} °C or {limits.humidity_near:g} % of a limit is marginal: "
            "instruments read no finer",
            *said,
            *_forecast_words(forecast, steel - air),
        ),
        sources=(*SOURCES, *(("steel-follows",) if _guessed(forecast) else ())),
        cautions=("solvents", "isocyanates"),
        picture=night_picture(rows, limits.margin) if len(rows) > 1 else drawn,
    )


def to_make_it_yes(humidity: float, steel: float, dew: float, limits: Limits, verdict: Verdict) -> str:
    """What would clear every limit by its margin of doubt."""
    if verdict == "fits":
        return "nothing: paint, and watch the steel until it is dry"
    steps = []
    warm = max(dew + limits.margin + limits.margin_near, limits.steel + limits.steel_near)
    if steel < warm - 1e-9:
        steps.append(f"warm the steel to {warm:.1f} °C and keep it there until dry")
    if humidity > limits.humidity - limits.humidity_near:
        wanted = Percent(limits.humidity - limits.humidity_near)
        air = air_water.air_for(Celsius(dew), wanted)
        steps.append(
            f"warm the air to {air:.1f} °C, by a heater that lets its own steam outdoors, or dry it "
            f"to {wanted:.0f} %"
        )
    return "; ".join(steps)


def _hour(one: tuple[str, float, float, float | None], apart: float, limits: Limits) -> Hour:
    time, air, humidity, steel = one
    demand_range(f"humidity at {time}", humidity, "%", 1, 100, "Relative humidity, as 78.")
    demand_range(f"air at {time}", air, "°C", -30, 55, "Look at the unit again.")
    metal = air + apart if steel is None else steel
    dew = air_water.dew_point(Celsius(air), Percent(humidity))
    return Hour(time, air, humidity, metal, dew, judge(humidity, metal, dew, limits)[0])


def _hour_row(one: Hour) -> Row:
    return {
        "time": one.time,
        "air": one.air,
        "humidity": one.humidity,
        "steel": one.steel,
        "dew_point": round(one.dew, 2),
        "margin": round(one.steel - one.dew, 2),
        "verdict": one.verdict,
    }


def _spans(rows: Sequence[Hour]) -> str:
    """The hours that would do, as spans; and when dew first falls on the steel."""
    spans: list[list[str]] = []
    before: Hour | None = None
    for one in rows:
        if one.verdict == "fits":
            if before is not None and before.verdict == "fits":
                spans[-1][1] = one.time
            else:
                spans.append([one.time, one.time])
        before = one
    said = ", ".join(a if a == b else f"{a} to {b}" for a, b in spans)
    wet = next((one.time for one in rows if one.steel <= one.dew), "")
    last = f"; dew on the steel from {wet}: it must be dry to the touch before" if wet else ""
    return (f"Hours that would do: {said}" if said else "No hour of the forecast would do") + last


def _guessed(forecast: Sequence[tuple[str, float, float, float | None]]) -> bool:
    return any(steel is None for *_, steel in forecast)


def _forecast_words(
    forecast: Sequence[tuple[str, float, float, float | None]], apart: float
) -> tuple[str, ...]:
    if not _guessed(forecast):
        return ()
    way = "above" if apart >= 0 else "below"
    return (
        f"the forecast has no steel: taken {abs(apart):.1f} °C {way} the air, as now; under a clear "
        "sky it gets colder",
    )


def _limit_words(minimum: float | None, humidity: float | None, margin: float | None) -> tuple[str, ...]:
    missing = [
        name
        for name, given in (("least steel", minimum), ("humidity", humidity), ("margin", margin))
        if given is None
    ]
    return (
        (f"not said, so taken from common guides: {', '.join(missing)}; the product sheet comes first",)
        if missing
        else ()
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="paint",
        question="window",
        moment="paint ready and the evening coming: may I paint tonight",
        answer=answer_window,
        inputs=(
            need("air", temperature, "of the air", "12 C"),
            need("humidity", quantity("ratio"), "relative", "70 %"),
            need("steel", temperature, "on the metal itself", "11 C"),
            may("sheet_minimum", temperature, "least steel temperature of the product sheet", "10 C"),
            may("sheet_humidity", quantity("ratio"), "most humidity of the product sheet", "80 %"),
            may("sheet_margin", degrees, "how far above dew point the sheet asks", "3 C"),
            may("forecast", hours, "a file with time, air, humidity, perhaps steel", "@hours.csv"),
        ),
    ),
)
