"""Facts of closing: fitted, filled, drained, closed."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import Closed, Drained, Filled, Fitted
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.figures import dimensioned
from witnessmark.words.items import take_item
from witnessmark.words.lexicon import hint, stems
from witnessmark.words.naming import is_noun
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import figures_said, listed, new_said, things
from witnessmark.words.work import Work


def _fitted(work: Work) -> Built:
    """A thing put in place, or a renewable fitted to its joint; "with new clips" is both."""
    new = _take_new(work)
    before = set(work.placed)
    item = take_item(work)
    at = things(work, need=not item)
    if item and not at and len(stems(work.typed(*_first_and_last(work.placed - before)))) > 1:
        work.placed, item = before, ""
        at = things(work)
    why = _why_not_new(work)
    new = new and not _is_of_another(work)
    figures = (*work.take_quantities(), *dimensioned(work))
    thing = Fitted(at=at, new=new and not item, why_not_new=why if not item else "", figures=figures)
    if not item:
        head = "new " if new else ""
        return Built((thing,), joined(head + listed(at) + new_said(work), figures_said(figures), why))
    renewed = Fitted(at=at, item=item, new=new, why_not_new=why, figures=figures)
    head = f"{'new ' if new else ''}{item}"
    tail = joined(f"{head} to {listed(at)}{new_said(work)}" if at else head, figures_said(figures), why)
    if _is_beside(work) and at:
        bare = Fitted(at=at)
        return Built(
            (bare, renewed), joined(f"{listed(at)}{new_said(work)} with {head}", figures_said(figures), why)
        )
    return Built((renewed,), tail)


def _first_and_last(atoms: set[int]) -> tuple[int, int]:
    return (min(atoms), max(atoms) + 1) if atoms else (0, 0)


def _take_new(work: Work) -> bool:
    """Whether "new" is said, and not turned round."""
    found = [
        i
        for i, a in enumerate(work.atoms)
        if a.low in hint("new") and (work.is_free(i) or i in work.call.atoms)
    ]
    for at in found:
        work.place(at)
    if found and any(work.atoms[at - 1].low in ("not", "no", "as", "like") for at in found if at):
        work.doubt("whether it is new is not plain")
        return False
    return bool(found) or (
        work.says("renewed", "replaced", "swapped", "changed") and not work.has(*hint("old"))
    )


def _is_of_another(work: Work) -> bool:
    """Whether "new" is said of a thing that found no place: "silencer hung on new rubbers"."""
    said = [i for i, a in enumerate(work.atoms) if a.low in hint("new") and i in work.placed]
    behind = [
        next((k for k in range(i + 1, len(work.atoms)) if work.atoms[k].sort == "word"), None) for i in said
    ]
    strange = [k is not None and work.is_free(k) and is_noun(work.atoms[k].low) for k in behind]
    if not said or not all(strange):
        return False
    work.placed -= set(said)
    return True


def _why_not_new(work: Work) -> str:
    """The reason told beside "old" or "same"."""
    if not work.has(*hint("old")):
        return ""
    old = work.find(*hint("old"))
    if old is not None:
        work.place(old)
    because = work.find("because", "as", "since", "cos", "none", "no")
    if because is None:
        return "old one again"
    first, last = because, len(work.atoms)
    while last > first and work.atoms[last - 1].sort == "mark":
        last -= 1
    begin = first if work.atoms[first].low in ("none", "no") else first + 1
    work.place(first, last)
    return work.words(begin, last)


def _is_beside(work: Work) -> bool:
    """Whether the renewable came "with" the thing."""
    return any(a.low in ("with", "w") and not work.line.under[i] for i, a in enumerate(work.atoms))


def _filled(work: Work) -> Built:
    fluid = take_fluid(work)
    volume = work.take_quantities("volume")
    at = things(work, need=not fluid)
    figures = (*volume, *work.take_quantities())
    fact = Filled(at=at, fluid=fluid, figures=figures)
    return Built((fact,), _fluid_said(work, at, fluid, figures, "with"))


def _drained(work: Work) -> Built:
    fluid = take_fluid(work)
    volume = work.take_quantities("volume")
    at = things(work, need=not fluid)
    if not at:
        work.doubt("it is not told out of what")
    figures = (*volume, *work.take_quantities())
    return Built((Drained(at=at, fluid=fluid, figures=figures),), _fluid_said(work, at, fluid, figures, "of"))


def _fluid_said(work: Work, at: tuple[str, ...], fluid: str, figures: tuple[Quantity, ...], link: str) -> str:
    much = figures_said(figures)
    what = f"{much} {fluid}".strip() if fluid else much
    if not at:
        return what
    return f"{listed(at)}{new_said(work)}" + (f" {link} {what}" if what else "")


def take_fluid(work: Work) -> str:
    """The fluid told, all its words: "EP90 gear oil"; words of a whole name are left to the name."""
    named = {i for h in work.hits if h.how == "full" and len(h.atoms) > 1 for i in h.atoms}
    told = work.told
    spans = [
        s
        for group in work.line.spans.values()
        for s in group
        if s.cls == "fluid"
        and not named & set(range(s.first, s.last))
        and all(work.is_free(i) or i in told for i in range(s.first, s.last))
    ]
    if not spans:
        return ""
    first, last = min(s.first for s in spans), 0
    for span in sorted(spans, key=lambda s: (s.first, -s.last)):
        if not last or span.first <= last:
            last = max(last, span.last)
    work.place(first, last)
    return work.typed(first, last)


def _closed(work: Work) -> Built:
    """An assembly with its exceptions, or one joint with its figure or "seen"."""
    but = _take_exceptions(work)
    at = known_subjects(work)
    if not at:
        work.doubt("nothing known is named")
    seen = work.find_told("seen", "looked")
    if seen is not None:
        work.place(seen)
    figures = work.take_quantities()
    marked = work.find("marked")
    if marked is not None and figures:
        work.place(marked)
    fact = Closed(at=at, but=but, seen=seen is not None, figures=figures)
    but_said = f"all but {', '.join(but)}" if but else ""
    return Built(
        (fact,),
        joined(f"{listed(at)} {but_said}".strip(), figures_said(figures), "seen" if seen is not None else ""),
    )


def _take_exceptions(work: Work) -> tuple[str, ...]:
    """Names behind "all but", each as the record knows it or, failing that, as typed."""
    start = next(
        (
            i
            for i, a in enumerate(work.atoms)
            if a.low in ("but", "except", "bar") and i + 1 < len(work.atoms)
        ),
        None,
    )
    if start is None:
        return ()
    if start and work.atoms[start - 1].low in ("all", "everything"):
        work.place(start - 1)
    work.place(start)
    names: list[str] = []
    at = start + 1
    while at < len(work.atoms):
        last = at
        while (
            last < len(work.atoms)
            and work.atoms[last].sort in ("word", "side")
            and work.atoms[last].low not in ("and", "seen")
        ):
            last += 1
        if last > at:
            names.append(_exception(work, at, last))
            work.place(at, last)
        if last < len(work.atoms) and work.atoms[last].sort not in ("mark", "word"):
            break
        if last < len(work.atoms) and work.atoms[last].low == "seen":
            break
        at = last + 1
    return tuple(dict.fromkeys(names))


def _exception(work: Work, first: int, last: int) -> str:
    hits = [h for h in work.hits if first <= h.first < last and h.score > 30]
    if hits:
        best = max(hits, key=lambda h: h.score)
        if best.rivals:
            work.doubt("an exception may be several things")
        return best.named.plain
    begin, end = work.tidy(first, last)
    name = " ".join(a.low for a in work.atoms[begin:end] if a.sort == "word")
    if name:
        work.doubt(f"no {name} is known to leave out")
    return name


ON_CLOSING: Mapping[str, Builder] = {
    "fitted": _fitted,
    "filled": _filled,
    "drained": _drained,
    "closed": _closed,
}
