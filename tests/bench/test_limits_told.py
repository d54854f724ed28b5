"""The limits a formula tells under `Refuses` are those it keeps: refused just outside, not at the ends."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator
from types import FunctionType
from typing import Any

import pytest

from tests.bench.test_docstrings import FORMULAS, part
from witnessmark.ground.errors import BadInput

NUMBER = r"[-−]?[0-9][0-9 ]*(?:\.[0-9]+)?(?:e-?[0-9]+)?"
LIMIT = re.compile(rf"(\w+) outside ({NUMBER}) to ({NUMBER})")


def limits_told() -> Iterator[tuple[FunctionType, str, float, float]]:
    """Each formula with a parameter and its two ends, where both are plain numbers."""
    for formula in FORMULAS:
        told = " ".join(part(inspect.getdoc(formula) or "", "Refuses").split())
        for name, low, high in LIMIT.findall(told):
            if name in inspect.signature(formula).parameters:
                yield formula, name, plain(low), plain(high)


def plain(typed: str) -> float:
    """A number as a docstring prints it, with its proper minus."""
    return float(typed.replace(" ", "").replace("−", "-"))


def example_call(formula: FunctionType) -> list[Any] | None:
    """The arguments of the first call in the formula's own example, if it is a plain one."""
    source = part(inspect.getdoc(formula) or "", "Example")
    lines = [line[4:] for line in source.splitlines() if line.startswith((">>> ", "... "))]
    names: dict[str, Any] = {}
    for node in ast.parse("\n".join(lines)).body:
        for call in ast.walk(node):
            if (
                isinstance(call, ast.Call)
                and getattr(call.func, "id", "") == formula.__name__
                and not call.keywords
            ):
                return [eval(ast.unparse(a), {**formula.__globals__, **names}) for a in call.args]
        if isinstance(node, ast.Assign):
            exec(ast.unparse(node), {**formula.__globals__}, names)
    return None


TOLD = [one for one in limits_told() if example_call(one[0]) is not None]


def refused(formula: FunctionType, name: str, value: float) -> str:
    """What a call says when one argument of the example is changed to value; "" where it answers."""
    arguments = example_call(formula)
    assert arguments is not None
    arguments[list(inspect.signature(formula).parameters).index(name)] = value
    try:
        formula(*arguments)
    except BadInput as trouble:
        return trouble.given
    return ""


def ident(one: Any) -> str:
    """A short name for a case."""
    return one.__name__ if isinstance(one, FunctionType) else str(one)


def test_enough_limits_are_told_in_words_a_test_can_read() -> None:
    assert len(TOLD) > 60


@pytest.mark.parametrize(("formula", "name", "low", "high"), TOLD, ids=ident)
def test_just_outside_is_refused(formula: FunctionType, name: str, low: float, high: float) -> None:
    step = 1e-6 * max(1e-3, high - low)
    assert refused(formula, name, low - step)
    assert refused(formula, name, high + step)


@pytest.mark.parametrize(("formula", "name", "low", "high"), TOLD, ids=ident)
def test_the_ends_themselves_are_not_refused_for_that(
    formula: FunctionType, name: str, low: float, high: float
) -> None:
    for end in (low, high):
        told = refused(formula, name, end)
        assert not re.match(rf"{name} is ", told), told
