"""Pages put together: one place that knows the templates, the record's name, and how a state is drawn."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.http.request import split_domain_port
from django.middleware.csrf import get_token
from django.template import engines
from jinja2 import Environment
from markupsafe import Markup

from witnessmark.restoration.flow import Flow
from witnessmark.restoration.screens import before_blank
from witnessmark.sheets.marks import BROAD, TALL, mark_svg
from witnessmark.sheets.phrases import counted, day_words, days_words, fit_to_show, short_day
from witnessmark.sheets.text import stood
from witnessmark.web.house import hand_of

# What is handed along with a question: the vehicles of a shop, to their list; the list's port, to a vehicle.
SHOP = "witnessmark.shop"
LIST_PORT = "witnessmark.list_port"

STATES = ("apart", "loose", "tight", "proven")

# The pages by name and address, in the order a session goes.
PLACES = (
    ("Now", "/"),
    ("Line", "/line"),
    ("Session", "/session"),
    ("Plan", "/plan"),
    ("Ahead", "/ahead"),
    ("What if", "/whatif"),
    ("Owed", "/owed"),
    ("Gates", "/gate"),
    ("Needs", "/needs"),
    ("Buy", "/buy"),
    ("Shelf", "/shelf"),
    ("Vehicle", "/vehicle"),
    ("Journal", "/journal"),
    ("Photos", "/photos"),
    ("The week", "/week"),
    ("History", "/history"),
    ("Bench", "/bench"),
    ("Sheets", "/sheets"),
)


def environment(**options: Any) -> Environment:
    """The templates' surroundings: escaping on, and the few words pages are made with."""
    made = Environment(**options, trim_blocks=True, lstrip_blocks=True)
    made.filters |= {"shown": fit_to_show, "day": day_words, "short_day": short_day, "up": first_up}
    made.filters |= {"address": line_address}
    made.globals |= {"mark": mark, "counted": counted, "stood": stood, "days": days_words}
    made.globals |= {"places": PLACES, "marks_drawn": marks_drawn}
    return made


def mark(state: str) -> Markup:
    """The witness mark of a state, for the eye; the word always stands beside it. It is drawn once a page."""
    if not mark_svg(state):
        return Markup("")
    box = f'viewBox="0 0 {BROAD} {TALL}" aria-hidden="true" focusable="false"'
    return Markup(f'<svg class="mark" {box}><use href="#{state}"/></svg>')


def marks_drawn() -> Markup:
    """The four marks, each drawn once, for the others to point at."""
    symbols = (
        mark_svg(state)
        .replace("<svg ", f'<symbol id="{state}" ', 1)
        .replace('xmlns="http://www.w3.org/2000/svg" ', "")
        .replace("</svg>", "</symbol>")
        for state in STATES
    )
    return Markup(f'<svg class="unseen" aria-hidden="true" focusable="false">{"".join(symbols)}</svg>')


def line_address(words: str) -> str:
    """Where a line is read back; one that wants a figure opens in the box instead, to be filled.

    >>> line_address("took off hub"), line_address("measured hub FIGURE")
    ('/line?words=took+off+hub', '/line?words=measured+hub+&change=1')
    """
    unfilled = before_blank(words)
    return "/line?" + urlencode({"words": f"{unfilled} ", "change": 1} if unfilled else {"words": words})


def first_up(words: str) -> str:
    """Words with their first letter a capital.

    >>> first_up("lets go")
    'Lets go'
    """
    return words[:1].upper() + words[1:]


def page(
    request: HttpRequest, template: str, flow: Flow | None, *, code: int = 200, **values: Any
) -> HttpResponse:
    """One page, with what all carry: the vehicle's name, the day, the last line, the form's token."""
    known = hand_of(request)
    nameless = "the vehicle" if known and SHOP not in request.META else "Witness Mark"
    common = {
        "here": request.path,
        "vehicle": (flow.vehicle.name if flow else "") or nameless,
        "today": flow.today if flow else None,
        "line": flow.line if flow else 0,
        "token": get_token(request),
        "known": known,
        "shop": SHOP in request.META,
        "all_vehicles": _list_address(request),
        "record": flow.entries[0].id if flow and flow.entries else "",
    }
    body = engines["jinja2"].get_template(template).render(common | values)
    return HttpResponse(body, status=code)


def _list_address(request: HttpRequest) -> str:
    """Where the list of all vehicles is, "" where there is one vehicle."""
    if LIST_PORT not in request.META:
        return ""
    domain, _ = split_domain_port(request.get_host())
    return f"{request.scheme}://{domain}:{request.META[LIST_PORT]}/"
