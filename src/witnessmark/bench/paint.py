"""Painting: dew point, how much paint, and how long it takes to cure."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.ground.elementwise import exp, log
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import (
    M2,
    Celsius,
    Litre,
    M2PerLitre,
    Micrometre,
    Minute,
    Percent,
    demand_range,
)

MAGNUS_A, MAGNUS_B = 17.62, 243.12
ZERO_CELSIUS = 273.15


def saturation_pressure(temperature: Celsius) -> float:
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
    return float(6.112 * exp(MAGNUS_A * temperature / (MAGNUS_B + temperature)))


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


def dew_point_wet_bulb(dry: Celsius, wet: Celsius, pressure: float) -> Celsius:
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
        >>> round(dew_point_wet_bulb(Celsius(21), Celsius(17), 1013.25), 1)
        14.7
    """
    demand_range("dry bulb", dry, "°C", 0, 60, "Look at the unit again.")
    demand_range("wet bulb", wet, "°C", 0, dry, "The wet bulb is never the warmer.")
    demand_range("pressure", pressure, "hPa", 500, 1100, "1013 at sea level.")
    vapour = saturation_pressure(wet) - 6.53e-4 * (1 + 0.000944 * wet) * pressure * (dry - wet)
    return dew_point(dry, Percent(100 * vapour / saturation_pressure(dry)))


def vapour_content(temperature: Celsius) -> float:
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
    return 216.68 * saturation_pressure(temperature) / (temperature + ZERO_CELSIUS)


def wet_film(dry_film: Micrometre, solids: Percent, thinner: Percent) -> Micrometre:
    """How thick the paint must lie wet for a dry film.

    Takes
        dry_film  µm  wanted
        solids    %   solids by volume, never by weight
        thinner   %   by volume of the paint; 0 when none
    Gives
        µm
    Refuses
        dry_film outside 1 to 5000, solids outside 5 to 100, thinner outside 0 to 200
    Caution
        none
    Source
        paint-films
    Example
        >>> round(wet_film(Micrometre(100), Percent(65), Percent(20)))
        185
    """
    _demand_film(dry_film, solids)
    demand_range("thinner", thinner, "%", 0, 200, "Give it by volume of the paint.")
    return Micrometre(dry_film * (100 + thinner) / solids)


def spreading_rate(dry_film: Micrometre, solids: Percent) -> M2PerLitre:
    """The area that one litre of paint as it comes in the tin covers, nothing lost.

    Takes
        dry_film  µm  wanted
        solids    %   solids by volume
    Gives
        m²/L
    Refuses
        dry_film outside 1 to 5000, solids outside 5 to 100
    Caution
        none
    Source
        paint-films
    Example
        >>> spreading_rate(Micrometre(100), Percent(65))
        6.5
    """
    _demand_film(dry_film, solids)
    return M2PerLitre(10 * solids / dry_film)


def paint_volume(area: M2, rate: M2PerLitre, loss: Percent) -> Litre:
    """Paint to buy, as it comes in the tin.

    Takes
        area  m²    to be covered
        rate  m²/L  with nothing lost
        loss  %     of the paint that does not end on the work
    Gives
        L
    Refuses
        area outside 0 to 10 000, rate outside 0.01 to 500, loss outside 0 to 90
    Caution
        none
    Source
        paint-films
    Example
        >>> paint_volume(M2(13), M2PerLitre(6.5), Percent(50))
        4.0
    """
    demand_range("area", area, "m²", 0, 10_000, "Look at the unit again.")
    demand_range("spreading rate", rate, "m²/L", 0.01, 500, "Look at film and solids again.")
    demand_range("loss", loss, "%", 0, 90, "Brush 10 to 15, spraying up to 50.")
    return Litre(area / rate / (1 - loss / 100))


def solids_thinned(solids: Percent, thinner: Percent) -> Percent:
    """Solids by volume of paint after thinning.

    Takes
        solids   %  of the paint in the tin
        thinner  %  by volume of the paint
    Gives
        %
    Refuses
        solids outside 5 to 100, thinner outside 0 to 200
    Caution
        none
    Source
        paint-films
    Example
        >>> solids_thinned(Percent(60), Percent(25))
        48.0
    """
    _demand_film(100, solids)
    demand_range("thinner", thinner, "%", 0, 200, "Give it by volume of the paint.")
    return Percent(solids / (1 + thinner / 100))


def _demand_film(dry_film: float, solids: float) -> None:
    demand_range("dry film", dry_film, "µm", 1, 5000, "Look at the unit again.")
    demand_range("volume solids", solids, "%", 5, 100, "By volume, from the product sheet.")


def cure_between(temperature: Celsius, first: tuple[float, float], second: tuple[float, float]) -> Minute:
    """Time at a temperature, on the straight line of log time over 1/T through two points of a sheet.

    Takes
        temperature  °C     of the steel
        first        point  (temperature in °C, time in min)
        second       point  another
    Gives
        min
    Refuses
        temperature outside −20 to 200, times not above 0, two points at one temperature,
        a sheet on which it cures slower when warmer
    Caution
        none
    Source
        arrhenius
    Example
        >>> round(cure_between(Celsius(15), (10, 48 * 60), (20, 24 * 60)) / 60, 1)
        33.7
    """
    demand_range("temperature", temperature, "°C", -20, 200, "Look at the unit again.")
    (t1, time1), (t2, time2) = first, second
    for name, value in (("time", time1), ("time", time2)):
        demand_range(name, value, "min", 0.1, 6_000_000, "Read the sheet again.")
    if t1 == t2 or (t2 - t1) * (time2 - time1) > 0:
        raise BadInput(
            given=f"{time1:g} min at {t1:g} °C and {time2:g} min at {t2:g} °C",
            holds="two temperatures, and a shorter time at the warmer one",
            do="Read the product sheet again.",
        )
    x, x1, x2 = (1 / (t + ZERO_CELSIUS) for t in (temperature, t1, t2))
    share = (x - x1) / (x2 - x1)
    return Minute(exp(log(time1) * (1 - share) + log(time2) * share))


def cure_doubling(temperature: Celsius, known: tuple[float, float], factor: float) -> Minute:
    """Time at a temperature when a sheet prints one point only: a rule of thumb.

    Takes
        temperature  °C     of the steel
        known        point  (temperature in °C, time in min)
        factor       ratio  how much longer it takes when 10 °C colder; 2 is the common rule
    Gives
        min
    Refuses
        temperature outside −20 to 200, factor outside 1.1 to 4
    Caution
        none
    Source
        cure-doubling
    Example
        >>> cure_doubling(Celsius(13), (23, 4 * 60), 2.0) / 60
        8.0
    """
    demand_range("temperature", temperature, "°C", -20, 200, "Look at the unit again.")
    demand_range("factor", factor, "", 1.1, 4, "Two is the common rule.")
    return Minute(known[1] * factor ** ((known[0] - temperature) / 10))


def nearest_pair(
    temperature: Celsius, points: Sequence[tuple[float, float]]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The two points of a sheet on either side of a temperature, or the two at its nearer end.

    >>> nearest_pair(Celsius(15), [(10, 9), (20, 6), (30, 4)])
    ((10, 9), (20, 6))
    """
    ordered = sorted(points)
    above = next((i for i, p in enumerate(ordered) if p[0] >= temperature), len(ordered) - 1)
    upper = min(max(above, 1), len(ordered) - 1)
    return ordered[upper - 1], ordered[upper]
