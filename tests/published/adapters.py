"""The lever of a torque wrench with an adapter, in whatever units a source prints."""

from witnessmark.bench.bolts import adapter_setting
from witnessmark.ground.units import Degree, Mm, NewtonMetre

INCH = 25.4


def setting(wanted: float, wrench_inches: float, adapter_inches: float, angle: float = 0.0) -> float:
    """What to set, in the unit that was wanted in."""
    lever, more = Mm(wrench_inches * INCH), Mm(adapter_inches * INCH)
    return adapter_setting(NewtonMetre(wanted), lever, more, Degree(angle))


def delivered(set_to: float, wrench_inches: float, adapter_inches: float) -> float:
    """What a setting gives at the nut, in the unit it was set in."""
    return set_to / setting(1.0, wrench_inches, adapter_inches)
