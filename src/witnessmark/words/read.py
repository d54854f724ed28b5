"""The line: what a person typed, understood as a fact, or asked about."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from msgspec.structs import replace

from witnessmark.journal.facts import Came, FoundBehind, Owned, Struck
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.builders import BUILDERS
from witnessmark.words.choosing import REMARKED, Choice
from witnessmark.words.doubts import note_doubts, note_unlikely
from witnessmark.words.line import take_apart
from witnessmark.words.matching import Call
from witnessmark.words.naming import find_names
from witnessmark.words.reading import (
    left_over,
    names_of,
    reading_of,
    remark_of,
    take_day,
    take_time,
    with_description,
)
from witnessmark.words.sessions_line import read_sessions_line
from witnessmark.words.striking import Strike, find_strike
from witnessmark.words.things import NOT_PLAIN
from witnessmark.words.understood import Question, Reading, Understood
from witnessmark.words.verbs import verbs
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of
from witnessmark.words.work import Work

_PLAIN = 2.9
_MOST_OTHERS = 2
_REMARKED = Call(REMARKED, 0.0, frozenset())


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
    sessions = read_sessions_line(text, today)
    if sessions is not None:
        return sessions
    line = take_apart(text, vocabulary, today)
    hits = find_names(line, vocabulary)
    reader = _Reader(Choice(line, hits), vocabulary, today, recent, kind)
    reading, work = reader.best_of()
    ask = Question("kind", work.asked, work.choices) if work.asked else None
    others = () if reading.sure else tuple(reader.others(reading, work))
    return Understood(reading, others, ask)


def _is_about_nothing(reading: Reading, work: Work) -> bool:
    """A fact that is said of a thing, and names none, is only a remark."""
    fact = reading.fact
    if isinstance(fact, FoundBehind):
        return not fact.routes or not fact.at or fact.at[0] in fact.routes[0]
    if isinstance(fact, Came | Owned) and NOT_PLAIN in reading.doubts and work.call.score < _PLAIN:
        return True
    return verbs()[work.call.tag].thing and not (
        reading.part or reading.joint or work.asked or names_of(reading.facts)
    )


class _Reader:
    """One line, read in one way or another."""

    def __init__(
        self, choice: Choice, vocabulary: Vocabulary, today: date, recent: tuple[str, ...], kind: str
    ) -> None:
        self.line, self.hits, self.choice, self.vocabulary = choice.line, choice.hits, choice, vocabulary
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
            return remark_of(work, built, self.choice), work
        day, time = take_day(work), take_time(work)
        note_doubts(work, self.choice.ranked)
        note_unlikely(work, self.choice)
        remark, unplaced = left_over(work)
        facts = with_description(work, built, remark)
        return reading_of(work, built, facts, remark, unplaced, day, time), work

    def best_of(self) -> tuple[Reading, Work]:
        """The likeliest kind of fact that is about something; failing that, the line is a remark."""
        for tag in self.choice.order:
            reading, work = self.read(self.choice.call(tag))
            if tag == REMARKED or not _is_about_nothing(reading, work):
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
        near = [self.choice.call(tag) for tag in self.choice.order if tag not in (work.call.tag, REMARKED)]
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
