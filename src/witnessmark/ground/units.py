"""Units inside the core: one a kind of quantity, in the type, chosen once.

Nothing converts silently: the rim converts what a person typed (`ground.quantities`), and from
then on every number is in the unit that its type names. `Percent` is 20 for 20 %, `Ratio` is 0.2.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NewType

from witnessmark.ground.errors import BadInput

Mm = NewType("Mm", float)
Metre = NewType("Metre", float)
Micrometre = NewType("Micrometre", float)
Mm2 = NewType("Mm2", float)
M2 = NewType("M2", float)
Mm3 = NewType("Mm3", float)
Mm4 = NewType("Mm4", float)
M2PerLitre = NewType("M2PerLitre", float)
Litre = NewType("Litre", float)
Kilogram = NewType("Kilogram", float)
Newton = NewType("Newton", float)
NewtonMetre = NewType("NewtonMetre", float)
NewtonPerMm = NewType("NewtonPerMm", float)
MegaPascal = NewType("MegaPascal", float)
Bar = NewType("Bar", float)
HectoPascal = NewType("HectoPascal", float)
Celsius = NewType("Celsius", float)
Kelvin = NewType("Kelvin", float)
PerKelvin = NewType("PerKelvin", float)
Minute = NewType("Minute", float)
Second = NewType("Second", float)
MmPerSecond = NewType("MmPerSecond", float)
KilojoulePerMm = NewType("KilojoulePerMm", float)
CentiStoke = NewType("CentiStoke", float)
MmPerMinuteAmpere = NewType("MmPerMinuteAmpere", float)
GramPerM3 = NewType("GramPerM3", float)
Volt = NewType("Volt", float)
Ampere = NewType("Ampere", float)
Ohm = NewType("Ohm", float)
OhmMm2PerMetre = NewType("OhmMm2PerMetre", float)
Degree = NewType("Degree", float)
Ratio = NewType("Ratio", float)
Percent = NewType("Percent", float)
PerInch = NewType("PerInch", float)

SYMBOL: Mapping[Any, str] = MappingProxyType(
    {
        Mm: "mm",
        Metre: "m",
        Micrometre: "µm",
        Mm2: "mm²",
        M2: "m²",
        Mm3: "mm³",
        Mm4: "mm⁴",
        M2PerLitre: "m²/L",
        Litre: "L",
        Kilogram: "kg",
        Newton: "N",
        NewtonMetre: "N·m",
        NewtonPerMm: "N/mm",
        MegaPascal: "MPa",
        Bar: "bar",
        HectoPascal: "hPa",
        Celsius: "°C",
        Kelvin: "K",
        PerKelvin: "1/K",
        Minute: "min",
        Second: "s",
        MmPerSecond: "mm/s",
        KilojoulePerMm: "kJ/mm",
        CentiStoke: "cSt",
        MmPerMinuteAmpere: "mm/(min·A)",
        GramPerM3: "g/m³",
        Volt: "V",
        Ampere: "A",
        Ohm: "Ω",
        OhmMm2PerMetre: "Ω·mm²/m",
        Degree: "°",
        Ratio: "ratio",
        Percent: "%",
        PerInch: "1/in",
        int: "count",
        str: "word",
        bool: "yes/no",
    }
)


def demand_range(name: str, value: float, unit: str, low: float, high: float, do: str) -> None:
    """Refuse a value outside low to high, ends allowed; NaN is refused, and an array with one such value.

    >>> demand_range("depth", 2.9, "mm", 0, 50, "Measure it again.")
    >>> demand_range("depth", -1.0, "mm", 0, 50, "Measure it again.")
    Traceback (most recent call last):
    witnessmark.ground.errors.BadInput: depth is -1 mm. What would hold: 0 to 50 mm. Measure it again.
    """
    least, most = _ends(value)
    if not (low <= least and most <= high):
        odd = most if low <= least else least
        mark = f" {unit}" if unit else ""
        raise BadInput(given=f"{name} is {odd:g}{mark}", holds=f"{low:g} to {high:g}{mark}", do=do)


def _ends(value: Any) -> tuple[float, float]:
    """The least and greatest of a number or of an array; both NaN where one is."""
    if isinstance(value, int | float):
        return value, value
    return float(value.min()), float(value.max())
