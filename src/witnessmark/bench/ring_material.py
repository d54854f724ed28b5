"""Which rubber, by what it holds back and how hot it gets."""

from __future__ import annotations

from witnessmark.tables.numbers import table


def advice(temperature: float | None, fluid: str | None) -> tuple[str, tuple[str, ...]]:
    """One line of advice, and the sources behind it.

    temperature  °C, the hottest it gets; None where nobody said
    fluid        in words; None where nobody said

    >>> advice(90, "gear oil")[0]
    'nitrile (NBR) or fluoroelastomer (FKM): stands gear oil, 90 °C is within its span; never EPDM, VMQ'
    """
    if fluid is None:
        return "say fluid and temperature for the rubber; black nitrile (NBR) is for mineral oil", ()
    word = " ".join(fluid.lower().split())
    rows = table("orings/materials").rows
    if not any(word in row["stands"] or word in row["fails_in"] for row in rows):
        known = sorted({w.strip() for row in rows for w in row["stands"].split(",")})
        return f"no advice for {fluid!r}: the table knows {', '.join(known)}", ("oring-materials",)
    stands = [row for row in rows if word in [w.strip() for w in row["stands"].split(",")]]
    good = [r for r in stands if temperature is None or r["low"] <= temperature <= r["high"]]
    fails = ", ".join(r["material"] for r in rows if word in [w.strip() for w in r["fails_in"].split(",")])
    never = f"; never {fails}" if fails else ""
    if not good:
        return f"no rubber of the table stands {fluid} at {temperature:g} °C{never}", ("oring-materials",)
    names = " or ".join(f"{r['name']} ({r['material']})" for r in good)
    hot = "" if temperature is None else f", {temperature:g} °C is within its span"
    return f"{names}: stands {fluid}{hot}{never}", ("oring-materials",)
