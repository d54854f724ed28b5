"""What a published check is, and how near is near enough: half a unit of the last digit printed.

A value counts when a source outside this project prints a result and our function arrives at it from
that source's inputs. Each file `test_*.py` here holds one source: SOURCE says what it is, PRINTED
lists what counts, BESIDE lists what is checked but does not count (and why), and NOT_REPRODUCED lists
what the source prints and its own inputs do not give. `python -m tests.published` lists them all.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

COUNTED_PER_QUESTION = 15
COUNTED_PER_SOURCE = 25


@dataclass(frozen=True, kw_only=True)
class Cited:
    """One source, cited in full.

    standing  as on the ladder of the tables: standard, authority, handbook, maker ...
    seen      page, excerpt or none
    """

    title: str
    issuer: str = ""
    where: str = ""
    edition: str = ""
    read: str = "2026-11"
    standing: str = "handbook"
    seen: str = "excerpt"


@dataclass(frozen=True)
class Printed:
    """One printed result.

    question  the bench question whose formula or decision gives it, "bolts tighten"
    what      which figure of the source it is, with its inputs in short
    printed   as printed, digits kept: "43.80" is not "43.8"
    ours      gives our value in the unit printed, or our word
    why       for what does not count or does not reproduce: the reason
    """

    question: str
    what: str
    printed: str
    ours: Callable[[], float | str]
    why: str = ""


def half_unit(printed: str) -> float:
    """Half a unit of the last digit printed.

    >>> half_unit("43.80"), half_unit("1500"), half_unit("1.2e3")
    (0.005, 0.5, 50.0)
    """
    exponent = Decimal(printed).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * float(Decimal(10) ** exponent)


def agrees(one: Printed) -> bool:
    """Whether our value rounds to what is printed, or our word is the same."""
    ours = one.ours()
    if isinstance(ours, str):
        return ours == one.printed
    printed = one.printed.replace(",", "")
    return bool(abs(ours - float(printed)) <= half_unit(printed) * (1 + 1e-9))


def name_of(one: Printed) -> str:
    """A short name for the list of tests."""
    return re.sub(r"\W+", "-", f"{one.question} {one.what}")[:70]
