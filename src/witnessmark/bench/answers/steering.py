"""Slips about steering geometry."""

from __future__ import annotations

from witnessmark.bench import steering
from witnessmark.bench.kinds import angle, length
from witnessmark.bench.question import Question, need
from witnessmark.bench.slip import Asked, Band, Slip
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Mm


def length_or_angle(name: str, typed: str) -> Asked:
    """A toe, as a length or as an angle; the value is (number, "mm" or "°").

    >>> length_or_angle("toe", "1/8 in").value, length_or_angle("toe", "0.3 deg").value
    ((3.175, 'mm'), (0.3, '°'))
    """
    for read in (length, angle):
        try:
            found = read(name, typed)
        except BadInput:
            continue
        return Asked(typed, (found.value, found.unit), found.unit)
    raise BadInput(
        given=f"{name} is {typed!r}", holds="a length or an angle, as 3 mm or 0.3 deg", do="Add the unit."
    )


def answer_toe(*, toe: tuple[float, str], at_diameter: float) -> Slip:
    """Toe as a length and as an angle, at a diameter."""
    value, unit = toe
    if unit == "mm":
        long, turned = Mm(value), steering.toe_angle(Mm(value), Mm(at_diameter))
    else:
        long, turned = steering.toe_length(Degree(value), Mm(at_diameter)), Degree(value)
    return Slip(
        subject="steering",
        question="toe",
        results={
            "toe": Band(long, "mm"),
            "angle": Band(turned, "°"),
            "angle_each_wheel": Band(turned / 2, "°"),
        },
        because=f"{long:.2f} mm at {at_diameter:g} mm is {turned:.3f}°; of both wheels together each "
        f"takes half, {turned / 2:.3f}°",
        working=(
            f"sine of the angle is toe over diameter: {long:.3f} / {at_diameter:g}",
            "measure at the diameter that the book means: rim edge, tread or plate",
            "if the figure was for one wheel, the angle is that wheel's",
        ),
        sources=("geometry",),
        cautions=("steering",),
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="steering",
        question="toe",
        moment="toe in one measure, a gauge in another",
        answer=answer_toe,
        inputs=(
            need("toe", length_or_angle, "of both wheels together, or of one", "3 mm"),
            need("at_diameter", length, "where it is measured", "400 mm"),
        ),
    ),
)
