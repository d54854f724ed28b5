"""Whether a torque figure can be what it says, for the moment it is written down from a book.

One printed band of friction, oiled to dry steel. *Over* when even the driest bolt passes proof,
*doubtful* when the oiled one does, *low* when the oiled one stays under a fifth of proof. A mix-up
of units is named only where the figure as typed lies outside and the converted one inside.
"""

from __future__ import annotations

import math
import re

from msgspec import Struct

from witnessmark.bench.bolts import preload_from_torque, proof_load
from witnessmark.bench.friction import DRY, OILED, state_of
from witnessmark.bench.grades import strength, unknown_grades
from witnessmark.bench.picture.bolts import PreloadBar, preload_bars
from witnessmark.bench.slip import Asked, Slip, Verdict
from witnessmark.bench.thread_list import Thread, find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.measures import GRAVITY, INCH, LBF
from witnessmark.ground.quantities import read_quantity
from witnessmark.ground.quantity import Quantity
from witnessmark.ground.units import Newton, NewtonMetre, demand_range

LBF_FT, LBF_IN = LBF * INCH * 12 / 1000, LBF * INCH / 1000

UNITS = (("N·m", 1.0), ("lbf ft", LBF_FT), ("lbf in", LBF_IN), ("kgf m", GRAVITY), ("kgf cm", GRAVITY / 100))
"""The units a figure may have been copied in, with their N·m."""

VERDICT: dict[str, Verdict] = {"within": "fits", "doubtful": "marginal", "low": "marginal", "over": "no"}


class Judged(Struct, frozen=True, kw_only=True):
    """One grade's answer: parts of proof with a dry and with an oiled thread, and how that stands."""

    grade: str
    state: str
    dry: float
    oiled: float
    proof: Newton


def figure_plausible(thread: str, grade: str | None, torque: Quantity) -> Slip:
    """Judge a written figure.

    thread  the thread by its usual name
    grade   the mark on the head; None where nobody can read it: then 4.8, 5.8 and 8.8 are answered,
            as far as they are made at that size
    torque  as typed, value in N·m

    Raises BadInput for a thread or grade that is not known and for a figure no bolt bears.
    """
    t = find_thread(thread)
    demand_range("torque", torque.value, "N·m", 0.01, 10_000, "Look at the unit again.")
    grades = unknown_grades(t.diameter) if grade is None else (grade,)
    judged = tuple(judge(t, one, NewtonMetre(torque.value)) for one in grades)
    states = {one.state for one in judged}
    slips = unit_slips(t, grades, torque) if "within" not in states else ()
    state = states.pop() if len(states) == 1 else "cannot tell"
    return Slip(
        subject="bolts",
        question="plausible",
        asked={"thread": Asked(thread, t.name), "torque": Asked(torque.typed, torque.value, "N·m")},
        results={
            "state": state,
            "grades": tuple(_row(one) for one in judged),
            "unit_slip": _told_slip(slips, within="within" in (one.state for one in judged)),
        },
        verdict=VERDICT.get(state, "marginal"),
        because=_because(state, judged, torque, slips),
        working=tuple(
            f"{one.grade}: {torque.value:.2f} N·m leaves {one.dry:.0%} (nut factor {DRY:g}) "
            f"to {one.oiled:.0%} ({OILED:g}) of {one.proof / 1000:.1f} kN proof: {one.state}"
            for one in judged
        ),
        sources=_sources(t, grades),
        cautions=("torque-scatter",),
        picture=_picture(t, torque, judged),
    )


def states_said(slip: Slip) -> str:
    """How the figure stands, in a few words; at each grade where none was given.

    >>> states_said(figure_plausible("M8", None, read_quantity("13 lbf ft", "torque")))
    'doubtful at 4.8 and 5.8, within at 8.8'
    >>> states_said(figure_plausible("M8", None, read_quantity("60 Nm", "torque")))
    'over at 4.8 to 8.8'
    """
    grades: dict[str, list[str]] = {}
    for row in slip.rows("grades"):
        grades.setdefault(str(row["state"]), []).append(str(row["grade"]))
    told = list(grades.items())
    if len(told) == 1:
        state, found = told[0]
        return state if len(found) == 1 else f"{state} at {found[0]} to {found[-1]}"
    return ", ".join(f"{state} at {' and '.join(found)}" for state, found in told)


def judge(t: Thread, grade: str, torque: NewtonMetre) -> Judged:
    """One grade against the printed band."""
    bears = strength(grade, t.diameter)
    proof = proof_load(t.area, bears.proof)
    dry, oiled = (preload_from_torque(torque, t.diameter, k) / proof for k in (DRY, OILED))
    middle = (dry * oiled) ** 0.5
    return Judged(
        grade=bears.grade, state=state_of(dry, middle, oiled, spread=True), dry=dry, oiled=oiled, proof=proof
    )


def unit_slips(t: Thread, grades: tuple[str, ...], torque: Quantity) -> tuple[str, ...]:
    """The units in which the same number would lie within, for every grade asked."""
    typed = _typed_unit(torque)
    if typed is None:
        return ()
    number = torque.value / dict(UNITS)[typed]
    return tuple(
        f"{number:g} {unit} ({number * factor:.1f} N·m)"
        for unit, factor in UNITS
        if unit != typed
        and 0 < number * factor <= 10_000
        and all(judge(t, g, NewtonMetre(number * factor)).state == "within" for g in grades)
    )


def _typed_unit(torque: Quantity) -> str | None:
    """Which of the units was typed, or None where the words do not say."""
    spelled = re.sub(r"^[\d\s.,/½¼¾⅛-]+", "", torque.typed)
    try:
        one = read_quantity(f"1 {spelled}", "torque").value
    except BadInput:
        return None
    return next((unit for unit, factor in UNITS if math.isclose(one, factor, rel_tol=1e-6)), None)


def _told_slip(slips: tuple[str, ...], *, within: bool) -> str:
    if slips:
        return "perhaps meant " + " or ".join(slips)
    return "none seen" if within else "cannot tell: no other usual unit would put it within"


def _because(state: str, judged: tuple[Judged, ...], torque: Quantity, slips: tuple[str, ...]) -> str:
    span = f"{min(j.dry for j in judged):.0%} to {max(j.oiled for j in judged):.0%} of proof"
    said = {
        "within": f"{torque.typed} leaves {span}: it can be right",
        "over": f"{torque.typed} leaves {span}: even a dry bolt would pass its proof load",
        "doubtful": f"{torque.typed} leaves {span}: an oiled bolt would pass its proof load",
        "low": f"{torque.typed} leaves {span}: little for this bolt, unless a gasket or a soft part asks it",
        "cannot tell": "it hangs on the grade: " + ", ".join(f"{j.grade} {j.state}" for j in judged),
    }[state]
    return f"{said}; {_told_slip(slips, within=False)}" if slips else said


def _row(one: Judged) -> dict[str, float | str]:
    return {"grade": one.grade, "state": one.state, "dry": round(one.dry, 3), "oiled": round(one.oiled, 3)}


def _sources(t: Thread, grades: tuple[str, ...]) -> tuple[str, ...]:
    found = (
        *t.sources,
        *(strength(g, t.diameter).source for g in grades),
        "torque-short-form",
        "plausible-band",
    )
    return tuple(dict.fromkeys(found))


def _picture(t: Thread, torque: Quantity, judged: tuple[Judged, ...]) -> str:
    bars = [
        PreloadBar(
            label=j.grade,
            low=j.dry * j.proof / 1000,
            middle=(j.dry * j.oiled) ** 0.5 * j.proof / 1000,
            high=j.oiled * j.proof / 1000,
            proof=j.proof / 1000,
        )
        for j in judged
    ]
    return preload_bars(
        f"{t.name} at {torque.typed}", bars, f"band: nut factor {OILED:g} to {DRY:g}, oiled to dry"
    )
