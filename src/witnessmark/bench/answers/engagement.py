"""The slip about depth of thread: which side strips first, and how much thread the bolt needs."""

from __future__ import annotations

import difflib

from msgspec import Struct

from witnessmark.bench.bolts import engagement_length, shear_area_bolt, shear_area_tapped
from witnessmark.bench.grades import strength
from witnessmark.bench.kinds import length, stress, words
from witnessmark.bench.question import Question, either, may, need
from witnessmark.bench.slip import Asked, Band, Slip
from witnessmark.bench.thread_list import Thread, find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import MegaPascal, Mm, Newton, demand_range
from witnessmark.tables.numbers import table

BOLT_SHEAR = 0.5
"""The bolt's own thread is taken to shear at half its tensile strength, on the cautious side."""


class Tapped(Struct, frozen=True, kw_only=True):
    """The tapped part: its shear strength, and the customary length over the diameter where one is known."""

    shear: MegaPascal
    customary: float | None = None
    sources: tuple[str, ...] = ()


def engagement(
    *,
    thread: str,
    grade: str,
    material: str | None = None,
    shear_strength: float | None = None,
    tensile_strength: float | None = None,
    bolt_major_min: float | None = None,
    bolt_pitch_min: float | None = None,
    tapped_pitch_max: float | None = None,
    tapped_minor_max: float | None = None,
) -> Slip:
    """How deep a thread must go in so that the bolt breaks before either thread strips."""
    t = find_thread(thread)
    bears = strength(grade, t.diameter)
    tensile = MegaPascal(bears.tensile if tensile_strength is None else tensile_strength)
    demand_range("tensile_strength", tensile, "MPa", 100, 2500, "8.8 has 800 MPa.")
    tapped = _tapped(material, shear_strength)
    load = Newton(t.area * tensile)
    limits = (bolt_major_min, tapped_pitch_max, tapped_minor_max, bolt_pitch_min)
    per_tapped, per_bolt = _areas(t, *limits)
    in_tapped = engagement_length(load, tapped.shear, Mm(per_tapped))
    in_bolt = engagement_length(load, MegaPascal(BOLT_SHEAR * tensile), Mm(per_bolt))
    need_mm, side = max((in_tapped, "tapped part"), (in_bolt, "bolt"))
    return Slip(
        subject="bolts",
        question="engagement",
        results={
            "length": Band(need_mm, "mm"),
            "length_over_diameter": Band(need_mm / t.diameter, ""),
            "weaker_side": side,
            "tapped_part_needs": Band(in_tapped, "mm"),
            "bolt_needs": Band(in_bolt, "mm"),
            "customary": _customary(tapped, t.diameter),
        },
        because=f"below {need_mm:.1f} mm of full thread the {side} strips before the bolt breaks",
        working=(
            f"bolt breaks at {t.area:.2f} mm² × {tensile:.0f} MPa = {load / 1000:.2f} kN",
            f"tapped part: {per_tapped:.2f} mm² a mm × {tapped.shear:.0f} MPa, so {in_tapped:.2f} mm",
            f"bolt: {per_bolt:.2f} mm² a mm × {BOLT_SHEAR:g} × {tensile:.0f} MPa, so {in_bolt:.2f} mm",
            *(("nominal sizes taken: real threads are slacker, add a fifth",) if None in limits else ()),
            "full threads only: the chamfers at both ends do not count",
        ),
        sources=tuple(dict.fromkeys((*t.sources, bears.source, "thread-shear-area", *tapped.sources))),
        cautions=("bolt-that-lets-go",),
    )


def _areas(
    t: Thread, major: float | None, pitch_max: float | None, minor: float | None, pitch_min: float | None
) -> tuple[float, float]:
    """Shear area of one millimetre of thread: of the tapped part, and of the bolt."""
    in_tapped = shear_area_tapped(
        Mm(1), Mm(major or t.diameter), Mm(pitch_max or t.pitch_diameter), t.pitch, t.form.angle
    )
    in_bolt = shear_area_bolt(
        Mm(1), Mm(minor or t.bore), Mm(pitch_min or t.pitch_diameter), t.pitch, t.form.angle
    )
    return in_tapped, in_bolt


def _customary(tapped: Tapped, diameter: Mm) -> Band | str:
    if tapped.customary is None:
        return "no customary length is known for a material given by its strength alone"
    return Band(tapped.customary * diameter, "mm")


def _tapped(material: str | None, shear: float | None) -> Tapped:
    if material is not None and shear is None:
        row = next(r for r in table("bolts/tapped").rows if r["material"] == material)
        return Tapped(
            shear=MegaPascal(row["tensile"] * row["shear_over_tensile"]),
            customary=row["customary"],
            sources=("tapped-materials", "shear-over-tensile"),
        )
    if shear is not None and material is None:
        demand_range("shear_strength", shear, "MPa", 5, 2000, "Mild steel has about 270 MPa.")
        return Tapped(shear=MegaPascal(shear))
    raise BadInput(
        given="material and shear_strength are both given"
        if material
        else "neither material nor shear_strength",
        holds="material of the tapped part, or its shear_strength",
        do="Give one.",
    )


def material(name: str, typed: str) -> Asked:
    """A material of the table of tapped parts, by its name or a word of it."""
    low = " ".join(typed.lower().split())
    rows = table("bolts/tapped").rows
    known = [r["material"] for r in rows]
    found = [m for m in known if low == m] or [m for m in known if low and low in m]
    if len(found) == 1:
        return Asked(typed, found[0])
    near = tuple(found or difflib.get_close_matches(low, known, n=3, cutoff=0.4))
    raise BadInput(
        given=f"{name} is {typed!r}",
        holds=f"one of {', '.join(known)}; or shear_strength=200 MPa",
        do=f"Did you mean {' or '.join(near)}?" if near else "Give one of these.",
        near=near,
    )


QUESTION = Question(
    subject="bolts",
    question="engagement",
    moment="a tapped hole that may strip",
    answer=engagement,
    inputs=(
        need("thread", words, "the thread by its usual name", "M8"),
        need("grade", words, "the mark on the bolt's head", "8.8"),
        either("material", material, "of the tapped part", "soft aluminium"),
        may("shear_strength", stress, "of the tapped part, in place of material", "200 MPa"),
        may("tensile_strength", stress, "of the bolt, in place of the grade's", "800 MPa"),
        may("bolt_major_min", length, "least over the bolt's crests", "7.76 mm"),
        may("bolt_pitch_min", length, "least pitch diameter of the bolt", "7.04 mm"),
        may("tapped_pitch_max", length, "greatest pitch diameter of the tapped thread", "7.348 mm"),
        may("tapped_minor_max", length, "greatest bore of the tapped thread", "6.912 mm"),
    ),
)
