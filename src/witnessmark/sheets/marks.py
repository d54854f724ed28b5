"""The witness mark, drawn: how a joint's state looks on a page, on paper and in the terminal.

Apart: the head is lifted off its face. Loose: the head is down, the paint line broken and out of
step. Tight: the head is down, without a line. Proven: one line straight across both. The word
always stands beside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

BROAD, TALL = 60, 64

# In the terminal: two faces meet at the upright; the paint line runs across them.
TEXT_MARKS: Mapping[str, str] = MappingProxyType(
    {"apart": "| |", "loose": "-|_", "tight": " | ", "proven": "-|-", "as found": " ? "}
)
NO_MARK = "   "

_HEAD_DOWN, _HEAD_LIFTED = 18, 3
_PLATE = '<path d="M3 42H57V60H3Z" {line}/>'
_LINE = 'fill="#fff" stroke="#000" stroke-width="3.4" stroke-linejoin="miter"'


def _head(top: int) -> str:
    """A head with its corners taken off, seen from the side."""
    return f'<path d="M13 {top + 6}L19 {top}H41L47 {top + 6}V{top + 24}H13Z" {_LINE}/>'


def _shank(top: int) -> str:
    return f'<path d="M23 {top}V46H37V{top}" {_LINE}/>'


def _paint(x: int, top: int, foot: int) -> str:
    return f'<path d="M{x} {top}V{foot}" stroke="#000" stroke-width="8" fill="none"/>'


def _drawn(*shapes: str) -> str:
    body = "".join(shapes)
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {BROAD} {TALL}">{body}</svg>'


def _plate() -> str:
    return _PLATE.format(line=_LINE)


_DRAWINGS = {
    "apart": lambda: _drawn(_shank(_HEAD_LIFTED + 24), _plate(), _head(_HEAD_LIFTED)),
    "loose": lambda: _drawn(_plate(), _head(_HEAD_DOWN), _paint(23, 22, 42), _paint(38, 42, 58)),
    "tight": lambda: _drawn(_plate(), _head(_HEAD_DOWN)),
    "proven": lambda: _drawn(_plate(), _head(_HEAD_DOWN), _paint(30, 22, 58)),
}


def mark_svg(state: str) -> str:
    """The witness mark of a state as a small picture, black on white; "" for a standing that is no state.

    >>> mark_svg("tight")[:4], mark_svg("as found")
    ('<svg', '')
    """
    drawing = _DRAWINGS.get(state)
    return drawing() if drawing else ""


def mark_text(state: str) -> str:
    """The same in three plain characters.

    >>> mark_text("loose"), mark_text("")
    ('-|_', '   ')
    """
    return TEXT_MARKS.get(state, NO_MARK)
