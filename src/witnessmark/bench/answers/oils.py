"""Slips about oils: how thick, which grade, how much room, and which metals."""

from __future__ import annotations

import re
from collections.abc import Mapping

from witnessmark.bench import oils
from witnessmark.bench.kinds import one_of, quantity, temperature, words
from witnessmark.bench.picture.oils import case_picture, viscosity_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import metals as metal_words
from witnessmark.bench.readings import part_or_volume, viscosity, viscosity_point
from witnessmark.bench.slip import Band, Result, Row, Slip, Verdict
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Celsius, CentiStoke, Litre, MegaPascal, PerKelvin, Ratio
from witnessmark.tables.numbers import table
from witnessmark.tables.sources import sources

OUTSIDE = 0.1013
ENOUGH_ROOM = 0.05
SEAL_LEAST, SEAL_MOST = 0.02, 0.05
KINDS = ("gear", "engine", "industrial")
NEWEST = {"gear": "2019", "engine": "2015", "industrial": "not said"}
CLASSES = ("GL-1", "GL-4", "GL-5")


def limits_at40(at100: float) -> tuple[float, float]:
    """The two reference oils of the index: from the table, or above 70 cSt from the formula."""
    if at100 > oils.HIGH_RANGE:
        return oils.index_limits(CentiStoke(at100))
    rows = table("oils/viscosity_index").rows
    above = next((i for i, row in enumerate(rows) if row["at100"] >= at100), None)
    if above is None or at100 < rows[0]["at100"]:
        raise BadInput(
            given=f"{at100:g} cSt at 100 °C",
            holds="2 cSt and more; below that no index is defined",
            do="Look at the product sheet again.",
        )
    low, high = rows[max(above - 1, 0)], rows[max(above, 1)]
    share = (at100 - low["at100"]) / (high["at100"] - low["at100"])
    return (
        low["low"] + share * (high["low"] - low["low"]),
        low["high"] + share * (high["high"] - low["high"]),
    )


def answer_viscosity(*, at1: tuple[float, float], at2: tuple[float, float], temperature: float) -> Slip:
    """How thick the oil is at a temperature."""
    a, b = oils.viscosity_line(CentiStoke(at1[0]), Celsius(at1[1]), CentiStoke(at2[0]), Celsius(at2[1]))
    found = oils.viscosity_at(Ratio(a), Ratio(b), Celsius(temperature))
    cold, hot = sorted((at1[1], at2[1]))
    inside = cold <= temperature <= hot
    because = (
        f"{figure(found)} cSt at {temperature:g} °C, on the straight line through the two points"
        if inside
        else f"{figure(found)} cSt at {temperature:g} °C, beyond the two points: a guide, and below "
        "the pour point nothing"
    )
    return Slip(
        subject="oils",
        question="viscosity",
        results={"viscosity": Band(found, "cSt")},
        because=because,
        working=(
            f"log log Z = A − B log T through {at1[0]:g} cSt at {at1[1]:g} °C and {at2[0]:g} cSt at "
            f"{at2[1]:g} °C",
            f"A = {a:.4f}, B = {b:.4f}; Z is the viscosity and 0.7, and a little more below 2 cSt",
            f"at {temperature:g} °C, {temperature + 273.15:g} K: {figure(found)} cSt",
        ),
        sources=("astm-d341",),
        picture=viscosity_picture(a, b, points=(at1, at2), wanted=(found, temperature), bands=_bands("gear")),
    )


def _bands(kind: str, edition: str = "") -> tuple[tuple[str, float, float, float], ...]:
    """Grades as (name, low, high, temperature) for the picture."""
    if kind == "industrial":
        rows = table("oils/industrial_grades").rows
        return tuple(
            (r["grade"], r["middle"] * 0.9, r["middle"] * 1.1, 40.0) for r in rows if r["middle"] >= 10
        )
    rows = table(f"oils/{kind}_grades").rows
    chosen = edition or NEWEST[kind]
    return tuple(
        (r["grade"], r["low"], r["high"], 100.0)
        for r in rows
        if r["edition"] == chosen and r.get("high") is not None
    )


def answer_index(*, at40: float, at100: float) -> Slip:
    """The viscosity index."""
    low, high = limits_at40(at100)
    found = oils.viscosity_index(CentiStoke(at40), CentiStoke(at100), CentiStoke(low), CentiStoke(high))
    by = "B" if at40 < high else "A"
    return Slip(
        subject="oils",
        question="index",
        results={"index": Band(found, "")},
        because=f"viscosity index {round(found)}: {'thins little' if found >= 100 else 'thins much'} "
        "as it warms",
        working=(
            f"oils of index 0 and 100 with {at100:g} cSt at 100 °C have {figure(low)} and "
            f"{figure(high)} cSt at 40 °C",
            f"procedure {by}: {found:.2f}, rounded {round(found)}",
        ),
        sources=("astm-d2270",),
    )


def answer_grade(
    *, kind: str, at40: float | None = None, at100: float | None = None, edition: str | None = None
) -> Slip:
    """The grades that a viscosity belongs to."""
    need_at = 40 if kind == "industrial" else 100
    value = at40 if kind == "industrial" else at100
    if value is None:
        raise BadInput(
            given=f"{kind} oil without its viscosity at {need_at} °C",
            holds=f"at{need_at}, as at{need_at}=15 cSt",
            do=f"{kind.capitalize()} grades are told by the viscosity at {need_at} °C.",
        )
    chosen = _edition(kind, edition)
    rows = _matching(kind, value, chosen)
    older = _matching(kind, value, "older") if kind == "gear" and chosen != "older" else ()
    results: dict[str, Result] = {"grades": rows}
    if older:
        results["in_older_books"] = older
    names = ", ".join(str(r["grade"]) for r in rows)
    because = (
        f"{figure(value)} cSt at {need_at} °C is {names}"
        if rows
        else f"{figure(value)} cSt at {need_at} °C belongs to no {kind} grade: {_gap(kind)}"
    )
    if older and [r["grade"] for r in older] != [r["grade"] for r in rows]:
        because += f"; books from before 2005 call it {', '.join(str(r['grade']) for r in older)}"
    return Slip(
        subject="oils",
        question="grade",
        results=results,
        units={"low": "cSt", "high": "cSt"},
        because=because,
        working=(
            f"{kind} grades, edition {chosen}: the low end belongs to the grade, the high end to the next"
            if kind != "industrial"
            else "each industrial grade spans a tenth either side of its middle",
            *(
                ("the cold side of a W grade is another test, and cannot be told from this",)
                if kind == "engine"
                else ()
            ),
        ),
        sources=_grade_sources(kind, chosen, older=bool(older)),
        picture=_grade_picture(kind, at40, at100, chosen),
        found=bool(rows),
    )


def _edition(kind: str, edition: str | None) -> str:
    if kind == "industrial":
        return NEWEST[kind]
    known = tuple(dict.fromkeys(r["edition"] for r in table(f"oils/{kind}_grades").rows))
    if edition is None:
        return NEWEST[kind]
    if edition not in known:
        raise BadInput(
            given=f"edition is {edition!r}",
            holds=f"one of {', '.join(known)}",
            do="Leave it out for the newest.",
        )
    return edition


def _matching(kind: str, value: float, edition: str) -> tuple[Row, ...]:
    if kind == "industrial":
        rows = table("oils/industrial_grades").rows
        spans = [(r["grade"], round(r["middle"] * 0.9, 6), round(r["middle"] * 1.1, 6)) for r in rows]
        return tuple(
            {"grade": g, "low": low, "high": high, "edition": edition}
            for g, low, high in spans
            if low <= value <= high
        )
    rows = table(f"oils/{kind}_grades").rows
    return tuple(
        {"grade": r["grade"], "low": r["low"], "high": r.get("high"), "edition": edition}
        for r in rows
        if r["edition"] == edition
        and not r["grade"].endswith("W")
        and r["low"] <= value < (r.get("high") or float("inf"))
    )


def _gap(kind: str) -> str:
    return "it lies in the gap between two" if kind == "industrial" else "it is thinner or thicker than any"


def _grade_sources(kind: str, chosen: str, *, older: bool) -> tuple[str, ...]:
    if kind == "industrial":
        return ("iso-3448",)
    first = next(r["source"] for r in table(f"oils/{kind}_grades").rows if r["edition"] == chosen)
    return (first, "sae-j306-older") if older else (first,)


def _grade_picture(kind: str, at40: float | None, at100: float | None, edition: str) -> str | None:
    if at40 is None or at100 is None:
        return None
    a, b = oils.viscosity_line(CentiStoke(at40), Celsius(40), CentiStoke(at100), Celsius(100))
    points = ((at40, 40.0), (at100, 100.0))
    return viscosity_picture(
        a, b, points=points, wanted=points[0 if kind == "industrial" else 1], bands=_bands(kind, edition)
    )


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
        question="viscosity",
        moment="an oil, hot or cold: how thick is it",
        answer=answer_viscosity,
        inputs=(
            need("at1", viscosity_point, "one point of the product sheet", "32 cSt @ 40 C"),
            need("at2", viscosity_point, "another point", "5.4 cSt @ 100 C"),
            need("temperature", temperature, "wanted", "80 C"),
        ),
    ),
    Question(
        subject="oils",
        question="index",
        moment="two oils: which thins less when hot",
        answer=answer_index,
        inputs=(
            need("at40", viscosity, "viscosity at 40 °C", "68 cSt"),
            need("at100", viscosity, "viscosity at 100 °C", "8.8 cSt"),
        ),
    ),
    Question(
        subject="oils",
        question="grade",
        moment="an old book asks for a grade, a can shows another",
        answer=answer_grade,
        inputs=(
            need("kind", one_of(*KINDS), "gear, engine or industrial oil", "gear"),
            may("at40", viscosity, "viscosity at 40 °C", "220 cSt"),
            may("at100", viscosity, "viscosity at 100 °C", "19.5 cSt"),
            may("edition", words, "year of the grades; the newest if not said", "older"),
        ),
    ),
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
