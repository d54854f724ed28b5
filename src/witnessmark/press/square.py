"""The square code of a label: plain text that any camera reads, with no address in it."""

from __future__ import annotations

import io

from witnessmark.sheets.rows import Label

# Longer texts make a square too fine to be read when it is oily.
_LONGEST = 48


def square_text(label: Label) -> str:
    """What the square says: the code, then what it is.

    >>> square_text(Label(what="propshaft bolts", code="3DFB", side="left"))
    'WM:3DFB propshaft bolts, left'
    """
    what = f"{label.what}, {label.side}" if label.side else label.what
    return f"WM:{label.code} {what[:_LONGEST]}".rstrip()


def square_svg(text: str) -> str:
    """The square as a drawing, black on white, without its quiet edge (the page leaves that)."""
    import segno

    drawn = io.BytesIO()
    segno.make(text, error="m", micro=False, boost_error=False).save(
        drawn, kind="svg", border=0, xmldecl=False, svgns=True, omitsize=True
    )
    return drawn.getvalue().decode("utf-8")
