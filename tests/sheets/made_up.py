"""A small invented pickup with work half done, for the tests of sheets and of paper."""

from __future__ import annotations

from datetime import date, datetime

from witnessmark.bench.drawer import EMPTY
from witnessmark.gate.answer import GateAnswer, Hold, Unknown
from witnessmark.gate.holds import ask_gate
from witnessmark.ground.quantity import Quantity
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AnyFact,
    Bagged,
    Blanked,
    Described,
    DescribedVehicle,
    DownedTools,
    Drained,
    Fitted,
    Found,
    LastSpark,
    NippedUp,
    Proved,
    SentAway,
    Slackened,
    Stored,
    Struck,
    Tightened,
    TookOff,
)
from witnessmark.owed.debt import Debt
from witnessmark.owed.needs import Need
from witnessmark.owed.owed import owed_by, word_for
from witnessmark.plan.session import SafeStop, SessionPlan, Waiting
from witnessmark.sheets.slip_lines import SlipLines
from witnessmark.state.standing import State, state_from
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.things import Figure, Joint, Part

NAME = "Marrowby Ten pickup"
TODAY = date(2026, 3, 14)
NOW = datetime(2026, 3, 14, 9, 30)


def figure(value: float, typed: str, standing: str = "owner's book", where: str = "p. 41") -> Figure:
    return Figure(low=value, high=value, unit="N·m", typed=typed, standing=standing, where=where)


JOINTS = (
    Joint(
        name="pinion seal",
        kind="pinion-seal",
        place="rear axle",
        assembly="rear axle",
        holds=("pinion flange",),
        figure=figure(150, "110 lbf ft"),
        size="44.5 × 65 × 8 mm",
    ),
    Joint(
        name="propshaft bolts",
        kind="propshaft-flange",
        place="rear axle",
        assembly="rear axle",
        holds=("propshaft",),
        number=4,
        thread="3/8 UNF",
        figure=figure(47, "35 lbf ft", where="p. 44"),
    ),
    Joint(
        name="axle fill plug",
        kind="fill-and-drain-plug",
        place="rear axle",
        assembly="rear axle",
        fluid="gear oil 90",
        quantity=Quantity("2 1/4 pints", 1.278, "L"),
    ),
    Joint(
        name="axle cover gasket",
        kind="gasketed-cover",
        place="rear axle",
        assembly="rear axle",
        holds=("axle cover",),
        number=10,
        thread="5/16 UNC",
        figure=figure(22, "16 lbf ft", "from memory", ""),
    ),
    Joint(
        name="half-shaft o-ring, left",
        kind="half-shaft-seal",
        place="rear axle",
        side="left",
        assembly="rear axle",
        holds=("half-shaft, left",),
        figure=figure(30, "22 lbf ft", "guess", ""),
    ),
    Joint(
        name="axle u-bolts, left",
        kind="u-bolts",
        place="rear axle",
        side="left",
        assembly="rear axle",
        number=4,
    ),
    Joint(
        name="hub nut, left rear",
        kind="tapered-drive-hub",
        place="rear axle",
        side="left rear",
        assembly="rear axle",
        holds=("hub, left rear",),
        thread="3/4 UNF",
        figure=figure(190, "140 lbf ft"),
    ),
    Joint(
        name="wheel nuts, left rear",
        kind="wheel-nuts",
        place="rear axle",
        side="left rear",
        number=5,
        holds=("wheel, left rear",),
        figure=figure(75, "55 lbf ft", where="p. 12"),
    ),
    Joint(name="brake hose, rear", kind="brake-hose", place="rear axle", side="rear"),
    Joint(
        name="track rod end, left front",
        kind="ball-joint-taper",
        place="front axle",
        side="left front",
        figure=figure(47, "35 lbf ft", where="p. 63"),
    ),
    Joint(
        name="spring hanger outrigger, left rear",
        kind="jacking-point",
        place="left rear corner",
        side="left rear",
    ),
    Joint(name="steering wheel", kind="steering-wheel", place="cab"),
    Joint(name="seat belt anchor, left", kind="seat-belt-mounting", place="cab", side="left"),
    Joint(name="battery cable", kind="battery-feed", place="engine bay"),
    Joint(name="windscreen rubber", kind="screen-rubber", place="cab"),
    Joint(name="cab floor patch", kind="welded-patch", place="cab floor"),
    Joint(name="door trim, left", kind="plain-fixing", place="cab", side="left"),
)

PARTS = (
    Part(name="pinion flange", place="rear axle", assembly="rear axle"),
    Part(name="propshaft", place="rear axle", note="hang it from the frame, never on its front joint"),
    Part(name="axle cover", place="rear axle", assembly="rear axle"),
    Part(name="half-shaft, left", place="rear axle", side="left", assembly="rear axle"),
    Part(name="hub, left rear", place="rear axle", side="left rear", assembly="rear axle"),
    Part(name="wheel, left rear", place="rear axle", side="left rear"),
    Part(name="radiator", place="engine bay"),
    Part(name="windscreen glass", place="cab"),
)


def lines(*facts: tuple[date, str, str, AnyFact]) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            id=f"made-up-{n}",
            day=day,
            time=time,
            written=f"{day.isoformat()}T20:00:00",
            line=n,
            who="you",
            words=words,
            fact=fact,
        )
        for n, (day, time, words, fact) in enumerate(facts, start=1)
    )


FEB, MAR = date(2026, 2, 21), date(2026, 3, 7)

ENTRIES = lines(
    (FEB, "09:00", "marrowby ten pickup", DescribedVehicle(name=NAME, body="pickup", country="GB")),
    (FEB, "09:05", "rear axle and the rest", Described(parts=PARTS, joints=JOINTS)),
    (FEB, "10:00", "took off lr wheel", TookOff(at=("wheel, left rear",))),
    (FEB, "10:20", "prop off", TookOff(at=("propshaft",))),
    (FEB, "10:50", "drained axle 2 pints", Drained(at=("axle fill plug",), fluid="gear oil")),
    (FEB, "11:30", "pinion flange off, groove", TookOff(at=("pinion flange",))),
    (FEB, "11:31", "pinion flange scored", Found(at=("pinion flange",), condition="scored")),
    (
        FEB,
        "12:00",
        "bagged prop bolts 8 bits",
        Bagged(at=("propshaft bolts",), what="propshaft bolts and nuts", number=8, where="shelf 2"),
    ),
    (FEB, "12:05", "axle cover off", TookOff(at=("axle cover",))),
    (
        FEB,
        "12:10",
        "cover bolts in a bag",
        Bagged(at=("axle cover gasket",), what="axle cover bolts", where="shelf 2"),
    ),
    (
        FEB,
        "12:20",
        "rad to plater",
        SentAway(at=("radiator",), with_whom="Tansyfield Steel", due_back="2026-03-10"),
    ),
    (MAR, "10:00", "half shaft left out", TookOff(at=("half-shaft, left",))),
    (MAR, "10:10", "half shaft on shelf 3", Stored(at=("half-shaft, left",), where="shelf 3")),
    (MAR, "10:15", "2 rags in axle tube", Blanked(at=("half-shaft o-ring, left",), number=2)),
    (MAR, "10:40", "hub nut lr off", TookOff(at=("hub, left rear",))),
    (MAR, "11:00", "hub back on nipped", NippedUp(at=("hub nut, left rear",))),
    (MAR, "11:30", "slackened u bolts left", Slackened(at=("axle u-bolts, left",))),
    (MAR, "11:40", "tre l/f off", TookOff(at=("track rod end, left front",))),
    (
        MAR,
        "11:50",
        "tre l/f 47nm",
        Tightened(at=("track rod end, left front",), figures=(Quantity("47 Nm", 47, "N·m"),)),
    ),
    (MAR, "12:00", "steering wheel off", TookOff(at=("steering wheel",))),
    (MAR, "12:05", "steering wheel on", Tightened(at=("steering wheel",))),
    (
        MAR,
        "12:06",
        "new nut steering wheel",
        Fitted(at=("steering wheel",), item="steering wheel locking nut or tab"),
    ),
    (MAR, "12:07", "steering wheel tug ok", Proved(at=("steering wheel",), seen=True)),
    (MAR, "12:20", "battery cable off", TookOff(at=("battery cable",))),
    (MAR, "12:25", "screen rubber out", TookOff(at=("windscreen rubber",))),
    (MAR, "12:30", "door trim left off", TookOff(at=("door trim, left",))),
    (MAR, "12:35", "seat belt anchor slack", Slackened(at=("seat belt anchor, left",))),
    (MAR, "12:40", "brake hose rear off", TookOff(at=("brake hose, rear",))),
    (MAR, "12:45", "outrigger cut out", TookOff(at=("spring hanger outrigger, left rear",))),
    (MAR, "12:50", "down tools, hub nut finger tight", DownedTools(at=("hub nut, left rear",))),
    (MAR, "12:55", "door trim right off", TookOff(at=("door trim, left",))),
    (TODAY, "09:10", "last spark outrigger", LastSpark(at=("spring hanger outrigger, left rear",))),
    (TODAY, "09:20", "strike 31 wrong side", Struck(line=31, why="wrong side")),
)


def made_up_state(entries: tuple[Entry, ...] = ENTRIES) -> State:
    return state_from(entries)


LINES = SlipLines(catalogue(), made_up_state().sizes, EMPTY)


def words_of(state: State) -> dict[str, str]:
    return {name: word_for(state, name) for name in state.joints}


def debts_of(state: State) -> tuple[Debt, ...]:
    return owed_by(state, NOW)


def operation(
    what: str, name: str, sort: str, minutes: tuple[float, float, float], **more: object
) -> Operation:
    return Operation(
        id=f"{sort}/{name}",
        what=what,
        name=name,
        sort=sort,
        job="renew/pinion seal",
        where="rear axle",
        minutes=Minutes(*minutes),
        **more,  # type: ignore[arg-type]
    )


PLAN = SessionPlan(
    hours=3,
    work_minutes=120,
    helper=True,
    operations=(
        operation("clean the bore and the flange seat", "pinion seal", "work", (10, 15, 30)),
        operation(
            "drive in new pinion seal, square and to depth",
            "pinion seal",
            "work",
            (10, 20, 45),
            needs=("pinion seal",),
            cautions=("stands",),
        ),
        operation(
            "fit pinion flange with a new nut, creep up to the marks",
            "pinion seal",
            "close",
            (15, 25, 60),
            leaves="tight",
            hands=2,
            put_down=False,
            cautions=("brakes-both-sides",),
        ),
        operation(
            "propshaft up, bolts to figure",
            "propshaft bolts",
            "close",
            (15, 20, 40),
            leaves="tight",
            fights=True,
            note="marks on both flanges meet",
        ),
        operation("fill axle to the level hole", "axle fill plug", "close", (5, 10, 15), leaves="tight"),
    ),
    chance=0.68,
    chance_words="about 7 in 10",
    minutes=(70, 95, 160),
    safe_stops=(
        SafeStop(after=0, what="as it stands now: bore covered, axle tagged EMPTY", chance=1.0),
        SafeStop(after=2, what="seal in and greased, bore covered", chance=0.93),
        SafeStop(after=4, what="propshaft up; axle still empty, tagged EMPTY, NO OIL", chance=0.77),
    ),
    left_loose=("hub nut, left rear", "axle u-bolts, left"),
    bring=("seal driver 62 to 64 mm", "torque wrench", "new pinion seal", "tissue"),
    order=("half-shaft o-ring, two", "cover gasket"),
    waiting=(
        Waiting(
            what="close the axle cover", name="axle cover gasket", because="the gasket is not ordered yet"
        ),
        Waiting(
            what="weld in the outrigger",
            name="spring hanger outrigger, left rear",
            because="needs 4 h without a break",
        ),
    ),
    proven=True,
    factor_words="your own guesses have run over by half",
)

NEEDS = (
    Need(
        what="half-shaft o-ring",
        size="47 × 2.5 mm",
        quantity=2,
        for_=("half-shaft o-ring, left",),
        by="21 Mar 2026",
    ),
    Need(what="cover gasket", quantity=1, for_=("axle cover gasket",), by="21 Mar 2026"),
    Need(
        what="split pin", size="1/8 × 2 in", quantity=6, have=2, for_=("hub nut, left rear", "track rod end")
    ),
    Need(what="pinion seal", size="44.5 × 65 × 8 mm", quantity=1, ordered=1, for_=("pinion seal",)),
    Need(what="gear oil 90", quantity=2, have=2, for_=("axle fill plug",)),
)

PEDAL = Unknown(
    id="brake-hold",
    name="brake hold",
    text="pedal held hard for two minutes does not sink",
    how="helper in the seat, you at each wheel",
    system="brakes",
    if_missed="lets_go",
    because="never looked at in this record",
    pays="proved brake hold",
    code="B4KH",
    helper="needed",
    limits=("any leak, brakes on or off (VOSA, now DVSA; Great Britain; read as an excerpt 2026-11)",),
)
PAPERS = Unknown(
    id="insurance",
    name="insurance",
    text="cover note for the road, dated",
    how="look in the folder",
    system="papers",
    if_missed="lets_go",
    because="never looked at in this record",
    pays="looked at insurance",
    code="N5RC",
)
TYRES = Unknown(
    id="tyres",
    name="tyres",
    text="age, tread and cuts of each tyre, spare too",
    how="read the side walls",
    system="wheels",
    if_missed="lets_go",
    because="looked at in line 12, and the wheel came off since",
    pays="looked at tyres",
    code="TY2R",
    limits=("tread 1.6 mm over the middle three quarters (DVSA; Great Britain; read as an excerpt 2026-11)",),
)


def road_answer(state: State) -> GateAnswer:
    return ask_gate("road", state, debts_of(state), TODAY)


def hand_made_answer(
    holds: tuple[Hold, ...], unknown: tuple[Unknown, ...] = (PAPERS, PEDAL, TYRES)
) -> GateAnswer:
    return GateAnswer(
        gate="road", screen_name="road", note="", asked_on=TODAY, holds=holds, not_known=unknown
    )
