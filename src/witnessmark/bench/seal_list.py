"""Which listed seal goes on a measured shaft and into a measured bore."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from witnessmark.bench.slip import Verdict
from witnessmark.ground.units import Mm, demand_range
from witnessmark.tables.numbers import table

INCH = 25.4
WEAR = 0.4
"""A worn shaft reads this much under its nominal at most, before it wants a sleeve."""
AS_SEAL = 0.35
"""A bore measured over the old seal reads this much over at most."""
MEASURING = 0.06
WIDTHS = 2.0


class SealSize(Struct, frozen=True, kw_only=True):
    """One listed seal beside what was measured; deviations are measured less nominal, mm."""

    shaft: Mm
    bore: Mm
    width: Mm
    shaft_off: Mm
    bore_off: Mm
    width_off: Mm
    standing: str
    source: str
    verdict: Verdict
    because: str


def seals_like(shaft: Mm, bore: Mm, width: Mm) -> tuple[SealSize, ...]:
    """Listed seals within reach of what was measured, best first.

    Raises BadInput for sizes no seal has.
    """
    demand_range("shaft", shaft, "mm", 3, 500, "Measure the shaft where the lip runs, and beside it.")
    demand_range("bore", bore, "mm", 6, 600, "Measure the housing where the seal sits.")
    demand_range("space between shaft and bore", (bore - shaft) / 2, "mm", 1, 60, "The bore is the larger.")
    demand_range("width", width, "mm", 2, 40, "Measure the seal's width or the depth of its seat.")
    found = [s for s in (_beside(dict(row), shaft, bore, width) for row in table("seals/sizes").rows) if s]
    return tuple(sorted(found, key=_order))


def _beside(row: dict[str, float | str], shaft: Mm, bore: Mm, width: Mm) -> SealSize | None:
    nominal = Mm(float(row["shaft"])), Mm(float(row["bore"])), Mm(float(row["width"]))
    offs = shaft - nominal[0], bore - nominal[1], width - nominal[2]
    off = [round(x, 6) for x in offs]
    if not (-WEAR <= off[0] <= MEASURING and -MEASURING <= off[1] <= AS_SEAL and abs(off[2]) <= WIDTHS):
        return None
    notes = [*_shaft_notes(nominal[0], offs[0]), *_bore_notes(nominal[1], offs[1])]
    if abs(offs[2]) > 0.3:
        notes.append(
            f"{abs(offs[2]):.1f} mm {'narrower' if offs[2] > 0 else 'wider'} than measured: look at the seat"
        )
    return SealSize(
        shaft=nominal[0], bore=nominal[1], width=nominal[2], shaft_off=Mm(offs[0]), bore_off=Mm(offs[1]),
        width_off=Mm(offs[2]), standing=str(row["standing"]), source=str(row["source"]),
        verdict="marginal" if notes else "fits",
        because="; ".join(notes) or "shaft and bore lie within the limits of the nominal size",
    )  # fmt: skip


def limits_of(nominal: Mm) -> tuple[float, float]:
    """Least shaft (h11) and greatest bore (H8) beside a nominal size, as deviations in mm."""
    for row in table("seals/limits").rows:
        if row["over"] < nominal <= row["upto"]:
            return row["shaft_low"] / 1000, row["bore_high"] / 1000
    return 0.0, 0.0


def _shaft_notes(nominal: Mm, off: float) -> list[str]:
    least = limits_of(nominal)[0]
    if off < least - MEASURING / 3:
        told = f"shaft {-off:.2f} mm under nominal, {-least:.2f} allowed"
        return [f"{told}: worn; set the lip elsewhere or sleeve it"]
    return []


def _bore_notes(nominal: Mm, off: float) -> list[str]:
    most = limits_of(nominal)[1]
    if off > most + MEASURING / 3:
        return [
            f"bore {off:.2f} mm over nominal, {most:.3f} allowed: measured over the old seal, or stretched"
        ]
    return []


def _order(one: SealSize) -> tuple[bool, float, bool, float]:
    return (
        one.verdict != "fits",
        abs(one.width_off),
        one.standing != "read",
        abs(one.shaft_off) + abs(one.bore_off),
    )


def inches_near(size: Mm) -> str | None:
    """The sixteenth of an inch that a size lies within 0.06 mm of, where no whole millimetre is as near.

    >>> inches_near(Mm(38.1)), inches_near(Mm(38.0))
    ('1 1/2 in', None)
    """
    part = Fraction(round(size / INCH * 16), 16)
    off = abs(size - float(part) * INCH)
    if off > MEASURING or off >= abs(size - round(size)):
        return None
    whole, rest = divmod(part, 1)
    return f"{whole} {rest} in" if whole and rest else f"{rest or whole} in"
