"""Facts of meaning to: wanted, left as it is, guessed, and how long a thing took."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from witnessmark.journal.facts import Guessed, Left, TookTime, Wanted
from witnessmark.tables.read import read_table
from witnessmark.words.answers import root
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.guesses import take_guess
from witnessmark.words.newnames import phrase
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import figures_said, listed, new_said, note_side, things, whole
from witnessmark.words.work import Work


@cache
def _jobs() -> Mapping[str, str]:
    """What a wish asks for, by the roots of the words that tell it."""
    rows = read_table("words/hints")["jobs"]
    return MappingProxyType({word: job for job, words in rows.items() for word in words})


def _wanted(work: Work) -> Built:
    job = _take_job(work)
    at = things(work, plainly=True)
    figures = work.take_quantities()
    if not job:
        work.doubt("what is to be done to it is not told")
    return Built(
        (Wanted(at=at, job=job, figures=figures),),
        joined(f"{job} {listed(at)}{new_said(work)}".strip(), figures_said(figures)),
    )


def _take_job(work: Work) -> str:
    named = {i for h in work.hits if h.how == "full" for i in h.atoms}
    for at, atom in enumerate(work.atoms):
        if atom.sort != "word" or at in named or not (work.is_free(at) or at in work.call.atoms):
            continue
        job = _jobs().get(root(atom.low)) or _jobs().get(atom.low)
        if job and not _is_item(work, at):
            work.place(at)
            if atom.low == "good" and at and work.atoms[at - 1].low in ("make", "making"):
                work.place(at - 1)
            return job
    return ""


def _is_item(work: Work, at: int) -> bool:
    """A seal is no sealing, a patch no patching, where a name goes on."""
    return work.atoms[at].low in (
        "seal",
        "patch",
        "service",
        "wax",
        "primer",
        "coat",
        "test",
        "check",
        "good",
    ) and not (at and work.atoms[at - 1].low in ("to", "and", "make", "making"))


def _left(work: Work) -> Built:
    why = _take_why(work)
    at = known_subjects(work)
    if not at:
        run = phrase(work)
        if run:
            work.name = work.typed(*run)
        else:
            work.doubt("what is left is not told")
    said = listed(at) or work.name
    return Built((Left(at=at, why=why),), joined(said, f"because {why}" if why else ""))


def _take_why(work: Work) -> str:
    """The words behind "because", or those behind the last comma or dash."""
    lead = next(
        (
            i
            for i, a in enumerate(work.atoms)
            if a.low in ("because", "cos", "since", "as")
            and (work.is_free(i) or i in work.call.atoms)
            and _reasons(work, i)
        ),
        None,
    )
    if lead is None:
        marks = [
            i
            for i, a in enumerate(work.atoms)
            if a.sort == "mark" and a.low in ",-–—:;(" and i + 1 < len(work.atoms)
        ]
        after_verb = [i for i in marks if i > min(work.call.atoms, default=0)]
        lead = after_verb[0] if after_verb else None
    if lead is None:
        return ""
    first, last = lead + 1, len(work.atoms)
    while last > first and work.atoms[last - 1].sort == "mark":
        last -= 1
    if first >= last:
        return ""
    work.place(lead, last)
    return work.words(first, last)


def _reasons(work: Work, at: int) -> bool:
    """ "As is" and "as it is" tell no reason."""
    after = [a.low for a in work.atoms[at + 1 : at + 3]]
    if work.atoms[at].low != "as":
        return bool(after)
    return (
        bool(after)
        and after[0] not in ("is", "they", "found", "new", "before", "original")
        and after[:2] != ["it", "is"]
    )


_HEDGES = ("maybe", "about", "probably", "perhaps", "say", "around", "roughly")


def _guessed(work: Work) -> Built:
    guess = take_guess(work)
    for word in _HEDGES:
        found = work.find(word)
        if found is not None:
            work.place(found)
    at_names, job = _about(work)
    if not guess.figures:
        work.doubt("no time is told")
    three = guess.high and guess.likely
    said = f"{guess.low:g} {guess.likely:g} {guess.high:g} min" if three else figures_said(guess.figures)
    fact = Guessed(
        at=at_names,
        job=job,
        low=guess.low,
        likely=guess.likely,
        high=guess.high,
        figures=guess.figures,
    )
    return Built((fact,), joined(listed(at_names) or job, said))


def _about(work: Work) -> tuple[tuple[str, ...], str]:
    """The things a time is about: known ones by name, others in the person's words."""
    at = known_subjects(work)
    if at:
        return at, ""
    run = phrase(work)
    if run is None:
        work.doubt("what it is about is not told")
        return (), ""
    work.place(*run)
    work.name = work.typed(*run)
    note_side(work)
    return (), whole(work.name, work.side)


def _took_time(work: Work) -> Built:
    times = work.quantities("time")
    for at, _ in times:
        work.place(at)
    figures = tuple(q for _, q in times)
    at_names, job = _about(work)
    minutes = sum(q.value for q in figures)
    if len(figures) > 1:
        work.doubt("two times are told")
    fact = TookTime(at=at_names, job=job, minutes=minutes, figures=figures)
    said = listed(at_names) or job
    return Built((fact,), f"{figures_said(figures)}" + (f" over {said}" if said else ""))


ON_WISHES: Mapping[str, Builder] = {
    "wanted": _wanted,
    "left": _left,
    "guessed": _guessed,
    "took_time": _took_time,
}
