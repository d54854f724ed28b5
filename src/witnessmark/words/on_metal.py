"""Facts of metal and coats: welded, coated."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import Coated, Welded
from witnessmark.tables.read import read_table
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.lexicon import hint
from witnessmark.words.things import figures_said, listed, new_said, things
from witnessmark.words.work import Work


def _welded(work: Work) -> Built:
    plugs = _take_plugs(work)
    kinds = (
        ("plug-weld-seam", "welded-patch", "mount-area-weld")
        if plugs
        else ("welded-patch", "plug-weld-seam", "mount-area-weld")
    )
    at = things(work, kinds=kinds)
    figures = work.take_quantities()
    said = f"{plugs} plugs" if plugs else ""
    return Built(
        (Welded(at=at, plugs=plugs, figures=figures),),
        joined(listed(at) + new_said(work), said, figures_said(figures)),
    )


def _take_plugs(work: Work) -> int:
    """How many plugs: a number beside "plugs" or behind "plug welded"."""
    for at in work.numbers():
        value = work.atoms[at].value
        around = [a.low for a in work.atoms[at + 1 : at + 4]] + [
            a.low for a in work.atoms[max(0, at - 2) : at]
        ]
        if (
            value is None
            or value != int(value)
            or not any(low.startswith("plug") or low in ("holes", "rosettes") for low in around)
        ):
            continue
        work.place(at)
        for near in range(at + 1, min(at + 4, len(work.atoms))):
            if work.atoms[near].low in ("plugs", "plug", "welds", "holes"):
                work.place(near)
                work.taken.add(near)
        return int(value)
    return 0


def _coated(work: Work) -> Built:
    product = _take_product(work)
    window = _take_window(work)
    last_coat = _take_last(work)
    at = things(work, kinds=("primed-metal", "filler-and-paint", "seam-sealing"))
    angles = work.quantities("angle")
    figures = work.take_quantities()
    for _, quantity in angles:
        figures = tuple(Quantity(q.typed, q.value, "°C") if q == quantity else q for q in figures)
    for word in ("rh", "humidity", "damp"):
        found = work.find(word)
        if found is not None and any(q.unit == "%" for q in figures):
            work.place(found)
    fact = Coated(
        at=at,
        product=product,
        recoat_from_hours=window[0],
        recoat_until_hours=window[1],
        last_coat=last_coat,
        figures=figures,
    )
    said = f" with {product}" if product else ""
    recoat = _window_said(window)
    tail = joined(
        f"{listed(at)}{new_said(work)}{said}", recoat, "last coat" if last_coat else "", figures_said(figures)
    )
    return Built((fact,), tail)


@cache
def _of_verbs() -> Mapping[str, str]:
    return MappingProxyType(read_table("words/hints")["products"])


def _take_product(work: Work) -> str:
    named = {i for h in work.hits if h.how == "full" for i in h.atoms}
    spans = [
        s
        for s in work.line.spans_of("product")
        if not named & set(range(s.first, s.last))
        and all(work.is_free(i) or i in work.told for i in range(s.first, s.last))
    ]
    if not spans:
        return next(
            (_of_verbs()[w] for i in sorted(work.told) if (w := work.atoms[i].low) in _of_verbs()), ""
        )
    best = max(spans, key=lambda s: (s.last - s.first, -s.first))
    joined_on = [s for s in spans if s.first == best.last]
    first, last = best.first, joined_on[0].last if joined_on else best.last
    while first and work.atoms[first - 1].low in hint("colours") and work.is_free(first - 1):
        first -= 1
    while last < len(work.atoms) and work.atoms[last].low in hint("colours") and work.is_free(last):
        last += 1
    work.place(first, last)
    return work.typed(first, last)


def _take_window(work: Work) -> tuple[float | None, float | None]:
    """ "Recoat 4 h to 7 days": hours from and until."""
    times = [(at, q) for at, q in work.quantities("time")]
    recoat = work.find_told("recoat", "overcoat", "recoatable", "window")
    if recoat is None or not times:
        return None, None
    work.place(recoat)
    after = [(at, q) for at, q in times if at > recoat] or times
    for at, _ in after[:2]:
        work.place(at)
    for word in ("window", "from", "to", "until", "after", "within"):
        found = next(
            (i for i, a in enumerate(work.atoms) if a.low == word and i > recoat and work.is_free(i)), None
        )
        if found is not None:
            work.place(found)
    hours = [q.value / 60 for _, q in after[:2]]
    if len(hours) == 1:
        until = any(a.low in ("until", "within", "before", "up") for a in work.atoms)
        return (None, hours[0]) if until else (hours[0], None)
    return min(hours), max(hours)


def _window_said(window: tuple[float | None, float | None]) -> str:
    start, end = window
    if start is not None and end is not None:
        return f"recoat {start:g} h to {end:g} h"
    if start is not None:
        return f"recoat after {start:g} h"
    return f"recoat within {end:g} h" if end is not None else ""


def _take_last(work: Work) -> bool:
    named = {i for h in work.hits if h.how == "full" for i in h.atoms}
    for at, atom in enumerate(work.atoms[:-1]):
        if at + 1 in named or work.atoms[at + 1].low not in ("coat", "coats"):
            continue
        if atom.low in ("last", "final"):
            work.place(at, at + 2)
            return True
    return False


ON_METAL: Mapping[str, Builder] = {"welded": _welded, "coated": _coated}
