"""What a bolt of a grade bears, from its head mark."""

from __future__ import annotations

import difflib
import re

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import MegaPascal, Mm
from witnessmark.tables.numbers import table

UNKNOWN_GRADES = ("4.8", "5.8", "8.8")
"""What is answered for where nobody can read the head."""


class Strength(Struct, frozen=True, kw_only=True):
    """Strength of one grade at one size, MPa."""

    grade: str
    proof: MegaPascal
    yields: MegaPascal
    tensile: MegaPascal
    source: str


def strength(grade: str, diameter: Mm) -> Strength:
    """The strength of a grade for a bolt of that diameter.

    >>> strength("8.8", Mm(8)).proof, strength("sae 5", Mm(12.7)).grade
    (580.0, 'SAE 5')

    Raises BadInput for a grade that no table here has, or not at that size.
    """
    name = tidy_grade(grade)
    rows = [row for row in table("bolts/grades").rows if row["grade"] == name]
    for row in rows:
        if row["over"] < diameter <= row["upto"]:
            return Strength(
                grade=name,
                proof=MegaPascal(float(row["proof"])),
                yields=MegaPascal(float(row["yield"])),
                tensile=MegaPascal(float(row["tensile"])),
                source=row["source"],
            )
    raise BadInput(
        given=f"grade {name} on a thread of {diameter:.4g} mm",
        holds=f"{name} to {max(row['upto'] for row in rows):g} mm",
        do="Look at the head mark again, or measure the thread.",
    )


def unknown_grades(diameter: Mm) -> tuple[str, ...]:
    """What is answered for where nobody can read a head of that size: those of the three made so large.

    >>> unknown_grades(Mm(8)), unknown_grades(Mm(19.05))
    (('4.8', '5.8', '8.8'), ('5.8', '8.8'))
    """
    rows = table("bolts/grades").rows
    made = {r["grade"] for r in rows if r["over"] < diameter <= r["upto"]}
    return tuple(g for g in UNKNOWN_GRADES if g in made) or UNKNOWN_GRADES[-1:]


def tidy_grade(grade: str) -> str:
    """A grade as the table has it; an unknown one is refused with the near ones.

    >>> tidy_grade("8,8"), tidy_grade("Grade 5 (SAE)"), tidy_grade("class 10.9")
    ('8.8', 'SAE 5', '10.9')
    """
    known = sorted({row["grade"] for row in table("bolts/grades").rows})
    low = grade.lower().replace(",", ".")
    number = re.search(r"\d+(?:\.\d)?", low)
    if number is not None:
        plain = number[0]
        name = plain if "." in plain else f"SAE {plain}"
        letters = re.sub(r"class|grade|gr\b|sae|iso|j429|[^a-z]", "", low.replace(plain, ""))
        if name in known and not letters:
            return name
    near = tuple(difflib.get_close_matches(grade, known, n=3, cutoff=0.3))
    raise BadInput(
        given=f"grade is {grade!r}",
        holds=f"one of {', '.join(known)}",
        do=f"Did you mean {' or '.join(near)}?" if near else "Read the mark on the head.",
        near=near,
    )
