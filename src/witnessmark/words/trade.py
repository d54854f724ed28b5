"""What the catalogue, the gates and the starting lists call things, ready to be looked up by their words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.tables.read import names_in, read_table
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.words.lexicon import Words, lows, stems


class Answerable(Struct, frozen=True):
    """Something that can be proved, looked at or put right: a closing check, an ask of a gate, an upset."""

    name: str
    sort: str
    kinds: frozenset[str] = frozenset()


class Trade(Struct, frozen=True):
    """Lookups by stems.

    kinds   words that tell a kind of joint -> its key
    items   words of what is renewed -> (item, kinds whose joints renew it)
    parted  the items that are written with a comma
    answers words of checks, asks and upsets -> what they name
    typed   the very words of their names -> what they name, where two names have the same stems
    lists   words of starting lists -> key
    """

    kinds: Mapping[Words, str]
    items: Mapping[Words, Mapping[str, frozenset[str]]]
    parted: frozenset[Words]
    answers: Mapping[Words, Answerable]
    typed: Mapping[Words, Answerable]
    lists: Mapping[Words, str]


@cache
def trade() -> Trade:
    """Everything the trade data names."""
    rows = _answer_rows()
    items = [r.item for kind in catalogue().values() for r in kind.renew]
    return Trade(
        kinds=MappingProxyType(_kinds()),
        items=MappingProxyType(_items()),
        parted=frozenset(stems(item) for item in items if "," in item),
        answers=MappingProxyType(_answers(rows)),
        typed=MappingProxyType(_typed(rows)),
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


Row = tuple[str, tuple[str, ...], str, str]


def _answer_rows() -> list[Row]:
    """Name, by-words, sort and kind of everything that can be answered."""
    rows: list[Row] = []
    for kind in catalogue().values():
        rows += [(check.name, (), "check", kind.key) for check in kind.check]
        rows += [(upset.name, upset.words, "upset", kind.key) for upset in kind.upset]
    for name in names_in("gates"):
        for ask in read_table(name).get("ask", ()):
            rows.append((str(ask["name"]), tuple(ask.get("words", ())), "ask", ""))
    return rows


def _answers(rows: list[Row]) -> dict[Words, Answerable]:
    """Names first, so that another thing's by-word never takes one."""
    found: dict[Words, Answerable] = {}
    for name, _, sort, kind_key in rows:
        _add(found, [name], name, sort, kind_key)
    for name, words, sort, kind_key in rows:
        _add(found, words, name, sort, kind_key)
    return found


def _typed(rows: list[Row]) -> dict[Words, Answerable]:
    found: dict[Words, Answerable] = {}
    for name, _, sort, kind_key in rows:
        known = found.get(lows(name))
        kinds = known.kinds if known else frozenset()
        found[lows(name)] = Answerable(name, known.sort if known else sort, kinds | ({kind_key} - {""}))
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
