"""Slips about wire."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from witnessmark.bench import wires
from witnessmark.bench.kinds import fraction as share
from witnessmark.bench.kinds import length, quantity, temperature
from witnessmark.bench.picture.wires import wire_picture
from witnessmark.bench.question import Question, either, may, need
from witnessmark.bench.slip import Band, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ampere, Celsius, Metre, Ohm, Volt, demand_range
from witnessmark.tables.numbers import table

OVER_LOAD = 1.25


def answer_size(
    *,
    current: float,
    length: float,
    supply: float,
    drop: float | None = None,
    fraction: float | None = None,
    temperature: float = 20.0,
) -> Slip:
    """The wire that keeps within a drop and bears the current, and the fuse that guards it."""
    allowed = _allowed(drop, fraction, supply)
    demand_range("length", length, "mm", 10, 100_000, "One way, along the loom.")
    way = Metre(2 * length / 1000)
    warm = wires.copper_factor(Celsius(temperature))
    least = wires.copper_area(Ampere(current), way, Volt(allowed), warm)
    rows = [_row(r, current, way, warm, allowed) for r in table("wire/conductors").rows]
    chosen = next((r for r in rows if r["drops"] and r["bears"] and r["fuse"]), None)
    working = _working(allowed, supply, way, temperature, warm, least)
    if chosen is None:
        return _none(current, allowed, least, rows, working)
    fuse = chosen["fuse"]
    return Slip(
        subject="wires",
        question="size",
        results={
            "area": Band(least, "mm²"),
            "wire": Band(chosen["area"], "mm²"),
            "drop": Band(chosen["drop"], "V"),
            "fuse": Band(fuse, "A"),
            "bears": Band(chosen["rating"], "A"),
        },
        verdict="fits",
        because=f"{chosen['area']:g} mm² loses {figure(chosen['drop'])} V "
        f"({chosen['drop'] / supply * 100:.1f} %) and bears "
        f"{chosen['rating']:g} A; fuse {fuse:g} A. A tight bundle or a hot place takes the next size",
        working=working,
        sources=(
            "iec-60228",
            "copper-resistivity",
            "ohm",
            *_rated_by(chosen["area"]),
            "blade-fuses",
            "fuse-choice",
        ),
        cautions=("battery",),
        picture=wire_picture(rows, chosen["area"], allowed, current),
    )


def _working(
    allowed: float, supply: float, way: float, temperature: float, warm: float, least: float
) -> tuple[str, ...]:
    return (
        f"allowed drop {figure(allowed)} V of {supply:g} V, over {way:g} m out and back",
        f"copper at {temperature:g} °C resists {warm:.3f} times as much as at 20 °C: solid copper "
        f"would need {figure(least)} mm²",
        "a stranded wire resists a little more: each size is judged by the most that the cable "
        "standard lets it",
        "with the body as the way back, half the length holds, and the earth joint counts",
        "a fuse a quarter above the load, and not above what the wire bears",
    )


def _allowed(drop: float | None, fraction: float | None, supply: float) -> float:
    demand_range("supply", supply, "V", 1, 60, "6, 12 or 24 V.")
    if (drop is None) == (fraction is None):
        raise BadInput(
            given="both drop and fraction" if drop is not None else "neither drop nor fraction",
            holds="one of them: drop=0.3V, or fraction=3%",
            do="Lamps are often given 3 %, a starter more.",
        )
    allowed = drop if drop is not None else supply * float(fraction or 0)
    demand_range("drop", allowed, "V", 0.001, supply, "It cannot be more than the supply.")
    return allowed


def _row(row: Mapping[str, Any], current: float, way: float, warm: float, allowed: float) -> dict[str, Any]:
    ohms = Ohm(row["resistance"] / 1000 * warm)
    lost = wires.voltage_drop(Ampere(current), Metre(way), ohms)
    rating = _rating(row["area"])
    fuses = [r["rating"] for r in table("wire/fuses").rows if current * OVER_LOAD <= r["rating"] <= rating]
    return {
        "area": row["area"],
        "drop": lost,
        "rating": rating,
        "drops": lost <= allowed,
        "bears": current <= rating,
        "fuse": min(fuses, default=None),
    }


def _rating(area: float) -> float:
    """Continuous current of the greatest size read that is not above this one."""
    return float(max(r["current"] for r in table("wire/continuous").rows if r["area"] <= area))


def _rated_by(area: float) -> tuple[str, ...]:
    rows = [r for r in table("wire/continuous").rows if r["area"] <= area]
    return (max(rows, key=lambda r: r["current"])["source"],)


def _none(
    current: float, allowed: float, least: float, rows: list[dict[str, Any]], working: tuple[str, ...]
) -> Slip:
    biggest = rows[-1]
    if not biggest["drops"]:
        why = (
            f"even {biggest['area']:g} mm² loses {figure(biggest['drop'])} V, and {figure(allowed)} "
            "V is allowed"
        )
    elif not biggest["bears"]:
        why = f"no size here is rated for {current:g} A without end"
    else:
        why = f"no blade fuse stands between {current * OVER_LOAD:g} A and what the wire bears"
    return Slip(
        subject="wires",
        question="size",
        results={"area": Band(least, "mm²")},
        because=f"{why}: shorten the way, or take cable and fuse to the maker's own table",
        working=working,
        sources=("iec-60228", "copper-resistivity", "blade-fuses", "fuse-choice"),
        cautions=("battery",),
        picture=wire_picture(rows, None, allowed, current),
        found=False,
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="wires",
        question="size",
        moment="a wire to choose, or a lamp that burns dim",
        answer=answer_size,
        inputs=(
            need("current", quantity("current"), "that flows", "8 A"),
            need("length", length, "one way, along the loom", "4 m"),
            need("supply", quantity("voltage"), "of the vehicle", "12 V"),
            either("drop", quantity("voltage"), "allowed, out and back", "0.4 V"),
            may("fraction", share, "or: part of the supply", "3 %"),
            may("temperature", temperature, "of the wire; 20 °C if not said", "40 C"),
        ),
    ),
)
