"""Numbers as they are typed: decimals with point or comma, fractions, mixed numbers, a few words."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from witnessmark.ground.errors import BadInput

_VULGAR = {
    "½": Fraction(1, 2),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
}
_GLYPHS = "".join(_VULGAR)

# The longest spelling stands first, so that "1 1/4" is not read as "1".
NUMBER = (
    r"(?:[0-9]+[ -][0-9]+/[0-9]+"
    rf"|[0-9]+\s?[{_GLYPHS}]"
    r"|[0-9]+/[0-9]+"
    rf"|[{_GLYPHS}]"
    r"|[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?(?![0-9])"
    r"|[0-9]+[.,][0-9]+"
    r"|\.[0-9]+"
    r"|[0-9]+)"
)
_LONGEST = 24
_WHOLE = re.compile(rf"\s*([-+−]?)\s*({NUMBER})\s*")


def read_number(text: str) -> float:
    """The value of one number, however it is written.

    >>> read_number("1 1/4"), read_number("½"), read_number("7,9"), read_number("1,142"), read_number("-.5")
    (1.25, 0.5, 7.9, 1142.0, -0.5)

    Raises BadInput for anything that is not one number.
    """
    found = _WHOLE.fullmatch(text)
    if found is None:
        raise _not_a_number(text)
    sign, body = found.groups()
    value = _magnitude(body)
    if value is None or not math.isfinite(value):
        raise _not_a_number(text)
    return -value if sign in ("-", "−") else value


def _magnitude(body: str) -> float | None:
    if len(body) > _LONGEST:
        return None
    if body[-1] in _VULGAR:
        whole = body[:-1].strip()
        return float(_VULGAR[body[-1]] + (int(whole) if whole else 0))
    if "/" in body:
        *before, fraction = re.split(r"[ -]", body)
        above, below = (int(n) for n in fraction.split("/"))
        if below == 0:
            return None
        return float(Fraction(above, below) + (int(before[0]) if before else 0))
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?", body):
        return float(body.replace(",", ""))
    return float(body.replace(",", "."))


def _not_a_number(text: str) -> BadInput:
    return BadInput(
        given=f"{text.strip()!r} is not a number",
        holds="a number, as 7.9, 7,9, 5/16, 1 1/4 or ½",
        do="Type one number.",
    )
