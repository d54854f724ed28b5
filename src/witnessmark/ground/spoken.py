"""Numbers said in words, or half so: "a hundred and ten", "2 and a half", "seven sixteenths"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

_ONES = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen"
_ONES += " seventeen eighteen nineteen"
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
# Every single word that tells how many.
WORDS: Mapping[str, float] = MappingProxyType(
    {word: float(worth) for worth, word in enumerate(_ONES.split(), 1)}
    | {word: 10.0 * worth for worth, word in enumerate(_TENS.split(), 2)}
    | {"couple": 2.0, "pair": 2.0, "dozen": 12.0}
)
_WORTH: Mapping[str, float] = MappingProxyType({**WORDS, "a": 1.0, "an": 1.0})
_PARTS: Mapping[str, float] = MappingProxyType(
    {
        "half": 1 / 2,
        "halve": 1 / 2,
        "third": 1 / 3,
        "quarter": 1 / 4,
        "eighth": 1 / 8,
        "sixteenth": 1 / 16,
        "thirty-second": 1 / 32,
        "sixty-fourth": 1 / 64,
    }
)
# On a rule or a drill these are parts of an inch, said without it.
OF_AN_INCH = r"eighths?|sixteenths?|thirty[ -]seconds?|sixty[ -]fourths?"

_ONE = "|".join(_ONES.split())
_TEN = "|".join(_TENS.split())
_SMALL = rf"(?:(?:{_TEN})(?:[ -](?:{_ONE}))?|{_ONE})"
_WHOLE = rf"(?:(?:a|{_ONE}) hundred(?: and {_SMALL})?|(?:half )?a dozen|dozen|(?:a )?couple(?: of)?|{_SMALL})"
_PART = rf"half|halves|quarters?|thirds?|{OF_AN_INCH}"
PART = rf"(?:(?:an?|{_ONE})[ -](?:{_PART})|half|quarter)"
# A number said: whole, part, or whole and part; digits may stand for the whole before a part.
SAID = rf"(?:(?:{_WHOLE}|[0-9]{{1,3}}) and (?:{PART})|{PART}|{_WHOLE})"
# How many, in more than one word.
COUNT = rf"(?:half a dozen|(?:a|{_ONE}) hundred(?: and {_SMALL})?|(?:{_TEN})[ -](?:{_ONE}))"
_ALONE = re.compile(SAID, re.I)


def read_said(text: str) -> float | None:
    """The value of one number said in words; None where it is none.

    >>> read_said("a hundred and ten"), read_said("two and a quarter"), read_said("seven sixteenths")
    (110.0, 2.25, 0.4375)
    >>> read_said("half a dozen"), read_said("twenty-five"), read_said("2 and a half"), read_said("a lot")
    (6.0, 25.0, 2.5, None)
    """
    said = " ".join(text.lower().split())
    if _ALONE.fullmatch(said) is None:
        return None
    return _value(said)


def _value(said: str) -> float:
    if said.startswith("half a dozen"):
        return 6.0
    whole, _, part = said.rpartition(" and ")
    if whole and _is_part(part):
        return _value(whole) + _part(part)
    if _is_part(said):
        return _part(said)
    if " hundred" in said:
        hundreds, _, rest = said.partition(" hundred")
        return 100 * _WORTH[hundreds] + (_value(rest.removeprefix(" and ")) if rest else 0.0)
    if said.isdigit():
        return float(said)
    return _sum(said)


def _sum(said: str) -> float:
    words = [w for w in said.replace("-", " ").split() if w not in ("a", "of")]
    return sum(_WORTH[w] for w in words)


def _is_part(said: str) -> bool:
    return re.fullmatch(PART, said) is not None


def _part(said: str) -> float:
    name = next(p for p in sorted(_PARTS, key=len, reverse=True) if p in re.sub(r"y[ -]", "y-", said))
    count = re.split(r"[ -]", said)[0]
    return _PARTS[name] * (1.0 if count in _PARTS else _WORTH[count])
