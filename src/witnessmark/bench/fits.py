"""Press and shrink fits: what holds a hub on a shaft by being too small for it."""

from __future__ import annotations

import math

from witnessmark.ground.units import Kelvin, MegaPascal, Mm, Newton, PerKelvin, Ratio, demand_range

MODULUS = "Steel has 205 GPa, grey iron about 110, aluminium 70."


def fit_pressure(
    shaft_diameter: Mm,
    hub_diameter: Mm,
    interference: Mm,
    shaft_modulus: MegaPascal,
    hub_modulus: MegaPascal,
    shaft_poisson: Ratio,
    hub_poisson: Ratio,
    shaft_bore: Mm,
) -> MegaPascal:
    """The pressure between shaft and hub, both elastic and of the same length.

    Takes
        shaft_diameter  mm     where they meet
        hub_diameter    mm     over the hub's outside
        interference    mm     on diameter
        shaft_modulus   MPa    of the shaft
        hub_modulus     MPa    of the hub
        shaft_poisson   ratio  of the shaft, near 0.3
        hub_poisson     ratio  of the hub, near 0.3
        shaft_bore      mm     through the shaft; 0 where it is solid
    Gives
        MPa  the pressure
    Refuses
        shaft_diameter outside 1 to 500, a hub not larger than the shaft, interference outside 0 to
        1 % of the shaft, moduli outside 1000 to 700 000, Poisson's ratios outside 0 to 0.5,
        a bore as large as the shaft
    Caution
        pressing
    Source
        press-fit-lame
    Example
        >>> steel = MegaPascal(210_000)
        >>> round(fit_pressure(Mm(25), Mm(50), Mm(0.02), steel, steel, Ratio(0.3), Ratio(0.3), Mm(0)), 1)
        63.0
    """
    demand_range("shaft_diameter", shaft_diameter, "mm", 1, 500, "Measure where they meet.")
    demand_range("hub over shaft", hub_diameter / shaft_diameter, "", 1.001, 100, "The hub is the larger.")
    part = interference / shaft_diameter
    demand_range("interference over diameter", part, "", 0, 0.01, "It is given on diameter, in mm.")
    demand_range("shaft_modulus", shaft_modulus, "MPa", 1000, 700_000, MODULUS)
    demand_range("hub_modulus", hub_modulus, "MPa", 1000, 700_000, MODULUS)
    demand_range("shaft_poisson", shaft_poisson, "", 0, 0.5, "Steel has 0.3.")
    demand_range("hub_poisson", hub_poisson, "", 0, 0.5, "Steel has 0.3.")
    demand_range("bore over shaft", shaft_bore / shaft_diameter, "", 0, 0.99, "The bore is the smaller.")
    d, outer, inner = shaft_diameter**2, hub_diameter**2, shaft_bore**2
    hub = ((outer + d) / (outer - d) + hub_poisson) / hub_modulus
    shaft = ((d + inner) / (d - inner) - shaft_poisson) / shaft_modulus
    return MegaPascal(interference / (shaft_diameter * (hub + shaft)))


def hub_hoop_stress(pressure: MegaPascal, shaft_diameter: Mm, hub_diameter: Mm) -> MegaPascal:
    """The pull round the hub's bore, where it is greatest and where a hub cracks.

    Takes
        pressure        MPa  between shaft and hub
        shaft_diameter  mm   where they meet
        hub_diameter    mm   over the hub's outside
    Gives
        MPa  the hoop stress at the bore
    Refuses
        pressure outside 0 to 5000, shaft_diameter outside 1 to 500, a hub not larger than the shaft
    Caution
        pressing
    Source
        press-fit-lame
    Example
        >>> round(hub_hoop_stress(MegaPascal(63), Mm(25), Mm(50)), 6)
        105.0
    """
    demand_range("pressure", pressure, "MPa", 0, 5000, "Look at the interference again.")
    demand_range("shaft_diameter", shaft_diameter, "mm", 1, 500, "Measure where they meet.")
    demand_range("hub over shaft", hub_diameter / shaft_diameter, "", 1.001, 100, "The hub is the larger.")
    d, outer = shaft_diameter**2, hub_diameter**2
    return MegaPascal(pressure * (outer + d) / (outer - d))


def press_force(pressure: MegaPascal, shaft_diameter: Mm, length: Mm, friction: Ratio) -> Newton:
    """The force that pushes the parts together at the end of the way, and that holds them after.

    Takes
        pressure        MPa    between shaft and hub
        shaft_diameter  mm     where they meet
        length          mm     they meet over
        friction        ratio  between them
    Gives
        N  the force
    Refuses
        pressure outside 0 to 5000, shaft_diameter outside 1 to 500, length outside 0.5 to 1000,
        friction outside 0.02 to 0.6
    Caution
        pressing
    Source
        press-fit-lame
    Example
        >>> round(press_force(MegaPascal(63), Mm(25), Mm(20), Ratio(0.1)))
        9896
    """
    demand_range("pressure", pressure, "MPa", 0, 5000, "Look at the interference again.")
    demand_range("shaft_diameter", shaft_diameter, "mm", 1, 500, "Measure where they meet.")
    demand_range("length", length, "mm", 0.5, 1000, "Measure the length they meet over.")
    demand_range("friction", friction, "", 0.02, 0.6, "Oiled steel is near 0.12.")
    return Newton(math.pi * shaft_diameter * length * pressure * friction)


def heat_to_open(opening: Mm, shaft_diameter: Mm, expansion: PerKelvin) -> Kelvin:
    """How much warmer than the shaft the hub must be for its bore to open so far.

    Takes
        opening         mm   on diameter: the interference, and room to handle
        shaft_diameter  mm   where they meet
        expansion       1/K  of the hub
    Gives
        K  the difference in temperature
    Refuses
        opening outside 0 to 5, shaft_diameter outside 1 to 500, expansion outside 1e-6 to 5e-5
    Caution
        pressing
    Source
        press-fit-lame
    Example
        >>> round(heat_to_open(Mm(0.05), Mm(25), PerKelvin(12e-6)))
        167
    """
    demand_range("opening", opening, "mm", 0, 5, "Give it on diameter.")
    demand_range("shaft_diameter", shaft_diameter, "mm", 1, 500, "Measure where they meet.")
    demand_range("expansion", expansion, "1/K", 1e-6, 5e-5, "Steel has 12e-6, aluminium 23e-6.")
    return Kelvin(opening / (expansion * shaft_diameter))
