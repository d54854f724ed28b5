"""Words for what is found on a vehicle, and what each of them means for the record."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.tables.read import read_table


class Condition(Struct, frozen=True, kw_only=True):
    """One word for what is found.

    bad      it asks for putting right
    good     it answers an earlier finding
    fights   a fastener found so fights: its minutes rise
    loosens  a joint found so is no longer to its figure
    """

    word: str
    forms: tuple[str, ...] = ()
    bad: bool = False
    good: bool = False
    fights: bool = False
    loosens: bool = False


@cache
def conditions() -> Mapping[str, Condition]:
    """Every condition by the word kept in the record.

    >>> sorted(w for w, c in conditions().items() if c.good)
    ['dry', 'good', 'sound']
    """
    rows = read_table("words/conditions")
    return MappingProxyType(
        {word: Condition(**{"word": word, **row, "forms": tuple(row["forms"])}) for word, row in rows.items()}
    )


@cache
def _by_form() -> Mapping[str, Condition]:
    known = {form: each for each in conditions().values() for form in each.forms}
    return MappingProxyType({**known, **conditions()})


def condition(word: str) -> Condition:
    """What a word says; a word that is not known says nothing.

    >>> condition("weeps").word, condition("sheared").loosens, condition("mauve").bad
    ('weeping', True, False)
    """
    plain = " ".join(word.lower().split())
    return _by_form().get(plain) or Condition(word=plain)
