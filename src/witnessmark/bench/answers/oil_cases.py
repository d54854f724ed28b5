"""Slips about oil in a case: how much room it leaves, and which metals it meets."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec import Struct

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

IRON, ALUMINIUM = "cast iron", "aluminium"
OUTSIDE = 0.1013
ENOUGH_ROOM = 0.05
SEAL_LEAST, SEAL_MOST = 0.02, 0.05
FILL_SOURCES = (
    "oil-expansion",
    "metal-expansion",
    "bulk-modulus",
    "gas-law",
    "shaft-seal-pressure",
    "fill-choices",
)
CLASSES = ("GL-1", "GL-4", "GL-5")


class Filled(Struct, frozen=True, kw_only=True):
    """A case cold and hot: litres, °C, MPa absolute; by metal where the case's own growth counts."""

    case: float
    oil: float
    cold: float
    hot: float
    oil_hot: float
    case_hot: Mapping[str, float]
    shut: Mapping[str, float]

    @property
    def air(self) -> float:
        """Room over the hot oil in an iron case; below nought where the oil wants more than there is."""
        return self.case_hot[IRON] - self.oil_hot


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
    found = _filled(case_volume, oil, temperature_cold, temperature_hot)
    verdict, because = _fill_verdict(found.air, found.case_hot[IRON], found.shut[IRON], breather)
    return Slip(
        subject="oils",
        question="fill",
        results=_fill_results(found, breather),
        verdict=verdict,
        because=because,
        working=_fill_working(found),
        sources=FILL_SOURCES,
        picture=case_picture(
            case_cold=case_volume,
            oil_cold=oil,
            case_hot=found.case_hot[IRON],
            oil_hot=found.oil_hot,
            cold=temperature_cold,
            hot=temperature_hot,
            breather=breather or "not said",
            pressure=found.shut[IRON],
        ),
    )


def _filled(case: float, oil: float, cold: float, hot: float) -> Filled:
    """Grow the oil and the case, in iron and in aluminium, and shut the air in."""
    growth = {r["what"]: r for r in table("oils/expansion").rows}
    start, end = Celsius(cold), Celsius(hot)
    oil_hot = oils.grown(Litre(oil), start, end, PerKelvin(growth["mineral oil"]["growth"]))
    case_hot = {
        metal: oils.grown(Litre(case), start, end, PerKelvin(growth[metal]["growth"]))
        for metal in (IRON, ALUMINIUM)
    }
    modulus, air = MegaPascal(growth["mineral oil, pressed"]["modulus"]), Litre(case - oil)
    shut = {
        metal: oils.shut_in_pressure(room, oil_hot, modulus, air, start, end, MegaPascal(OUTSIDE))
        for metal, room in case_hot.items()
    }
    return Filled(case=case, oil=oil, cold=cold, hot=hot, oil_hot=oil_hot, case_hot=case_hot, shut=shut)


def _fill_results(found: Filled, breather: str | None) -> dict[str, Result]:
    results: dict[str, Result] = {
        "air_space": Band(found.air, "L", found.air, found.case_hot[ALUMINIUM] - found.oil_hot),
        "air_space_cold": Band(found.case - found.oil, "L"),
        "oil_hot": Band(found.oil_hot, "L"),
        "pressure_hot": _fill_pressure(found.shut, breather),
    }
    if found.air < 0 and breather != "blocked":
        results["comes_out"] = Band(-found.air, "L")
    return results


def _fill_working(found: Filled) -> tuple[str, ...]:
    iron, aluminium = (figure(found.case_hot[m]) for m in (IRON, ALUMINIUM))
    in_iron, in_aluminium = (figure(found.shut[m] * 10) for m in (IRON, ALUMINIUM))
    return (
        f"oil {figure(found.oil)} L grows 0.0007 a degree over {found.hot - found.cold:g} °C "
        f"to {figure(found.oil_hot)} L",
        f"an iron case grows to {iron} L, one of aluminium to {aluminium} L; iron is taken",
        f"room over the oil: {figure(found.case - found.oil)} L cold, {figure(found.air)} L hot",
        f"shut in, the pressure would be {in_iron} bar absolute in iron, {in_aluminium} in aluminium; "
        "a standard lip seal bears 0.2 to 0.5 bar over the air outside",
        "pressures are absolute; oil vapour and the give of the case are left out",
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
        return Band(shut[IRON], "MPa", shut[ALUMINIUM], shut[IRON])
    return Band(shut[IRON], "MPa", OUTSIDE, shut[IRON])


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
