"""Slips about O-rings: which one fits a groove, and how one lies in it."""

from __future__ import annotations

from witnessmark.bench.kinds import length, one_of, temperature, words
from witnessmark.bench.own_lists import Ring, rings
from witnessmark.bench.picture.orings import ring_picture
from witnessmark.bench.question import Input, Question, may, need
from witnessmark.bench.ring_material import advice
from witnessmark.bench.ring_search import (
    GLANDS,
    Fit,
    Gland,
    Limits,
    Span,
    demand_gland,
    fit_of,
    fits_in,
    limits,
    standard_rings,
    with_tolerances,
)
from witnessmark.bench.slip import Band, Result, Row, Slip
from witnessmark.ground.units import Mm, demand_range

SHOWN = 10
WITHIN = 0.05
"""How far off a groove is measured in a garage, where nobody says."""
SOURCES = ("oring-stretch", "oring-volume", "oring-rules", "oring-glands")
SEAT = {
    "radial static": "groove root",
    "piston": "groove root",
    "rod": "rod",
    "face static": "inside wall of the groove",
}


def match(
    *,
    gland: str,
    diameter: float,
    depth: float,
    width: float,
    temperature: float | None = None,
    fluid: str | None = None,
    sizes: tuple[Ring, ...] = (),
    within: float = WITHIN,
) -> Slip:
    """Rings for a groove, best first, with those that come near and why they will not do."""
    place = Gland(kind=gland, seat=Mm(diameter), depth=Mm(depth), width=Mm(width), within=Mm(within))
    found = fits_in(place, (*(with_tolerances(r) for r in sizes), *standard_rings()))
    good = [f for f in found if f.verdict != "no"]
    told = found[: max(SHOWN, len(good))]
    material, more = advice(temperature, fluid)
    results: dict[str, Result] = {"rows": tuple(_row(f) for f in told), "material": material}
    if not good:
        return Slip(
            subject="orings", question="match", results=results, units=UNITS, found=False,
            because=_nothing(told), working=_groove(place), sources=("oring-sizes", *SOURCES, *more),
            cautions=("ring-not-for-brakes",), picture=ring_picture(place, told[0]) if told else None,
        )  # fmt: skip
    best = good[0]
    return Slip(
        subject="orings",
        question="match",
        results=results,
        units=UNITS,
        verdict=best.verdict,
        because=f"{best.ring.name} ({best.ring.inside:g} x {best.ring.section:g} mm): {best.because}",
        working=(*_groove(place), *_worked(place, best)),
        sources=("oring-sizes", *SOURCES, *more),
        cautions=("ring-not-for-brakes",),
        picture=ring_picture(place, best),
    )


def _nothing(told: tuple[Fit, ...]) -> str:
    if not told:
        return "no ring, standard or your own, comes near this groove; look at the three sizes again"
    nearest = told[0]
    return f"no ring fits; the nearest is {nearest.ring.name}: {nearest.because}"


def check(
    *,
    gland: str,
    section: float,
    inside: float,
    diameter: float,
    depth: float,
    width: float,
    within: float = WITHIN,
) -> Slip:
    """How one ring lies in one groove."""
    place = Gland(kind=gland, seat=Mm(diameter), depth=Mm(depth), width=Mm(width), within=Mm(within))
    demand_gland(place)
    demand_range("section", section, "mm", 0.5, 20, "Measure the ring's thickness.")
    demand_range("inside", inside, "mm", 0.5, 1000, "Give the free ring's inside diameter.")
    demand_range("diameter over inside", diameter / inside, "", 0.5, 2, "Give both as diameters.")
    ring = with_tolerances(
        Ring(
            name=f"{inside:g} x {section:g}", inside=Mm(inside), section=Mm(section),
            inside_tolerance=Mm(-1), section_tolerance=Mm(-1), own=True,
        )
    )  # fmt: skip
    fit = fit_of(place, limits(gland), ring)
    return Slip(
        subject="orings",
        question="check",
        results={
            "stretch": _band(fit.stretch),
            "squeeze": _band(fit.squeeze),
            "squeeze_free": Band(fit.squeeze_free, "%"),
            "fill": _band(fit.fill),
            "section_stretched": Band(fit.section, "mm"),
        },
        verdict=fit.verdict,
        because=fit.because,
        working=(*_groove(place), *_worked(place, fit), *_limits(gland, limits(gland))),
        sources=SOURCES,
        cautions=("ring-not-for-brakes",),
        picture=ring_picture(place, fit),
    )


def _band(span: Span) -> Band:
    return Band(span.value, "%", span.low, span.high)


UNITS = {
    "inside": "mm", "section": "mm", "stretch": "%", "squeeze": "%", "squeeze_low": "%", "squeeze_high": "%",
    "squeeze_free": "%", "fill": "%", "fill_high": "%",
}  # fmt: skip


def _row(f: Fit) -> Row:
    return {
        "ring": f.ring.name,
        "inside": f.ring.inside,
        "section": f.ring.section,
        "stretch": round(f.stretch.value, 2),
        "squeeze": round(f.squeeze.value, 2),
        "squeeze_low": round(f.squeeze.low, 2),
        "squeeze_high": round(f.squeeze.high, 2),
        "squeeze_free": round(f.squeeze_free, 2),
        "fill": round(f.fill.value, 2),
        "fill_high": round(f.fill.high, 2),
        "own": f.ring.own,
        "verdict": f.verdict,
        "because": f.because,
    }


def _groove(place: Gland) -> tuple[str, ...]:
    return (
        f"{place.kind}: the ring's inside sits on the {SEAT[place.kind]} of {place.seat:g} mm; "
        f"groove {place.depth:g} deep, {place.width:g} wide, measured within {place.within:g} mm",
    )


def _worked(place: Gland, f: Fit) -> tuple[str, ...]:
    r = f.ring
    return (
        f"stretch {place.seat:g} / {r.inside:g} − 1 = {f.stretch.value:.1f} %",
        f"section {r.section:g} stretched, volume kept: {f.section:.3f} mm",
        f"squeeze ({f.section:.3f} − {place.depth:g}) / {f.section:.3f} = {f.squeeze.value:.1f} %; "
        f"on the free section {f.squeeze_free:.1f} %",
        f"fill π/4 × {f.section:.3f}² / ({place.depth:g} × {place.width:g}) = {f.fill.value:.1f} %",
        f"worst of ring (±{r.inside_tolerance:g}, ±{r.section_tolerance:g} mm) and groove: "
        f"squeeze {f.squeeze.low:.1f} to {f.squeeze.high:.1f} %, fill to {f.fill.high:.1f} %",
    )


def _limits(gland: str, rules: Limits) -> tuple[str, ...]:
    return (
        f"{gland}: squeeze {rules.squeeze_good_low:g} to {rules.squeeze_good_high:g} % is good, "
        f"{rules.squeeze_may_low:g} to {rules.squeeze_may_high:g} may be; fill to {rules.fill_good:g}, "
        f"never over {rules.fill_may:g} %; stretch {rules.stretch_good_low:g} to "
        f"{rules.stretch_good_high:g} %",
    )


GROOVE: tuple[Input, ...] = (
    need("diameter", length, "what the inside sits on: groove root, rod, inside wall of a face groove",
         "50 mm"),
    need("depth", length, "from the groove's bottom to the face that closes it", "2.9 mm"),
    need("width", length, "of the groove", "4.8 mm"),
)  # fmt: skip
KIND = need("gland", one_of(*GLANDS), "radial static, face static, rod or piston", "radial static")
MEASURED = may("within", length, "how far off your measuring may be", "0.05 mm")

QUESTIONS = (
    Question(
        subject="orings",
        question="match",
        moment="a groove whose ring is lost or no longer made",
        answer=match,
        inputs=(
            KIND,
            *GROOVE,
            may("temperature", temperature, "the hottest it gets", "90 °C"),
            may("fluid", words, "what it holds back", "gear oil"),
            may("sizes", rings, "rings of your own, inside x section, or @file.csv", "50.4x3.5 mm"),
            MEASURED,
        ),
    ),
    Question(
        subject="orings",
        question="check",
        moment="a ring in hand and a groove it may fit",
        answer=check,
        inputs=(
            KIND,
            need("section", length, "thickness of the free ring", "3.53 mm"),
            need("inside", length, "inside diameter of the free ring", "49.2 mm"),
            *GROOVE,
            MEASURED,
        ),
    ),
)
