"""What the catalogue, the gates and the starting lists call things, ready to be looked up by their words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.tables.read import names_in, read_table
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.words.lexicon import Words, stems


class Answerable(Struct, frozen=True):
    """Something that can be proved, looked at or put right: a closing check, an ask of a gate, an upset."""

    name: str
    sort: str
    kinds: frozenset[str] = frozenset()


class Trade(Struct, frozen=True):
    """Lookups by stems.

    kinds   words that tell a kind of joint -> its key
    items   words of what is renewed -> (item, kinds whose joints renew it)
    answers words of checks, asks and upsets -> what they name
    lists   words of starting lists -> key
    """

    kinds: Mapping[Words, str]
    items: Mapping[Words, Mapping[str, frozenset[str]]]
    answers: Mapping[Words, Answerable]
    lists: Mapping[Words, str]


@cache
def trade() -> Trade:
    """Everything the trade data names."""
    return Trade(
        kinds=MappingProxyType(_kinds()),
        items=MappingProxyType(_items()),
        answers=MappingProxyType(_answers()),
        lists=MappingProxyType(_lists()),
    )


def _kinds() -> dict[Words, str]:
    found: dict[Words, str] = {}
    for kind in catalogue().values():
        for text in (*kind.words, kind.key.replace("-", " "), kind.name):
            found.setdefault(stems(text), kind.key)
    return found


def _items() -> dict[Words, Mapping[str, frozenset[str]]]:
    found: dict[Words, dict[str, set[str]]] = {}
    for kind in catalogue().values():
        for renewal in kind.renew:
            for text in (renewal.item, *renewal.words):
                found.setdefault(stems(text), {}).setdefault(renewal.item, set()).add(kind.key)
    return {words: {item: frozenset(keys) for item, keys in items.items()} for words, items in found.items()}


def _answers() -> dict[Words, Answerable]:
    """Names first, so that another thing's by-word never takes one."""
    rows: list[tuple[str, tuple[str, ...], str, str]] = []
    for kind in catalogue().values():
        rows += [(check.name, (), "check", kind.key) for check in kind.check]
        rows += [(upset.name, upset.words, "upset", kind.key) for upset in kind.upset]
    for name in names_in("gates"):
        for ask in read_table(name).get("ask", ()):
            rows.append((str(ask["name"]), tuple(ask.get("words", ())), "ask", ""))
    found: dict[Words, Answerable] = {}
    for name, _, sort, kind_key in rows:
        _add(found, [name], name, sort, kind_key)
    for name, words, sort, kind_key in rows:
        _add(found, words, name, sort, kind_key)
    return found


def _add(found: dict[Words, Answerable], texts: Iterable[str], name: str, sort: str, kind: str) -> None:
    for text in texts:
        words = stems(text)
        known = found.get(words)
        if known is None:
            found[words] = Answerable(name, sort, frozenset({kind} - {""}))
        elif known.name == name:
            found[words] = Answerable(name, known.sort, known.kinds | ({kind} - {""}))


def _lists() -> dict[Words, str]:
    found: dict[Words, str] = {}
    for key, row in starting_lists().items():
        for text in (row.name, *row.words, key.replace("-", " ")):
            found.setdefault(stems(text), key)
    return found
