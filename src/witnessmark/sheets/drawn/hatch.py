"""How a state is hatched on a drawing: black strokes on white, a kind of stroke for each state, no colour.

Apart: crossed. Loose: broken, out of step. Tight: plain and thin. Proven: clear. As found: dots. The word
always stands upon it.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

INK = "#101010"
_STROKE = f'stroke="{INK}" fill="none"'
_TURNED = 'patternUnits="userSpaceOnUse" patternTransform="rotate(45)"'

_PATTERNS: Mapping[str, str] = MappingProxyType(
    {
        "apart": f'<pattern id="{{id}}" width="11" height="11" {_TURNED}>'
        f'<path d="M0 5.5H11M5.5 0V11" {_STROKE} stroke-width="2.4"/></pattern>',
        "loose": f'<pattern id="{{id}}" width="14" height="22" {_TURNED}>'
        f'<path d="M3.5 0V15M10.5 11V22M10.5 0V4" {_STROKE} stroke-width="3"/></pattern>',
        "tight": f'<pattern id="{{id}}" width="11" height="11" {_TURNED}>'
        f'<path d="M5.5 0V11" {_STROKE} stroke-width="1.1"/></pattern>',
        "as found": '<pattern id="{id}" width="14" height="14" patternUnits="userSpaceOnUse">'
        f'<path d="M3 3h1.8v1.8h-1.8zM10 10h1.8v1.8h-1.8z" fill="{INK}"/></pattern>',
    }
)
CLEAR = "#ffffff"


def hatches(prefix: str) -> str:
    """The definitions a drawing needs; `prefix` keeps two drawings on one page apart.

    >>> hatches("plan").count("<pattern")
    4
    """
    return "<defs>" + "".join(p.format(id=_id(prefix, state)) for state, p in _PATTERNS.items()) + "</defs>"


def hatched(prefix: str, state: str) -> str:
    """What to fill a place with; clear where the state has no hatch of its own.

    >>> hatched("plan", "apart"), hatched("plan", "proven")
    ('url(#plan-apart)', '#ffffff')
    """
    return f"url(#{_id(prefix, state)})" if state in _PATTERNS else CLEAR


def _id(prefix: str, state: str) -> str:
    return f"{prefix}-{state.replace(' ', '-')}"
