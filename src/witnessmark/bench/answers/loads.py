"""Slips about pulling a vehicle."""

from __future__ import annotations

import math

from witnessmark.bench import loads
from witnessmark.bench.kinds import angle, quantity, words
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Asked, Band, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Kilogram, Ratio
from witnessmark.tables.numbers import table

SCOPE = "one for one, as built; certifier where the law asks"


def slope(name: str, typed: str) -> Asked:
    """A slope as an angle or as a gradient in %; the value is in degrees.

    >>> round(slope("slope", "25 %").value, 2), slope("slope", "14 deg").value
    (14.04, 14.0)
    """
    if typed.strip().endswith("%"):
        return Asked(typed, math.degrees(math.atan(quantity("ratio")(name, typed).value / 100)), "°")
    return angle(name, typed)


def answer_towing(*, mass: float, slope: float = 0.0, ground: str | None = None) -> Slip:
    """What an eye is tested with, and what a steady pull asks."""
    weight = Kilogram(mass)
    test = loads.eye_test_force(weight)
    low, high, said = _ground(ground)
    pull = {x: loads.recovery_force(weight, Degree(slope), Ratio(x)) for x in (low, high)}
    over = pull[high] > test
    because = (
        f"{SCOPE}. A steady pull asks {figure(pull[low] / 1000)} to {figure(pull[high] / 1000)} kN; "
        f"the rules test an eye with {figure(test / 1000)} kN"
        + (", which is less: do not pull it by one eye" if over else "")
        + "; a jerk asks several times as much"
    )
    return Slip(
        subject="loads",
        question="towing",
        results={
            "eye_test_force": Band(test, "N"),
            "recovery_force": Band(pull[high], "N", pull[low], pull[high]),
            "scope": SCOPE,
        },
        verdict="no" if over else None,
        because=because,
        working=(
            f"eye: half the laden weight, 0.5 × {mass:g} × 9.807 = {figure(test)} N, pull and push",
            f"slope {slope:.3g}°: sine {math.sin(math.radians(slope)):.3f} of the weight",
            said,
            f"steady pull {figure(pull[low])} to {figure(pull[high])} N, on level rope, wheels free to roll",
            "what a rusty chassis behind the eye bears is not reckoned",
        ),
        sources=("eu-1005-2010", "ground-resistance", "ground-sheet", "ground-thirds"),
        cautions=("towing", "strength-scope"),
    )


def _ground(ground: str | None) -> tuple[float, float, str]:
    rows = {r["ground"]: r for r in table("pulls/ground").rows}
    name = "hard" if ground is None else ground.lower()
    if name not in rows:
        near = tuple(n for n in rows if any(w in n for w in name.split()))
        raise BadInput(
            given=f"ground is {ground!r}",
            holds=f"one of {', '.join(rows)}",
            do="Take the worse of two.",
            near=near,
        )
    row = rows[name]
    taken = " (taken, as nothing was said)" if ground is None else ""
    return (
        row["low"],
        row["high"],
        f"ground {name}{taken}: {row['low']:g} to {row['high']:g} of the weight; the sources disagree",
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="loads",
        question="towing",
        moment="a vehicle to pull, an eye to pull it by",
        answer=answer_towing,
        inputs=(
            need("mass", quantity("mass"), "of the vehicle as laden", "1500 kg"),
            may("slope", slope, "uphill, as an angle or in %", "10 deg"),
            may("ground", words, "what it stands on", "grass"),
        ),
    ),
)
