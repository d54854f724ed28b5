"""One vehicle's restoration, opened: the only writer. The shell asks here and nowhere else."""

from __future__ import annotations

import uuid
from collections.abc import Callable, Sequence
from datetime import date, datetime, time

from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import AnyFact, Doing, Struck
from witnessmark.journal.order import done_by, in_force, written_by
from witnessmark.journal.rules.orphans import orphaned_by
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.following import Following, following
from witnessmark.restoration.heard import Heard
from witnessmark.restoration.plausibility import plausible
from witnessmark.restoration.striking import strike_in
from witnessmark.state.standing import DESCRIBING
from witnessmark.store.record_store import RecordStore
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.lines import TypedLine
from witnessmark.words.read import read_line
from witnessmark.words.striking import Strike
from witnessmark.words.understood import Reading, Understood
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of


class Restoration:
    """An open record with a clock beside it.

    store   where the facts are kept
    now     the moment it was opened at, local time
    who     the hand that writes
    new_id  makes an id for a line; one that a device made may be passed instead
    """

    def __init__(
        self,
        store: RecordStore,
        *,
        now: datetime,
        who: str = "you",
        new_id: Callable[[], str] = lambda: uuid.uuid4().hex,
    ) -> None:
        self.store = store
        self.now = now
        self.who = who
        self.new_id = new_id
        self.entries: tuple[Entry, ...] = store.read()

    # ---- reading

    def flow(self, on: date | None = None, by: date | None = None, *, seed: int = 1) -> Flow:
        """The answers now, or as known on a day (`on`: facts written by then; `by`: facts done by then)."""
        entries: Sequence[Entry] = self.entries
        if on is not None:
            entries = written_by(entries, on)
        if by is not None:
            entries = done_by(entries, by)
        return Flow(entries, self._moment(on or by), seed=seed)

    def vocabulary(self, flow: Flow) -> Vocabulary:
        """The names a line may use."""
        return vocabulary_of(flow.vehicle)

    def _moment(self, day: date | None) -> datetime:
        if day is None or day == self.now.date():
            return self.now
        return datetime.combine(day, time(23, 59))

    # ---- writing

    def hear(
        self,
        words: str,
        *,
        kind: str = "",
        day: date | None = None,
        at: str = "",
        reading: int = 0,
        follow: bool = True,
    ) -> Heard:
        """Understand a line against this record, and what would follow from it.

        reading  1 or 2 takes one of the other readings instead
        follow   False: what follows is not worked out; it was read back before
        """
        strike = strike_in(words, self.entries)
        if strike is not None:
            return self.hear_strike(strike, words=words, kind=kind, day=day, at=at)
        before = self.flow()
        understood = read_line(words, self.vocabulary(before), today=day or self.now.date(), kind=kind)
        if reading:
            understood = _other(understood, reading)
        best = understood.best
        done, hour = best.day or day or self.now.date(), best.time or at
        entries = self._entries(words, best.facts, done, hour, self.last_line)
        follows = (
            following(before, before.followed_by(entries), best.facts)
            if follow
            else Following(stands={}, owes=(), pays=())
        )
        return Heard(
            words=words,
            understood=understood,
            facts=best.facts,
            day=done,
            time=entries[0].time if entries else hour,
            follows=follows,
            last_line=self.last_line,
            plausible=plausible(best.facts, before.vehicle.joints),
        )

    def write(
        self, heard: Heard, also: Callable[[Sequence[Entry]], tuple[AnyFact, str]] | None = None
    ) -> tuple[Entry, ...]:
        """Write a line that was heard, all of it or nothing; told only once it is on the disk.

        also  a fact, with its words, that goes with the line's entries: its photos
        """
        entries = self._entries(heard.words, heard.facts, heard.day, heard.time, heard.last_line)
        if also and entries:
            fact, words = also(entries)
            entries += self._entries(words, (fact,), heard.day, heard.time, entries[-1].line)
        return self._append(entries)

    def write_fact(
        self, fact: AnyFact, words: str, *, day: date | None = None, at: str = ""
    ) -> tuple[Entry, ...]:
        """Write one fact that was not typed as a line (a printed sheet, a photo); `at` is its time."""
        return self.write_facts(((fact, words),), day=day, at=at)

    def write_facts(
        self, facts: Sequence[tuple[AnyFact, str]], *, day: date | None = None, at: str = ""
    ) -> tuple[Entry, ...]:
        """Write several facts in one go, all or none."""
        done = day or self.now.date()
        entries = [
            e for fact, words in facts for e in self._entries(words, (fact,), done, at, self.last_line)
        ]
        return self._append(entries)

    def write_entries(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        """Take whole lines from an archive, as they were written there."""
        return self._append(entries)

    # ---- many lines

    def read_typed(
        self, typed: TypedLine, vehicle: Vehicle | Vocabulary, before: Sequence[Entry]
    ) -> tuple[Reading, tuple[AnyFact, ...]]:
        """Read one line of a file against the vehicle so far; no facts where the reading is not sure."""
        strike = strike_in(typed.words, (*self.entries, *before))
        if strike is None:
            understood = read_line(typed.words, vehicle, today=typed.day or self.now.date())
            sure = understood.best.sure and understood.ask is None
            return understood.best, understood.best.facts if sure else ()
        struck = next((e for e in (*self.entries, *before) if e.line == strike.line), None)
        if struck is None or not strike.why:
            return Reading(
                facts=(), sentence="Strike of no line, or without a reason.", verb="struck", sure=False
            ), ()
        understood = read_line(strike.instead or struck.words, vehicle, today=struck.day)
        instead = _single(understood) if strike.instead else None
        fact = Struck(line=strike.line, why=strike.why, instead=instead, words=strike.instead)
        sentence = f"Struck line {strike.line}, {struck.words!r}: {strike.why}."
        return Reading(facts=(fact,), sentence=sentence, verb="struck", sure=True), (fact,)

    def entries_of(
        self, typed: TypedLine, reading: Reading, facts: Sequence[AnyFact], before: int
    ) -> list[Entry]:
        """The entries of a file's line that was read; `before` of them stand unwritten already."""
        day = reading.day or typed.day or self.now.date()
        hour = reading.time or typed.time or ""
        written = datetime.combine(typed.written or typed.day or self.now.date(), time(23, 0))
        moment = self.now if written.date() >= self.now.date() else written
        return self._entries(typed.words, facts, day, hour, self.last_line + before, moment)

    # ---- strikes

    def hear_strike(
        self, strike: Strike, *, words: str = "", kind: str = "", day: date | None = None, at: str = ""
    ) -> Heard:
        """Understand a strike, and what would follow from it."""
        struck = self._strikable(strike)
        before = self.flow()
        # The vehicle as it is without the line; only a line that describes makes a difference to it.
        vehicle = (self._without(strike.line) if isinstance(struck.fact, DESCRIBING) else before).vehicle
        understood = read_line(strike.instead or struck.words, vehicle, today=struck.day, kind=kind)
        instead = _single(understood) if strike.instead else None
        fact = Struck(line=strike.line, why=strike.why, instead=instead, words=strike.instead)
        said = f"Struck line {strike.line}, {struck.words!r}: {strike.why}."
        best = Reading(
            facts=(fact,), sentence=f"{said} {understood.best.sentence}" if instead else said, verb="struck"
        )
        done = day or self.now.date()
        entries = self._entries(words or strike.why, (fact,), done, at, self.last_line)
        return Heard(
            words=words or strike.why,
            understood=Understood(best=best),
            facts=(fact,),
            day=done,
            time=entries[0].time,
            follows=following(before, before.followed_by(entries), (fact, struck.fact)),
            last_line=self.last_line,
            plausible=plausible((fact,), vehicle.joints),
        )

    def orphaned_by(self, line: int) -> tuple[Entry, ...]:
        """The later lines that a strike of this line would leave without what they speak of."""
        return orphaned_by(self.entries, line)

    @property
    def last_line(self) -> int:
        return self.entries[-1].line if self.entries else 0

    # ---- inside

    def _without(self, line: int) -> Flow:
        return Flow((e for e in self.entries if e.line != line), self.now)

    def _strikable(self, strike: Strike) -> Entry:
        line, why = strike.line, strike.why
        if not why.strip():
            raise BadInput(
                given=f"line {line} is to be struck without a reason",
                holds="a few words that say why",
                do='Say why, as: strike 12 --why "that was the other side".',
            )
        found = {e.line: e for e in self.entries}.get(line)
        if found is None:
            last = self.last_line
            raise BadInput(
                given=f"there is no line {line}",
                holds=f"a line from 1 to {last}" if last else "a record with lines in it",
                do="Look the number up with: journal.",
            )
        if isinstance(found.fact, Struck):
            raise BadInput(
                given=f"line {line} is itself a strike",
                holds="a line that says what was done",
                do="Write the struck line again instead; a strike stays as it is.",
            )
        if line in in_force(self.entries):
            raise BadInput(
                given=f"line {line} is struck already",
                holds="a line that still stands",
                do="Look with: journal.",
            )
        return found

    def _entries(
        self,
        words: str,
        facts: Sequence[AnyFact],
        day: date,
        hour: str,
        last: int,
        written: datetime | None = None,
    ) -> list[Entry]:
        moment = written or self.now
        if day > self.now.date():
            raise BadInput(
                given=f"{day.isoformat()} has not come yet",
                holds="a day up to today; facts are things done",
                do="Give the day it was done, or write it as wanted.",
            )
        clock = f"{self.now:%H:%M}" if day == self.now.date() and moment == self.now else END_OF_DAY
        return [
            Entry(
                id=self.new_id(),
                day=day,
                time=hour or clock,
                written=moment.isoformat(timespec="seconds"),
                line=last + number,
                who=self.who,
                words=words,
                fact=fact,
            )
            for number, fact in enumerate(facts, 1)
        ]

    def _append(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        stored = self.store.append(entries, self.last_line)
        known = {e.line for e in self.entries}
        self.entries = (*self.entries, *(e for e in stored if e.line not in known))
        return stored


def _other(understood: Understood, number: int) -> Understood:
    if not 1 <= number <= len(understood.others):
        raise BadInput(
            given=f"reading {number} was asked for",
            holds=f"one of the {len(understood.others)} other readings",
            do="Leave the number out to see them.",
        )
    return Understood(best=understood.others[number - 1], others=(), ask=None)


def _single(understood: Understood) -> Doing:
    best = understood.best
    if understood.ask is not None or not best.sure or len(best.facts) != 1:
        raise BadInput(
            given=f"the corrected line reads: {best.sentence}",
            holds="a line about things the record knows, understood without doubt",
            do="Write it more plainly; or strike the line, then write the right one by itself.",
            near=tuple(other.sentence for other in understood.others),
        )
    fact = best.facts[0]
    assert not isinstance(fact, Struck)
    return fact
