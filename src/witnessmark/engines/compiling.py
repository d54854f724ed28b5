"""Loops compiled to machine code; loaded only by what needs them, since loading takes a fifth of a second."""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, TypeVar, cast

import numba

P = ParamSpec("P")
R = TypeVar("R")


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """The same function as machine code, kept on disk; it lets other threads go on while it runs."""
    return cast(Callable[P, R], numba.njit(cache=True, nogil=True)(function))
