"""Hydraulic brakes and clutches: pressure in the line, force at the far end."""

from __future__ import annotations

import math

from witnessmark.ground.units import MegaPascal, Mm, Mm2, Newton, Ratio, demand_range


def line_pressure(pedal_force: Newton, ratio: Ratio, bore: Mm, boost: Ratio) -> MegaPascal:
    """Pressure that a foot makes in the line.

    Takes
        pedal_force  N      on the pad
        ratio        ratio  of the pedal: pad to pivot over pushrod to pivot
        bore         mm     of the master cylinder
        boost        ratio  that a servo multiplies by; 1 without one
    Gives
        MPa  springs, seals and the lag of a servo left out
    Refuses
        pedal_force outside 0 to 3000, ratio outside 1 to 12, bore outside 5 to 60, boost outside 1 to 10
    Caution
        brake-fluid
    Source
        hydraulics
    Example
        >>> round(line_pressure(Newton(444.82), Ratio(6), Mm(25.4), Ratio(1)), 3)
        5.267
    """
    demand_range("pedal_force", pedal_force, "N", 0, 3000, "A hard push is near 500 N.")
    demand_range("ratio", ratio, "", 1, 12, "Pad to pivot over pushrod to pivot.")
    demand_range("bore", bore, "mm", 5, 60, "Of the master cylinder.")
    demand_range("boost", boost, "", 1, 10, "1 without a servo.")
    return MegaPascal(pedal_force * ratio * boost / piston_area(bore))


def piston_area(bore: Mm) -> Mm2:
    """Area of a round piston.

    Takes
        bore  mm  diameter
    Gives
        mm²
    Refuses
        bore outside 1 to 200
    Caution
        none
    Source
        geometry
    Example
        >>> round(piston_area(Mm(25.4)), 1)
        506.7
    """
    demand_range("bore", bore, "mm", 1, 200, "Look at the unit again.")
    return Mm2(math.pi / 4 * bore**2)
