"""The slip about press and shrink fits."""

from __future__ import annotations

from witnessmark.bench import fits
from witnessmark.bench.kinds import length, number, stress
from witnessmark.bench.picture.fits import press_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Slip
from witnessmark.ground.units import MegaPascal, Mm, PerKelvin, Ratio

HANDLING = 0.001
"""Room to handle a hot hub: a thousandth of the shaft, as is customary."""
FRICTION_SPREAD = 0.3
"""Friction in a press fit scatters by about this much either way."""


def press(
    *,
    shaft_diameter: float,
    hub_diameter: float,
    interference: float,
    shaft_modulus: float,
    hub_modulus: float,
    shaft_poisson: float,
    hub_poisson: float,
    shaft_bore: float = 0.0,
    length: float | None = None,
    friction: float | None = None,
    expansion: float | None = None,
) -> Slip:
    """The pressure of a press fit, what it does to the hub, the force to press it, the heat to drop it on."""
    d = Mm(shaft_diameter)
    pressure = fits.fit_pressure(
        d, Mm(hub_diameter), Mm(interference), MegaPascal(shaft_modulus), MegaPascal(hub_modulus),
        Ratio(shaft_poisson), Ratio(hub_poisson), Mm(shaft_bore),
    )  # fmt: skip
    hoop = fits.hub_hoop_stress(pressure, d, Mm(hub_diameter))
    force, force_line = _force(pressure, d, length, friction)
    heat, heat_line = _heat(Mm(interference), d, expansion)
    return Slip(
        subject="fits",
        question="press",
        results={
            "pressure": Band(pressure, "MPa"),
            "hoop_stress_hub": Band(hoop, "MPa"),
            "force": force,
            "heat_to_drop_on": heat,
        },
        because=f"{interference:.3f} mm on {shaft_diameter:g} mm presses with {pressure:.0f} MPa; "
        f"the hub's bore is pulled with {hoop:.0f} MPa: keep it well under the hub's yield",
        working=(
            f"hub ({hub_diameter:g}² + {d:g}²) / ({hub_diameter:g}² − {d:g}²) + {hub_poisson:g}, "
            f"over {hub_modulus:.0f} MPa",
            f"shaft ({d:g}² + {shaft_bore:g}²) / ({d:g}² − {shaft_bore:g}²) − {shaft_poisson:g}, "
            f"over {shaft_modulus:.0f} MPa",
            f"pressure {interference:g} / ({d:g} × both) = {pressure:.2f} MPa",
            f"hoop stress {pressure:.2f} × ({hub_diameter:g}² + {d:g}²) / ({hub_diameter:g}² − {d:g}²) "
            f"= {hoop:.2f} MPa",
            force_line,
            heat_line,
        ),
        sources=("press-fit-lame", "press-fit-choices"),
        cautions=("pressing",),
        picture=press_picture(
            shaft=shaft_diameter, hub=hub_diameter, bore=shaft_bore, length=length, interference=interference
        ),
    )


def _force(
    pressure: MegaPascal, d: Mm, length: float | None, friction: float | None
) -> tuple[Band | str, str]:
    if length is None or friction is None:
        return "give length and friction for the force", "no force: length or friction not given"
    force = fits.press_force(pressure, d, Mm(length), Ratio(friction))
    band = Band(force, "N", force * (1 - FRICTION_SPREAD), force * (1 + FRICTION_SPREAD))
    return band, f"force π × {d:g} × {length:g} × {pressure:.2f} × {friction:g} = {force:.0f} N"


def _heat(interference: Mm, d: Mm, expansion: float | None) -> tuple[Band | str, str]:
    if expansion is None:
        return "give expansion for the heat", "no heat: expansion not given"
    rise = fits.heat_to_open(interference, d, PerKelvin(expansion))
    easy = fits.heat_to_open(Mm(interference + HANDLING * d), d, PerKelvin(expansion))
    line = (
        f"warmer than the shaft by {interference:g} / ({expansion:g} × {d:g}) = {rise:.0f} K, "
        f"and {easy:.0f} K with room to handle ({HANDLING:g} of the diameter)"
    )
    return Band(rise, "K", rise, easy), line


QUESTIONS = (
    Question(
        subject="fits",
        question="press",
        moment="a bearing, bush or hub to press or drop on",
        answer=press,
        inputs=(
            need("shaft_diameter", length, "where shaft and hub meet", "25 mm"),
            need("hub_diameter", length, "over the hub's outside", "50 mm"),
            need("interference", length, "on diameter", "0.02 mm"),
            need("shaft_modulus", stress, "of the shaft", "210 GPa"),
            need("hub_modulus", stress, "of the hub", "210 GPa"),
            need("shaft_poisson", number, "of the shaft", "0.3"),
            need("hub_poisson", number, "of the hub", "0.3"),
            may("shaft_bore", length, "through the shaft; 0 where it is solid", "0 mm"),
            may("length", length, "they meet over", "20 mm"),
            may("friction", number, "between them", "0.12"),
            may("expansion", number, "of the hub, per kelvin", "12e-6"),
        ),
    ),
)
