"""A slip as lines for the terminal or for a sheet."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping

from witnessmark.bench.slip import Band, Plain, Row, Slip
from witnessmark.tables.sources import cautions, sources

WIDTH = 96
NOTES = ("because", "tell_apart", "note")
"""Columns of words that stand below their row."""
VERDICT = {"fits": "Fits", "marginal": "Marginal", "no": "No"}


def as_text(slip: Slip) -> str:
    """The whole slip, ready to print."""
    return "\n".join(line.rstrip() for line in _lines(slip))


def figure(value: float) -> str:
    """A number with four figures that count, no exponent in everyday spans.

    >>> figure(47.4536), figure(0.00123), figure(27500.0), figure(2.0)
    ('47.45', '0.00123', '27500', '2')
    """
    if value == 0:
        return "0"
    if 1e-4 <= abs(value) < 1000:
        return f"{value:.4g}"
    return f"{value:.0f}" if 1000 <= abs(value) < 1e9 else f"{value:.3g}"


def band_text(band: Band) -> str:
    """A band as it is printed.

    >>> band_text(Band(24.0, "kN", 18.0, 30.0)), band_text(Band(0.2, ""))
    ('24 kN (18 to 30)', '0.2')
    """
    unit = band.unit if band.unit == "°" else f" {band.unit}" if band.unit else ""
    spread = ""
    if band.low is not None and band.high is not None:
        spread = f" ({figure(band.low)} to {figure(band.high)})"
    return f"{figure(band.value)}{unit}{spread}"


def _lines(slip: Slip) -> Iterator[str]:
    title = f"{slip.subject} {slip.question}"
    yield title
    yield "=" * len(title)
    if slip.asked:
        yield from _wrapped("Asked: " + ", ".join(f"{n} {a.typed}" for n, a in slip.asked.items()) + ".", 7)
    yield ""
    yield from _answer(slip)
    yield from _said("Working", slip.working)
    yield from _said("Sources", tuple(_cited(key) for key in slip.sources))
    yield from _said("Caution", tuple(cautions()[key] for key in slip.cautions))


def _answer(slip: Slip) -> Iterator[str]:
    if slip.verdict:
        yield from _wrapped(f"{VERDICT[slip.verdict]}: {slip.because}", 2)
    else:
        yield from _wrapped(slip.because, 2)
    wide = max((len(n) for n, r in slip.results.items() if not isinstance(r, tuple)), default=0)
    after_rows = True
    for name, result in slip.results.items():
        rows = isinstance(result, tuple)
        if rows or after_rows:
            yield ""
        after_rows = rows
        if isinstance(result, tuple):
            yield f"{_words(name)}:"
            yield from _table(result, slip.units)
        else:
            said = result if isinstance(result, str) else band_text(result)
            yield from _wrapped(f"{_words(name):<{wide}}  {said}", wide + 2)


def _words(name: str) -> str:
    return name.replace("_", " ")


def _said(title: str, said: tuple[str, ...]) -> Iterator[str]:
    if said:
        yield ""
        yield f"{title}:"
        for line in said:
            yield from _wrapped(f"  {line}", 4)


def _cited(key: str) -> str:
    source = sources()[key]
    title = f"{source.issuer}, {source.title}" if source.issuer else source.title
    return f"{title} [{source.standing}, seen: {source.seen}]"


def _wrapped(line: str, indent: int) -> list[str]:
    return textwrap.wrap(line, WIDTH, subsequent_indent=" " * indent, break_long_words=False) or [""]


def _table(rows: tuple[Row, ...], units: Mapping[str, str]) -> Iterator[str]:
    if not rows:
        yield "  none"
        return
    names = [name for name in rows[0] if name not in NOTES]
    heads = [f"{_words(n)} {units[n]}" if units.get(n) else _words(n) for n in names]
    cells = [[_cell(row.get(name)) for name in names] for row in rows]
    wide = [max(len(line[i]) for line in [heads, *cells]) for i in range(len(names))]
    for line, row in zip([heads, *cells], [None, *rows], strict=True):
        yield "  " + "  ".join(cell.ljust(w) for cell, w in zip(line, wide, strict=True))
        for note in NOTES:
            if row and row.get(note):
                yield from _wrapped(f"      {row[note]}", 6)


def _cell(value: Plain) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None:
        return "–"
    return value if isinstance(value, str) else figure(value)
