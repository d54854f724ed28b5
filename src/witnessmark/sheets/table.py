"""A small table in text: columns as broad as they need, the broadest giving way first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.sheets.lines import wrapped

_GAP = "  "
_NARROWEST = 6


def table_lines(columns: Sequence[str], rows: Sequence[Sequence[str]], wide: int) -> Iterator[str]:
    """The table with its headings and a rule below them, in lines of at most `wide`.

    Where its columns cannot stand side by side, each row is written out, one cell to a line.

    >>> print(*table_lines(("line", "words"), [("1", "took off drum")], 40), sep=chr(10))
      line  words
      ----  -------------
      1     took off drum
    """
    widths = _widths([columns, *rows], wide)
    if sum(widths) + len(_GAP) * len(widths) > wide:
        for row in rows:
            yield from _written_out(columns, row, wide)
        return
    yield from _row(columns, widths)
    yield _GAP + _GAP.join("-" * width for width in widths)
    for row in rows:
        yield from _row(row, widths)


def _widths(rows: Sequence[Sequence[str]], wide: int) -> list[int]:
    widths = [max(1, *(len(cell) for cell in column)) for column in zip(*rows, strict=True)]
    room = wide - len(_GAP) * len(widths)
    while sum(widths) > room and max(widths) > _NARROWEST:
        widths[widths.index(max(widths))] -= 1
    return widths


def _row(cells: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    columns = [wrapped(cell, width) for cell, width in zip(cells, widths, strict=True)]
    for n in range(max(len(lines) for lines in columns)):
        parts = [lines[n] if n < len(lines) else "" for lines in columns]
        yield _GAP + _GAP.join(part.ljust(width) for part, width in zip(parts, widths, strict=True))


def _written_out(columns: Sequence[str], cells: Sequence[str], wide: int) -> Iterator[str]:
    edge = _GAP
    for name, cell in zip(columns, cells, strict=True):
        if cell:
            yield from wrapped(f"{name}: {cell}", wide, edge, _GAP * 3)
            edge = _GAP * 2
