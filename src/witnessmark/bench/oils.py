"""Oils: viscosity at a temperature, viscosity index, growth with heat, air shut in a case."""

from __future__ import annotations

from witnessmark.ground.elementwise import exp, log10
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import (
    Celsius,
    CentiStoke,
    Litre,
    MegaPascal,
    PerKelvin,
    Ratio,
    demand_range,
)

ZERO_CELSIUS = 273.15
THINNEST, THICKEST = 0.3, 2e7
HIGH_RANGE = 70.0


def viscosity_line(
    first: CentiStoke, first_at: Celsius, second: CentiStoke, second_at: Celsius
) -> tuple[float, float]:
    """The two constants of the straight line that an oil follows on double-logarithmic paper.

    Takes
        first      cSt  kinematic viscosity
        first_at   °C   the temperature it was measured at
        second     cSt  kinematic viscosity at another temperature
        second_at  °C   that temperature
    Gives
        ratio  A and B of  log log Z = A − B log T,  T in kelvin
    Refuses
        viscosities outside 0.3 to 2e7, temperatures outside −60 to 250, two temperatures less than
        5 apart, an oil that is thicker when hotter
    Caution
        none
    Source
        astm-d341
    Example
        >>> a, b = viscosity_line(CentiStoke(68), Celsius(40), CentiStoke(8.8), Celsius(100))
        >>> round(a, 3), round(b, 3)
        (9.243, 3.598)
    """
    for name, value in (("first viscosity", first), ("second viscosity", second)):
        demand_range(name, value, "cSt", THINNEST, THICKEST, "Look at the product sheet again.")
    for name, warm in (("first temperature", first_at), ("second temperature", second_at)):
        demand_range(name, warm, "°C", -60, 250, "Look at the product sheet again.")
    if abs(first_at - second_at) < 5 or (first - second) * (first_at - second_at) >= 0:
        raise BadInput(
            given=f"{first:g} cSt at {first_at:g} °C and {second:g} cSt at {second_at:g} °C",
            holds="two temperatures at least 5 °C apart, and an oil that is thinner when hotter",
            do="Take both points from one product sheet.",
        )
    high, low = log10(log10(_whole(first))), log10(log10(_whole(second)))
    t1, t2 = log10(first_at + ZERO_CELSIUS), log10(second_at + ZERO_CELSIUS)
    slope = (high - low) / (t2 - t1)
    return high + slope * t1, slope


def viscosity_at(a: Ratio, b: Ratio, temperature: Celsius) -> CentiStoke:
    """Kinematic viscosity of an oil at a temperature, from the constants of its line.

    Takes
        a            ratio  of `viscosity_line`
        b            ratio  of `viscosity_line`
        temperature  °C     wanted
    Gives
        cSt  inside the span of the two points a good figure; outside it a guide
    Refuses
        temperature outside −60 to 250
    Caution
        none
    Source
        astm-d341
    Example
        >>> round(viscosity_at(Ratio(9.5259), Ratio(3.7449), Celsius(80)), 1)
        8.5
    """
    demand_range("temperature", temperature, "°C", -60, 250, "Ask for a temperature that oil works at.")
    over = 10 ** (10 ** (a - b * log10(temperature + ZERO_CELSIUS))) - 0.7
    return CentiStoke(over - exp(-0.7487 - 3.295 * over + 0.6119 * over**2 - 0.3193 * over**3))


def _whole(viscosity: float) -> float:
    """The whole Z of the standard: the last term only counts below 2 cSt."""
    return float(viscosity + 0.7 + exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity**2))


def index_limits(at100: CentiStoke) -> tuple[float, float]:
    """The viscosities at 40 °C of the two reference oils, above the span of the standard's table.

    Takes
        at100  cSt  at 100 °C, above 70
    Gives
        cSt  of the oil of index 0 and of the oil of index 100
    Refuses
        at100 outside 70 to 2000
    Caution
        none
    Source
        astm-d2270
    Example
        >>> index_limits(CentiStoke(100))
        (9604.0, 2772.0)
    """
    demand_range("viscosity at 100 °C", at100, "cSt", HIGH_RANGE, 2000, "Below 70 the table is read.")
    return (
        0.8353 * at100**2 + 14.67 * at100 - 216,
        0.1684 * at100**2 + 11.85 * at100 - 97,
    )


def viscosity_index(at40: CentiStoke, at100: CentiStoke, low: CentiStoke, high: CentiStoke) -> Ratio:
    """Viscosity index, by the procedure for 100 and below or by that for 100 and above.

    Takes
        at40   cSt  at 40 °C
        at100  cSt  at 100 °C
        low    cSt  at 40 °C, of the reference oil of index 0 with the same viscosity at 100 °C
        high   cSt  at 40 °C, of the reference oil of index 100
    Gives
        ratio  the index; the standard rounds it to a whole number
    Refuses
        at100 outside 2 to 2000, at40 not above at100
    Caution
        none
    Source
        astm-d2270
    Example
        >>> low, high = CentiStoke(119.94), CentiStoke(69.48)
        >>> found = viscosity_index(CentiStoke(73.30), CentiStoke(8.86), low, high)
        >>> round(found, 2)
        92.43
    """
    demand_range("viscosity at 100 °C", at100, "cSt", 2, 2000, "Below 2 cSt no index is defined.")
    demand_range("viscosity at 40 °C", at40, "cSt", at100, 1e6, "It is thicker at 40 °C than at 100 °C.")
    if at40 >= high:
        return Ratio((low - at40) / (low - high) * 100)
    power = log10(high / at40) / log10(at100)
    return Ratio((10**power - 1) / 0.00715 + 100)


def grown(volume: Litre, cold: Celsius, hot: Celsius, expansion: PerKelvin) -> Litre:
    """The volume of a liquid or of a hollow after heating.

    Takes
        volume     L    cold
        cold       °C   temperature before
        hot        °C   temperature after
        expansion  1/K  growth in volume; a hollow grows as if it were filled with its own metal
    Gives
        L  hot
    Refuses
        volume outside 0 to 10 000, temperatures outside −60 to 250, expansion outside 0 to 0.002
    Caution
        none
    Source
        oil-expansion
    Example
        >>> round(grown(Litre(100), Celsius(20), Celsius(40), PerKelvin(0.0007)), 1)
        101.4
    """
    demand_range("volume", volume, "L", 0, 10_000, "Look at the unit again.")
    demand_range("cold temperature", cold, "°C", -60, 250, "Look at the unit again.")
    demand_range("hot temperature", hot, "°C", -60, 250, "Look at the unit again.")
    demand_range("expansion", expansion, "1/K", 0, 0.002, "Mineral oil is near 0.0007.")
    return Litre(volume * (1 + expansion * (hot - cold)))


def squeezed(volume: Litre, pressure: MegaPascal, modulus: MegaPascal) -> Litre:
    """The volume a liquid loses under pressure.

    Takes
        volume    L    without pressure
        pressure  MPa  above the air outside
        modulus   MPa  bulk modulus of the liquid
    Gives
        L  lost
    Refuses
        volume outside 0 to 10 000, pressure outside 0 to 1000, modulus outside 500 to 10 000
    Caution
        none
    Source
        bulk-modulus
    Example
        >>> round(squeezed(Litre(250), MegaPascal(16), MegaPascal(5000)), 2)
        0.8
    """
    demand_range("volume", volume, "L", 0, 10_000, "Look at the unit again.")
    demand_range("pressure", pressure, "MPa", 0, 1000, "Look at the unit again.")
    demand_range("modulus", modulus, "MPa", 500, 10_000, "Mineral oil is near 1700.")
    return Litre(volume * pressure / modulus)


def shut_in_pressure(
    case: Litre, oil: Litre, modulus: MegaPascal, air: Litre, cold: Celsius, hot: Celsius, outside: MegaPascal
) -> MegaPascal:
    """Absolute pressure in a case whose breather is blocked, oil and case hot.

    Air obeys the gas law and oil gives a little; where no air is left, the oil alone is pressed.
    Oil vapour and the give of the case are left out.

    Takes
        case     L    room in the case, hot
        oil      L    the oil, hot, not pressed
        modulus  MPa  bulk modulus of the oil
        air      L    room the air had, cold
        cold     °C   when it was shut
        hot      °C   at work
        outside  MPa  pressure of the air when it was shut
    Gives
        MPa  absolute
    Refuses
        a case that is not above 0, air below 0, temperatures outside −60 to 250
    Caution
        none
    Source
        gas-law
    Example
        >>> cold, hot, outside = Celsius(20), Celsius(90), MegaPascal(0.1013)
        >>> case, oil, air, modulus = Litre(1), Litre(0.83), Litre(0.2), MegaPascal(1700)
        >>> round(shut_in_pressure(case, oil, modulus, air, cold, hot, outside), 3)
        0.148
    """
    demand_range("case", case, "L", 1e-6, 10_000, "Look at the unit again.")
    demand_range("air", air, "L", 0, 10_000, "The case cannot hold more than it holds.")
    demand_range("cold temperature", cold, "°C", -60, 250, "Look at the unit again.")
    demand_range("hot temperature", hot, "°C", -60, 250, "Look at the unit again.")
    heat = outside * air * (hot + ZERO_CELSIUS) / (cold + ZERO_CELSIUS)
    free, give = case - oil, oil / modulus
    # p · (free + give · (p − outside)) = heat
    spare = free - give * outside
    return MegaPascal((-spare + (spare**2 + 4 * give * heat) ** 0.5) / (2 * give))
