"""Slips about sheet metal and steel: gauges, bends, and how readily it welds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from witnessmark.bench import sheet, steel
from witnessmark.bench.kinds import angle, length, number, one_of, parted_unit, words
from witnessmark.bench.picture.metal import bend_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import composition
from witnessmark.bench.slip import Asked, Band, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Mm, Percent, Ratio, demand_range
from witnessmark.tables.numbers import table

SYSTEMS = ("swg", "bwg", "bg", "us")
HARDNESS = ("soft", "medium", "hard")


def answer_gauge(*, gauge: float, system: str) -> Slip:
    """How thick a gauge is, in the system that it was named in."""
    rows = [r for r in table("metal/gauges").rows if r["system"] == system]
    row = next((r for r in rows if r["gauge"] == gauge), None)
    if row is None:
        known = tuple(f"{r['gauge']:g}" for r in rows)
        raise BadInput(
            given=f"gauge is {gauge:g} in {system}",
            holds=f"one of {', '.join(known)}",
            do="Measure the metal with a micrometer, paint off.",
            near=tuple(n for n in known if abs(float(n) - gauge) <= 1),
        )
    others = [r for r in table("metal/gauges").rows if r["gauge"] == gauge and r["system"] != system]
    spread = ", ".join(f"{r['thickness']:.3g} mm in {r['system']}" for r in others)
    return Slip(
        subject="sheet",
        question="gauge",
        results={"thickness": Band(row["thickness"], "mm")},
        because=f"{gauge:g} {system} is {row['thickness']:.4g} mm as named; the same number is {spread}",
        working=(f"{system} {gauge:g}: {row['thickness']:g} mm; rolled sheet is a little off, measure it",),
        sources=(row["source"],),
    )


def legs(name: str, typed: str) -> Asked:
    """Outside legs, "76x115 mm"; the value is a tuple in mm.

    >>> legs("legs", "76x115 mm").value
    (76.0, 115.0)
    """
    holds = "two or more outside legs, as 76x115 mm"
    body, factor, unit = parted_unit(name, typed, "length", holds)
    found = tuple(float(number(name, part).value) * factor for part in body.replace("×", "x").split("x"))
    if len(found) < 2:
        raise BadInput(given=f"{name} is {typed!r}", holds=holds, do="Join the legs with x.")
    return Asked(typed, found, unit)


def answer_bend(
    *,
    thickness: float,
    radius: float,
    angle: float,
    legs: Sequence[float],
    k: float | None = None,
    grade: str | None = None,
) -> Slip:
    """What to cut for a bent strip, and where the bend lines stand."""
    demand_range("thickness", thickness, "mm", 0.1, 25, "Look at the unit again.")
    middle, low, high, said = _neutral(radius / thickness, k, grade)
    t, r, turn = Mm(thickness), Mm(radius), Degree(angle)
    allowance = {x: sheet.bend_allowance(t, r, turn, Ratio(x)) for x in (low, middle, high)}
    deduction = {x: sheet.bend_deduction(t, r, turn, Ratio(x)) for x in (low, middle, high)}
    flat = {x: sheet.flat_length([Mm(leg) for leg in legs], deduction[x]) for x in (low, middle, high)}
    tight = radius < thickness
    band = None if low == high else (low, high)
    because = (
        f"cut {figure(flat[middle])} mm"
        + (f", between {figure(flat[low])} and {figure(flat[high])}" if band else "")
        + ("; the inside radius is under one thickness: it may crack on the outside" if tight else "")
        + ("; bend a trial strip and measure" if k is None else "")
    )
    return Slip(
        subject="sheet",
        question="bend",
        results={
            "flat_length": _spread(flat, middle, band),
            "allowance": _spread(allowance, middle, band),
            "deduction": _spread(deduction, middle, (high, low) if band else None),
            "minimum_radius": Band(thickness, "mm"),
        },
        verdict="marginal" if tight else "fits",
        because=because,
        working=(
            said,
            f"allowance {angle:g}° · π/180 · ({radius:g} + {middle:g} · {thickness:g}) = "
            f"{figure(allowance[middle])} mm",
            f"deduction 2 · ({radius:g} + {thickness:g}) · tan({angle / 2:g}°) − allowance = "
            f"{figure(deduction[middle])} mm",
            f"{' + '.join(f'{leg:g}' for leg in legs)} − {len(legs) - 1} × "
            f"{figure(deduction[middle])} = {figure(flat[middle])} mm",
            "least inside radius of mild steel sheet: about one thickness",
        ),
        sources=("bend-k", "bend-radius") if k is None else ("bend-radius",),
        picture=bend_picture(thickness, radius, angle, tuple(legs), allowance[middle], deduction[middle]),
    )


def _spread(values: Mapping[float, float], middle: float, band: tuple[float, float] | None) -> Band:
    if band is None:
        return Band(values[middle], "mm")
    return Band(values[middle], "mm", values[band[0]], values[band[1]])


def _neutral(ratio: float, k: float | None, grade: str | None) -> tuple[float, float, float, str]:
    """The neutral line: middle, low, high, and how it came."""
    if k is not None:
        demand_range("k", k, "", 0.2, 0.6, "It lies between a third and a half of the thickness.")
        return k, k, k, f"k {k:g}, as given"
    row = next(
        r
        for r in table("metal/bend_k").rows
        if ratio >= r["radius_low"] and ratio < (r.get("radius_high") or 1e9)
    )
    if grade is not None:
        if grade not in HARDNESS:
            raise BadInput(
                given=f"grade is {grade!r}",
                holds=f"one of {', '.join(HARDNESS)}",
                do="Body sheet is medium.",
                near=HARDNESS,
            )
        return (
            row[grade],
            row[grade],
            row[grade],
            f"k {row[grade]:g} for {grade} metal at radius {ratio:.2g} thicknesses",
        )
    return (
        row["medium"],
        row["soft"],
        row["hard"],
        f"k {row['medium']:g} for medium metal at radius {ratio:.2g} thicknesses; soft "
        f"{row['soft']:g}, hard {row['hard']:g}",
    )


def answer_equivalent(*, composition: tuple[tuple[str, float], ...] | str) -> Slip:
    """Carbon equivalent, and what two sources say of it."""
    parts, said, extra = _parts(composition)
    found = steel.carbon_equivalent(**parts)
    advice = {
        row["source"]: row["advice"]
        for row in table("metal/equivalent_bands").rows
        if row["low"] <= found and found < (row.get("high") or 99)
    }
    band = "; ".join(
        f"{text} ({'one' if i == 0 else 'another'} source)" for i, text in enumerate(advice.values())
    )
    return Slip(
        subject="steel",
        question="equivalent",
        results={"carbon_equivalent": Band(found, "%"), "band": band},
        because=f"carbon equivalent {found:.3f} %: {band}",
        working=(
            said,
            "C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15 = " + f"{found:.4f} %",
            "the sources draw their lines apart and speak of plate; springs, tools and cast iron are "
            "another matter",
        ),
        sources=("iiw-carbon-equivalent", *advice, *extra),
        cautions=("hot-work",),
    )


def _parts(given: tuple[tuple[str, float], ...] | str) -> tuple[dict[str, Any], str, tuple[str, ...]]:
    elements = ("carbon", "manganese", "chromium", "molybdenum", "vanadium", "nickel", "copper")
    if isinstance(given, str):
        rows = {r["grade"]: r for r in table("metal/grades").rows}
        grade = given.removesuffix("JR")
        if grade not in rows:
            raise BadInput(
                given=f"composition is {given!r}",
                holds=f"parts in %, or one of {', '.join(rows)}",
                do="Give what the test sheet prints.",
                near=tuple(rows),
            )
        row = rows[grade]
        named = {"carbon": row["carbon"], "manganese": row["manganese"]}
        said = (
            f"the most that {grade} may hold: C {row['carbon']:g}, Mn {row['manganese']:g}; most "
            "heats lie far below"
        )
        return {e: Percent(named.get(e, 0.0)) for e in elements}, said, (row["source"],)
    named = dict(given)
    if "carbon" not in named:
        raise BadInput(
            given="a composition without carbon",
            holds="C and the rest, as C 0.12, Mn 0.60",
            do="Give what the test sheet prints.",
        )
    left = [e for e in elements if e not in named]
    said = "what was not given counts as none: " + (", ".join(left) or "nothing")
    return {e: Percent(named.get(e, 0.0)) for e in elements}, said, ()


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="steel",
        question="equivalent",
        moment="a steel of known make-up to weld",
        answer=answer_equivalent,
        inputs=(need("composition", composition, "parts by mass, or a grade", "C 0.12, Mn 0.60"),),
    ),
    Question(
        subject="sheet",
        question="gauge",
        moment="sheet named by a number",
        answer=answer_gauge,
        inputs=(
            need("gauge", number, "the number", "18"),
            need("system", one_of(*SYSTEMS), "swg, bwg, bg (Birmingham, sheet) or us", "swg"),
        ),
    ),
    Question(
        subject="sheet",
        question="bend",
        moment="a strip to cut before it is folded",
        answer=answer_bend,
        inputs=(
            need("thickness", length, "of the sheet", "1.2 mm"),
            need("radius", length, "inside", "1.5 mm"),
            need("angle", angle, "turned through; 90 makes a square corner", "90 deg"),
            need("legs", legs, "outside, two or more", "25x40 mm"),
            may("k", number, "from a trial strip", "0.42"),
            may("grade", words, "soft, medium or hard", "medium"),
        ),
    ),
)
