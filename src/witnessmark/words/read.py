"""The line: what a person typed, understood as a fact, or asked about."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from msgspec.structs import replace

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Came, Described, FoundBehind, Owned, Struck
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.builders import BUILDERS
from witnessmark.words.built import Built
from witnessmark.words.doubts import note_doubts
from witnessmark.words.lexicon import lexicon
from witnessmark.words.line import Line, take_apart
from witnessmark.words.matching import Call, calls
from witnessmark.words.naming import Hit, find_names, is_head, is_noun
from witnessmark.words.striking import Strike, find_strike
from witnessmark.words.things import NOT_PLAIN, is_part
from witnessmark.words.understood import Question, Reading, Understood
from witnessmark.words.verbs import verbs
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of
from witnessmark.words.work import Work

_LEAST = 0.85
_WEAK = 1.95
_PLAIN = 2.9
_NEARLY = 0.8
_MOST_OTHERS = 2
_REMARKED = Call("remarked", 0.0, frozenset())


def read_line(
    text: str,
    vehicle: Vehicle | Vocabulary,
    *,
    today: date,
    recent: tuple[str, ...] = (),
    kind: str = "",
) -> Understood:
    """Read one typed line.

    vehicle  the vehicle, or its vocabulary where many lines are read
    today    the day the line is written on, which "yesterday" and "Friday" count from
    recent   whole names lately written about, latest first: they settle a side that was not typed
    kind     the answer to the question what kind a new thing is

    Never raises on any text; BadInput only for a `kind` that is none.
    """
    vocabulary = vehicle if isinstance(vehicle, Vocabulary) else vocabulary_of(vehicle)
    strike = find_strike(text)
    if strike is not None:
        return _struck(text, strike, vocabulary, today, recent, kind)
    line = take_apart(text, vocabulary, today)
    hits = find_names(line, vocabulary)
    ranked = [c for c in calls(line, hits) if c.score >= _LEAST and c.tag != "struck"]
    best = _best(line, hits, ranked)
    reader = _Reader(line, hits, ranked, vocabulary, today, recent, kind)
    reading, work = reader.best_of(best)
    ask = Question("kind", work.asked, work.choices) if work.asked else None
    others = () if reading.sure else tuple(reader.others(reading, work))
    return Understood(reading, others, ask)


def _best(line: Line, hits: Sequence[Hit], ranked: Sequence[Call]) -> Call:
    """The likeliest kind of fact; small words alone tell none where nothing of the vehicle is named."""
    if not ranked:
        return _REMARKED
    best = ranked[0]
    named = any(h.score > 40 for h in hits) or any(is_noun(a.low) for a in line.atoms)
    return best if best.score >= _WEAK or named else _REMARKED


def _is_about_nothing(reading: Reading, work: Work) -> bool:
    """A fact that is said of a thing, and names none, is only a remark."""
    fact = reading.fact
    if isinstance(fact, FoundBehind):
        return not fact.routes or not fact.at or fact.at[0] in fact.routes[0]
    if isinstance(fact, Came | Owned) and NOT_PLAIN in reading.doubts and work.call.score < _PLAIN:
        return True
    return verbs()[work.call.tag].thing and not (
        reading.part or reading.joint or work.asked or _names_of(reading.facts)
    )


class _Reader:
    """One line, read in one way or another."""

    def __init__(
        self,
        line: Line,
        hits: tuple[Hit, ...],
        ranked: Sequence[Call],
        vocabulary: Vocabulary,
        today: date,
        recent: tuple[str, ...],
        kind: str,
    ) -> None:
        self.line, self.hits, self.ranked, self.vocabulary = line, hits, ranked, vocabulary
        self.today, self.recent, self.kind = today, recent, kind

    def read(self, call: Call, pick: dict[str, str] | None = None) -> tuple[Reading, Work]:
        work = Work(
            self.line,
            self.hits,
            call,
            self.vocabulary,
            today=self.today,
            recent=self.recent,
            kind=self.kind,
            pick=pick,
        )
        built = BUILDERS[call.tag](work)
        if call.tag == "remarked":
            return _remark(work, built, self.ranked), work
        day, time = _take_day(work), _take_time(work)
        note_doubts(work, self.ranked)
        remark, unplaced = _left_over(work)
        facts = _with_description(work, built, remark)
        return _reading(work, built, facts, remark, unplaced, day, time), work

    def best_of(self, best: Call) -> tuple[Reading, Work]:
        """The likeliest kind of fact that is about something; failing that, the line is a remark."""
        for call in (best, *(c for c in self.ranked if c is not best and c.score > best.score - _NEARLY)):
            reading, work = self.read(call)
            if not _is_about_nothing(reading, work):
                return reading, work
        return self.read(_REMARKED)

    def others(self, best: Reading, work: Work) -> Iterator[Reading]:
        """At most two other ways, each another fact."""
        seen = [best.facts]
        for call, pick in self._ways(work):
            other, _ = self.read(call, pick)
            if other.facts not in seen:
                seen.append(other.facts)
                yield replace(other, sure=False)
            if len(seen) > _MOST_OTHERS:
                return

    def _ways(self, work: Work) -> Iterator[tuple[Call, dict[str, str]]]:
        top = self.ranked[0].score if self.ranked else 0.0
        near = [
            c
            for c in self.ranked
            if c.tag != work.call.tag and c.score > min(top, work.call.score or top) - 1.5
        ]
        if near:
            yield near[0], {}
        for hit in work.hits:
            for rival in hit.rivals[:1]:
                yield work.call, {"name": rival.plain}
        for side in work.variants:
            if side != work.side:
                yield work.call, {"side": side}
        for call in near[1:]:
            yield call, {}
        if work.call.tag != "remarked":
            yield _REMARKED, {}


# ---- days and times


def _take_day(work: Work) -> date | None:
    """The day done, where one was typed that is not still to come."""
    for at, atom in enumerate(work.atoms):
        if atom.day is None or not work.is_free(at) or work.line.under[at]:
            continue
        if atom.day.past is None:
            work.doubt("the day is still to come")
            continue
        if (work.today - atom.day.past).days > 366:
            work.doubt("the day lies more than a year back")
        work.place(at)
        return atom.day.past
    return None


def _take_time(work: Work) -> str | None:
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


# ---- what is left


def _left_over(work: Work) -> tuple[str, tuple[tuple[int, int], ...]]:
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


def _remark(work: Work, built: Built, ranked: Sequence[Call]) -> Reading:
    """The whole line as a remark; sure only where nothing in it looks like a fact."""
    text = work.line.text.strip()
    told = [c for c in ranked if c.tag != "remarked" and c.score > work.call.score]
    named = any(h.score > 40 for h in work.hits) or any(is_head(a.low) for a in work.atoms)
    sure = bool(text) and not told and not named
    day = _take_day(work)
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


# ---- the reading


def _with_description(work: Work, built: Built, remark: str) -> tuple[AnyFact, ...]:
    facts = list(built.facts)
    facts[-1] = replace(facts[-1], remark=remark)
    if work.parts or work.joints:
        facts.insert(0, Described(parts=tuple(work.parts), joints=tuple(work.joints)))
    return tuple(facts)


def _reading(
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


def _names_of(facts: Sequence[AnyFact]) -> tuple[str, ...]:
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
    for whole in _names_of(facts):
        plain = parted(whole)[0]
        if whole in described_parts or is_part(work, whole) or work.vocabulary.sort_of(whole) == "assembly":
            part = part or plain
        elif plain not in ("left", "right", "front", "rear") and whole not in _SIDES:
            joint = joint or plain
    if part is None and joint is None and work.name:
        part = work.name
    return part, joint


_SIDES = frozenset({"left", "right", "front", "rear", "left front", "right front", "left rear", "right rear"})


def _side_told(work: Work, facts: Sequence[AnyFact]) -> str:
    """The side of what is named; of several, what their sides have in common."""
    names = _names_of(facts)
    sides = [w if w in _SIDES else parted(w)[1] for w in names]
    if not sides or not any(sides):
        return work.side if not names else ""
    common = [word for word in sides[0].split() if all(word in s.split() for s in sides)]
    return " ".join(common)


# ---- strikes


def _struck(
    text: str, strike: Strike, vocabulary: Vocabulary, today: date, recent: tuple[str, ...], kind: str
) -> Understood:
    """A strike, with the line as it should have read where that was typed."""
    doubts: list[str] = []
    instead = None
    ask = None
    if strike.instead:
        corrected = read_line(strike.instead, vocabulary, today=today, recent=recent, kind=kind)
        facts, ask = corrected.best.facts, corrected.ask
        doubts += corrected.best.doubts
        if len(facts) > 1 or isinstance(facts[-1], Struck):
            doubts.append("the corrected line brings something new: strike first, then write it")
        elif not isinstance(facts[-1], Struck):
            instead = facts[-1]
    why = strike.why or ("corrected" if strike.instead else "")
    if not why:
        doubts.append("why is not told")
    fact = Struck(line=strike.line, why=why, instead=instead, words=strike.instead)
    said = (
        f"Struck line {strike.line}"
        + (f": {why}" if why else "")
        + (f"; it should read: {strike.instead}" if strike.instead else "")
    )
    reading = Reading(
        facts=(fact,),
        sentence=said + ".",
        verb="struck",
        sure=not doubts,
        doubts=tuple(dict.fromkeys(doubts)),
    )
    return Understood(reading, (), ask)
