"""Slips about oils: how thick, how much they thin, which grade."""

from __future__ import annotations

from witnessmark.bench import oils
from witnessmark.bench.kinds import one_of, temperature, words
from witnessmark.bench.picture.oils import viscosity_picture
from witnessmark.bench.question import Question, either, may, need
from witnessmark.bench.readings import viscosity, viscosity_point
from witnessmark.bench.slip import Band, Result, Row, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Celsius, CentiStoke, Ratio
from witnessmark.tables.numbers import table

KINDS = ("gear", "engine", "industrial")
NEWEST = {"gear": "2019", "engine": "2015", "industrial": "not said"}


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
            either("at100", viscosity, "viscosity at 100 °C", "19.5 cSt"),
            may("edition", words, "year of the grades; the newest if not said", "older"),
        ),
    ),
)
