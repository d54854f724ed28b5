"""Painting: how much paint, and how long it takes to cure."""

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
    Percent,
    demand_range,
)

ZERO_CELSIUS = 273.15


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


def cure_between(temperature: Celsius, first: tuple[float, float], second: tuple[float, float]) -> float:
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
    return float(exp(log(time1) * (1 - share) + log(time2) * share))


def cure_doubling(temperature: Celsius, known: tuple[float, float], factor: float) -> float:
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
    return float(known[1] * factor ** ((known[0] - temperature) / 10))


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
