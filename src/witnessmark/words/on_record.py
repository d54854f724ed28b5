"""Facts about the record itself: a thing or the vehicle described, a figure read, a remark."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec.structs import replace

from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Described, DescribedVehicle, ReadFigure, Remarked
from witnessmark.tables.read import read_table
from witnessmark.vehicle.starting_lists import assembly_name, expand, side_wanted, starting_lists
from witnessmark.vehicle.things import Figure
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.lexicon import Words, stems
from witnessmark.words.newnames import kind_given, phrase, tell_kind
from witnessmark.words.on_closing import take_fluid
from witnessmark.words.sided import merged_sides
from witnessmark.words.things import figures_said, listed, new_said, new_thing, part_said, things
from witnessmark.words.trade import trade
from witnessmark.words.work import Work


def _described(work: Work) -> Built:
    """A starting list brought in, or one new part or joint."""
    if work.says("brought", "bring"):
        return _brought_in(work)
    kind = _kind_told(work)
    for span in work.line.spans_of("fastener"):
        if span.first and work.atoms[span.first - 1].value is not None:
            work.passed.update(range(span.first, span.last))
    run = phrase(work, near_verb=False)
    if run is None:
        work.doubt("nothing is named")
        return Built((Described(),))
    name = work.typed(*run)
    number = _fasteners(work)
    new_thing(work, run, name, kind or tell_kind(name), ())
    if number:
        _renumber(work, number)
    fact = Described(parts=tuple(work.parts), joints=tuple(work.joints))
    names = [*(p.name for p in work.parts), *(j.name for j in work.joints)]
    said = (
        f"as {part_said(work.parts[0])}"
        if work.parts
        else f"as {work.joints[0].kind.replace('-', ' ')}"
        if work.joints
        else ""
    )
    work.parts, work.joints = [], []
    return Built((fact,), joined(listed(names), said, f"{number} of them" if number else ""))


def _kind_told(work: Work) -> str:
    """The kind typed behind the name ("…, plain fixing"), or answered, or told by "new part"."""
    if work.kind:
        return kind_given(work.kind)
    marks = [i for i, a in enumerate(work.atoms) if a.sort == "mark" and a.low in ",:"]
    last = marks[-1] + 1 if marks else len(work.atoms)
    end = _before_donor(work, last)
    typed = work.words(last, end).lower().removeprefix("as ") if last < end else ""
    named = any(i not in work.told and work.atoms[i].sort == "word" for i in range(last))
    if typed and marks and named:
        try:
            kind = kind_given(typed)
        except BadInput:
            kind = ""
        if kind:
            work.place(last, end)
            return kind
    return "part" if work.says("part") else ""


def _before_donor(work: Work, first: int) -> int:
    """Where the words of the kind end: "on the donor" is no kind."""
    at = next((i for i in range(first, len(work.atoms)) if work.atoms[i].low == "donor"), None)
    if at is None:
        return len(work.atoms)
    return next((i for i in range(at - 1, first - 1, -1) if work.atoms[i].low in ("on", "off", "from")), at)


def _fasteners(work: Work) -> int:
    """ "Held by 10 setscrews": how many share it."""
    for at in work.numbers():
        value = work.atoms[at].value
        if value is not None and value == int(value) and 0 < value < 200:
            work.place(at)
            return int(value)
    return 0


def _renumber(work: Work, number: int) -> None:
    work.joints = [replace(j, number=number) for j in work.joints]
    work.parts = [replace(p, number=number) for p in work.parts]


def _brought_in(work: Work) -> Built:
    """A starting list, with its side, expanded into every part and joint it brings."""
    found = _list_named(work)
    if found is None:
        work.doubt("no starting list is named")
        return Built((Described(),), "")
    key, atoms = found
    work.placed |= atoms
    sides = merged_sides(work, atoms)
    side = sides[0] if sides else ""
    work.name, work.side = starting_lists()[key].name, side
    missing = side_wanted(starting_lists()[key], side)
    if missing:
        work.doubt(f"which {missing} is not told")
        return Built((Described(from_list=key),), starting_lists()[key].name)
    parts, joints = expand(key, side, work.vocabulary.vehicle)
    fact = Described(parts=parts, joints=joints, from_list=key)
    return Built(
        (fact,), f"{assembly_name(key, side)}: {len(parts)} parts and {len(joints)} joints", says="Brought in"
    )


def _list_named(work: Work) -> tuple[str, frozenset[int]] | None:
    """The starting list whose words stand in the line; the most words win."""
    best: tuple[int, str, frozenset[int]] | None = None
    canon = work.line.canon
    for begin in range(len(canon)):
        for end in range(begin + 1, min(begin + 7, len(canon)) + 1):
            words: Words = tuple(c.stem for c in canon[begin:end])
            key = trade().lists.get(words)
            if key and (best is None or len(words) > best[0]):
                best = (
                    len(words),
                    key,
                    frozenset(i for c in canon[begin:end] for i in range(c.first, c.last)),
                )
    return (best[1], best[2]) if best else None


# ---- the vehicle


def _described_vehicle(work: Work) -> Built:
    """What it is, where it lives, what it has and has not."""
    has_not = work.has("no", "not", "hasnt", "without", "neither")
    features = _features(work)
    body = "" if features else _body(work)
    country = _country(work)
    has = () if has_not else features
    fact = DescribedVehicle(body=body, country=country, has=has, has_not=features if has_not else ())
    if not (features or body or country):
        work.doubt("nothing the record knows a vehicle by is told")
    for word in ("no", "not", "hasnt", "has", "the", "this", "is", "a", "nor", "or", "and", "neither"):
        found = work.find(word)
        if found is not None:
            work.place(found)
    tail = joined(
        body,
        f"in {country}" if country else "",
        f"has no {listed(features)}"
        if has_not and features
        else f"has {listed(features)}"
        if features
        else "",
    )
    return Built((fact,), tail)


def _features(work: Work) -> tuple[str, ...]:
    """Features and systems named, by the words of the gates' table."""
    known = {f for row in read_table("gates/systems").values() for f in (*row["features"], *row["systems"])}
    by_stems = {stems(f): f for f in known}
    found: list[str] = []
    canon = work.line.canon
    at = 0
    while at < len(canon):
        for size in (3, 2, 1):
            words = tuple(c.stem for c in canon[at : at + size])
            if len(words) == size and words in by_stems:
                found.append(by_stems[words])
                for c in canon[at : at + size]:
                    work.place(c.first, c.last)
                at += size - 1
                break
        at += 1
    return tuple(dict.fromkeys(found))


def _body(work: Work) -> str:
    bodies = {
        stems(text): key
        for key, row in read_table("gates/systems").items()
        for text in (key, *row.get("words", ()))
    }
    canon = work.line.canon
    found = ""
    for size in (2, 1):
        for at in range(len(canon) - size + 1):
            words = tuple(c.stem for c in canon[at : at + size])
            said = bodies.get(words)
            if said and not found:
                found = said
                for c in canon[at : at + size]:
                    work.place(c.first, c.last)
    return found


def _country(work: Work) -> str:
    """A country's two letters behind "country is" or "in"."""
    for at, atom in enumerate(work.atoms):
        text = work.words(at, at + 1)
        lead = work.atoms[at - 1].low if at else ""
        if atom.sort == "word" and len(text) == 2 and text.isupper() and lead in ("is", "country", "in", ":"):
            work.place(at)
            return text
    return ""


# ---- figures from the book


def _read_figure(work: Work) -> Built:
    standing = _standing(work)
    where = _take_page(work)
    thread = _take_thread(work)
    fluid = take_fluid(work)
    grade = "" if fluid else _take_grade(work, bare=bool(thread))
    at = things(work)
    figures = work.take_quantities()
    figure = None
    if figures:
        same = [q for q in figures if q.unit == figures[0].unit]
        low, high = min(q.value for q in same), max(q.value for q in same)
        typed = " to ".join(q.typed for q in same)
        figure = Figure(low=low, high=high, unit=figures[0].unit, typed=typed, standing=standing, where=where)
    if not figures and not thread and not grade and not fluid:
        work.doubt("no figure with its unit is told")
    fact = ReadFigure(at=at, figure=figure, thread=thread, grade=grade, fluid=fluid, figures=figures)
    marked = f"grade {grade}" if grade else ""
    tail = joined(f"{listed(at)}{new_said(work)}", figures_said(figures), thread, marked, fluid, where)
    return Built((fact,), tail, says=_SAYS[standing])


_SAYS = {
    "owner's book": "The book says",
    "maker": "The maker says",
    "handbook": "The handbook says",
    "measured": "Measured figure:",
    "guess": "Figure guessed:",
}


def _standing(work: Work) -> str:
    if work.has("book", "manual"):
        return "owner's book"
    if work.has("handbook"):
        return "owner's book"
    if work.has("sheet", "maker", "makers", "manufacturer"):
        return "maker"
    return "owner's book" if work.has("spec", "specified", "specification", "figure", "looked") else "guess"


def _take_page(work: Work) -> str:
    """ "p 37", "page 37", "section D"."""
    for at, atom in enumerate(work.atoms[:-1]):
        if atom.low in (
            "p",
            "page",
            "pg",
            "pp",
            "section",
            "sect",
            "chapter",
            "fig",
            "table",
        ) and work.is_free(at):
            after = work.atoms[at + 1]
            if after.sort == "number" or (after.sort == "word" and len(after.low) <= 3):
                work.place(at, at + 2)
                return work.words(at, at + 2)
        if atom.sort == "word" and atom.low.startswith("p") and atom.low[1:].isdigit():
            work.place(at)
            return work.words(at, at + 1)
    last = work.atoms[-1] if work.atoms else None
    if last is not None and last.low.startswith("p") and last.low[1:].isdigit():
        work.place(len(work.atoms) - 1)
        return work.words(len(work.atoms) - 1, len(work.atoms))
    return ""


def _take_thread(work: Work) -> str:
    for at, atom in enumerate(work.atoms):
        if atom.thread and work.is_free(at):
            work.place(at)
            return atom.thread.thread
    return ""


def _take_grade(work: Work, *, bare: bool) -> str:
    """The mark on a bolt's head: "grade 8.8", "SAE grade 5", "grade S"; beside a thread "8.8" alone."""
    for at, atom in enumerate(work.atoms):
        if not work.is_free(at):
            continue
        if bare and _CLASS.fullmatch(atom.low):
            work.place(at)
            return atom.low
        after = work.atoms[at + 1] if at + 1 < len(work.atoms) else None
        if atom.low in ("grade", "class") and after and work.is_free(at + 1) and _MARK.fullmatch(after.low):
            work.place(at - 1 if at and work.atoms[at - 1].low == "sae" else at, at + 2)
            return f"SAE {after.low}" if after.low.isdigit() else after.low.upper()
    return ""


_CLASS = re.compile(r"(?:[4-6]\.[68]|[89]\.8|10\.9|12\.9)")
"""Property classes as they stand on metric heads."""
_MARK = re.compile(r"\d{1,2}(?:\.\d)?|[a-z]")


def _remarked(work: Work) -> Built:
    """Nothing but the words."""
    return Built((Remarked(),), "")


ON_RECORD: Mapping[str, Builder] = {
    "described": _described,
    "described_vehicle": _described_vehicle,
    "read_figure": _read_figure,
    "remarked": _remarked,
}
