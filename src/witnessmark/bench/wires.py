"""Wire: resistance, drop, and the copper that a drop allows."""

from __future__ import annotations

from witnessmark.ground.units import (
    Ampere,
    Celsius,
    Metre,
    Mm2,
    Ohm,
    OhmMm2PerMetre,
    Ratio,
    Volt,
    demand_range,
)

COPPER_20 = 0.017241  # Ω·mm²/m, annealed copper at 20 °C
COPPER_RISE = 0.004  # a degree, from 20 °C, as the cable standard corrects


def copper_factor(temperature: Celsius) -> Ratio:
    """How much more copper resists warm than at 20 °C.

    Takes
        temperature  °C  of the wire
    Gives
        ratio
    Refuses
        temperature outside −40 to 150
    Caution
        none
    Source
        copper-temperature
    Example
        >>> round(copper_factor(Celsius(70)), 3)
        1.2
    """
    demand_range("temperature", temperature, "°C", -40, 150, "Of the wire, not of the engine.")
    return Ratio(1 + COPPER_RISE * (temperature - 20))


def copper_area(current: Ampere, way: Metre, drop: Volt, factor: Ratio) -> Mm2:
    """The least copper that keeps within a drop, as if the wire were solid.

    Takes
        current  A      that flows
        way      m      of wire out and back
        drop     V      allowed on that way
        factor   ratio  of `copper_factor`
    Gives
        mm²
    Refuses
        current outside 0.001 to 2000, way outside 0.01 to 200, drop outside 0.001 to 60
    Caution
        none
    Source
        copper-resistivity
    Example
        >>> round(copper_area(Ampere(2.1), Metre(36), Volt(0.6), Ratio(1)), 2)
        2.17
    """
    demand_range("current", current, "A", 0.001, 2000, "Look at the unit again.")
    demand_range("way", way, "m", 0.01, 200, "Look at the unit again.")
    demand_range("drop", drop, "V", 0.001, 60, "Give volts, or a fraction of the supply.")
    return Mm2(COPPER_20 * factor * way * current / drop)


def voltage_drop(current: Ampere, way: Metre, resistance: Ohm) -> Volt:
    """What is lost along a wire.

    Takes
        current     A  that flows
        way         m  of wire, out and back
        resistance  Ω  of one metre
    Gives
        V
    Refuses
        current outside 0 to 2000, way outside 0 to 200, resistance outside 0 to 10
    Caution
        none
    Source
        ohm
    Example
        >>> round(voltage_drop(Ampere(4.17), Metre(5), Ohm(0.0127)), 3)
        0.265
    """
    demand_range("current", current, "A", 0, 2000, "Look at the unit again.")
    demand_range("way", way, "m", 0, 200, "Look at the unit again.")
    demand_range("resistance", resistance, "Ω/m", 0, 10, "Of one metre.")
    return Volt(current * way * resistance)


def resistance(area: Mm2, resistivity: OhmMm2PerMetre) -> Ohm:
    """Resistance of one metre of solid conductor.

    Takes
        area         mm²      of copper
        resistivity  Ω·mm²/m  0.017241 for annealed copper at 20 °C
    Gives
        Ω
    Refuses
        area outside 0.01 to 500, resistivity outside 0.01 to 1
    Caution
        none
    Source
        copper-resistivity
    Example
        >>> round(resistance(Mm2(1), OhmMm2PerMetre(0.017241)), 6)
        0.017241
    """
    demand_range("area", area, "mm²", 0.01, 500, "Look at the unit again.")
    demand_range("resistivity", resistivity, "Ω·mm²/m", 0.01, 1, "Copper is 0.0172.")
    return Ohm(resistivity / area)
