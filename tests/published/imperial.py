"""Imperial sizes into the inside units and back, for sources that print them; every factor exact."""

from witnessmark.ground.units import Mm, Newton, NewtonMetre

INCH = 25.4
LBF = 4.4482216152605
LBF_IN = LBF * INCH / 1000
LBF_FT = 12 * LBF_IN


def inches(value: float) -> Mm:
    """Inches in mm."""
    return Mm(value * INCH)


def pounds(value: float) -> Newton:
    """Pounds force in N."""
    return Newton(value * LBF)


def in_pound_inches(torque: NewtonMetre) -> float:
    """N·m in lbf in."""
    return torque / LBF_IN


def in_pound_feet(torque: NewtonMetre) -> float:
    """N·m in lbf ft."""
    return torque / LBF_FT
