"""Every formula of the bench tells what it takes, gives, refuses, warns of and rests on, in one shape."""

from __future__ import annotations

import inspect
import re
from collections.abc import Hashable, Iterator
from importlib import import_module
from pathlib import Path
from types import FunctionType
from typing import get_type_hints

import pytest

import witnessmark.bench as bench
from witnessmark.ground.units import SYMBOL
from witnessmark.tables.sources import cautions, sources

PARTS = ("Takes", "Gives", "Refuses", "Caution", "Source", "Example")


def formulas() -> Iterator[FunctionType]:
    """Public functions of the bench that give one number in a unit of the core."""
    for path in sorted(Path(bench.__path__[0]).glob("*.py")):
        module = import_module(f"witnessmark.bench.{path.stem}")
        for name, found in vars(module).items():
            if name.startswith("_") or not isinstance(found, FunctionType):
                continue
            if found.__module__ == module.__name__ and hashed(get_type_hints(found).get("return")) in SYMBOL:
                yield found


def hashed(hint: object) -> object:
    """A type hint, or None where it cannot be looked up."""
    return hint if isinstance(hint, Hashable) else None


def part(doc: str, name: str) -> str:
    """The indented lines under one heading."""
    found = re.search(rf"^{name}\n((?:    .*\n?)+)", doc, re.M)
    return inspect.cleandoc(found[1]) if found else ""


UNITS = {symbol for kind, symbol in SYMBOL.items() if kind not in (int, str, bool)}
FORMULAS = [f for f in formulas() if SYMBOL[get_type_hints(f)["return"]] in UNITS]


def test_the_formulas_are_found() -> None:
    assert len(FORMULAS) > 40


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.__name__)
def test_every_part_stands_in_its_order(formula: FunctionType) -> None:
    doc = inspect.getdoc(formula) or ""
    assert tuple(re.findall(rf"^({'|'.join(PARTS)})$", doc, re.M)) == PARTS


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.__name__)
def test_the_units_told_are_the_units_typed(formula: FunctionType) -> None:
    doc, hints = inspect.getdoc(formula) or "", get_type_hints(formula)
    said = dict(re.findall(r"^(\w+) +(\S+) ", part(doc, "Takes"), re.M))
    parameters = inspect.signature(formula).parameters
    assert list(said) == list(parameters)
    typed = {name: SYMBOL[hints[name]] for name in parameters if hints[name] in SYMBOL}
    assert {name: said[name] for name in typed} == typed
    assert part(doc, "Gives").split()[0] == SYMBOL[hints["return"]]


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.__name__)
def test_cautions_and_sources_are_known(formula: FunctionType) -> None:
    doc = inspect.getdoc(formula) or ""
    named = {c.strip() for c in part(doc, "Caution").replace("\n", ",").split(",")} - {"none"}
    assert named - set(cautions()) == set()
    behind = {s.strip() for s in part(doc, "Source").replace("\n", ",").split(",")}
    assert behind - set(sources()) == set()
