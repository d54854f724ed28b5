"""The line: typed, read back as one sentence, confirmed, written once however often it is sent."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.http import require_POST, require_safe
from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.devices import usable_id, written_as
from witnessmark.restoration.heard import Heard
from witnessmark.restoration.photos import write_with_photos
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import kinds_known, line_shown, offered_lines
from witnessmark.web.ahead import answered, is_snag
from witnessmark.web.asked import day_of, number_of, time_of, words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page
from witnessmark.web.uploads import photos_kept, photos_sent

OFFERED = 6
MOVED_ON = "The record has moved on since this was read back. Read it once more."


class Typed(Struct, frozen=True, kw_only=True):
    """A line as a device sends it: its words, its id, the answers given so far, when it was typed."""

    words: str
    id: str
    kind: str = ""
    reading: int = 0
    day: str = ""
    at: str = ""

    def heard(self, restoration: Restoration, *, follow: bool = True) -> Heard:
        """The line as this record understands it; a device whose clock runs ahead has no say in the day."""
        day = day_of(self.day)
        told = day if day is not None and day <= restoration.now.date() else None
        at = self.at if told else ""
        return restoration.hear(
            self.words, kind=self.kind, reading=self.reading, day=told, at=at, follow=follow
        )


def _typed(sent: Any) -> Typed:
    return Typed(
        words=words_of(sent.get("words", "")),
        id=usable_id(sent.get("id", "")),
        kind=sent.get("kind", "").strip(),
        reading=number_of(sent.get("reading", "")),
        day=sent.get("day", "") if day_of(sent.get("day", "")) else "",
        at=time_of(sent.get("at", "")),
    )


@require_safe
@with_record
def line_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The box; with words in it, what was understood of them; after writing, what was written."""
    typed = _typed(request.GET)
    written = number_of(request.GET.get("written", ""))
    if typed.words and not request.GET.get("change"):
        if is_snag(typed.words) and not request.GET.get("written_down"):
            return answered(request, restoration, typed.words)
        return _read_back(request, restoration, typed, kept=photos_kept(request, "GET"))
    flow = restoration.flow()
    shown = line_shown(flow, written) if written else None
    offered = () if shown or typed.words else offered_lines(flow)[:OFFERED]
    return page(request, "line.html", flow, written=shown, offered=offered, typed=typed, new_id=typed.id)


@require_POST
def write_line(request: HttpRequest) -> HttpResponse:
    """Write a line that was read back and confirmed, and the photos that come with it."""
    return _write(request, photos=photos_sent(request))


@with_record
def _write(request: HttpRequest, restoration: Restoration, photos: tuple[str, ...]) -> HttpResponse:
    typed = _typed(request.POST)
    before = written_as(restoration.entries, typed.id, typed.words)
    if before:
        return _written(before[-1].line)
    heard = typed.heard(restoration, follow=False)
    if heard.understood.ask is not None:
        return _read_back(request, restoration, typed, kept=photos)
    if heard.understood.best.sentence != request.POST.get("said", ""):
        return _read_back(request, restoration, typed, note=MOVED_ON, kept=photos)
    return _written(write_with_photos(restoration, heard, typed.id, photos)[-1].line)


@require_POST
def send_line(request: HttpRequest) -> HttpResponse:
    """Take a line kept on a device while the connection was cut: written where sure, else asked about."""
    try:
        photos = photos_sent(request)
    except BadInput as trouble:
        return JsonResponse({"asks": f"{trouble}"})
    return _send(request, photos=photos)


@with_record
def _send(request: HttpRequest, restoration: Restoration, photos: tuple[str, ...]) -> HttpResponse:
    try:
        typed = _typed(request.POST)
        before = written_as(restoration.entries, typed.id, typed.words)
        if before:
            return JsonResponse({"written": before[-1].line})
        heard = typed.heard(restoration)
        confirmed = heard.understood.best.sentence == request.POST.get("said", "")
        if heard.understood.ask is None and (heard.sure or confirmed):
            line = write_with_photos(restoration, heard, typed.id, photos)[-1].line
            return JsonResponse({"written": line, "sentence": heard.sentence()})
        return JsonResponse({"asks": heard.understood.best.sentence})
    except BadInput as trouble:
        return JsonResponse({"asks": f"{trouble}"})


def _written(line: int) -> HttpResponse:
    return HttpResponse(status=303, headers={"Location": f"/line?written={line}"})


def _read_back(
    request: HttpRequest,
    restoration: Restoration,
    typed: Typed,
    note: str = "",
    kept: tuple[str, ...] = (),
) -> HttpResponse:
    try:
        heard = typed.heard(restoration)
    except BadInput as trouble:
        values = {"trouble": trouble, "typed": typed, "new_id": typed.id, "offered": ()}
        return page(request, "line.html", restoration.flow(), code=400, **values)
    best = heard.understood.best
    return page(
        request,
        "read_back.html",
        restoration.flow(),
        typed=typed,
        heard=heard,
        pieces=pieces(typed.words, best.unplaced if not typed.reading else ()),
        follows=heard.follows.sentence(),
        note=note,
        kept=kept,
        kinds=kinds_known() if heard.understood.ask else (),
    )


def pieces(words: str, spans: tuple[tuple[int, int], ...]) -> list[tuple[str, bool]]:
    """The words cut where something was not understood, each piece with whether it is to be underlined.

    >>> pieces("took off the thingummy", ((13, 22),))
    [('took off the ', False), ('thingummy', True)]
    """
    marked = {n for start, end in spans for n in range(start, end)}
    cuts = [0, *(n for n in range(1, len(words)) if (n in marked) != (n - 1 in marked)), len(words)]
    return [(words[a:b], a in marked) for a, b in pairwise(cuts) if a < b]
