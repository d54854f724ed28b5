"""Words upon a drawing: on a clear plate, short lines one below the other, the state in capitals."""

from __future__ import annotations

from html import escape

from witnessmark.sheets.drawn.boxes import Box

SIZE = 17.0
LINE = 20.0
LETTER = 0.5  # of a letter's width to its size, in the narrow face, capitals among them
MARGIN = 5.0


def wrapped(name: str, room: float) -> list[str]:
    """A name in lines no wider than the room, where its words allow it.

    >>> wrapped("left front", 60), wrapped("left front", 120)
    (['left', 'front'], ['left front'])
    """
    lines: list[str] = []
    for word in name.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and wide(longer) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def wide(words: str) -> float:
    """About how wide words are drawn."""
    return len(words) * SIZE * LETTER


def plate(box: Box, name: str, state: str) -> str:
    """A place's name and state in the middle of its box; on one line where the box is low."""
    room = box.wide - 2 * MARGIN - 4
    low = box.high < 2 * LINE + 2 * MARGIN
    lines = [f"{name}: {state.upper()}"] if low else [*wrapped(name, room), *wrapped(state.upper(), room)]
    bold = len(lines) if low else len(wrapped(name, room))
    across = min(box.wide - 4, max(wide(words) for words in lines) + 2 * MARGIN)
    high = len(lines) * LINE + MARGIN
    x, y = box.middle
    top = y - high / 2
    backing = f'<rect x="{x - across / 2:.1f}" y="{top:.1f}" width="{across:.1f}" height="{high:.1f}"/>'
    written = "".join(_line(x, top, n, words, n >= bold) for n, words in enumerate(lines))
    return f'<g class="plate">{backing}{written}</g>'


def _line(x: float, top: float, number: int, words: str, state: bool) -> str:
    sort = ' class="state"' if state else ""
    return f'<text x="{x:.1f}" y="{top + number * LINE + SIZE:.1f}"{sort}>{escape(words)}</text>'
