"""Weights that were learned from lines, read from a text file of the package."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from msgspec import Struct

ZERO = 80


class Weights(Struct, frozen=True):
    """What was learned, ready for looking up.

    kinds   every kind, in the order that `rows` counts them by
    rests   the score of each kind where nothing is told
    step    the size of one level
    rows    telltale -> pairs of signs: how many levels are gained, and by which kind
    digest  the mark of the lines it was learned from
    right   how many of those lines it told rightly when it was learned, of each list
    """

    kinds: tuple[str, ...]
    rests: tuple[float, ...]
    step: float
    rows: Mapping[str, str]
    digest: str
    right: Mapping[str, int]

    def scores(self, telltales: tuple[str, ...]) -> list[float]:
        """The score of each kind, the telltales found added up."""
        levels = [0] * len(self.kinds)
        for telltale in telltales:
            row = self.rows.get(telltale, "")
            for level, kind in zip(row[::2], row[1::2], strict=True):
                levels[ord(kind) - ord("A")] += ord(level) - ZERO
        return [rest + level * self.step for rest, level in zip(self.rests, levels, strict=True)]

    def speaks(self, telltale: str, kind: str) -> float:
        """How far one telltale speaks for one kind."""
        row = self.rows.get(telltale, "")
        sign = chr(ord("A") + self.kinds.index(kind)) if kind in self.kinds else ""
        pairs = zip(row[::2], row[1::2], strict=True)
        return self.step * sum(ord(level) - ZERO for level, one in pairs if one == sign)


@cache
def read_weights(name: str) -> Weights:
    """One file of weights by its name without ending, as "words/likelihood".

    Lines with # are its pedigree; `key: value` lines come first, then telltale, tab and pairs.
    """
    text = files("witnessmark.tables").joinpath(f"{name}.txt").read_text("utf-8")
    head: dict[str, str] = {}
    rows: dict[str, str] = {}
    for line in text.splitlines():
        telltale, tab, pairs = line.partition("\t")
        if tab:
            rows[telltale] = pairs
        elif not line.startswith("#"):
            key, _, value = line.partition(": ")
            head[key] = value
    return Weights(
        kinds=tuple(head["kinds"].split()),
        rests=tuple(float(rest) for rest in head["rests"].split()),
        step=float(head["step"]),
        rows=MappingProxyType(rows),
        digest=head["digest"],
        right=MappingProxyType({n: int(c) for n, _, c in (w.partition("=") for w in head["right"].split())}),
    )
