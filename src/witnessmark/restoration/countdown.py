"""Seconds that are left: the clock which the core is handed, and does not know."""

from __future__ import annotations

import time
from collections.abc import Callable


def countdown(seconds: float) -> Callable[[], float]:
    """Asked at any later time, the seconds left of so many; below 0 once they are over."""
    end = time.monotonic() + seconds
    return lambda: end - time.monotonic()
