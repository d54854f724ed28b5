"""Facts about the garage: stored, away, blanked, bagged, tins, sessions, distance."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import (
    Bagged,
    Blanked,
    Held,
    OpenedTin,
    Ran,
    SentAway,
    Stored,
    Unbagged,
    Unblanked,
)
from witnessmark.words.atoms import Span
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.lexicon import hint
from witnessmark.words.newnames import PART, phrase
from witnessmark.words.on_closing import take_fluid
from witnessmark.words.parties import take_due, take_party, take_place, with_article
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import figures_said, listed, new_said, note_side, things, whole
from witnessmark.words.work import Work

_BOTH = 2
_CLOCKED = 500


def _stored(work: Work) -> Built:
    where = take_place(work)
    at = things(work, usual=PART)
    figures = work.take_quantities()
    tail = joined(
        f"{listed(at)}{new_said(work)}",
        f"on {where}" if where and not where.startswith(("under", "behind", "by")) else where,
    )
    return Built((Stored(at=at, where=where, figures=figures),), joined(tail, figures_said(figures)))


def _sent_away(work: Work) -> Built:
    due = take_due(work)
    whom = _take_trade(work)
    known = known_subjects(work)
    whom = whom or take_party(work, "to", "with", "at")
    if whom and _is_sender(work, whom):
        work.doubt("it may have been sent here")
    at = known or things(work, usual=PART)
    figures = work.take_quantities()
    tail = joined(
        f"{listed(at)}{new_said(work)}" + (f" to {with_article(work, whom)}" if whom else ""),
        f"due back {due}" if due else "",
    )
    return Built((SentAway(at=at, with_whom=whom, due_back=due, figures=figures),), tail)


def _take_trade(work: Work) -> str:
    """The trade or person who has it, where a known word tells one."""
    for cls in ("trade", "helper"):
        spans = sorted(
            work.line.spans_of(cls), key=lambda s: (_is_mended(work, s), s.first, s.first - s.last)
        )
        if spans:
            if _is_mended(work, spans[0]):
                work.doubt("the spelling may mean another word")
            work.place(spans[0].first, spans[0].last)
            return work.words(spans[0].first, spans[0].last)
    return ""


def _is_sender(work: Work, whom: str) -> bool:
    """Whether the name stands at the head of the line: "Brathwick sent the bearings"."""
    return work.line.text.lstrip().lower().startswith(whom.lower()) and work.says("sent", "posted", "shipped")


def _is_mended(work: Work, span: Span) -> bool:
    return any(work.atoms[i].mended for i in range(span.first, span.last))


_OPENINGS = frozenset(
    {"mouth", "port", "ports", "opening", "openings", "throat", "hole", "holes", "end", "ends"}
)


def _blanked(work: Work) -> Built:
    return _stopped(work, Blanked)


def _unblanked(work: Work) -> Built:
    return _stopped(work, Unblanked)


def _stopped(work: Work, fact: type[Blanked] | type[Unblanked]) -> Built:
    """How many blanks went in or came out; "both ends" are two."""
    number = _take_blanks(work)
    for span in work.line.spans_of("blank"):
        work.passed.update(range(span.first, span.last))
    at = things(work, need=False)
    run = None if at else phrase(work)
    if run:
        end = run[1] - 1 if run[1] - run[0] > 1 and work.atoms[run[1] - 1].low in _OPENINGS else run[1]
        work.name = work.typed(run[0], end)
        work.doubt("what it is in is not known to the record")
    shown = f"{number} of them" if number > 1 else ""
    return Built((fact(at=at, number=number),), joined(f"{listed(at)}{new_said(work)}", shown))


def _take_blanks(work: Work) -> int:
    for at, atom in enumerate(work.atoms):
        follower = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
        if atom.low == "both" and follower in ("ends", "ports", "pipes", "unions", "holes"):
            work.place(at, at + 2)
            return _BOTH
    for at in work.numbers():
        value = work.atoms[at].value
        if value is None or value != int(value) or value <= 0:
            continue
        work.place(at)
        if at + 1 < len(work.atoms) and work.atoms[at + 1].low in ("plug", "plugs", "cap", "caps"):
            work.place(at + 1)
            work.taken.add(at + 1)
        return int(value)
    return _BOTH if work.has("both") else 1


def _bagged(work: Work) -> Built:
    """What went into the bag; names known are kept as such, the label's words beside."""
    at = known_subjects(work)
    what = ""
    if not at:
        run = phrase(work)
        if run:
            work.place(*run)
            work.name = work.typed(*run)
            note_side(work)
            what = whole(work.name, work.side)
        else:
            work.doubt("what went into the bag is not told")
    where = _take_bag(work) or _take_label(work)
    number = work.take_number()
    fact = Bagged(at=at, what=what, number=int(number) if number else 0, where=where)
    count = f"{number:g} " if number else ""
    return Built((fact,), joined(count + (listed(at) or what), f"in {where}" if where else ""))


def _take_bag(work: Work) -> str:
    """ "In bag 12", "into a jam jar"."""
    for at, atom in enumerate(work.atoms):
        if atom.low in ("in", "into") and at + 1 < len(work.atoms):
            last = at + 1
            while last < len(work.atoms) and work.atoms[last].sort in ("word", "number") and last - at < 4:
                last += 1
                if work.atoms[last - 1].low in hint("bags"):
                    break
            if work.atoms[last - 1].low not in hint("bags"):
                continue
            if last < len(work.atoms) and work.atoms[last].sort == "number":
                last += 1
            first = at + 2 if work.atoms[at + 1].low in ("the", "a", "my") else at + 1
            work.place(at, last)
            return work.words(first, last)
    return ""


def _take_label(work: Work) -> str:
    """ "Bag 7:" at the head of the line."""
    if len(work.atoms) < 2 or work.atoms[0].low not in hint("bags") or work.atoms[1].sort != "number":
        return ""
    work.place(0, 2)
    return work.words(0, 2)


def _unbagged(work: Work) -> Built:
    at = known_subjects(work)
    if not at:
        run = phrase(work)
        if run is None:
            work.doubt("which bag is not told")
            return Built((Unbagged(),))
        work.place(*run)
        work.name = work.typed(*run)
        return Built((Unbagged(at=(work.name,)),), work.name)
    return Built((Unbagged(at=at),), listed(at))


def _opened_tin(work: Work) -> Built:
    for word in ("tin", "can", "bottle", "tub", "new", "fresh", "sealed", "cartridge"):
        found = work.find(word)
        if found is not None:
            work.place(found)
    what = take_fluid(work)
    if not what:
        spans = work.spans("product")
        what = work.take(spans[0]).lower() if spans else ""
    if not what:
        run = phrase(work)
        if run:
            work.place(*run)
            what = work.typed(*run)
            work.doubt("what is in the tin is no fluid or coat that is known")
    if not what:
        work.doubt("what is in the tin is not told")
    figures = work.take_quantities()
    return Built(
        (OpenedTin(what=what or "tin", figures=figures),),
        joined(f"a tin of {what}" if what else "a tin", figures_said(figures)),
    )


def _held(work: Work) -> Built:
    start, end = _take_hours(work)
    people, helper = _take_people(work)
    if not end:
        work.doubt("it takes from when and until when")
    for word in ("session", "garage"):
        found = work.find(word)
        if found is not None:
            work.place(found)
    fact = Held(start=start, end=end, people=people, helper=helper)
    who = "with " + listed(people) if people else "with helper" if helper else ""
    return Built((fact,), joined(f"{start}-{end}" if end else start, who))


def _take_hours(work: Work) -> tuple[str, str]:
    times = [(i, a.time) for i, a in enumerate(work.atoms) if a.time]
    for at, time in times:
        if time.until:
            work.place(at)
            if time.shaky:
                work.doubt("morning or afternoon is guessed")
            return time.time, time.until
    for at, _ in times[:2]:
        work.place(at)
    found = [t.time for _, t in times[:2]]
    return (found[0], found[1]) if len(found) > 1 else (found[0] if found else "", "")


def _take_people(work: Work) -> tuple[tuple[str, ...], bool]:
    """Who came: "with helper", "with Ann and Joe", "on my own"."""
    lead = work.find("with", "w", "helper")
    if lead is None:
        return (), False
    if work.atoms[lead].low == "helper":
        work.place(lead)
        return (), not work.has("no", "without")
    first, last = work.after(lead + 1)
    last = next((i for i in range(first, last) if work.atoms[i].low.endswith("ing")), last)
    names = [i for i in range(first, last) if work.atoms[i].low not in ("and", "the", "my", "a")]
    if not names or any(work.atoms[i].low in ("no", "nobody") for i in names):
        return (), False
    work.place(lead, last)
    if all(work.atoms[i].low in ("helper", "helpers") for i in names):
        return (), True
    return tuple(work.words(i, i + 1) for i in names), True


def _driven(distances: Sequence[float], *, between: bool) -> float:
    """Distances told one after another, or the two readings of a clock.

    >>> _driven([5.0, 3.0], between=False), _driven([41203.0, 41236.0], between=True)
    (8.0, 33.0)
    """
    if len(distances) == _BOTH and between and _CLOCKED < distances[0] < distances[1]:
        return distances[1] - distances[0]
    return float(sum(distances))


def _bare_km(work: Work) -> tuple[Quantity, ...]:
    """ "3 k": kilometres, where a distance is spoken of."""
    for at in work.numbers():
        value = work.atoms[at].value
        if value is not None and at + 1 < len(work.atoms) and work.atoms[at + 1].low in ("k", "ks", "kays"):
            work.place(at, at + 2)
            return (Quantity(work.words(at, at + 2), value, "km"),)
    return ()


def _ran(work: Work) -> Built:
    distances = work.quantities("distance")
    for at, _ in distances:
        work.place(at)
    figures = (*(q for _, q in distances), *_bare_km(work))
    km = _driven([q.value for q in figures], between=work.has("to", "-", "until", "till"))
    cycles = 0
    for at in work.numbers():
        follower = " ".join(a.low for a in work.atoms[at + 1 : at + 3])
        if follower.startswith(("heat", "cycle", "times", "warm")) or work.atoms[at].low in ("once", "twice"):
            value = work.atoms[at].value or 0
            cycles = int(value)
            work.place(at)
    for word in ("heat", "cycle", "cycles"):
        found = work.find(word)
        if found is not None:
            work.place(found)
            cycles = cycles or 1
    if not figures and not cycles:
        work.doubt("no distance is told")
    figures = (*figures, *work.take_quantities())
    said = f"{cycles} heat cycle{'s' if cycles != 1 else ''}" if cycles else ""
    return Built((Ran(km=km, heat_cycles=cycles, figures=figures),), joined(figures_said(figures), said))


ON_GARAGE: Mapping[str, Builder] = {
    "stored": _stored,
    "sent_away": _sent_away,
    "blanked": _blanked,
    "unblanked": _unblanked,
    "bagged": _bagged,
    "unbagged": _unbagged,
    "opened_tin": _opened_tin,
    "held": _held,
    "ran": _ran,
}
