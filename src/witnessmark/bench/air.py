"""Air and the water in it: dew point, humidity, and how warm it must be."""

from __future__ import annotations

from witnessmark.ground.elementwise import exp, log
from witnessmark.ground.units import Celsius, GramPerM3, HectoPascal, Percent, demand_range

MAGNUS_A, MAGNUS_B = 17.62, 243.12
ZERO_CELSIUS = 273.15


def saturation_pressure(temperature: Celsius) -> HectoPascal:
    """Pressure of water vapour over water, where the air can hold no more.

    Takes
        temperature  °C  of the air
    Gives
        hPa
    Refuses
        temperature outside −45 to 60
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(saturation_pressure(Celsius(20)), 2)
        23.33
    """
    demand_range("air", temperature, "°C", -45, 60, "Look at the unit again.")
    return HectoPascal(6.112 * exp(MAGNUS_A * temperature / (MAGNUS_B + temperature)))


def dew_point(air: Celsius, humidity: Percent) -> Celsius:
    """The temperature at which dew forms, over water (not the frost point).

    Takes
        air       °C  temperature of the air, not of the steel
        humidity  %   relative humidity
    Gives
        °C
    Refuses
        air outside −45 to 60, humidity outside 1 to 100
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(dew_point(Celsius(20), Percent(60)), 2)
        12.0
    """
    demand_range("air", air, "°C", -45, 60, "Look at the unit again.")
    demand_range("humidity", humidity, "%", 1, 100, "Relative humidity is a percentage, as 78 %.")
    gamma = log(humidity / 100) + MAGNUS_A * air / (MAGNUS_B + air)
    return Celsius(MAGNUS_B * gamma / (MAGNUS_A - gamma))


def humidity_for(air: Celsius, dew: Celsius) -> Percent:
    """The relative humidity at which a dew point stands.

    Takes
        air  °C  temperature of the air
        dew  °C  dew point, not above the air
    Gives
        %
    Refuses
        air outside −45 to 60, dew outside −45 to the air
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(humidity_for(Celsius(20), dew_point(Celsius(20), Percent(60))), 6)
        60.0
    """
    demand_range("air", air, "°C", -45, 60, "Look at the unit again.")
    demand_range("dew point", dew, "°C", -45, air, "Dew cannot stand above the air.")
    return Percent(100 * exp(MAGNUS_A * dew / (MAGNUS_B + dew) - MAGNUS_A * air / (MAGNUS_B + air)))


def air_for(dew: Celsius, humidity: Percent) -> Celsius:
    """How warm air of a given dew point must be to come down to a relative humidity.

    Takes
        dew       °C  dew point; heating without steam leaves it as it is
        humidity  %   wanted
    Gives
        °C
    Refuses
        dew outside −45 to 60, humidity outside 1 to 100
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(air_for(Celsius(12), Percent(60)), 1)
        20.0
    """
    demand_range("dew point", dew, "°C", -45, 60, "Look at the unit again.")
    demand_range("humidity", humidity, "%", 1, 100, "Relative humidity is a percentage.")
    gamma = MAGNUS_A * dew / (MAGNUS_B + dew) - log(humidity / 100)
    return Celsius(MAGNUS_B * gamma / (MAGNUS_A - gamma))


def dew_point_wet_bulb(dry: Celsius, wet: Celsius, pressure: HectoPascal) -> Celsius:
    """Dew point from a swung thermometer with one wet bulb.

    Takes
        dry       °C   dry bulb
        wet       °C   wet bulb, with air moving past it
        pressure  hPa  of the air, 1013 at sea level
    Gives
        °C
    Refuses
        dry outside 0 to 60, wet above dry or below 0, pressure outside 500 to 1100, air drier than 1 %
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(dew_point_wet_bulb(Celsius(21), Celsius(17), HectoPascal(1013.25)), 1)
        14.7
    """
    demand_range("dry bulb", dry, "°C", 0, 60, "Look at the unit again.")
    demand_range("wet bulb", wet, "°C", 0, dry, "The wet bulb is never the warmer.")
    demand_range("pressure", pressure, "hPa", 500, 1100, "1013 at sea level.")
    vapour = saturation_pressure(wet) - 6.53e-4 * (1 + 0.000944 * wet) * pressure * (dry - wet)
    return dew_point(dry, Percent(min(100.0, 100 * vapour / saturation_pressure(dry))))


def vapour_content(temperature: Celsius) -> GramPerM3:
    """The most water that air can hold.

    Takes
        temperature  °C  of the air
    Gives
        g/m³
    Refuses
        temperature outside −45 to 60
    Caution
        none
    Source
        wmo-magnus
    Example
        >>> round(vapour_content(Celsius(20)), 1)
        17.2
    """
    return GramPerM3(216.68 * saturation_pressure(temperature) / (temperature + ZERO_CELSIUS))
