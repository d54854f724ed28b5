"""Slips about shaft seals: which one it is, and what to drive it in with."""

from __future__ import annotations

from witnessmark.bench.kinds import length
from witnessmark.bench.own_lists import Driver, drivers
from witnessmark.bench.picture.seals import driver_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.seal_driver import (
    UNDER_AIM,
    UNDER_HIGH,
    UNDER_LOW,
    Seat,
    Tried,
    could_be_turned,
    search,
    seat_of,
)
from witnessmark.bench.seal_list import SealSize, inches_near, seals_like
from witnessmark.bench.seals import press_allowance
from witnessmark.bench.slip import Band, Result, Row, Slip
from witnessmark.ground.units import Mm
from witnessmark.tables.numbers import table

TABLE_ROWS = 4
FITTING = (
    "Tape or sleeve splines, keyways and edges; spring to the oil; lip wet with oil; press on the edge of "
    "the case only, square; stop at a collar, not at the bottom. A groove worn in the shaft: set the seal a "
    "little deeper or less deep, or sleeve the shaft."
)


def identify(*, shaft: float, bore: float, width: float) -> Slip:
    """Listed seals that go on the shaft and into the bore."""
    found = seals_like(Mm(shaft), Mm(bore), Mm(width))
    inches = _inches(shaft, bore)
    results: dict[str, Result] = {"candidates": tuple(_seal_row(s) for s in found), "fitting": FITTING}
    if inches:
        results["inches"] = inches
    working = (
        f"measured shaft {shaft:.2f}, bore {bore:.2f}, width {width:.1f} mm",
        "a worn shaft reads small; a bore taken over the old seal reads 0.1 to 0.35 mm large",
    )
    if not found:
        told = f"it may be an inch seal: {inches}" if inches else "ask by its marks or its three measures"
        return Slip(
            subject="seals", question="identify", results=results, found=False, working=working,
            because=f"no listed seal is near {shaft:g} x {bore:g} x {width:g}; {told}",
            sources=("seal-size-lists", "seal-limits"), cautions=("seal-fitting",),
        )  # fmt: skip
    best = found[0]
    hollow = " (from memory, measure first)" if best.standing != "read" else ""
    return Slip(
        subject="seals",
        question="identify",
        results=results,
        units={n: "mm" for n in ("shaft", "bore", "width", "shaft_off", "bore_off", "width_off")},
        verdict=best.verdict,
        because=f"{best.shaft:g} x {best.bore:g} x {best.width:g}{hollow}: {best.because}",
        working=working,
        sources=(*dict.fromkeys(s.source for s in found), "seal-limits", "seal-shaft-surface"),
        cautions=("seal-fitting",),
    )


def _inches(shaft: float, bore: float) -> str:
    near = [(name, inches_near(Mm(size))) for name, size in (("shaft", shaft), ("bore", bore))]
    return ", ".join(f"{name} {inch}" for name, inch in near if inch)


def _seal_row(s: SealSize) -> Row:
    return {
        "shaft": s.shaft,
        "bore": s.bore,
        "width": s.width,
        "shaft_off": round(s.shaft_off, 3),
        "bore_off": round(s.bore_off, 3),
        "width_off": round(s.width_off, 2),
        "standing": "read in a list" if s.standing == "read" else "from memory, measure first",
        "verdict": s.verdict,
        "because": s.because,
    }


def driver(
    *,
    bore: float,
    shaft: float,
    seal_od: float | None = None,
    depth: float | None = None,
    reach: float | None = None,
    lip: float | None = None,
    have: tuple[Driver, ...] = (),
) -> Slip:
    """What to drive the seal in with, and what to make where nothing does."""
    seat = seat_of(Mm(shaft), Mm(bore), *(None if x is None else Mm(x) for x in (depth, reach, lip)))
    tried = search(seat, have)
    own = [t for t in tried if t.own]
    others = [t for t in tried if not t.own][:TABLE_ROWS]
    told = (*own, *others)
    good = [t for t in tried if t.verdict != "no"]
    press, press_sources = _press(seal_od, bore)
    results: dict[str, Result] = {
        "rows": tuple(_driver_row(t) for t in told),
        "make": _make(seat, have),
        "make_outside": Band(bore - UNDER_AIM, "mm", bore - UNDER_HIGH, bore - UNDER_LOW),
        "make_inside": Band(seat.clear_inside, "mm"),
        "fitting": FITTING,
    }
    if press:
        results["press"] = press
    sources = (
        "seal-driver-rule", *(("seal-lip-choice",) if lip is None else ()), "seal-sleeve",
        "seal-shaft-surface", *dict.fromkeys(p.source for t in others for p in t.pieces), *press_sources,
    )  # fmt: skip
    best = good[0] if good else None
    return Slip(
        subject="seals",
        question="driver",
        results=results,
        units={n: "mm" for n in ("id", "od", "clearance_in_bore", "clearance_on_shaft", "band")},
        found=best is not None,
        verdict=best.verdict if best else None,
        because=f"{best.driver}: {best.because}" if best else "nothing here drives it; make one",
        working=_driver_working(seat, lip),
        sources=sources,
        cautions=("seal-fitting",),
        picture=driver_picture(
            seat, best.pieces if best else (_made(seat),), words=best.driver if best else "to be made"
        ),
    )


def _driver_working(seat: Seat, lip: float | None) -> tuple[str, ...]:
    how = (
        "as measured"
        if lip is not None
        else f"three tenths of the space ({seat.bore:g} − {seat.shaft:g}) / 2, a choice"
    )
    return (
        f"outside {seat.bore:g} less {UNDER_LOW:g} to {UNDER_HIGH:g} = {seat.bore - UNDER_HIGH:.2f} to "
        f"{seat.bore - UNDER_LOW:.2f} mm",
        f"to pass over the shaft: inside more than {seat.shaft:g} mm",
        f"lip taken {seat.lip:.2f} mm wide: {how}",
        f"to clear the lip: inside {seat.shaft:g} + 2 × {seat.lip:.2f} = {seat.clear_inside:.2f} mm or more",
        *((f"long enough: {seat.length:g} mm at least",) if seat.length is not None else ()),
    )


def _press(seal_od: float | None, bore: float) -> tuple[str, tuple[str, ...]]:
    """How tight the seal sits, where its outside was measured."""
    if seal_od is None:
        return "", ()
    tight = press_allowance(Mm(seal_od), Mm(bore))
    row = next((r for r in table("seals/press_allowance").rows if r["over"] < bore <= r["upto"]), None)
    told = f"the seal is {tight:+.2f} mm against its bore".replace("-", "−")
    if row is None:
        return told, ("seal-limits",)
    usual = (
        f"{row['metal_low']:g} to {row['metal_high']:g} is usual for a metal case, "
        f"{row['rubber_low']:g} to {row['rubber_high']:g} for a rubber one"
    )
    loose = (
        "; it will not hold: sealing compound is no cure, look for the right seal" if tight <= 0.03 else ""
    )
    return f"{told}; {usual}{loose}", ("seal-limits",)


def _make(seat: Seat, own: tuple[Driver, ...]) -> str:
    """What to turn up or cut."""
    aim = seat.bore - UNDER_AIM
    long = f", {seat.length:g} mm long or more" if seat.length is not None else ""
    told = (
        f"turn up or cut a tube {aim:.2f} mm outside ({seat.bore - UNDER_HIGH:.2f} to "
        f"{seat.bore - UNDER_LOW:.2f}), {seat.clear_inside:.1f} mm inside or more, "
        f"never under {seat.shaft:.1f}{long}; ends square, edges broken"
    )
    turned = could_be_turned(seat, own)
    if turned:
        names = "; ".join(f"{d.name} ({d.outside:g} outside, {d.inside:g} inside)" for d in turned)
        told += f". To turn down: {names}"
    return told


def _made(seat: Seat) -> Driver:
    """The driver that `make` tells, for the picture."""
    return Driver(
        name="made",
        inside=Mm(min(seat.clear_inside, seat.bore - UNDER_AIM - 1)),
        outside=Mm(seat.bore - UNDER_AIM),
    )


def _driver_row(t: Tried) -> Row:
    return {
        "driver": t.driver,
        "id": t.inside,
        "od": t.outside,
        "clearance_in_bore": round(t.clearance_in_bore, 3),
        "clearance_on_shaft": round(t.clearance_on_shaft, 3),
        "band": round(t.band, 3),
        "own": t.own,
        "verdict": t.verdict,
        "because": t.because,
    }


QUESTIONS = (
    Question(
        subject="seals",
        question="identify",
        moment="a seal to find the size of",
        answer=identify,
        inputs=(
            need("shaft", length, "where the lip runs", "37.9 mm"),
            need("bore", length, "of the housing", "52 mm"),
            need("width", length, "of the seal or its seat", "7 mm"),
        ),
    ),
    Question(
        subject="seals",
        question="driver",
        moment="a seal to drive in",
        answer=driver,
        inputs=(
            need("bore", length, "of the housing", "36.2 mm"),
            need("shaft", length, "the largest the driver must pass over", "31.8 mm"),
            may("seal_od", length, "over the seal's case", "36.35 mm"),
            may("depth", length, "of the seal below the housing's face", "4 mm"),
            may("reach", length, "how far the shaft stands out beyond the seal", "60 mm"),
            may("lip", length, "width of the lip with its spring, one side", "1.5 mm"),
            may("have", drivers, "your drivers, inside x outside, or @file.csv", "32x36 29x41 mm"),
        ),
    ),
)
