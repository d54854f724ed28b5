"""Functions of one number that also take an array, element by element; numpy is read only for arrays."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any


def _either(name: str, plain: Callable[[float], float]) -> Callable[[Any], Any]:
    def function(x: Any) -> Any:
        if isinstance(x, int | float):
            return plain(x)
        import numpy

        return getattr(numpy, name)(x)

    return function


sqrt = _either("sqrt", math.sqrt)
exp = _either("exp", math.exp)
log = _either("log", math.log)
log10 = _either("log10", math.log10)
sin = _either("sin", math.sin)
cos = _either("cos", math.cos)
tan = _either("tan", math.tan)
asin = _either("arcsin", math.asin)
