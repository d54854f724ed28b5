"""An operation: one step of a job, with its minutes, hands, place, and what must come before it."""

from __future__ import annotations

from msgspec import Struct


class Minutes(Struct, frozen=True):
    """Three guesses of hands-on minutes: one in ten quicker, half quicker, one in ten slower (P10, P50, P90).

    owner  typed by the owner, so the owner's own overrun factor multiplies it; catalogue minutes are not
    guess  one guess shared out over several operations: they go well or badly together
    """

    low: float
    likely: float
    high: float
    owner: bool = False
    guess: str = ""


class Operation(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One step.

    id          unique in an answer: "open/hub nut, left rear"
    what        what is done, in words: "take off hub nut"
    sort        prepare | open | work | close | prove | record | protect | watch | put_right | garage
    name        the joint or part it is done to
    job         id of the job it belongs to: "renew/pinion seal"
    after       ids of operations that come first
    follows     ids that come first where they are done in the same session, though it could go without them
    pays        ids (codes) of debts it pays
    needs       things that must be in hand: items of needs
    leaves      state its joint is left in: apart, loose, tight, proven, ""
    put_down    may be put down half-way (a coat, a fill, a bleed may not)
    hands       1 or 2; fights: a finding says it will not come easily
    finding     chance in 0..1 that it turns up something that brings its own minutes
    turns_up    the sort of such chance it is, as `jobs.findings` counts them; "" where there is none
    """

    id: str
    what: str
    sort: str
    name: str
    job: str
    minutes: Minutes
    where: str = ""
    if_missed: str = "looks"
    after: tuple[str, ...] = ()
    follows: tuple[str, ...] = ()
    pays: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    leaves: str = ""
    put_down: bool = True
    hands: int = 1
    fights: bool = False
    finding: float = 0.0
    turns_up: str = ""
    stage: str = ""
    cautions: tuple[str, ...] = ()
    note: str = ""


class Job(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """Something the person wants done, or that is owed: its operations in an order that works.

    id      "renew/pinion seal"; job: renew, refurbish, make good, refit, coat, prove, close
    wanted  the journal line that wants it, None where only a debt asks for it
    """

    id: str
    job: str
    name: str
    operations: tuple[Operation, ...]
    wanted: int | None = None
    opens: tuple[str, ...] = ()
    open_anyway: tuple[str, ...] = ()
    because: str = ""
