"""The nut factor as given, straight or as friction in thread and under head; and the one printed band."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.bench.bolts import bearing_mean, nut_factor
from witnessmark.bench.thread_list import Thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm, Ratio, demand_range

OILED, DRY = Ratio(0.12), Ratio(0.22)
"""The one band for judging a written figure, oiled to dry steel."""

SCATTER = 0.30
"""A torque wrench leaves this much more or less than the middle preload."""

HEAD_OVER_DIAMETER = 1.3
LEAST_PLAUSIBLE = 0.20
"""A figure that cannot even reach this part of proof is low."""


class Friction(Struct, frozen=True, kw_only=True):
    """A nut factor with how it came about.

    spread  True where it is the printed band and not a figure somebody gave
    """

    factor: Ratio
    low: Ratio
    high: Ratio
    spread: bool
    working: tuple[str, ...]
    sources: tuple[str, ...]


def friction_of(
    thread: Thread,
    factor: float | None,
    friction_thread: float | None,
    friction_head: float | None,
    bearing_diameter: float | None,
    hole: float | None,
) -> Friction:
    """The nut factor from whichever way it was given; the printed band where it was not.

    Raises BadInput where both ways are given, or only one of the two frictions.
    """
    if factor is not None and (friction_thread is not None or friction_head is not None):
        raise BadInput(
            given="nut_factor and friction are both given",
            holds="nut_factor alone, or friction_thread with friction_head",
            do="Leave one out.",
        )
    if (friction_thread is None) != (friction_head is None):
        raise BadInput(
            given="only one of friction_thread and friction_head",
            holds="both, or nut_factor alone",
            do="Give both; they may be the same.",
        )
    if factor is not None:
        demand_range("nut_factor", factor, "", 0.04, 0.6, "Oiled steel is near 0.12, dry near 0.20.")
        return _given(Ratio(factor), (f"nut factor {factor:g}, as given",), ("torque-short-form",))
    if friction_thread is not None and friction_head is not None:
        return _from_friction(thread, friction_thread, friction_head, bearing_diameter, hole)
    middle = Ratio((OILED * DRY) ** 0.5)
    told = f"nut factor {OILED:g} (oiled) to {DRY:g} (dry): nobody said, so the one printed band"
    return Friction(
        factor=middle, low=OILED, high=DRY, spread=True, working=(told,), sources=("plausible-band",)
    )


def _given(factor: Ratio, working: tuple[str, ...], sources: tuple[str, ...]) -> Friction:
    return Friction(factor=factor, low=factor, high=factor, spread=False, working=working, sources=sources)


def _from_friction(
    thread: Thread, in_thread: float, under_head: float, bearing: float | None, hole: float | None
) -> Friction:
    ring, told, source = _ring(thread, bearing, hole)
    factor = nut_factor(
        thread.diameter, thread.pitch, thread.pitch_diameter, thread.form.angle,
        Ratio(in_thread), Ratio(under_head), ring,
    )  # fmt: skip
    line = (
        f"nut factor ({thread.pitch:.4g} / 2π + {in_thread:g} × {thread.pitch_diameter:.3f} / "
        f"(2 cos {thread.form.angle / 2:g}°) + {under_head:g} × {ring:.2f} / 2) / {thread.diameter:.4g} "
        f"= {factor:.4f}"
    )
    return _given(factor, (told, line), ("torque-long-form", *source))


def _ring(thread: Thread, bearing: float | None, hole: float | None) -> tuple[Mm, str, tuple[str, ...]]:
    """The mean diameter under the head, how it came about, and the source of that."""
    if bearing is not None:
        return Mm(bearing), f"mean diameter under the head {bearing:.2f} mm, as given", ()
    face = thread.face if thread.face is not None else thread.jaw[0] if thread.jaw else None
    if hole is not None and face is not None:
        ring = bearing_mean(face, Mm(hole))
        told = f"mean diameter under the head ({face:.2f} + {hole:.2f}) / 2 = {ring:.2f} mm"
        return ring, told, (thread.head_source,)
    ring = Mm(HEAD_OVER_DIAMETER * thread.diameter)
    told = f"mean diameter under the head {HEAD_OVER_DIAMETER:g} × {thread.diameter:.4g} = {ring:.2f} mm"
    return ring, told, ("head-mean-diameter",)


def state_of(low: float, middle: float, high: float, *, spread: bool) -> str:
    """How a preload stands, as parts of proof: over, doubtful, low or within.

    Over a printed band, `over` means that even the driest bolt passes proof; for a given factor
    that the middle preload does.

    >>> state_of(1.14, 1.5, 2.1, spread=True), state_of(0.47, 0.6, 0.87, spread=True)
    ('over', 'within')
    """
    if (low if spread else middle) > 1:
        return "over"
    if high > 1:
        return "doubtful"
    return "low" if high < LEAST_PLAUSIBLE else "within"
