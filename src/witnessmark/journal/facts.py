"""What can be written in the journal: things done or seen, each named by a past participle.

Every fact may carry `figures` (numbers with units, as typed) and a `remark` (every word that
found no other place). `at` holds whole names of parts or joints, or of one assembly.
"""

from __future__ import annotations

from msgspec import Struct

from witnessmark.journal.calendar_facts import Arranged as Arranged
from witnessmark.journal.calendar_facts import CalledOff as CalledOff
from witnessmark.journal.calendar_facts import Freed as Freed
from witnessmark.journal.calendar_facts import LeftSetUp as LeftSetUp
from witnessmark.journal.fact import AtFact as AtFact
from witnessmark.journal.fact import Fact as Fact
from witnessmark.journal.fact import Names as Names
from witnessmark.vehicle.things import Figure, Joint, Part, Routes

# ---- describing ---------------------------------------------------------------------------


class DescribedVehicle(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="described_vehicle"):
    """What the vehicle is; `has` and `has_not` add to or take from the body kind's usual features."""

    name: str = ""
    body: str = ""
    country: str = ""
    has: Names = ()
    has_not: Names = ()


class Described(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="described"):
    """Parts and joints now known to the record; a later description of a name replaces the earlier."""

    parts: tuple[Part, ...] = ()
    joints: tuple[Joint, ...] = ()
    from_list: str = ""


class ReadFigure(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="read_figure"):
    """A figure read in the owner's book (or elsewhere, as its standing says), and thread or fluid with it."""

    figure: Figure | None = None
    thread: str = ""
    grade: str = ""
    fluid: str = ""


class FoundBehind(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="found_behind"):
    """What stands in the way of a thing, seen while working: any one of the routes lets a hand in."""

    routes: Routes = ()


# ---- opening and finding ------------------------------------------------------------------


class TookOff(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="took_off"):
    """A part came off, or a joint was undone: apart."""


class Opened(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="opened"):
    """A cover, plug, union or seam was opened: apart."""


class Slackened(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="slackened"):
    """In place, no longer to figure: loose."""


class Found(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="found"):
    """What was seen. `condition` is a word of `vehicle.conditions`; `item` a renewable of the joint."""

    condition: str = ""
    item: str = ""
    size: str = ""


class Measured(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="measured"):
    """A dimension was taken; `what` says which."""

    what: str = ""
    size: str = ""


class Drained(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="drained"):
    fluid: str = ""


# ---- metal and coats ----------------------------------------------------------------------


class CutOut(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="cut_out"):
    """Metal was cut out: apart."""


class Braced(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="braced"):
    pass


class Unbraced(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="unbraced"):
    pass


class DryFitted(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="dry_fitted"):
    """Offered up without closing: in place, loose."""


class Welded(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="welded"):
    plugs: int = 0


class LastSpark(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="last_spark"):
    """Hot work ended; the fire watch runs from the entry's time."""


class WatchedFire(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="watched_fire"):
    """Looked for smoke and heat after hot work; the last look before locking up is one of these."""


class Bared(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="bared"):
    """Steel is bare from now on."""


class Coated(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="coated"):
    """A coat went on; hours after which, and until which, the product sheet lets the next one go on."""

    product: str = ""
    recoat_from_hours: float | None = None
    recoat_until_hours: float | None = None
    last_coat: bool = False


# ---- closing ------------------------------------------------------------------------------


class Fitted(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="fitted"):
    """Put in place. `item` names the renewable that was fitted new; `new` the thing itself being new."""

    item: str = ""
    new: bool = False
    why_not_new: str = ""


class NippedUp(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="nipped_up"):
    """Finger-tight or nipped: in place, not to figure."""


class Tightened(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="tightened"):
    """To figure; `figures[0]` is the torque where one was read."""

    marked: bool = False


class Filled(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="filled"):
    fluid: str = ""


class Proved(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="proved"):
    """A closing check or an ask of a gate was answered; `check` is its name, "" means the joint's own.

    seen  looked at and found right, where no figure belongs
    """

    check: str = ""
    seen: bool = False


class LookedAt(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="looked_at"):
    """A look and nothing wrong: pays looks owed, answers an ask of a gate."""

    check: str = ""


class PutRight(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="put_right"):
    """Something upset elsewhere is right again: `what` names it (bleed brakes, toe)."""

    what: str


class Marked(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="marked"):
    """A witness mark was drawn across it."""


class Photographed(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="photographed"):
    """Pictures were taken.

    photos  names of the files in the record's folder of photos, each named by its content
    of      the line they go with, 0 where they stand by themselves
    """

    photos: Names = ()
    of: int = 0


class Closed(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="closed"):
    """All that closing asks was done and answered: renewals new, tight, checks good, recorded.

    For an assembly it sweeps every joint that does not let go, but those named in `but`.
    A joint that lets go is closed singly, with a figure or `seen`.
    """

    but: Names = ()
    seen: bool = False


# ---- things about the garage --------------------------------------------------------------


class Stored(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="stored"):
    where: str = ""


class SentAway(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="sent_away"):
    with_whom: str = ""
    due_back: str = ""


class CameBack(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="came_back"):
    pass


class Turned(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="turned"):
    """A stored assembly was turned by hand so that its seals and bearings do not stand dry."""


class Scrapped(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="scrapped"):
    pass


class Blanked(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="blanked"):
    """Blanking plugs or rags went in."""

    number: int = 1


class Unblanked(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="unblanked"):
    number: int = 1


class Bagged(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="bagged"):
    """What came off went into a bag; `what` is on its label."""

    what: str = ""
    number: int = 0
    where: str = ""


class Unbagged(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="unbagged"):
    """A bag is empty: all of it went back."""


class Lifted(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="lifted"):
    """The vehicle, or an end of it, is on stands."""


class LetDown(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="let_down"):
    pass


class OpenedTin(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="opened_tin"):
    """A tin that ages once open (brake fluid, paint) was opened."""

    what: str


class DownedTools(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="downed_tools"):
    """Work broken off; `at` is finger-tight."""


class Held(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="held"):
    """A session was held, from and to as HH:MM, by whom."""

    start: str = ""
    end: str = ""
    people: Names = ()
    helper: bool = False


class Ran(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="ran"):
    """Distance driven since the last such line, and how often the engine came up to heat."""

    km: float = 0.0
    heat_cycles: int = 0


# ---- wishes, guesses, buying --------------------------------------------------------------


class Wanted(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="wanted"):
    """A job the person wants done; `job` is renew, refurbish, make good, refit, coat or prove."""

    job: str = ""


class Left(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="left"):
    """A kept no: left as it is, and why."""

    why: str = ""


class Guessed(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="guessed"):
    """The owner's own three guesses in minutes: if all goes well, likely, if it fights."""

    job: str = ""
    low: float = 0
    likely: float = 0
    high: float = 0


class TookTime(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="took_time"):
    """How long a thing took, minutes."""

    job: str = ""
    minutes: float = 0


class Ordered(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="ordered"):
    item: str
    number: float = 1
    supplier: str = ""
    price: float | None = None
    due: str = ""


# What came, where a supplier's whole parcel did: all of theirs that was still in the post.
WHOLE_PARCEL = "whole parcel"


class Came(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="came"):
    item: str
    number: float = 1
    supplier: str = ""


class Offered(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="offered"):
    """A supplier's offer: price of a pack, post, days on the way; `number` is the supplier's own for it.

    pack              pieces in a pack; grams: what a pack weighs
    currency          "" is the owner's own
    days              likely; quick_days, slow_days: one parcel in ten is quicker, one slower
    """

    item: str
    supplier: str = ""
    price: float | None = None
    post: float | None = None
    days: float | None = None
    size: str = ""
    number: str = ""
    pack: int = 1
    grams: float = 0
    currency: str = ""
    quick_days: float | None = None
    slow_days: float | None = None


class PostStep(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """What post costs up to a weight in grams; 0: however heavy."""

    price: float
    most_grams: float = 0


class Quoted(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="quoted"):
    """A supplier's terms; a later line about the same supplier takes the place of the earlier.

    free_above, minimum  of the goods' sum; duty: percent of it
    rate                 so many of the owner's own currency for one of `currency`, as typed
    cut_off              the time of day, HH:MM, after which an order goes the next day
    """

    supplier: str
    post: tuple[PostStep, ...] = ()
    free_above: float | None = None
    minimum: float | None = None
    currency: str = ""
    rate: str = ""
    duty: float = 0
    days: float | None = None
    quick_days: float | None = None
    slow_days: float | None = None
    cut_off: str = ""


class Valued(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="valued"):
    """What a lost session is worth to the owner."""

    amount: float
    currency: str = ""


class Paid(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="paid"):
    amount: float
    what: str = ""
    to: str = ""


class Owned(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="owned"):
    """Own kit or stock: a socket, a driver, a tin, a box of pins."""

    item: str
    number: float = 1
    size: str = ""


# ---- the record about itself --------------------------------------------------------------


class SettledPlan(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="settled_plan"):
    """A plan was settled on for a session, with the forecast it carried."""

    operations: Names = ()
    chance: float = 0.0
    minutes: float = 0.0


class PrintedSheet(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="printed_sheet"):
    """A sheet was printed: its kind, code, the last line it knew, the forecast it carried."""

    kind: str
    code: str
    line: int = 0
    forecast: str = ""


class Remarked(AtFact, frozen=True, kw_only=True, omit_defaults=True, tag="remarked"):
    pass


Doing = (
    DescribedVehicle | Described | ReadFigure | FoundBehind
    | TookOff | Opened | Slackened | Found | Measured | Drained
    | CutOut | Braced | Unbraced | DryFitted | Welded | LastSpark | WatchedFire | Bared | Coated
    | Fitted | NippedUp | Tightened | Filled | Proved | LookedAt | PutRight | Marked | Photographed | Closed
    | Stored | SentAway | CameBack | Turned | Scrapped | Blanked | Unblanked | Bagged | Unbagged
    | Lifted | LetDown | OpenedTin | DownedTools | Held | Ran
    | Wanted | Left | Guessed | TookTime | Ordered | Came | Offered | Quoted | Valued | Paid | Owned
    | Arranged | CalledOff | Freed | LeftSetUp
    | SettledPlan | PrintedSheet | Remarked
)  # fmt: skip


class Struck(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="struck"):
    """Takes one earlier line out of account, with the reason; may carry the line as it should have been.

    line     the struck line's number
    why      the reason, in the person's words
    instead  the corrected fact, which takes the struck line's place in the reading order
    words    the corrected line as typed
    """

    line: int
    why: str
    instead: Doing | None = None
    words: str = ""


AnyFact = Doing | Struck
