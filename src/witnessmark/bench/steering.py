"""Steering geometry: toe as a length at a diameter, and as an angle."""

from __future__ import annotations

import math

from witnessmark.ground.elementwise import asin, sin
from witnessmark.ground.units import Degree, Mm, demand_range


def toe_angle(toe: Mm, diameter: Mm) -> Degree:
    """The angle that belongs to a toe measured at a diameter.

    Takes
        toe       mm  difference between front and rear; of both wheels together or of one
        diameter  mm  that it was measured at: rim edge, tread, or plate
    Gives
        °  of both wheels together or of one, as the toe was
    Refuses
        toe outside −100 to 100, diameter outside 100 to 2000
    Caution
        steering
    Source
        geometry
    Example
        >>> round(toe_angle(Mm(4), Mm(727.7)), 2)
        0.31
    """
    demand_range("toe", toe, "mm", -100, 100, "Look at the unit again.")
    demand_range("at_diameter", diameter, "mm", 100, 2000, "Of rim edge, tread or plate.")
    return Degree(asin(toe / diameter) * 180 / math.pi)


def toe_length(angle: Degree, diameter: Mm) -> Mm:
    """The toe that belongs to an angle, at a diameter.

    Takes
        angle     °   of both wheels together or of one
        diameter  mm  that the toe is to be measured at
    Gives
        mm
    Refuses
        angle outside −5 to 5, diameter outside 100 to 2000
    Caution
        steering
    Source
        geometry
    Example
        >>> round(toe_length(Degree(0.15), Mm(24 * 25.4)) / 25.4, 5)
        0.06283
    """
    demand_range("toe", angle, "°", -5, 5, "More than that scrubs a tyre off in an hour.")
    demand_range("at_diameter", diameter, "mm", 100, 2000, "Of rim edge, tread or plate.")
    return Mm(diameter * sin(angle * math.pi / 180))
