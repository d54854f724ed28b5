"""What the bench has to say under an operation: short lines, only from what the record knows, at most three.

No figure of strength stands here: a joint that lets go is made one for one, as built.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import islice

from msgspec.structs import replace

from witnessmark.bench.answers.welds import answer_settings, bands_at
from witnessmark.bench.drawer import Drawer, lengths_in
from witnessmark.bench.seal_driver import UNDER_HIGH, UNDER_LOW, judge, order, seat_of, stacks
from witnessmark.bench.thread_list import find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantity import Quantity
from witnessmark.sheets.fastening import HOLLOW_KINDS, TORQUE, judge_figure
from witnessmark.sheets.numbers import AS_WRITTEN, fasteners_of, figure_of, fluid_of, sizes_of
from witnessmark.sheets.rows import Number, number
from witnessmark.state.closing import lets_go
from witnessmark.state.sizes import Sizes
from witnessmark.tables.sources import sources
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Joint

MOST = 3
PLUGS = "plug-weld-seam"
TO_A_FIGURE = frozenset({"close", "prove"})
FITTING = frozenset({"close", "work"})
AS_BUILT = "one for one, as built"
CERTIFIER = "certifier where the law asks"


class SlipLines:
    """The lines under one operation or one joint.

    catalogue  every kind of joint by its key
    sizes      as found and measured
    drawer     the person's own kit
    """

    def __init__(self, catalogue: Mapping[str, Kind], sizes: Sizes, drawer: Drawer) -> None:
        self.catalogue = catalogue
        self.sizes = sizes
        self.drawer = drawer

    def __call__(self, sort: str, joint: Joint | None) -> tuple[Number, ...]:
        """The lines an operation of this sort needs on a joint; none where no joint is meant."""
        return () if joint is None else tuple(islice(self._lines(sort, self._known(joint)), MOST))

    def _known(self, joint: Joint) -> Joint:
        """The joint with the thread that was measured on it, where none was described."""
        measured = self.sizes.threads.get(joint.name)
        return replace(joint, thread=measured.text) if measured and not joint.thread else joint

    def _lines(self, sort: str, joint: Joint) -> Iterator[Number]:
        kind = self.catalogue.get(joint.kind)
        if sort in TO_A_FIGURE and (figure := figure_of(joint, kind, plausibility_of(joint))):
            yield figure
        if joint.kind == PLUGS:
            yield from plugs_of(joint, kind, self.sizes.plugs.get(joint.name, 0))
        else:
            yield from spanner_of(joint)
        sized = list(sizes_of(joint, self.sizes))
        yield from sized
        if sort in FITTING and sized:
            yield from driver_for(joint, sized[0].value, self.drawer)
        yield from fluid_of(joint)
        if sort == "close" and kind is not None:
            yield from self._hot_or_wet(joint, kind)

    def _hot_or_wet(self, joint: Joint, kind: Kind) -> Iterator[Number]:
        if kind.closed_by == "coat":
            yield Number(label="steel, air, humidity", value="", where="first; then: bench paint window")
        if kind.hot_work:
            for name in (joint.name, *joint.holds):
                if thick := self.sizes.thick.get(name):
                    yield from welder_for(thick.quantity, self.drawer)
                    return


def plausibility_of(joint: Joint) -> str:
    """How the joint's torque figure stands; "" where there is none, or nothing can be told."""
    if joint.figure is None or joint.figure.unit != TORQUE:
        return ""
    return judge_figure(joint, Quantity(joint.figure.typed, joint.figure.high, TORQUE)).short


def spanner_of(joint: Joint) -> Iterator[Number]:
    """The spanner to try first, from the thread; else the thread alone, as written."""
    try:
        thread = find_thread(joint.thread) if joint.thread and joint.kind not in HOLLOW_KINDS else None
    except BadInput:
        thread = None
    if thread is None or not thread.spanner:
        yield from fasteners_of(joint)
        return
    standing = sources()[thread.head_source].standing
    yield number("spanner to try", thread.spanner, standing, f"for {joint.fasteners}")


def plugs_of(joint: Joint, kind: Kind | None, welded: int) -> Iterator[Number]:
    """How many plugs, where they were counted: as described, else as many as were welded."""
    number_of = joint.number if joint.number > 1 else welded
    if number_of:
        scope = f"; {CERTIFIER}" if kind and lets_go(joint, kind) else ""
        yield Number(label="plugs", value=f"{number_of}", where=f"{AS_WRITTEN}; {AS_BUILT}{scope}")


def driver_for(joint: Joint, size: str, drawer: Drawer) -> Iterator[Number]:
    """What drives a seal of this size in: from the own kit, else what to cut or turn up."""
    lengths = lengths_in(size)
    if "seal" not in joint.name or len(lengths) != 3:
        return
    try:
        seat = seat_of(lengths[0], lengths[1])
    except BadInput:
        return
    span = f"{seat.bore - UNDER_HIGH:g} to {seat.bore - UNDER_LOW:g} mm outside"
    tried = sorted([*(judge(seat, d) for d in drawer.drivers), *stacks(seat, drawer.drivers)], key=order)
    if tried and tried[0].verdict != "no":
        doubt = "" if tried[0].verdict == "fits" else f"; {tried[0].because}"
        yield Number(label="driver", value=tried[0].driver, where=f"own kit; {span} is asked{doubt}")
        return
    value = f"{span}, to pass over {seat.shaft:g} mm"
    yield number("driver", value, sources()["seal-driver-rule"].standing, "to be cut or turned up")


def welder_for(thick: Quantity, drawer: Drawer) -> Iterator[Number]:
    """Where to begin on the machine for sheet of a measured thickness; the wire's feed where it is owned."""
    try:
        found = bands_at(thick.value, None)
    except BadInput:
        return
    (amps_low, amps_high), (volts_low, volts_high) = found["current"], found["voltage"]
    value = f"{amps_low:.0f} to {amps_high:.0f} A, {volts_low:.0f} to {volts_high:.0f} V"
    if len(drawer.wires) == 1:
        feed = answer_settings(thickness=thick.value, wire=drawer.wires[0]).band("wire_feed")
        value += f", {drawer.wires[0]:g} mm wire at {_metres(feed.low)} to {_metres(feed.high)} m/min"
    standing = sources()["maker-settings-a"].standing
    yield number("welder", value, standing, f"for {thick.typed}; a scrap first, the machine's chart rules")


def _metres(feed: float | None) -> str:
    """Wire feed in metres a minute, from millimetres a second."""
    return f"{(feed or 0) * 0.06:.1f}"
