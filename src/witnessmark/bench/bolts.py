"""Bolted joints: torque, preload, friction, engagement, turn of the nut."""

from __future__ import annotations

import math

from witnessmark.ground.elementwise import cos
from witnessmark.ground.units import Degree, Mm, NewtonMetre, demand_range


def adapter_setting(torque: NewtonMetre, wrench_length: Mm, extension: Mm, angle: Degree) -> NewtonMetre:
    """What to set on a torque wrench that carries an open-ended adapter.

    Takes
        torque         N·m  wanted at the nut
        wrench_length  mm   from the middle of the square to the middle of the grip
        extension      mm   from the middle of the square to the middle of the nut
        angle          °    between adapter and wrench; 0 straight ahead, 90 square to it
    Gives
        N·m  the setting; the same as wanted when the adapter stands square
    Refuses
        torque outside 0 to 10 000, wrench_length outside 50 to 3000, extension outside 0 to 2000,
        angle outside 0 to 180, or an adapter that reaches back past the grip
    Caution
        torque-wrench
    Source
        adapter-lever
    Example
        >>> adapter_setting(NewtonMetre(30), Mm(300), Mm(150), Degree(0))
        20.0
    """
    demand_range("torque", torque, "N·m", 0, 10_000, "Look at the unit again.")
    demand_range("wrench_length", wrench_length, "mm", 50, 3000, "Measure from square to grip.")
    demand_range("extension", extension, "mm", 0, 2000, "Measure from square to nut.")
    demand_range("angle", angle, "°", 0, 180, "0 is straight ahead, 90 square.")
    lever = wrench_length + extension * cos(angle * math.pi / 180)
    demand_range("lever to the nut", lever, "mm", 10, 5000, "Turn the adapter forward.")
    return NewtonMetre(torque * wrench_length / lever)
