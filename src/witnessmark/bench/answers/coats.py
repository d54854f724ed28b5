"""Slips about a coat: how much paint, and how long it takes to cure."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.bench import paint
from witnessmark.bench.kinds import fraction, quantity, temperature
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import cure_points
from witnessmark.bench.slip import Band, Slip, Verdict
from witnessmark.bench.slip_text import figure
from witnessmark.ground.units import M2, Celsius, Micrometre, Percent
from witnessmark.tables.numbers import table

RULE, RULE_LOW, RULE_HIGH = 2.0, 1.5, 3.0


def answer_quantity(
    *, area: float, dry_film: float, volume_solids: float, thinner: float = 0.0, loss: float | None = None
) -> Slip:
    """How thick it must lie wet, how far a litre goes, how much to buy."""
    square, microns, solids = M2(area / 1e6), Micrometre(dry_film * 1000), Percent(volume_solids)
    wet = paint.wet_film(microns, solids, Percent(thinner))
    rate = paint.spreading_rate(microns, solids)
    most = max(r["high"] for r in table("paint/losses").rows)
    low, high = (0.0, most) if loss is None else (100 * loss, 100 * loss)
    litres = {x: paint.paint_volume(square, rate, Percent(x)) for x in (low, high)}
    band = Band(litres[low], "L", litres[low], litres[high]) if loss is None else Band(litres[low], "L")
    return Slip(
        subject="paint",
        question="quantity",
        results={
            "wet_film": Band(wet, "µm"),
            "spreading_rate": Band(rate, "m²/L"),
            "volume": band,
            "thinner": Band(litres[low] * thinner / 100, "L"),
        },
        because=f"{figure(wet)} µm wet; {figure(rate)} m² a litre with nothing lost; "
        + (
            f"{figure(litres[low])} L, up to {figure(litres[high])} when sprayed"
            if loss is None
            else f"{figure(litres[low])} L"
        ),
        working=(
            f"wet film {figure(microns)} × (100 + {thinner:g}) / {volume_solids:g} = {figure(wet)} µm",
            f"a litre covers 10 × {volume_solids:g} / {figure(microns)} = {figure(rate)} m² (solids "
            "by volume, never by weight)",
            f"{figure(square)} m² / {figure(rate)} "
            "m²/L" + ("" if loss is None else f" / (1 − {loss:g})") + f" = {figure(litres[low])} L as it "
            "comes in the tin",
            *(
                (
                    "loss not said: nothing lost to half lost; brush or roller loses 10 to 15 %, spraying "
                    "up to 50",
                )
                if loss is None
                else ()
            ),
        ),
        sources=("paint-films", "paint-losses") if loss is None else ("paint-films",),
        cautions=("solvents",),
    )


def answer_cure(*, sheet: Sequence[tuple[float, float]], temperature: float) -> Slip:
    """How long it takes at a temperature, between the points of the product sheet."""
    coldest, warmest = sheet[0][0], sheet[-1][0]
    steel = Celsius(temperature)
    if len(sheet) == 1:
        return _cure_by_rule(sheet[0], steel)
    first, second = paint.nearest_pair(steel, sheet)
    time = paint.cure_between(steel, first, second)
    verdict: Verdict = "no" if temperature < coldest else "marginal" if temperature > warmest else "fits"
    said = {
        "no": f"colder than the sheet's coldest, {coldest:g} °C: it may never cure; warm it",
        "marginal": f"warmer than the sheet's warmest, {warmest:g} °C: a guess beyond the sheet",
        "fits": "between two points of the sheet",
    }[verdict]
    return Slip(
        subject="paint",
        question="cure",
        results={"time": Band(time, "min")},
        verdict=verdict,
        because=f"about {_long(time)} at {temperature:g} °C, {said}",
        working=(
            f"through {_long(first[1])} at {first[0]:g} °C and {_long(second[1])} at {second[0]:g} °C",
            f"straight in log time over 1/T: {figure(time)} min",
            f"that is {_factor(first, second):.2f} times as long for each 10 °C colder",
        ),
        sources=("arrhenius",),
        cautions=("solvents",),
    )


def _cure_by_rule(known: tuple[float, float], steel: Celsius) -> Slip:
    times = {f: paint.cure_doubling(steel, known, f) for f in (RULE_LOW, RULE, RULE_HIGH)}
    low, high = sorted((times[RULE_LOW], times[RULE_HIGH]))
    colder = steel < known[0]
    return Slip(
        subject="paint",
        question="cure",
        results={"time": Band(times[RULE], "min", low, high)},
        verdict="marginal",
        because=f"about {_long(times[RULE])} at {steel:g} °C by a rule of thumb, {_long(low)} to "
        f"{_long(high)}: the sheet gives one point only"
        + ("; below the sheet's least temperature it may never cure" if colder else ""),
        working=(
            f"{_long(known[1])} at {known[0]:g} °C, twice as long for each 10 °C colder: "
            f"{figure(times[RULE])} min",
            "real sheets run from 1.5 to 3 times; give a second point of the sheet",
        ),
        sources=("cure-doubling",),
        cautions=("solvents",),
    )


def _factor(first: tuple[float, float], second: tuple[float, float]) -> float:
    return float((first[1] / second[1]) ** (10 / (second[0] - first[0])))


def _long(minutes: float) -> str:
    """Minutes in the words of a product sheet.

    >>> _long(45), _long(150), _long(2880), _long(7200)
    ('45 min', '2.5 h', '48 h', '5 days')
    """
    if minutes < 90:
        return f"{minutes:.3g} min"
    if minutes <= 72 * 60:
        return f"{minutes / 60:.3g} h"
    return f"{minutes / 1440:.3g} days"


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="paint",
        question="quantity",
        moment="a coat to buy for",
        answer=answer_quantity,
        inputs=(
            need("area", quantity("area"), "to be covered", "4 m2"),
            need("dry_film", quantity("length"), "wanted", "60 micron"),
            need("volume_solids", quantity("ratio"), "by volume, from the sheet", "45 %"),
            may("thinner", quantity("ratio"), "by volume of the paint", "10 %"),
            may("loss", fraction, "part that does not end on the work", "40 %"),
        ),
    ),
    Question(
        subject="paint",
        question="cure",
        moment="a coat on, and colder than the sheet says",
        answer=answer_cure,
        inputs=(
            need("sheet", cure_points, "points of the product sheet", "24 h @ 20 C, 48 h @ 10 C"),
            need("temperature", temperature, "of the steel", "14 C"),
        ),
    ),
)
