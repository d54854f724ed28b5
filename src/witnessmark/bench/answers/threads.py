"""Slips about threads: which one is it, and what its sizes are."""

from __future__ import annotations

from witnessmark.bench.kinds import angle as angle_read
from witnessmark.bench.kinds import length, one_of, words
from witnessmark.bench.kinds import pitch as pitch_read
from witnessmark.bench.picture.threads import forms_overlaid
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Row, Slip
from witnessmark.bench.thread_list import Thread, find_thread
from witnessmark.bench.thread_search import CLEAR, Candidate, look_alikes, tell_apart
from witnessmark.bench.thread_search import identify as search
from witnessmark.bench.threads import tap_drill, ten_pitches
from witnessmark.ground.units import Degree, Mm

SHOWN = 6


def identify(
    *,
    diameter: float,
    pitch: float,
    angle: float | None = None,
    across_flats: float | None = None,
    internal: str = "no",
) -> Slip:
    """Which thread this is, with the near misses and how to tell them apart."""
    inside = internal == "yes"
    found = search(
        Mm(diameter),
        Mm(pitch),
        None if angle is None else Degree(angle),
        None if across_flats is None else Mm(across_flats),
        internal=inside,
    )
    where = "bore of the nut" if inside else "crests"
    working = (
        f"{where} {diameter:.2f} mm, pitch {pitch:.4g} mm ({25.4 / pitch:.1f} to the inch), "
        f"ten pitches {10 * pitch:.2f} mm",
        "a worn thread reads large in a nut"
        if inside
        else "a worn crest reads small: only that side is forgiven",
    )
    if not found:
        return Slip(
            subject="threads", question="identify", results={"candidates": ()}, found=False, working=working,
            because=f"no tabled thread has this pitch with {where} of {diameter:.2f} mm; measure ten pitches",
            sources=("thread-metric-series", "thread-unified-series", "thread-whitworth-series"),
        )  # fmt: skip
    best, rest = found[0], found[1:SHOWN]
    rivals = [c for c in rest if c.cost - best.cost < CLEAR]
    near = list(dict.fromkeys([*(c.thread for c in rest), *look_alikes(best.thread)]))[:SHOWN]
    return Slip(
        subject="threads",
        question="identify",
        results={
            "candidates": tuple(_row(c, inside=inside) for c in found[:SHOWN]),
            "near_misses": tuple(_near(best.thread, t) for t in near),
        },
        units={"diameter": "mm", "pitch": "mm", "angle": "°", "off_by": "mm", "ten_pitches": "mm"},
        verdict="marginal" if rivals else "fits",
        because=_because(best, rivals),
        working=(*working, *(_worked(c) for c in found[:SHOWN])),
        sources=tuple(dict.fromkeys(s for c in found[:SHOWN] for s in c.thread.all_sources)),
        picture=forms_overlaid(best.thread, near[0] if near else None),
    )


def _because(best: Candidate, rivals: list[Candidate]) -> str:
    name = best.thread.name
    if not rivals:
        return f"{name} agrees with what was measured, and no other thread of the tables as well"
    others = " or ".join(c.thread.name for c in rivals)
    return f"{name} agrees best, but it may be {others}: {tell_apart(best.thread, rivals[0].thread)}"


def _row(one: Candidate, *, inside: bool) -> Row:
    t = one.thread
    return {
        "thread": t.name,
        "family": t.family,
        "diameter": round(t.diameter, 3),
        "pitch": round(t.pitch, 4),
        "angle": t.form.angle,
        "off_by": round(one.off_by, 3),
        "ten_pitches": round(ten_pitches(t.pitch), 2),
        "spanner": t.spanner or "no standard head",
        "because": f"{abs(one.off_by):.2f} mm {'over' if one.off_by > 0 else 'under'} the "
        f"{'full-depth bore' if inside else 'nominal crest'}",
    }


def _near(best: Thread, other: Thread) -> Row:
    return {"thread": other.name, "against": best.name, "tell_apart": tell_apart(best, other)}


def _worked(one: Candidate) -> str:
    t = one.thread
    return (
        f"{t.name}: {t.diameter:.3f} mm, pitch {t.pitch:.4f} mm, ten pitches {ten_pitches(t.pitch):.2f} mm, "
        f"off by {one.off_by:+.2f} mm, cost {one.cost:.1f}"
    )


def size(*, thread: str) -> Slip:
    """The sizes of a named thread."""
    t = find_thread(thread)
    results: dict[str, Band | str] = {
        "diameter": Band(t.diameter, "mm"),
        "pitch": Band(t.pitch, "mm"),
        "angle": Band(t.form.angle, "°"),
        "pitch_diameter": Band(t.pitch_diameter, "mm"),
        "minor_diameter": Band(t.bore, "mm"),
        "root_diameter": Band(t.root_diameter, "mm"),
        "stress_area": Band(t.area, "mm²"),
        "tap_drill": Band(tap_drill(t.diameter, t.pitch), "mm"),
        "across_flats": _flats(t),
        "spanner": t.spanner or "no standard head is known to the tables",
        "ten_pitches": Band(ten_pitches(t.pitch), "mm"),
    }
    return Slip(
        subject="threads",
        question="size",
        results=results,
        because=_size_because(t),
        working=_size_working(t),
        sources=(
            *t.all_sources,
            "tap-drill-rule",
            *(() if t.metric_convention else ("stress-area-convention",)),
        ),
        picture=forms_overlaid(t),
    )


def _flats(t: Thread) -> Band | str:
    if t.jaw is None:
        return "no standard head is known to the tables: measure it"
    low, high = sorted(t.jaw)
    return Band(t.jaw[0], "mm") if high - low < 0.01 else Band(low, "mm", low, high)


def _size_because(t: Thread) -> str:
    told = f"{t.name} is {t.family}, {t.form.name} form"
    if not t.tabled:
        return f"{told}; this size and pitch are not in the tables, the form alone was applied"
    if not t.metric_convention:
        return f"{told}; its stress area is the metric rule applied, for comparison only"
    return told


def _size_working(t: Thread) -> tuple[str, ...]:
    form = t.form
    pitch = f"25.4 / {t.per_inch:g} = {t.pitch:.4f} mm" if t.per_inch else f"{t.pitch:g} mm"
    return (
        f"pitch {pitch}",
        f"pitch diameter {t.diameter:.3f} − {form.to_pitch:.4f} × {t.pitch:.4f} = {t.pitch_diameter:.3f} mm",
        f"minor diameter (nut) {t.diameter:.3f} − {form.to_bore:.4f} × {t.pitch:.4f} = {t.bore:.3f} mm",
        f"root (bolt) {t.diameter:.3f} − {form.to_root:.4f} × {t.pitch:.4f} = {t.root_diameter:.3f} mm",
        f"stress area π/4 × (({t.pitch_diameter:.3f} + {t.root_diameter:.3f}) / 2)² = {t.area:.2f} mm²",
        f"drill {t.diameter:.3f} − {t.pitch:.3f} = {tap_drill(t.diameter, t.pitch):.2f} mm",
    )


QUESTIONS = (
    Question(
        subject="threads",
        question="identify",
        moment="a bolt or nut of unknown thread",
        answer=identify,
        inputs=(
            need("diameter", length, "over the crests of a bolt, or the bore of a nut", "7.9mm"),
            need("pitch", pitch_read, "as a length or threads to the inch", "24 tpi"),
            may("angle", angle_read, "between the flanks, from a thread gauge", "55°"),
            may("across_flats", length, "of the head or nut", "12.7 mm"),
            may("internal", one_of("yes", "no"), "yes when a nut or tapped hole was measured", "yes"),
        ),
    ),
    Question(
        subject="threads",
        question="size",
        moment="a thread whose sizes, drill or spanner are wanted",
        answer=size,
        inputs=(need("thread", words, "the thread by its usual name", "5/16 UNF"),),
    ),
)
