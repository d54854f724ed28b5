"""Stress areas of metric bolts as a bolt dealer's page prints them from ISO 898-1."""

from __future__ import annotations

from functools import partial

from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.threads import size

SOURCE = Cited(
    issuer="a bolt dealer's page on the web",
    title="Tensile strength of bolts: stress areas of ISO 898-1",
    where="coarse thread, M3 to M24",
    standing="standard",
    seen="excerpt",
)

AREAS = (
    ("M3", "5.03"),
    ("M4", "8.78"),
    ("M5", "14.2"),
    ("M6", "20.1"),
    ("M8", "36.6"),
    ("M10", "58"),
    ("M12", "84.3"),
    ("M14", "115"),
    ("M16", "157"),
    ("M18", "192"),
    ("M20", "245"),
    ("M22", "303"),
    ("M24", "353"),
)


def area(thread: str) -> float:
    """The stress area that the question answers, mm²."""
    return size(thread=thread).band("stress_area").value


PRINTED = tuple(
    Printed("threads size", f"stress area of {thread}, mm²", printed, partial(area, thread))
    for thread, printed in AREAS
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
