"""Sheets made from the flow: which plain values each of them is given."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import PrintedSheet
from witnessmark.plan.session import SessionPlan
from witnessmark.reach.way_in import WayIn
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.sheets.closing import closing_sheet
from witnessmark.sheets.gate import BRIEF, PAPER, gate_sheet
from witnessmark.sheets.helper import helper_sheet
from witnessmark.sheets.labels import label_sheet, labels
from witnessmark.sheets.lists import journal_sheet, owed_sheet, state_sheet
from witnessmark.sheets.numbers import Lines
from witnessmark.sheets.order import needs_sheet, order_sheet
from witnessmark.sheets.reach import reach_sheet
from witnessmark.sheets.rows import Sheet
from witnessmark.sheets.session import session_sheet
from witnessmark.sheets.wall import wall_sheet
from witnessmark.tables.sources import cautions
from witnessmark.vehicle.catalogue import catalogue

KINDS = ("session", "gate", "wall", "closing", "labels", "order", "helper")


class Asked(Struct, frozen=True, kw_only=True):
    """Which sheet, and what it is made for.

    assembly  for the closing sheet: an assembly, or one joint
    """

    kind: str
    gate: str = "road"
    assembly: str = ""
    hours: float = 3.0
    helper: bool = False


def make_sheet(flow: Flow, asked: Asked) -> Sheet:
    """The sheet asked for."""
    match asked.kind:
        case "session":
            return session_screen(flow, flow.session(asked.hours, helper=asked.helper))
        case "gate":
            return gate_screen(flow, asked.gate, PAPER)
        case "wall":
            plan = flow.session(asked.hours, helper=asked.helper)
            return wall_sheet(flow.state, flow.owed, plan, flow.gate("road"), today=flow.today)
        case "closing":
            return closing_screen(flow, asked.assembly)
        case "labels":
            made = labels(flow.state, flow.owed, catalogue())
            return label_sheet(made, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)
        case "order":
            return order_sheet(flow.needs_dated, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)
        case "helper":
            plan = flow.session(asked.hours, helper=True)
            asks = flow.gate("road").not_known
            return helper_sheet(
                flow.owed,
                plan.operations,
                asks,
                vehicle=flow.vehicle.name,
                today=flow.today,
                line=flow.line,
            )
        case _:
            raise BadInput(
                given=f"there is no {asked.kind!r} sheet",
                holds=f"one of {', '.join(KINDS)}",
                do="Ask for one of these.",
            )


def owed_screen(flow: Flow, *, every: bool = False, full: bool = False) -> Sheet:
    """What is owed now; with `every` also what is not due yet; `full` tells every debt by itself."""
    debts = flow.owed if every else tuple(d for d in flow.owed if d.overdue)
    return owed_sheet(
        debts,
        words_of(flow),
        vehicle=flow.vehicle.name,
        today=flow.today,
        line=flow.line,
        full=full,
    )


def gate_screen(flow: Flow, name: str, told: str = BRIEF) -> Sheet:
    """What holds a gate."""
    return gate_sheet(
        flow.gate(name),
        vehicle=flow.vehicle.name,
        line=flow.line,
        told=told,
        assembly_of=flow.vehicle.assembly_of,
    )


def state_screen(flow: Flow) -> Sheet:
    """How everything stands."""
    return state_sheet(flow.state, words_of(flow), today=flow.today)


def needs_screen(flow: Flow) -> Sheet:
    """What must be in hand."""
    return needs_sheet(flow.needs_dated, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)


def journal_screen(flow: Flow) -> Sheet:
    """The lines as written."""
    return journal_sheet(flow.entries, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)


def session_screen(flow: Flow, plan: SessionPlan) -> Sheet:
    """What fits the session."""
    return session_sheet(
        plan,
        flow.vehicle,
        catalogue(),
        day=flow.today,
        line=flow.line,
        cautions=cautions(),
        numbers=lines_of(flow),
        full=False,
    )


def reach_screen(flow: Flow, way: WayIn) -> Sheet:
    """The way in, and what is worth doing while it is open."""
    more = flow.while_open(way)
    return reach_sheet(way, more, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)


def closing_screen(flow: Flow, name: str) -> Sheet:
    """The closing sheet of an assembly, or of the assembly a joint belongs to."""
    known = flow.vehicle.assemblies
    plain = " ".join(name.lower().split())
    found = [a for a in known if plain == a or plain == a.replace(",", "")]
    if not found:
        found = [a for a in known if plain and plain in a.replace(",", "")]
    if len(found) != 1:
        raise BadInput(
            given=f"{name!r} " + ("could be several" if found else "is no assembly of this record"),
            holds="the whole name of one assembly",
            do='Name it, as: sheet closing --of "drum brake corner left rear"',
            near=tuple(found or known)[:4],
        )
    return closing_sheet(
        found[0],
        flow.state,
        flow.owed,
        flow.vehicle,
        catalogue(),
        today=flow.today,
        words=words_of(flow),
        numbers=lines_of(flow),
    )


def lines_of(flow: Flow) -> Lines:
    """What the bench has to say under each joint, from what the record knows of it and of the own kit."""
    from witnessmark.restoration.drawer import drawer_owned
    from witnessmark.sheets.slip_lines import SlipLines

    return SlipLines(catalogue(), flow.state.sizes, drawer_owned(flow.state.supply))


def words_of(flow: Flow) -> dict[str, str]:
    """The word for the state of every joint."""
    return {name: flow.word(name) for name in flow.state.joints}


def keep_printed(restoration: Restoration, sheet: Sheet) -> None:
    """Write down that a sheet was printed, with its code and the forecast it carried."""
    fact = PrintedSheet(kind=sheet.kind, code=sheet.code, line=sheet.line, forecast=sheet.headline)
    restoration.write_fact(fact, f"printed the {sheet.kind} sheet {sheet.code}")
