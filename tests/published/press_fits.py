"""Press fits of one material in whatever figures a source prints."""

from witnessmark.bench import fits
from witnessmark.ground.units import MegaPascal, Mm, Ratio

STEEL = 210_000.0
NU = Ratio(0.3)


def pressure(shaft: float, hub: float, interference: float, modulus: float, bore: float = 0.0) -> float:
    """MPa between shaft and hub of one material."""
    e = MegaPascal(modulus)
    return fits.fit_pressure(Mm(shaft), Mm(hub), Mm(interference), e, e, NU, NU, Mm(bore))


def hoop(shaft: float, hub: float, interference: float, modulus: float) -> float:
    """MPa round the hub's bore."""
    return fits.hub_hoop_stress(MegaPascal(pressure(shaft, hub, interference, modulus)), Mm(shaft), Mm(hub))


def force(
    shaft: float, hub: float, interference: float, modulus: float, length: float, friction: float
) -> float:
    """N to press together."""
    p = MegaPascal(pressure(shaft, hub, interference, modulus))
    return fits.press_force(p, Mm(shaft), Mm(length), Ratio(friction))


def interference_for(wanted: float, shaft: float, hub: float, modulus: float, bore: float = 0.0) -> float:
    """mm on diameter that a pressure asks: pressure goes straight with interference."""
    return wanted / pressure(shaft, hub, shaft * 1e-4, modulus, bore) * shaft * 1e-4
