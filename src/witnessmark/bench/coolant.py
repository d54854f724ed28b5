"""Coolant: glycol by mass and by volume, and where it freezes between printed points."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Percent, Ratio, demand_range

WATER_DENSITY = 0.998


def mass_from_volume(volume: Percent, density: Ratio) -> Percent:
    """Glycol by mass, from glycol by volume measured before mixing.

    Takes
        volume   %      of glycol in the volumes poured together
        density  ratio  of the glycol, in kg/L at 20 °C
    Gives
        %  of the mass
    Refuses
        volume outside 0 to 100, density outside 1 to 1.3
    Caution
        none
    Source
        mixing-by-mass
    Example
        >>> round(mass_from_volume(Percent(50), Ratio(1.113)), 1)
        52.7
    """
    demand_range("glycol", volume, "%", 0, 100, "Give the part of glycol, not of water.")
    demand_range("density", density, "kg/L", 1, 1.3, "Ethylene glycol is 1.113.")
    return Percent(100 * volume * density / (volume * density + (100 - volume) * WATER_DENSITY))


def volume_from_mass(mass: Percent, density: Ratio) -> Percent:
    """Glycol by volume before mixing, from glycol by mass.

    Takes
        mass     %      of glycol in the mass of the mixture
        density  ratio  of the glycol, in kg/L at 20 °C
    Gives
        %  of the volumes poured together
    Refuses
        mass outside 0 to 100, density outside 1 to 1.3
    Caution
        none
    Source
        mixing-by-mass
    Example
        >>> round(volume_from_mass(mass_from_volume(Percent(37), Ratio(1.113)), Ratio(1.113)), 6)
        37.0
    """
    demand_range("glycol", mass, "%", 0, 100, "Give the part of glycol, not of water.")
    demand_range("density", density, "kg/L", 1, 1.3, "Ethylene glycol is 1.113.")
    glycol = mass / density
    return Percent(100 * glycol / (glycol + (100 - mass) / WATER_DENSITY))


def between_points(part: Percent, points: Sequence[tuple[float, float]]) -> float:
    """Freezing point between printed ones, along the parabola through the three nearest.

    Takes
        part    %      of glycol, by the measure that the points use
        points  table  (part, freezing point) pairs, rising
    Gives
        °C
    Refuses
        fewer than three points, a part beyond them
    Caution
        none
    Source
        handbook-glycol
    Example
        >>> between_points(Percent(20), [(0, 0.0), (10, -3.4), (20, -7.9), (40, -23.8)])
        -7.9
    """
    if len(points) < 3 or not points[0][0] <= part <= points[-1][0]:
        raise BadInput(
            given=f"glycol is {part:g} %",
            holds=f"{points[0][0]:g} to {points[-1][0]:g} %, where the table was printed",
            do="More glycol than that protects less, not more: ask the maker.",
        )
    near = sorted(points, key=lambda p: abs(p[0] - part))[:3]
    total = 0.0
    for i, (x, y) in enumerate(near):
        term = y
        for j, (other, _) in enumerate(near):
            if i != j:
                term *= (part - other) / (x - other)
        total += term
    return total
