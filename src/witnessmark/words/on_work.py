"""Facts of opening, closing and handling things: the names, and little beside."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import (
    Bared,
    Braced,
    CameBack,
    CutOut,
    DownedTools,
    DryFitted,
    LastSpark,
    LetDown,
    Lifted,
    Marked,
    NippedUp,
    Opened,
    Photographed,
    Scrapped,
    Slackened,
    Tightened,
    TookOff,
    Turned,
    Unbraced,
    WatchedFire,
)
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.figures import dimensioned
from witnessmark.words.lexicon import hint
from witnessmark.words.newnames import PART, phrase
from witnessmark.words.sided import merged_sides
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import figures_said, listed, new_said, things
from witnessmark.words.work import Work

Plain = (
    TookOff | Opened | Slackened | CutOut | Braced | Unbraced | DryFitted | Bared | NippedUp | Marked
    | Turned | Scrapped | CameBack | LastSpark | WatchedFire | Lifted | LetDown
)  # fmt: skip
_ENDS = ("front", "rear")


def _simple(fact: type[Plain], *, usual: str = "", kinds: tuple[str, ...] = ()) -> Builder:
    """A fact that is its names and figures."""

    def build(work: Work) -> Built:
        at = things(work, usual=usual, kinds=kinds)
        figures = (*work.take_quantities(), *dimensioned(work))
        return Built(
            (fact(at=at, figures=figures),), joined(listed(at) + new_said(work), figures_said(figures))
        )

    return build


def _across(fact: type[Plain]) -> Builder:
    """A brace tells of the opening it stands in: what it is made of is beside it where more is named."""

    def build(work: Work) -> Built:
        kept = set(work.passed)
        for at in range(len(work.atoms)):
            for size in (2, 1):
                if " ".join(a.low for a in work.atoms[at : at + size]) in hint("braces"):
                    work.passed.update(range(at, at + size))
        if not work.hits and phrase(work) is None:
            work.passed = kept
        return _simple(fact, usual=PART)(work)

    return build


def _known_only(fact: type[Plain]) -> Builder:
    """A fact that may stand without a name, and never brings a new one."""

    def build(work: Work) -> Built:
        at = known_subjects(work)
        figures = work.take_quantities()
        return Built((fact(at=at, figures=figures),), joined(listed(at), figures_said(figures)))

    return build


def _tightened(work: Work) -> Built:
    at = things(work)
    figures = _torque_first((*work.take_quantities(), *dimensioned(work)))
    marked = _take_mark(work)
    at_figure = f"to {figures_said(figures)}" if figures else ""
    tail = f"{listed(at)}{new_said(work)} {at_figure}".strip()
    return Built(
        (Tightened(at=at, figures=figures, marked=marked),), joined(tail, "marked" if marked else "")
    )


def _torque_first(figures: tuple[Quantity, ...]) -> tuple[Quantity, ...]:
    return tuple(sorted(figures, key=lambda q: q.unit != "N·m"))


def _take_mark(work: Work) -> bool:
    """ "Marked", "witness line on", "paint mark" beside a tightening."""
    found = work.find_told("marked", "mark", "line", "painted", "marks", "striped", "dotted", "dabbed")
    if found is None or work.has("not", "no", "unmarked"):
        return False
    work.place(found)
    for near in (found - 2, found - 1, found + 1):
        if 0 <= near < len(work.atoms) and work.atoms[near].low in (
            "witness",
            "paint",
            "on",
            "drawn",
            "and",
            "match",
        ):
            work.place(near)
    return True


def _downed_tools(work: Work) -> Built:
    """What is named is finger-tight."""
    at = things(work, need=False)
    if at and not work.has(*hint("unfinished")) and not work.has("downed", "down"):
        work.doubt("whether it is finger-tight is not told")
    for word in ("finger", "tight", "nipped", "hand", "loose"):
        found = work.find(word)
        if found is not None and at and not work.has("not", "none", "only"):
            work.place(found)
    return Built((DownedTools(at=at),), joined(listed(at) + new_said(work), "finger-tight" if at else ""))


def _lifted(work: Work) -> Built:
    return _raised(work, Lifted)


def _let_down(work: Work) -> Built:
    return _raised(work, LetDown)


def _raised(work: Work, fact: type[Plain]) -> Built:
    """The vehicle, or an end, side or corner of it."""
    sides = merged_sides(work, ())
    for word in (
        "end",
        "corner",
        "side",
        "vehicle",
        "car",
        "truck",
        "van",
        "pickup",
        "trailer",
        "bike",
        "whole",
    ):
        found = work.find(word)
        if found is not None:
            work.place(found)
    work.side = sides[0] if sides else ""
    figures = work.take_quantities()
    raised = f"the {listed(sides)} {_what(sides[0])}" if sides else "the vehicle"
    return Built((fact(at=tuple(sides), figures=figures),), joined(raised, figures_said(figures)))


def _what(side: str) -> str:
    """End, side or corner.

    >>> _what("front"), _what("left"), _what("left rear")
    ('end', 'side', 'corner')
    """
    if side in _ENDS:
        return "end"
    return "corner" if " " in side else "side"


def _photographed(work: Work) -> Built:
    at = known_subjects(work)
    run = None if at else phrase(work)
    if run:
        work.name = work.typed(*run)
    return Built((Photographed(at=at),), listed(at) or work.name)


def _timed(fact: type[Plain]) -> Builder:
    def build(work: Work) -> Built:
        at = known_subjects(work)
        time = next((i for i, a in enumerate(work.atoms) if a.time and work.is_free(i)), None)
        said = ""
        if time is not None:
            found = work.atoms[time].time
            said = f"at {found.time}" if found else ""
        told = {work.line.segment[i] for i in work.told}
        if at and not any(work.line.segment[h.first] in told for h in work.hits if h.atoms <= work.placed):
            work.doubt("the name stands apart")
        figures = work.take_quantities()
        return Built((fact(at=at, figures=figures),), joined(said, listed(at), figures_said(figures)))

    return build


ON_WORK: Mapping[str, Builder] = {
    "took_off": _simple(TookOff),
    "opened": _simple(Opened),
    "slackened": _simple(Slackened),
    "cut_out": _simple(CutOut, kinds=("welded-patch", "mount-area-weld")),
    "braced": _across(Braced),
    "unbraced": _across(Unbraced),
    "dry_fitted": _simple(DryFitted),
    "bared": _simple(Bared, usual="", kinds=("primed-metal",)),
    "nipped_up": _simple(NippedUp),
    "tightened": _tightened,
    "marked": _simple(Marked),
    "turned": _simple(Turned, usual=PART),
    "scrapped": _simple(Scrapped, usual=PART),
    "came_back": _simple(CameBack, usual=PART),
    "photographed": _photographed,
    "downed_tools": _downed_tools,
    "lifted": _lifted,
    "let_down": _let_down,
    "last_spark": _timed(LastSpark),
    "watched_fire": _known_only(WatchedFire),
}
