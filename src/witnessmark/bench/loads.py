"""Pulling a vehicle: what its eye is tested with, and what ground and slope ask of the rope."""

from __future__ import annotations

import math

from witnessmark.ground.elementwise import sin
from witnessmark.ground.units import Degree, Kilogram, Newton, Ratio, demand_range

GRAVITY = 9.80665


def eye_test_force(mass: Kilogram) -> Newton:
    """The pull and push that the rules test a towing eye with: half the laden weight.

    Takes
        mass  kg  greatest laden mass of the vehicle
    Gives
        N
    Refuses
        mass outside 20 to 40 000
    Caution
        towing
    Source
        eu-1005-2010
    Example
        >>> round(eye_test_force(Kilogram(1500)))
        7355
    """
    demand_range("mass", mass, "kg", 20, 40_000, "Of the vehicle as laden.")
    return Newton(0.5 * mass * GRAVITY)


def recovery_force(mass: Kilogram, slope: Degree, ground: Ratio) -> Newton:
    """The pull that moves a vehicle up a slope over a ground, steadily, before any jerk.

    Takes
        mass    kg     of the vehicle
        slope   °      uphill
        ground  ratio  resistance of the ground as a part of the weight
    Gives
        N
    Refuses
        mass outside 20 to 40 000, slope outside 0 to 60, ground outside 0 to 2
    Caution
        towing
    Source
        ground-resistance
    Example
        >>> round(recovery_force(Kilogram(1000), Degree(0), Ratio(0.14)))
        1373
    """
    demand_range("mass", mass, "kg", 20, 40_000, "Of the vehicle as laden.")
    demand_range("slope", slope, "°", 0, 60, "Downhill is another matter: brake and steer it.")
    demand_range("ground", ground, "", 0, 2, "Hard ground is 0.04, mud to the rim 0.75.")
    return Newton(mass * GRAVITY * (sin(slope * math.pi / 180) + ground))


def coupling_d(vehicle: Kilogram, trailer: Kilogram) -> Newton:
    """The comparison force of a towbar, as its plate prints it.

    Takes
        vehicle  kg  greatest laden mass of the towing vehicle
        trailer  kg  greatest laden mass of the trailer
    Gives
        N
    Refuses
        masses outside 20 to 40 000
    Caution
        towing
    Source
        towbar-d
    Example
        >>> round(coupling_d(Kilogram(3500), Kilogram(3500)) / 1000, 2)
        17.16
    """
    for mass in (vehicle, trailer):
        demand_range("mass", mass, "kg", 20, 40_000, "Of the vehicle as laden.")
    return Newton(vehicle * trailer / (vehicle + trailer) * GRAVITY)
