"""The whole flow of one vehicle on one page, from facts to answers. Read this first.

Each answer is worked out once, from the ones above it. Nothing here is kept; nothing here writes.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Sequence
from datetime import date, datetime
from functools import cached_property

from witnessmark.buy.buying import Asked, Buying, buying
from witnessmark.buy.needed import AHEAD, dated, on_donor, required, session_of_each
from witnessmark.buy.offers import market_of, own_currency, worth_told
from witnessmark.gate.answer import GateAnswer
from witnessmark.gate.holds import ask_gate
from witnessmark.ground.fault import Fault
from witnessmark.ground.money import Money
from witnessmark.jobs.jobs import jobs_of
from witnessmark.jobs.operation import Job
from witnessmark.jobs.while_open import WhileOpen, while_open
from witnessmark.journal.entry import Entry
from witnessmark.journal.rules.every import all_faults
from witnessmark.owed.debt import Debt
from witnessmark.owed.needs import Need, needs_from
from witnessmark.owed.owed import owed_by, word_for
from witnessmark.plan.coming import coming
from witnessmark.plan.next_session import plan_session
from witnessmark.plan.session import SessionPlan
from witnessmark.reach.way_in import WayIn, way_in
from witnessmark.state.photos import Album, album_from
from witnessmark.state.standing import Fold, State
from witnessmark.vehicle.things import Vehicle


class Flow:
    """One record, read at one moment.

    entries  the record's lines, in any order
    now      the moment the answers are asked for
    seed     of the chances drawn; the same seed gives the same answer
    fold     of these very entries, where they were folded before
    """

    def __init__(
        self, entries: Iterable[Entry], now: datetime, *, seed: int = 1, fold: Fold | None = None
    ) -> None:
        self.entries = tuple(entries)
        self.now = now
        self.seed = seed
        self._fold = fold

    @cached_property
    def fold(self) -> Fold:
        """facts -> how things stand, on the way"""
        return self._fold or Fold.of(self.entries)

    @property
    def state(self) -> State:
        """facts -> how things stand"""
        return self.fold.state

    def followed_by(self, more: Sequence[Entry]) -> Flow:
        """The answers at the same moment with these lines behind; what stands already is not folded again."""
        return Flow((*self.entries, *more), self.now, seed=self.seed, fold=self.fold.followed_by(more))

    @property
    def today(self) -> date:
        return self.now.date()

    @property
    def line(self) -> int:
        """The last line known."""
        return self.state.last_line

    @property
    def vehicle(self) -> Vehicle:
        return self.state.vehicle

    @cached_property
    def owed(self) -> tuple[Debt, ...]:
        """how things stand -> what is owed"""
        return owed_by(self.state, self.now)

    def gate(self, name: str) -> GateAnswer:
        """what is owed -> what holds a gate"""
        return ask_gate(name, self.state, self.owed, self.today)

    def reach(self, targets: Sequence[str], *, left: Callable[[], float] | None = None) -> WayIn:
        """what is in front of what -> the cheapest way in; `left` tells the seconds left to look for it"""
        return way_in(targets, self.state, debts=self.owed, left=left)

    def while_open(self, way: WayIn) -> WhileOpen:
        """a way in -> what is worth doing while it is open"""
        return while_open(self.state, self.owed, way)

    @cached_property
    def jobs(self) -> tuple[Job, ...]:
        """jobs wanted, what is owed, reach -> operations"""
        return jobs_of(self.state, self.owed)

    @cached_property
    def needs(self) -> tuple[Need, ...]:
        """what is owed -> what must be in hand"""
        return needs_from(self.owed, self.state)

    @cached_property
    def session_days(self) -> tuple[date, ...]:
        """sessions held -> the days of those to come"""
        found = coming(self.state.calendar, self.state.supply.held, self.now, AHEAD).coming
        return tuple(dict.fromkeys(session.day for session in found))

    @cached_property
    def needs_dated(self) -> tuple[Need, ...]:
        """what must be in hand, jobs in their order -> and for which session"""
        return dated(self.needs, session_of_each(self.jobs), self.session_days)

    @property
    def currency(self) -> str:
        """The owner's own currency."""
        return own_currency(self.state)

    def buy(
        self, *, worth: Money | None = None, left: Callable[[], float] | None = None, seed: int = 0
    ) -> Buying:
        """what the sessions need, what is offered -> what to order tonight; `worth` of a lost session"""
        market, days = market_of(self.state), self.session_days
        wanted = required(self.state, self.jobs, session_of_each(self.jobs), len(days))
        donor = tuple(on_donor(self.state, wanted))
        worth = worth or worth_told(self.state, market.currency)
        asked = Asked(now=self.now, sessions=days, worth=worth, seed=seed, left=left)
        return buying(self.state, market, wanted, donor, asked)

    def session(self, hours: float = 3.0, *, helper: bool = False) -> SessionPlan:
        """operations -> what fits one session, and the chance of closing up by packing-up time"""
        draw = random.Random(self.seed)
        owed, jobs = self.owed, self.jobs
        return plan_session(self.state, owed, jobs, hours=hours, helper=helper, draw=draw, now=self.now)

    @cached_property
    def album(self) -> Album:
        """facts -> photos under their lines, before beside after"""
        return album_from(self.entries)

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """facts -> trouble in the record itself"""
        return all_faults(self.entries)

    def word(self, joint: str) -> str:
        """apart, loose, tight or proven; as found where it was never touched."""
        return word_for(self.state, joint)
