"""Photos on pages: sent with a line or to one, shown by thing and by day, before beside after."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.devices import new_id, usable_id
from witnessmark.restoration.gallery import gallery
from witnessmark.restoration.photos import add_of_thing, add_to_line, photo_content
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.asked import number_of, words_of
from witnessmark.web.record import AT_HAND, with_record
from witnessmark.web.showing import page
from witnessmark.web.uploads import photos_sent

A_PAGE = 24
_FOR_EVER = "private, max-age=31536000, immutable"


@require_safe
@with_record
def photos_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Pairs of before and after, then every photo, latest first; `of` one part or joint."""
    flow = restoration.flow()
    of = words_of(request.GET.get("of", ""))
    past = number_of(request.GET.get("past", ""))
    found = gallery(flow, of)
    shown = found.photos[past : past + A_PAGE]
    further = past + A_PAGE if len(found.photos) > past + A_PAGE else 0
    return page(
        request,
        "photos.html",
        flow,
        of=of,
        found=found,
        shown=shown,
        past=past,
        further=further,
        new_id=new_id(),
    )


@require_POST
def add_photos(request: HttpRequest) -> HttpResponse:
    """Photos of a part or a joint, taken now."""
    return _of_thing(request, photos=_some(photos_sent(request)))


@with_record
def _of_thing(request: HttpRequest, restoration: Restoration, photos: tuple[str, ...]) -> HttpResponse:
    name = words_of(request.POST.get("of", ""))
    add_of_thing(restoration, name, photos, usable_id(request.POST.get("id", "")))
    return _seen(f"/photos?{urlencode({'of': name})}")


@require_POST
def add_to_entry(request: HttpRequest, number: int) -> HttpResponse:
    """Photos put with a line that is written already."""
    return _to_line(request, number=number, photos=_some(photos_sent(request)))


@with_record
def _to_line(
    request: HttpRequest, restoration: Restoration, number: int, photos: tuple[str, ...]
) -> HttpResponse:
    add_to_line(restoration, number, photos, usable_id(request.POST.get("id", "")))
    return _seen(f"/journal/{number}")


@require_POST
def keep_photos(request: HttpRequest) -> HttpResponse:
    """Photos sent ahead, one by one, of a form that is still to be sent; no line names them yet."""
    try:
        return JsonResponse({"kept": list(photos_sent(request))})
    except BadInput as trouble:
        return JsonResponse({"refused": f"{trouble}"}, status=400)


@require_http_methods(["GET", "HEAD"])
def photo(request: HttpRequest, name: str) -> HttpResponse:
    """One photo, whole."""
    return _jpeg(photo_content(folder_asked(request), name), _FOR_EVER)


@require_http_methods(["GET", "HEAD"])
def small_photo(request: HttpRequest, name: str) -> HttpResponse:
    """Its small copy; while that is still being made, the photo itself."""
    at_hand = _at_hand(request)
    made = at_hand.thumbnails.small(name)
    if made is not None:
        return _jpeg(made, _FOR_EVER)
    return _jpeg(photo_content(at_hand.folder, name), "no-store")


def folder_asked(request: HttpRequest) -> Path:
    """The folder of the record that is asked."""
    return _at_hand(request).folder


def _at_hand(request: HttpRequest) -> AtHand:
    at_hand = request.META[AT_HAND]
    assert isinstance(at_hand, AtHand)
    return at_hand


def _some(photos: tuple[str, ...]) -> tuple[str, ...]:
    if not photos:
        raise BadInput(
            given="no photo came with it",
            holds="at least one JPEG, PNG or WebP",
            do="Choose a photo first; nothing was written.",
        )
    return photos


def _seen(address: str) -> HttpResponse:
    return HttpResponse(status=303, headers={"Location": address})


def _jpeg(content: bytes, kept: str) -> HttpResponse:
    return HttpResponse(content, content_type="image/jpeg", headers={"Cache-Control": kept})
