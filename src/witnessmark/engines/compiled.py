"""Loops compiled to machine code. Whoever imports this loads the compiler: only on being asked.

What is kept beside the source is made anew when the loop's own file changes, and not when a file it
calls into does: after such a change touch the loop's file too.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

from numba import njit

Loop = TypeVar("Loop", bound=Callable[..., Any])


def compiled(loop: Loop) -> Loop:
    """The same loop, compiled when it is first called and kept beside the source for the next run."""
    return cast(Loop, njit(cache=True, nogil=True, error_model="numpy")(loop))


def inlined(loop: Loop) -> Loop:
    """The same for a small one that is called in the middle of a loop: put in place there."""
    return cast(Loop, njit(inline="always")(loop))
