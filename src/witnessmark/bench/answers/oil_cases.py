"""Slips about oil in a case: how much room it leaves, and which metals it meets."""

from __future__ import annotations

import re
from collections.abc import Mapping

from witnessmark.bench import oils
from witnessmark.bench.kinds import one_of, quantity, temperature, words
from witnessmark.bench.picture.oils import case_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import metals as metal_words
from witnessmark.bench.readings import part_or_volume
from witnessmark.bench.slip import Band, Result, Row, Slip, Verdict
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Celsius, Litre, MegaPascal, PerKelvin
from witnessmark.tables.numbers import table
from witnessmark.tables.sources import sources

OUTSIDE = 0.1013
ENOUGH_ROOM = 0.05
SEAL_LEAST, SEAL_MOST = 0.02, 0.05
CLASSES = ("GL-1", "GL-4", "GL-5")


def answer_fill(
    *,
    case_volume: float,
    fill: tuple[float, str],
    temperature_cold: float,
    temperature_hot: float,
    breather: str | None = None,
) -> Slip:
    """Room over the oil, cold and hot, and what a blocked breather makes of it."""
    oil = fill[0] if fill[1] == "L" else case_volume * fill[0] / 100
    _refuse_fill(case_volume, oil, temperature_cold, temperature_hot)
    growth = {r["what"]: r for r in table("oils/expansion").rows}
    modulus = MegaPascal(growth["mineral oil, pressed"]["modulus"])
    hot_oil = oils.grown(
        Litre(oil),
        Celsius(temperature_cold),
        Celsius(temperature_hot),
        PerKelvin(growth["mineral oil"]["growth"]),
    )
    case = {
        metal: oils.grown(
            Litre(case_volume),
            Celsius(temperature_cold),
            Celsius(temperature_hot),
            PerKelvin(growth[metal]["growth"]),
        )
        for metal in ("cast iron", "aluminium")
    }
    shut = {
        metal: oils.shut_in_pressure(
            Litre(room),
            hot_oil,
            modulus,
            Litre(case_volume - oil),
            Celsius(temperature_cold),
            Celsius(temperature_hot),
            MegaPascal(OUTSIDE),
        )
        for metal, room in case.items()
    }
    air = {metal: room - hot_oil for metal, room in case.items()}
    verdict, because = _fill_verdict(air["cast iron"], case["cast iron"], shut["cast iron"], breather)
    blocked = breather == "blocked"
    results: dict[str, Result] = {
        "air_space": Band(air["cast iron"], "L", air["cast iron"], air["aluminium"]),
        "air_space_cold": Band(case_volume - oil, "L"),
        "oil_hot": Band(hot_oil, "L"),
        "pressure_hot": _fill_pressure(shut, breather),
    }
    if air["cast iron"] < 0 and not blocked:
        results["comes_out"] = Band(-air["cast iron"], "L")
    return Slip(
        subject="oils",
        question="fill",
        results=results,
        verdict=verdict,
        because=because,
        working=(
            f"oil {figure(oil)} L grows 0.0007 a degree over {temperature_hot - temperature_cold:g} "
            f"°C to {figure(hot_oil)} L",
            f"an iron case grows to {figure(case['cast iron'])} L, one of aluminium to "
            f"{figure(case['aluminium'])} L; iron is taken",
            f"room over the oil: {figure(case_volume - oil)} L cold, {figure(air['cast iron'])} L hot",
            f"shut in, the pressure would be {figure(shut['cast iron'] * 10)} bar absolute in iron, "
            f"{figure(shut['aluminium'] * 10)} in aluminium; a standard lip seal bears 0.2 to 0.5 bar "
            "over the air outside",
            "pressures are absolute; oil vapour and the give of the case are left out",
        ),
        sources=(
            "oil-expansion",
            "metal-expansion",
            "bulk-modulus",
            "gas-law",
            "shaft-seal-pressure",
            "fill-choices",
        ),
        picture=case_picture(
            case_cold=case_volume,
            oil_cold=oil,
            case_hot=case["cast iron"],
            oil_hot=hot_oil,
            cold=temperature_cold,
            hot=temperature_hot,
            breather=breather or "not said",
            pressure=shut["cast iron"],
        ),
    )


def _refuse_fill(case: float, oil: float, cold: float, hot: float) -> None:
    if not 0.01 <= case <= 1000:
        raise BadInput(
            given=f"case_volume is {case:g} L", holds="0.01 to 1000 L", do="Look at the unit again."
        )
    if not 0 < oil <= case:
        raise BadInput(
            given=f"fill is {figure(oil)} L in a case of {figure(case)} L",
            holds="more than nothing, and no more than the case holds",
            do="The case volume is all the room inside, not the book's fill.",
        )
    if not -40 <= cold < hot <= 200:
        raise BadInput(
            given=f"temperature_cold is {cold:g} °C and temperature_hot {hot:g} °C",
            holds="−40 to 200 °C, the hot one above the cold one",
            do="Give the garage, and the case after a run.",
        )


def _fill_pressure(shut: Mapping[str, float], breather: str | None) -> Band:
    if breather == "open":
        return Band(OUTSIDE, "MPa")
    if breather == "blocked":
        return Band(shut["cast iron"], "MPa", shut["aluminium"], shut["cast iron"])
    return Band(shut["cast iron"], "MPa", OUTSIDE, shut["cast iron"])


def _fill_verdict(air: float, case: float, shut: float, breather: str | None) -> tuple[Verdict, str]:
    over = shut - OUTSIDE
    bars = f"{figure(over * 10)} bar over the air outside" if over < 10 else "far more than any seal bears"
    if breather == "blocked":
        if over <= SEAL_LEAST:
            return "fits", f"shut in, it makes {bars}; a lip seal bears that, but clean the breather"
        if over <= SEAL_MOST:
            return "marginal", f"shut in, it makes {bars}: about what a lip seal bears; clean the breather"
        return (
            "no",
            f"the breather is blocked: {bars}, and the oil goes out past a seal; clean the breather first",
        )
    if air < 0:
        return (
            "no",
            f"hot, {figure(-air)} L more than the case holds: it comes out of the breather, or past a seal",
        )
    room = f"{figure(air / case * 100)} % of the case is left when hot"
    if air < ENOUGH_ROOM * case:
        return "marginal", f"only {room}: froth reaches the breather; draw some off"
    if breather is None and over > SEAL_LEAST:
        return (
            "marginal",
            f"{room}: no harm while the breather is open, but blocked it makes {bars}: look at the breather",
        )
    return "fits", f"{room} and the breather is open: a little too much does no harm"


def answer_suits(*, api_class: str, metals: tuple[str, ...]) -> Slip:
    """Whether a class of gear oil suits the metals it meets, with the standing of the claim."""
    classes = _classes(api_class)
    rows = table("oils/classes").rows
    known = tuple(dict.fromkeys(r["metal"] for r in rows))
    found: list[Row] = []
    worst: list[Verdict] = []
    keys: dict[str, None] = {}
    for metal in metals:
        plain = "steel" if metal in ("iron", "cast-iron") else metal
        if plain not in known:
            raise BadInput(
                given=f"metals names {metal!r}",
                holds=f"some of {', '.join(known)}",
                do="Name what works in the oil.",
                near=known,
            )
        for one in classes:
            row = next(r for r in rows if r["api_class"] == one and r["metal"] == plain)
            keys[row["source"]] = None
            worst.append(row["verdict"])
            found.append(
                {
                    "api_class": one,
                    "metal": plain,
                    "verdict": row["verdict"],
                    "because": row["says"],
                    "standing": _standing(row["source"]),
                }
            )
    verdict = _worst(worst)
    if len(classes) > 1 and verdict == "no":
        verdict = "marginal"
    return Slip(
        subject="oils",
        question="suits",
        results={"rows": tuple(found), "standing": _standing(next(iter(keys)))},
        verdict=verdict,
        because=_suits_because(classes, metals, verdict),
        working=tuple(f"{r['api_class']} and {r['metal']}: {r['because']}" for r in found),
        sources=(*keys, "api-gear-classes") if "api-gear-classes" not in keys else tuple(keys),
    )


def _classes(api_class: str) -> tuple[str, ...]:
    found = tuple(f"GL-{n}" for n in re.findall(r"(?:GL)?[\s-]*([0-9])", api_class.upper()))
    if not found or any(one not in CLASSES for one in found):
        raise BadInput(
            given=f"api_class is {api_class!r}",
            holds=f"one of {', '.join(CLASSES)}, or two as GL-4/GL-5",
            do="Read it off the can.",
            near=CLASSES,
        )
    return found


def _standing(key: str) -> str:
    return sources()[key].standing


def _worst(verdicts: list[Verdict]) -> Verdict:
    order: tuple[Verdict, ...] = ("no", "marginal", "fits")
    return next(v for v in order if v in verdicts)


def _suits_because(classes: tuple[str, ...], metals: tuple[str, ...], verdict: Verdict) -> str:
    oil, metal = "/".join(classes), ", ".join(metals)
    if len(classes) > 1:
        return (
            f"{oil} claims both; for {metal} ask the maker for the copper strip figure, and the "
            "book comes first"
        )
    if verdict == "no":
        return (
            f"{oil} with {metal}: look for GL-4 unless the oil or the book says it suits; the "
            "claim is disputed"
        )
    if verdict == "marginal":
        return f"{oil} with {metal}: only where the book asks for it"
    return f"{oil} is the usual choice with {metal}; the book comes first"


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="oils",
        question="fill",
        moment="a case to fill, or filled too far",
        answer=answer_fill,
        inputs=(
            need("case_volume", quantity("volume"), "all the room inside", "1.2 L"),
            need("fill", part_or_volume, "oil, in litres or % of the case", "0.9 L"),
            need("temperature_cold", temperature, "when it was filled", "15 C"),
            need("temperature_hot", temperature, "after a run", "90 C"),
            may("breather", one_of("open", "blocked"), "whether it breathes", "open"),
        ),
    ),
    Question(
        subject="oils",
        question="suits",
        moment="brass in the case: which gear oil",
        answer=answer_suits,
        inputs=(
            need("api_class", words, "class on the can", "GL-4"),
            need("metals", metal_words, "what works in the oil", "steel, brass"),
        ),
    ),
)
