"""Slips about welds: settings, heat, and a row of plugs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from witnessmark.bench import welds
from witnessmark.bench.kinds import count, length, number, one_of, quantity, words
from witnessmark.bench.picture.welds import plug_picture
from witnessmark.bench.question import Question, either, may, need
from witnessmark.bench.readings import speed
from witnessmark.bench.slip import Band, Result, Slip, Verdict
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ampere, Mm, MmPerMinuteAmpere, MmPerSecond, Ratio, Volt, demand_range
from witnessmark.tables.numbers import table

SHEET_MOST, SHEET_HOLE, SHEET_LEAST = 1.5, 8.0, 6.0
SPACED, TIGHT, END = 4.0, 3.0, 1.5
COLUMNS = ("current", "voltage", "travel", "gas")


def bands_at(thickness: float, joint: str | None) -> dict[str, tuple[float, float]]:
    """Current, voltage, travel in mm/s and gas at a thickness: the spread of what the makers print."""
    rows = [r for r in table("welding/settings").rows if joint in (None, r["joint"])]
    spans: dict[str, list[float]] = {c: [] for c in COLUMNS}
    for key in dict.fromkeys((r["source"], r["joint"]) for r in rows):
        series = [r for r in rows if (r["source"], r["joint"]) == key]
        for column in COLUMNS:
            spans[column] += _between(series, thickness, column)
    if not spans["current"]:
        least, most = min(r["thickness"] for r in rows), max(r["thickness"] for r in rows)
        raise BadInput(
            given=f"thickness is {thickness:g} mm",
            holds=f"{least:g} to {most:g} mm, where settings are printed",
            do="Read the chart in the lid of the machine.",
        )
    found = {c: (min(v), max(v)) for c, v in spans.items()}
    found["travel"] = (found["travel"][0] / 6, found["travel"][1] / 6)
    return found


def _between(series: list[Mapping[str, Any]], thickness: float, column: str) -> list[float]:
    """The low and high of a column at a thickness, or nothing beyond the rows."""
    below = [r for r in series if r["thickness"] <= thickness + 1e-9]
    above = [r for r in series if r["thickness"] >= thickness - 1e-9]
    if not below or not above:
        return []
    a, b = below[-1], above[0]
    wide = b["thickness"] - a["thickness"]
    share = (thickness - a["thickness"]) / wide if wide > 0 else 0.0
    return [a[f"{column}_{end}"] * (1 - share) + b[f"{column}_{end}"] * share for end in ("low", "high")]


def answer_settings(
    *, thickness: float, wire: float, joint: str | None = None, gas: str | None = None
) -> Slip:
    """Where to begin on the machine, as bands."""
    found = bands_at(thickness, joint)
    low, high, burn = _wire(wire)
    amps = found["current"]
    feed = (
        welds.wire_feed(Ampere(amps[0]), MmPerMinuteAmpere(burn)),
        welds.wire_feed(Ampere(amps[1]), MmPerMinuteAmpere(burn)),
    )
    verdict, about_wire = _wire_suits(wire, low, high, amps)
    odd_gas = (
        gas is not None and "co2" in gas.lower() and not any(w in gas.lower() for w in ("ar", "mix", "/"))
    )
    if odd_gas and verdict == "fits":
        verdict = "marginal"
    return Slip(
        subject="welds",
        question="settings",
        results={
            "current": _spread(amps, "A"),
            "wire_feed": _spread(feed, "mm/s"),
            "voltage": _spread(found["voltage"], "V"),
            "gas_flow": _spread(found["gas"], "L/min"),
            "travel": _spread(found["travel"], "mm/s"),
        },
        verdict=verdict,
        because=f"begin at {figure(amps[0])} to {figure(amps[1])} A on a scrap of the same sheet; "
        f"{about_wire}"
        + ("; these figures are for argon mix: with pure CO2 ask the machine's chart" if odd_gas else ""),
        working=(
            f"{joint or 'butt and fillet, as nothing was said'}, {thickness:g} mm: between the rows "
            "that two makers print",
            f"rule of thumb, an ampere for each thousandth of an inch: {figure(_rule(thickness))} A",
            f"{wire:g} mm wire burns {burn:.3g} mm a minute for each ampere: {feed[0] * 0.06:.2g} to "
            f"{feed[1] * 0.06:.2g} m/min",
            f"{wire:g} mm wire is fed at {low:.3g} to {high:.3g} A",
            "the machine's own chart comes first; both makers call these guidelines",
        ),
        sources=("maker-settings-a", "maker-settings-b", "wire-burn-off"),
        cautions=("hot-work", "fire-watch", "electric", "galvanised"),
    )


def _spread(ends: tuple[float, float], unit: str) -> Band:
    """A band with its middle."""
    return Band((ends[0] + ends[1]) / 2, unit, *ends)


def _rule(thickness: float) -> float:
    return welds.current_from_thickness(Mm(min(max(thickness, 0.5), 6.5)))


def _wire(wire: float) -> tuple[float, float, float]:
    """Least and greatest current and the burn-off of a wire; between printed wires by their area."""
    rows = table("welding/wire").rows
    demand_range("wire", wire, "mm", rows[0]["wire"], rows[-1]["wire"], "0.6 and 0.8 suit body sheet.")
    above = next(i for i, r in enumerate(rows) if r["wire"] >= wire - 1e-9)
    b = rows[above]
    if abs(b["wire"] - wire) < 1e-6:
        return b["current_low"], b["current_high"], b["burn_off"]
    a = rows[above - 1]
    share = (wire**-2 - a["wire"] ** -2) / (b["wire"] ** -2 - a["wire"] ** -2)
    low, high, burn = (a[k] + share * (b[k] - a[k]) for k in ("current_low", "current_high", "burn_off"))
    return low, high, burn


def _wire_suits(wire: float, low: float, high: float, amps: tuple[float, float]) -> tuple[Verdict, str]:
    if amps[1] < low:
        return "no", f"{wire:g} mm wire wants at least {low:g} A: take thinner wire"
    if amps[0] > high:
        return "no", f"{wire:g} mm wire bears at most {high:g} A: take thicker wire"
    if amps[0] < low or amps[1] > high:
        return "marginal", f"part of that is outside what {wire:g} mm wire is fed at"
    return "fits", f"{wire:g} mm wire is fed at that"


def answer_heat(
    *,
    voltage: float,
    current: float,
    speed: float,
    process: str | None = None,
    efficiency: float | None = None,
) -> Slip:
    """Heat in each millimetre of weld."""
    if (process is None) == (efficiency is None):
        raise BadInput(
            given="both process and efficiency" if process else "neither process nor efficiency",
            holds="one of them: process=mag, or efficiency=0.8",
            do="Metal-arc with wire is mag, a stick is mma.",
        )
    share, said = (efficiency, "as given") if efficiency is not None else _efficiency(str(process))
    found = welds.heat_input(Volt(voltage), Ampere(current), MmPerSecond(speed), Ratio(float(share)))
    arc = welds.heat_input(Volt(voltage), Ampere(current), MmPerSecond(speed), Ratio(1.0))
    return Slip(
        subject="welds",
        question="heat",
        results={"heat_input": Band(found, "kJ/mm"), "arc_energy": Band(arc, "kJ/mm")},
        because=f"{figure(found)} kJ/mm ({figure(found * 1000)} J/mm) goes into the work",
        working=(
            f"{voltage:g} V × {current:g} A / {figure(speed)} mm/s = {figure(arc * 1000)} J/mm at the arc",
            f"times {share:g}, {said}: {figure(found * 1000)} J/mm",
        ),
        sources=("en-1011-heat-input",),
        cautions=("hot-work", "fire-watch"),
    )


def _efficiency(process: str) -> tuple[float, str]:
    rows = table("welding/efficiency").rows
    word = process.lower().strip()
    for row in rows:
        if word == row["process"] or word in (w.strip() for w in row["also"].split(",")):
            return row["efficiency"], f"for {row['process']}"
    known = tuple(r["process"] for r in rows)
    raise BadInput(
        given=f"process is {process!r}",
        holds=f"one of {', '.join(known)}",
        do="Or give efficiency.",
        near=known,
    )


def answer_plugs(
    *,
    length: float,
    thickness: float,
    spots_counted: int | None = None,
    edge: float | None = None,
    strength: float | None = None,
    load: float | None = None,
) -> Slip:
    """A row of plugs in place of spots: holes, how many, how far apart, in which order. No capacity."""
    demand_range("length", length, "mm", 10, 20_000, "Of the flange.")
    demand_range("thickness", thickness, "mm", 0.5, 6, "Of the part with the holes.")
    hole, low, high = _hole(thickness)
    end = END * hole if edge is None else edge
    demand_range("edge", end, "mm", hole / 2, length / 2, "From the end of the flange to the first hole.")
    fits = max(1, int((length - 2 * end) / (SPACED * hole) + 1e-9) + 1)
    many = fits if spots_counted is None else spots_counted
    places = welds.plug_places(Mm(length), Mm(end), many)
    pitch = welds.pitches(places)
    turns = welds.spread_order(many)
    verdict, because = _spaced(pitch, hole, many, fits, counted=spots_counted is not None)
    asked_strength = strength is not None or load is not None
    results: dict[str, Result] = {
        "diameter": Band(hole, "mm", low, high),
        "count": Band(many, ""),
        "pitch": Band(pitch, "mm"),
        "edge": Band(end, "mm"),
        "order": ", ".join(str(i + 1) for i in turns),
        "places": tuple(
            {"plug": i + 1, "at": round(at, 1), "turn": turns.index(i) + 1} for i, at in enumerate(places)
        ),
    }
    return Slip(
        subject="welds",
        question="plugs",
        results=results,
        units={"at": "mm"},
        verdict=verdict,
        because=because
        + (
            "; no capacity is given: no source read here stands behind one in sheet" if asked_strength else ""
        ),
        working=_plug_working(
            length, thickness, (hole, low, high), end, pitch, many, fits, counted=spots_counted is not None
        ),
        sources=("as-built", *(("plug-hole-sheet",) if thickness <= SHEET_MOST else ()), "aisc-j2-plugs"),
        cautions=("hot-work", "fire-watch", "galvanised", "strength-scope"),
        picture=plug_picture(length, end, hole, places, turns),
    )


def _plug_working(
    length: float,
    thickness: float,
    holes: tuple[float, float, float],
    end: float,
    pitch: float,
    many: int,
    fits: int,
    *,
    counted: bool,
) -> tuple[str, ...]:
    hole, low, high = holes
    return (
        f"hole {hole:g} mm, {low:g} to {high:.3g}: "
        + (
            "the size trade uses in body sheet"
            if thickness <= SHEET_MOST
            else "thickness and 8 mm, by the rule for plate"
        ),
        "one plug for each spot that was there"
        if counted
        else f"at four holes from middle to middle {fits} fit; count the old spots and put back as many",
        f"first hole {end:.3g} mm from the end; ({length:g} − 2 × {end:.3g}) / {max(1, many - 1)} "
        f"= {pitch:.3g} mm apart",
        "ends first, then the middle of the widest gap: weld where it is coolest",
    )


def _hole(thickness: float) -> tuple[float, float, float]:
    if thickness <= SHEET_MOST:
        return SHEET_HOLE, SHEET_LEAST, SHEET_HOLE
    least, most = welds.plug_hole(Mm(thickness))
    return round(least, 1), round(least, 1), round(most, 1)


def _spaced(pitch: float, hole: float, many: int, fits: int, *, counted: bool) -> tuple[Verdict, str]:
    scope = "one for one, as built; certifier where the law asks"
    if many > 1 and pitch < TIGHT * hole:
        return "no", f"{many} plugs stand {pitch:.3g} mm apart, under three holes: they run together; {scope}"
    if many > 1 and pitch < SPACED * hole - 1e-9:
        return (
            "marginal",
            f"{many} plugs stand {pitch:.3g} mm apart, under four holes: spread the heat; {scope}",
        )
    said = f"{many} plugs, {pitch:.3g} mm apart" if many > 1 else "one plug"
    return (
        ("fits", f"{said}; {scope}")
        if counted
        else ("marginal", f"at most {fits}: count the old spots first; {scope}")
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="welds",
        question="settings",
        moment="sheet cleaned, machine on: where to set it",
        answer=answer_settings,
        inputs=(
            need("thickness", length, "of the sheet", "1.2 mm"),
            need("wire", length, "diameter", "0.8 mm"),
            may("joint", one_of("butt", "fillet"), "butt or fillet", "butt"),
            may("gas", words, "argon mix if not said", "argon 20 % CO2"),
        ),
    ),
    Question(
        subject="welds",
        question="heat",
        moment="how much heat a bead puts in",
        answer=answer_heat,
        inputs=(
            need("voltage", quantity("voltage"), "at the arc", "15 V"),
            need("current", quantity("current"), "at the arc", "60 A"),
            need("speed", speed, "along the weld", "400 mm/min"),
            either("process", words, "mag, mma, tig, plasma, saw", "mag"),
            may("efficiency", number, "or: part of the energy that counts", "0.8"),
        ),
    ),
    Question(
        subject="welds",
        question="plugs",
        moment="spots drilled out: plugs in their place",
        answer=answer_plugs,
        inputs=(
            need("length", length, "of the flange", "450 mm"),
            need("thickness", length, "of the part with the holes", "1.0 mm"),
            may("spots_counted", count, "spots that were there", "12"),
            may("edge", length, "from the end to the first hole", "12 mm"),
            may("strength", quantity("stress"), "taken, and answered with no capacity", "410 MPa"),
            may("load", quantity("force"), "taken, and answered with no capacity", "2 kN"),
        ),
    ),
)
