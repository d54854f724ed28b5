"""A reading put together: the day, what is left over, the thing named and its side."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from msgspec.structs import replace

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Described
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.sides import SIDES, parted
from witnessmark.words.built import Built
from witnessmark.words.choosing import CLEAR, CLEAR_BY_PHRASE, REMARKED, Choice
from witnessmark.words.lexicon import lexicon
from witnessmark.words.misfits import note_misfits
from witnessmark.words.naming import is_head
from witnessmark.words.things import is_part
from witnessmark.words.understood import Reading
from witnessmark.words.work import Work

_TELLING = ("trade", "fluid", "product", "tin", "stand", "blank", "tool")


def take_day(work: Work) -> date | None:
    """The day done, where one was typed that is not still to come."""
    for at, atom in enumerate(work.atoms):
        if atom.day is None or not work.is_free(at) or work.line.under[at]:
            continue
        if work.call.tag in ("sent_away", "ordered"):
            work.doubt("it may be the day when it is due")
        if atom.day.past is None:
            work.doubt("the day is still to come")
            continue
        if (work.today - atom.day.past).days > 366:
            work.doubt("the day lies more than a year back")
        work.place(at)
        return atom.day.past
    return None


def take_time(work: Work) -> str | None:
    for at, atom in enumerate(work.atoms):
        if (
            atom.time
            and not atom.time.until
            and (work.is_free(at) or work.call.tag in ("last_spark", "watched_fire"))
        ):
            work.place(at)
            if atom.time.shaky:
                work.doubt("morning or afternoon is guessed")
            return atom.time.time
    return None


def left_over(work: Work) -> tuple[str, tuple[tuple[int, int], ...]]:
    """Words that found no place, run by run in order; runs of nothing but small words say nothing."""
    runs: list[tuple[int, int]] = []
    start: int | None = None
    for at in range(len(work.atoms) + 1):
        free = at < len(work.atoms) and work.is_free(at) and work.atoms[at].sort != "mark"
        if free and start is None:
            start = at
        if not free and start is not None:
            if _says_something(work, start, at):
                runs.append((start, at))
            start = None
    spans = tuple((work.atoms[a].start, work.atoms[b - 1].end) for a, b in runs)
    return ", ".join(work.line.text[a:b] for a, b in spans), spans


def _says_something(work: Work, first: int, last: int) -> bool:
    known = lexicon().glue
    return any(work.atoms[i].sort != "word" or work.atoms[i].low not in known for i in range(first, last))


def remark_of(work: Work, built: Built, choice: Choice) -> Reading:
    """The whole line as a remark; sure only where nothing in it looks like a fact."""
    text = work.line.text.strip()
    told = [c for c in choice.ranked if c.tag != REMARKED and c.score > work.call.score]
    unlikely = choice.lead(REMARKED) < (CLEAR if choice.ranked else CLEAR_BY_PHRASE)
    named = any(h.score > 40 for h in work.hits) or any(is_head(a.low) for a in work.atoms)
    figures = any(a.sort in ("number", "quantity", "time", "thread") for a in work.atoms)
    spoken = any(work.line.spans_of(cls) for cls in _TELLING)
    bad = any(condition(s.means).bad for s in work.line.spans_of("condition"))
    note_misfits(work)
    sure = bool(text) and not (told or unlikely or named or figures or spoken or bad or work.doubts)
    day = take_day(work)
    start = len(work.line.text) - len(work.line.text.lstrip())
    return Reading(
        facts=tuple(replace(f, remark=text) for f in built.facts),
        sentence=f"Remarked: {text}" if text else "Nothing was typed.",
        verb="remarked",
        remark=text,
        unplaced=((start, start + len(text)),) if text else (),
        sure=sure,
        doubts=() if sure else ("something in it looks like a fact",),
        day=day,
    )


def with_description(work: Work, built: Built, remark: str) -> tuple[AnyFact, ...]:
    facts = list(built.facts)
    facts[-1] = replace(facts[-1], remark=remark)
    if work.parts or work.joints:
        facts.insert(0, Described(parts=tuple(work.parts), joints=tuple(work.joints)))
    return tuple(facts)


def reading_of(
    work: Work,
    built: Built,
    facts: tuple[AnyFact, ...],
    remark: str,
    unplaced: tuple[tuple[int, int], ...],
    day: date | None,
    time: str | None,
) -> Reading:
    part, joint = _thing_named(work, facts)
    figures: tuple[Quantity, ...] = ()
    for fact in facts:
        figures += tuple(q for q in fact.figures if q not in figures)
    return Reading(
        facts=facts,
        sentence=built.sentence(work.call.tag),
        verb=work.call.tag,
        part=part,
        joint=joint,
        side=_side_told(work, facts) or None,
        figures=figures,
        remark=remark,
        unplaced=unplaced,
        sure=not work.doubts,
        doubts=tuple(work.doubts),
        day=day,
        time=time,
    )


def names_of(facts: Sequence[AnyFact]) -> tuple[str, ...]:
    fact = facts[-1]
    if isinstance(fact, Described):
        return () if fact.from_list else (*(p.name for p in fact.parts), *(j.name for j in fact.joints))
    return tuple(getattr(fact, "at", ()))


def _thing_named(work: Work, facts: Sequence[AnyFact]) -> tuple[str | None, str | None]:
    """The first part and the first joint the fact is about, without their sides."""
    part: str | None = None
    joint: str | None = None
    fact = facts[-1]
    described_parts = {p.name for p in fact.parts} if isinstance(fact, Described) else set()
    for whole in names_of(facts):
        plain = parted(whole)[0]
        if whole in described_parts or is_part(work, whole) or work.vocabulary.sort_of(whole) == "assembly":
            part = part or plain
        elif whole not in SIDES:
            joint = joint or plain
    if part is None and joint is None and work.name:
        part = work.name
    return part, joint


def _side_told(work: Work, facts: Sequence[AnyFact]) -> str:
    """The side of what is named; of several, what their sides have in common."""
    names = names_of(facts)
    sides = [w if w in SIDES else parted(w)[1] for w in names]
    if not sides or not any(sides):
        return work.side
    common = [word for word in sides[0].split() if all(word in s.split() for s in sides)]
    return " ".join(common)
