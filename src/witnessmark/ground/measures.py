"""Kinds of quantity, the one inside unit of each, and the spellings that are understood.

Every factor is exact by definition: inch 25.4 mm, pound 0.45359237 kg, standard gravity
9.80665 m/s², imperial gallon 4.54609 L, US gallon 231 in³. Nothing here is measured.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct

INCH = 25.4
POUND = 0.45359237
GRAVITY = 9.80665
LBF = POUND * GRAVITY
PSI = LBF / INCH**2
PINT = 4.54609 / 8
GALLON_US = 231 * INCH**3 / 1e6


class Measure(Struct, frozen=True):
    """A kind of quantity: its inside unit, what a person would type, and the span of sense.

    low, high  in the inside unit; a figure beyond them is refused as absurd
    """

    unit: str
    holds: str
    low: float
    high: float


MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        "torque": Measure("N·m", "47 N·m, 35 lbf ft, 90 lbf in, 5 kgf m", 0, 10_000),
        "length": Measure("mm", "7.9 mm, 5/16 in, 10 thou, 1.2 m", -100_000, 100_000),
        "area": Measure("mm²", "40 mm², 0.5 sq in", 0, 1e9),
        "volume": Measure("L", "1.1 L, 250 ml, 3/4 pint, 2 gallons", 0, 10_000),
        "temperature": Measure("°C", "9 °C, 48 °F", -100, 3_000),
        "time": Measure("min", "40 min, 2 h, 1 h 20, 7 days", 0, 6_000_000),
        "distance": Measure("km", "50 km, 30 miles", 0, 1_000_000),
        "mass": Measure("kg", "5 kg, 800 g, 12 lb", 0, 100_000),
        "force": Measure("N", "250 N, 50 lbf, 3 kN", -1e8, 1e8),
        "stress": Measure("MPa", "600 MPa, 600 N/mm², 60 ksi", 0, 1e6),
        "pressure": Measure("bar", "1.8 bar, 26 psi, 180 kPa", -1, 10_000),
        "ratio": Measure("%", "78 %", -1_000, 10_000),
        "voltage": Measure("V", "6 V, 12.6 volts", -1_000, 100_000),
        "current": Measure("A", "30 A, 5 amps", -100_000, 100_000),
        "pitch": Measure("mm", "24 tpi, 1.25 mm", 0.05, 100),
        "angle": Measure("°", "60°, 30 deg", -3_600, 3_600),
        "money": Measure("", "£6.40, €12, $5, 6.40 quid", 0, 1e8),
    }
)


class Spelling(Struct, frozen=True):
    """What one spelling of a unit means: factor for each kind it can be of, the usual kind first."""

    factors: Mapping[str, float]
    exact_case: bool = False


_POUND_FOOT = LBF * INCH * 12 / 1000
_POUND_INCH = LBF * INCH / 1000

# Factors to the inside unit, the usual kind first, and the spellings; a space in one may be left out.
_Row = tuple[dict[str, float], str]

_TORQUES: tuple[_Row, ...] = (
    ({"torque": 1.0}, "n·m|n.m|nm|n m|n-m|newton metre|newton metres|newton meter|newton meters"),
    (
        {"torque": _POUND_FOOT},
        "lbf ft|lbf.ft|lbf-ft|lbf·ft|lbs ft|lb ft|lb.ft|lb-ft|lbs-ft|lb/ft|ft lbf|ft.lbf|ft-lbf|ft lb"
        "|ft.lb|ft-lb|ft lbs|ft.lbs|ft-lbs|ft/lb|ft/lbs|foot pound|foot pounds|foot-pounds|pound foot"
        "|pound feet|pounds foot|pounds feet|foot lb|foot lbs|pound ft|pounds ft",
    ),
    (
        {"torque": _POUND_INCH},
        "lbf in|lbf.in|lbf-in|lbf·in|lb in|lb.in|lb-in|lbs in|in lbf|in-lbf|in lb|in.lb|in-lb"
        "|in lbs|in-lbs|inch pound|inch pounds|inch-pounds",
    ),
    ({"torque": GRAVITY}, "kgf m|kgf.m|kgf·m|kgf-m|kgm|kg m|kg.m|kg-m|mkg|mkp"),
    ({"torque": GRAVITY / 100}, "kgf cm|kgf.cm|kgf·cm|kg cm|kg-cm"),
)
_SIZES: tuple[_Row, ...] = (
    ({"length": 1.0, "pitch": 1.0}, "mm|millimetre|millimetres|millimeter|millimeters"),
    ({"length": 10.0}, "cm|centimetre|centimetres|centimeter|centimeters"),
    ({"length": 0.001}, "µm|um|micron|microns"),
    ({"length": INCH, "pitch": INCH}, "in|\"|”|″|''|inch|inches|ins"),
    ({"length": INCH * 12}, "ft|foot|feet"),
    ({"length": INCH * 36}, "yd|yard|yards"),
    ({"length": INCH / 1000}, "thou|thous|thousandth|thousandths"),
    ({"length": 1000.0, "distance": 0.001}, "metre|metres|meter|meters"),
    ({"distance": 1.0}, "km|kms|kilometre|kilometres|kilometer|kilometers"),
    ({"distance": INCH * 63_360 / 1e6}, "mi|mile|miles"),
    ({"area": 1.0}, "mm²|mm2|sq mm|square mm"),
    ({"area": 100.0}, "cm²|cm2|sq cm|square cm"),
    ({"area": 1e6}, "m²|m2|sq m|square metre|square metres"),
    ({"area": INCH**2}, "in²|in2|sq in|square inch|square inches"),
    ({"angle": 1.0}, "°|deg|degs|degree|degrees"),
)
_VOLUMES: tuple[_Row, ...] = (
    ({"volume": 1.0}, "litre|litres|liter|liters|ltr|ltrs|lt"),
    ({"volume": 0.001}, "ml|cc|c.c.|c.c|cm³|cm3|millilitre|millilitres"),
    ({"volume": PINT}, "pint|pints|pt|pts|imperial pint|imperial pints"),
    ({"volume": PINT * 2}, "quart|quarts|qt|qts|imperial quart|imperial quarts"),
    ({"volume": PINT * 8}, "gallon|gallons|gal|gals|gall|galls|imperial gallon|imperial gallons"),
    ({"volume": PINT / 20}, "fl oz|fluid ounce|fluid ounces"),
    ({"volume": GALLON_US / 8}, "us pint|us pints|us pt"),
    ({"volume": GALLON_US / 4}, "us quart|us quarts|us qt"),
    ({"volume": GALLON_US}, "us gallon|us gallons|us gal"),
    ({"volume": GALLON_US / 128}, "us fl oz|us fluid ounces"),
)
_STATES: tuple[_Row, ...] = (
    ({"temperature": 1.0}, "°c|deg c|degc|degs c|degrees c|celsius|degrees celsius|centigrade"),
    ({"temperature": 5 / 9}, "°f|deg f|degf|degrees f|fahrenheit|degrees fahrenheit"),
    ({"time": 1.0}, "min|mins|minute|minutes"),
    ({"time": 1 / 60}, "sec|secs|second|seconds"),
    ({"time": 60.0}, "hr|hrs|hour|hours"),
    ({"time": 1440.0}, "day|days"),
    ({"time": 10_080.0}, "week|weeks|wk|wks"),
    ({"time": 20_160.0}, "fortnight|fortnights"),
    ({"ratio": 1.0}, "%|percent|per cent|pct"),
    ({"voltage": 1.0}, "volt|volts"),
    ({"voltage": 0.001}, "mv|millivolt|millivolts"),
    ({"current": 1.0}, "amp|amps|ampere|amperes"),
    ({"current": 0.001}, "ma|milliamp|milliamps"),
)
_LOADS: tuple[_Row, ...] = (
    ({"mass": 1.0, "force": GRAVITY}, "kg|kgs|kilo|kilos|kilogram|kilograms"),
    ({"mass": 0.001}, "gram|grams|gramme|grammes|gm"),
    ({"mass": POUND, "force": LBF}, "lb|lbs|pound|pounds"),
    ({"mass": POUND / 16}, "oz|ounce|ounces"),
    ({"force": 1.0}, "newton|newtons"),
    ({"force": 1000.0}, "kn|kilonewton|kilonewtons"),
    ({"force": GRAVITY}, "kgf|kp"),
    ({"force": LBF}, "lbf"),
    ({"stress": 1.0, "pressure": 10.0}, "mpa|n/mm²|n/mm2|n/mm^2"),
    ({"stress": 1000.0}, "gpa|kn/mm²|kn/mm2"),
    ({"stress": PSI * 1000}, "ksi"),
    ({"pressure": 1.0, "stress": 0.1}, "bar|bars"),
    ({"pressure": 0.001}, "mbar"),
    ({"pressure": PSI * 10, "stress": PSI}, "psi|lbf/in²|lbf/in2|lb/in²|lb/in2|lb sq in|lbf/sq in"),
    ({"pressure": 0.01, "stress": 0.001}, "kpa"),
)

# One letter alone is a unit only in its own case: "5 A" is a current, "5 a side" is not.
_LETTERS: Mapping[str, dict[str, float]] = MappingProxyType(
    {
        "m": {"length": 1000.0, "distance": 0.001},
        "l": {"volume": 1.0},
        "L": {"volume": 1.0},
        "C": {"temperature": 1.0},
        "c": {"temperature": 1.0},
        "F": {"temperature": 5 / 9},
        "h": {"time": 60.0},
        "g": {"mass": 0.001},
        "N": {"force": 1.0},
        "V": {"voltage": 1.0},
        "v": {"voltage": 1.0},
        "A": {"current": 1.0},
    }
)

# Small letters that are words or sides elsewhere count only where they touch their number.
TOUCHING = frozenset({"c", "v", "F"})

FAHRENHEIT = frozenset({"°f", "deg f", "degf", "degrees f", "fahrenheit", "degrees fahrenheit", "F"})


def spellings() -> dict[str, Spelling]:
    """Every spelling, lower case and with single spaces, but the one-letter ones as they stand.

    >>> round(spellings()["lbf ft"].factors["torque"], 6)
    1.355818
    """
    known = {
        " ".join(text.split()): Spelling(MappingProxyType(factors))
        for factors, texts in (*_TORQUES, *_SIZES, *_VOLUMES, *_STATES, *_LOADS)
        for text in texts.split("|")
    }
    known.update({text: Spelling(MappingProxyType(f), exact_case=True) for text, f in _LETTERS.items()})
    return known
