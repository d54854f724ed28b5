"""Slips about coolant."""

from __future__ import annotations

from typing import Any

from witnessmark.bench import coolant
from witnessmark.bench.kinds import one_of, quantity
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.units import Percent, Ratio, demand_range
from witnessmark.tables.numbers import table

TABLE_BY_VOLUME_SHOWS_LESS = 3.0


def answer_freeze(*, glycol: float, kind: str, by: str | None = None) -> Slip:
    """Where a mixture of glycol and water begins to freeze."""
    demand_range("glycol", glycol, "%", 0, 100, "Give the part of glycol, not of water.")
    measure = by or "mass"
    rows = [r for r in table("coolant/freezing").rows if r["kind"] == kind]
    density = next(r for r in table("coolant/density").rows if r["kind"] == kind)
    part, step = _in_measure(glycol, measure, rows[0]["by"], density["density"])
    found = coolant.between_points(Percent(part), [(r["part"], r["freezes"]) for r in rows])
    doubtful = kind == "ethylene" and measure == "volume" and found < 0
    band = (
        Band(found, "°C", found, min(0.0, found + TABLE_BY_VOLUME_SHOWS_LESS))
        if doubtful
        else Band(found, "°C")
    )
    said = "" if by else " (taken by mass, as nothing was said)"
    return Slip(
        subject="coolant",
        question="freeze",
        results={"temperature": band},
        because=f"{glycol:g} % {kind} glycol by {measure}{said} begins to freeze at {figure(found)} °C",
        working=(
            *step,
            f"between the nearest printed points, {_near(rows, part)}: {figure(found)} °C",
            *(
                ("a printed table by volume shows 1 to 3 °C less protection: the upper end is that",)
                if doubtful
                else ()
            ),
            "crystals form here; it is solid some degrees lower. The product's own chart comes first",
        ),
        sources=_sources(kind, measure, doubtful=doubtful),
        cautions=("hot-coolant",),
    )


def _in_measure(glycol: float, measure: str, wanted: str, density: float) -> tuple[float, tuple[str, ...]]:
    if measure == wanted:
        return glycol, ()
    turn = coolant.mass_from_volume if wanted == "mass" else coolant.volume_from_mass
    part = turn(Percent(glycol), Ratio(density))
    return part, (f"{glycol:g} % by {measure} is {part:.1f} % by {wanted}, with glycol of {density:g} kg/L",)


def _near(rows: list[Any], part: float) -> str:
    near = sorted(sorted(rows, key=lambda r: abs(r["part"] - part))[:3], key=lambda r: r["part"])
    return ", ".join(f"{r['part']:g} % {r['freezes']:g} °C" for r in near)


def _sources(kind: str, measure: str, *, doubtful: bool) -> tuple[str, ...]:
    if kind == "propylene":
        return ("lange-glycol",) if measure == "volume" else ("lange-glycol", "mixing-by-mass", "from-memory")
    first = ("handbook-glycol", "glycol-selector")
    more = ("engine-manual-glycol", "mixing-by-mass") if measure == "volume" else ()
    return (*first, *more, *(("glycol-volume-table",) if doubtful else ()))


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="coolant",
        question="freeze",
        moment="a cold night ahead, and coolant of known strength",
        answer=answer_freeze,
        inputs=(
            need("glycol", quantity("ratio"), "part of glycol", "40 %"),
            need("kind", one_of("ethylene", "propylene"), "which glycol", "ethylene"),
            may("by", one_of("mass", "volume"), "how the part is counted; mass if not said", "volume"),
        ),
    ),
)
