"""Readers of what only a few questions are given: oil points, cure points, speeds, suspects, hours."""

from __future__ import annotations

import re

from witnessmark.bench.kinds import csv_rows, number, quantity
from witnessmark.bench.leaks import Suspect
from witnessmark.bench.slip import Asked
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantities import read_quantity

_VISCOSITY = {"cst": 1.0, "mm²/s": 1.0, "mm2/s": 1.0, "centistokes": 1.0, "st": 100.0}
_SPEED = {
    "mm/s": 1.0,
    "mm/min": 1 / 60,
    "cm/min": 10 / 60,
    "m/min": 1000 / 60,
    "in/min": 25.4 / 60,
    "ipm": 25.4 / 60,
    "in/s": 25.4,
}
_HEAT = {"kj/mm": 1.0, "j/mm": 0.001, "kj/cm": 0.1, "kj/in": 1 / 25.4}
_LOSS = {"w/m2k": 1.0, "w/m²k": 1.0, "w/(m²·k)": 1.0, "w/(m2k)": 1.0, "w/m2/k": 1.0}
_DEGREES = {"c": 1.0, "°c": 1.0, "k": 1.0, "f": 5 / 9, "°f": 5 / 9}
_ELEMENTS = {
    "c": "carbon",
    "mn": "manganese",
    "cr": "chromium",
    "mo": "molybdenum",
    "v": "vanadium",
    "ni": "nickel",
    "cu": "copper",
}

HOLDS_POINT = "a viscosity and its temperature, as 32 cSt @ 40 C"
HOLDS_CURE = "times and temperatures, as 24 h @ 20 C, 48 h @ 10 C"
HOLDS_COMPOSITION = "parts by mass in %, as C 0.12, Mn 0.60, or a grade, as DC01"
HOLDS_SUSPECTS = "name, chance, minutes, finds; as rear seal 30 % 20 min 80 %; filler cap 10 % 1 min 95 %"


def _in_unit(name: str, typed: str, units: dict[str, float], unit: str, holds: str) -> Asked:
    found = re.fullmatch(r"(.*?[0-9½¼¾])\s*([^0-9½¼¾.,/\s].*)", typed.strip())
    factor = units.get(re.sub(r"\s+", "", found[2]).lower()) if found else None
    if found is None or factor is None:
        what = f"{name} is {typed!r}"
        raise BadInput(given=what, holds=holds, do="Give one number with one of these units.")
    return Asked(typed, number(name, found[1]).value * factor, unit)


def viscosity(name: str, typed: str) -> Asked:
    """A kinematic viscosity.

    >>> viscosity("at40", "68 cSt").value
    68.0
    """
    return _in_unit(name, typed, _VISCOSITY, "cSt", "cSt or mm²/s, as 68 cSt")


def speed(name: str, typed: str) -> Asked:
    """A speed along a weld.

    >>> speed("speed", "300 mm/min").value
    5.0
    """
    return _in_unit(name, typed, _SPEED, "mm/s", "mm/s, mm/min, cm/min or in/min, as 300 mm/min")


def heat(name: str, typed: str) -> Asked:
    """A heat input.

    >>> heat("heat", "74 J/mm").value
    0.074
    """
    return _in_unit(name, typed, _HEAT, "kJ/mm", "kJ/mm or J/mm, as 0.074 kJ/mm")


def surface_loss(name: str, typed: str) -> Asked:
    """A heat loss of a face.

    >>> surface_loss("loss", "10 W/m2K").value
    10.0
    """
    return _in_unit(name, typed, _LOSS, "W/(m²·K)", "W/m²K of each face, as 10 W/m2K")


def degrees(name: str, typed: str) -> Asked:
    """A difference of temperature.

    >>> degrees("sheet_margin", "9 F").value
    5.0
    """
    return _in_unit(name, typed, _DEGREES, "°C", "degrees between two temperatures, as 3 C or 5 F")


def viscosity_point(name: str, typed: str) -> Asked:
    """A viscosity at a temperature; the value is (cSt, °C).

    >>> viscosity_point("at1", "32 cSt @ 40 C").value
    (32.0, 40.0)
    """
    first, mark, second = typed.partition("@") if "@" in typed else typed.partition(" at ")
    if not mark:
        raise BadInput(given=f"{name} is {typed!r}", holds=HOLDS_POINT, do="Give both, with @ between.")
    warm = quantity("temperature")(name, second.strip())
    return Asked(typed, (viscosity(name, first.strip()).value, warm.value), "cSt @ °C")


def cure_points(name: str, typed: str) -> Asked:
    """Points of a product sheet; the value is ((°C, min), ...), coldest first.

    >>> cure_points("sheet", "24 h @ 20 C, 48 h @ 10 C").value
    ((10.0, 2880.0), (20.0, 1440.0))
    """
    found = []
    for part in re.split(r"[;,](?!\d)", typed):
        first, mark, second = part.partition("@")
        if not mark:
            raise BadInput(
                given=f"{name} has {part.strip()!r}", holds=HOLDS_CURE, do="Give a time, @, a temperature."
            )
        time = quantity("time")(name, first.strip())
        found.append((quantity("temperature")(name, second.strip()).value, time.value))
    if len({warm for warm, _ in found}) < len(found):
        raise BadInput(
            given=f"{name} names one temperature twice", holds=HOLDS_CURE, do="Read the sheet again."
        )
    return Asked(typed, tuple(sorted(found)), "°C: min")


def part_or_volume(name: str, typed: str) -> Asked:
    """An oil fill, in litres or as a part of the case; the value is (number, "L" or "%").

    >>> part_or_volume("fill", "90 %").value, part_or_volume("fill", "1.1 L").value
    ((90.0, '%'), (1.1, 'L'))
    """
    kind = "ratio" if typed.strip().endswith("%") else "volume"
    found = quantity(kind)(name, typed)
    return Asked(typed, (found.value, found.unit), found.unit)


def composition(name: str, typed: str) -> Asked:
    """What is in a steel: pairs of element and part, or a grade's name; the value is pairs or a word.

    >>> composition("composition", "C 0.12, Mn 0.6").value
    (('carbon', 0.12), ('manganese', 0.6))
    >>> composition("composition", "DC01").value
    'DC01'
    """
    tidy = typed.strip()
    if re.fullmatch(r"[A-Za-z]+[0-9]+[A-Za-z0-9]*", tidy) and tidy[:2].upper() in ("DC", "S2", "S3"):
        return Asked(typed, tidy.upper())
    pairs = re.findall(r"([A-Za-z]+)\s*[=:]?\s*([0-9]*[.,]?[0-9]+)\s*%?\s*[,;]?", tidy)
    left = re.sub(r"([A-Za-z]+)\s*[=:]?\s*([0-9]*[.,]?[0-9]+)\s*%?\s*[,;]?", "", tidy).strip()
    names = [_ELEMENTS.get(element.lower()) for element, _ in pairs]
    if not pairs or left or None in names:
        wrong = left or next((e for e, _ in pairs if e.lower() not in _ELEMENTS), tidy)
        raise BadInput(
            given=f"{name} has {wrong!r}",
            holds=HOLDS_COMPOSITION,
            do="Use C, Mn, Cr, Mo, V, Ni, Cu.",
            near=tuple(sorted(_ELEMENTS)),
        )
    if len(set(names)) < len(names):
        raise BadInput(given=f"{name} names one element twice", holds=HOLDS_COMPOSITION, do="Give each once.")
    parts = (number(name, part).value for _, part in pairs)
    return Asked(typed, tuple(zip((n for n in names if n), parts, strict=True)), "%")


def metals(name: str, typed: str) -> Asked:
    """A list of words.

    >>> metals("metals", "steel and brass").value
    ('steel', 'brass')
    """
    found = [w for w in re.split(r"[,;/\s]+|\band\b", typed.lower()) if w and w != "and"]
    if not found:
        raise BadInput(
            given=f"{name} is empty", holds="metals, as steel, brass", do="Name what works in the oil."
        )
    return Asked(typed, tuple(dict.fromkeys(found)))


def suspects(name: str, typed: str) -> Asked:
    """Places that may leak, from a line or from a file; the value is a tuple of rows.

    >>> suspects("suspects", "rear seal 30 % 20 min 80 %; cap 10% 1 min 95%").value[1].name
    'cap'
    """
    if "\n" in typed.strip():
        rows = list(
            csv_rows(name, typed, needed=("name", "chance", "minutes", "finds"), holds=HOLDS_SUSPECTS)
        )
        found = [_suspect(name, r["name"], r["chance"], r["minutes"], r["finds"]) for r in rows]
        return Asked(typed, tuple(found))
    found = []
    for part in (p.strip() for p in typed.split(";") if p.strip()):
        match = re.fullmatch(r"(.+?)[,\s]+([0-9.]+\s*%?)[,\s]+([0-9.]+)\s*min\w*[,\s]+([0-9.]+\s*%?)", part)
        if match is None:
            raise BadInput(given=f"{name} has {part!r}", holds=HOLDS_SUSPECTS, do="Part the places with ;")
        found.append(_suspect(name, match[1], match[2], match[3], match[4]))
    return Asked(typed, tuple(found))


def _suspect(name: str, who: str, chance: str, minutes: str, finds: str) -> Suspect:
    if not who:
        raise BadInput(given=f"{name} has a row without a name", holds=HOLDS_SUSPECTS, do="Name the place.")
    took = re.sub(r"\s*min\w*$", "", minutes)
    return Suspect(
        name=who, chance=_share(name, chance), minutes=number(name, took).value, finds=_share(name, finds)
    )


def _share(name: str, typed: str) -> float:
    text = typed.strip()
    value = float(number(name, text.rstrip("% ")).value)
    return value / 100 if text.endswith("%") else value


def looks(name: str, typed: str) -> Asked:
    """What looks have shown: "rear seal no, filler cap yes"; the value is ((name, True or False), ...).

    >>> looks("results", "rear seal no, filler cap: yes").value
    (('rear seal', False), ('filler cap', True))
    """
    found = []
    for part in (p.strip() for p in re.split(r"[;,]", typed) if p.strip()):
        match = re.fullmatch(r"(.+?)[:=\s]+(yes|no|wet|dry)", part, re.I)
        if match is None:
            raise BadInput(
                given=f"{name} has {part!r}",
                holds="a place and yes or no, as rear seal no",
                do="Part the looks with commas.",
            )
        found.append((match[1].strip(), match[2].lower() in ("yes", "wet")))
    if not found:
        raise BadInput(
            given=f"{name} is empty", holds="a place and yes or no, as rear seal no", do="Leave it out."
        )
    return Asked(typed, tuple(found))


def hours(name: str, typed: str) -> Asked:
    """An hourly forecast or log from a file: time, air, humidity, perhaps steel; °C unless a heading says F.

    The value is rows of (time, air, humidity, steel or None).

    >>> hours("forecast", "time,air,humidity" + chr(10) + "22:00,9,78" + chr(10)).value
    (('22:00', 9.0, 78.0, None),)
    """
    holds = "a file with columns time, air, humidity and perhaps steel, as forecast=@hours.csv"
    plain: list[str] = []
    fahrenheit: set[str] = set()
    for line in typed.splitlines():
        if not plain and line.strip() and not line.startswith("#"):
            heads = []
            for head in line.lower().split(","):
                words = re.sub(r"[()\[\]°_]", " ", head).split()
                word = next(
                    (w for w in words if w in ("time", "hour", "air", "humidity", "steel")), head.strip()
                )
                word = "time" if word == "hour" else word
                heads.append(word)
                if "f" in words[1:]:
                    fahrenheit.add(word)
            plain.append(",".join(heads))
        else:
            plain.append(line)
    rows = list(csv_rows(name, "\n".join(plain), needed=("time", "air", "humidity"), holds=holds))
    if not 1 <= len(rows) <= 2000:
        raise BadInput(
            given=f"{name} has {len(rows)} hours", holds="1 to 2000 hours", do="Give the file again."
        )

    def warm(row: dict[str, str], column: str) -> float:
        typed_cell = row[column].rstrip()
        if typed_cell[-1:].isalpha():
            return read_quantity(typed_cell, "temperature").value
        value = float(number(f"{name}, {column} at {row['time']}", typed_cell).value)
        return (value - 32) * 5 / 9 if column in fahrenheit else value

    found = tuple(
        (
            row["time"],
            warm(row, "air"),
            float(number(f"{name}, humidity at {row['time']}", row["humidity"].rstrip("% ")).value),
            warm(row, "steel") if row.get("steel") else None,
        )
        for row in rows
    )
    return Asked(typed, found, "°C, %")
