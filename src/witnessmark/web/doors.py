"""The door: on the house network nobody reads before logging in, and an onlooker does not write."""

from __future__ import annotations

from collections.abc import Callable
from urllib.parse import urlencode

from django.core.exceptions import DisallowedHost
from django.http import HttpRequest, HttpResponse
from django.http.request import split_domain_port, validate_host
from django.http.response import HttpResponseBase
from django.middleware.csrf import rotate_token
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_http_methods, require_POST

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.people import LONGEST, OWNER, Hand, TooManyTries
from witnessmark.web.house import HAND, LOOPBACK, cookie_name, hand_of, house_of, key_of, now
from witnessmark.web.showing import page

Answer = Callable[[HttpRequest], HttpResponseBase]

LOG_IN = "/in"
OPEN_TO_ALL = frozenset({LOG_IN, "/here"})  # neither says a word of the record
OWN = frozenset({LOG_IN, "/out", "/phrase"})  # what an onlooker may send as well


def named(answer: Answer) -> Answer:
    """A question under a name these pages do not go by is not answered."""

    def under_a_name(request: HttpRequest) -> HttpResponseBase:
        house = house_of(request)
        asked = request.META.get("HTTP_HOST", request.META.get("SERVER_NAME", ""))
        domain, _ = split_domain_port(asked)
        if not domain or not validate_host(domain, list(house.hosts if house else LOOPBACK)):
            raise DisallowedHost(f"asked for under the name {asked[:100]!r}")
        return answer(request)

    return under_a_name


def guarded(answer: Answer) -> Answer:
    """Whoever is logged in is known from here on; a stranger gets the door and nothing else."""

    def at_the_door(request: HttpRequest) -> HttpResponseBase:
        house = house_of(request)
        if house is None:
            return answer(request)
        person = house.people.whose(key_of(request), now())
        if person is not None:
            request.META[HAND] = Hand(name=person.name, role=person.role, logged_in=True)
        elif request.path_info not in OPEN_TO_ALL:
            return _stranger(request)
        hand = hand_of(request)
        writes = request.method not in ("GET", "HEAD", "OPTIONS") and request.path_info not in OWN
        if writes and hand is not None and not hand.may_write:
            return _onlooker(request)
        return answer(request)

    return at_the_door


@require_http_methods(["GET", "HEAD", "POST"])
def log_in_page(request: HttpRequest) -> HttpResponse:
    """Name and pass phrase; then on to where one was going."""
    house = house_of(request)
    if house is None:
        return _to("/")
    if request.method != "POST":
        return _door(request, to=request.GET.get("to", ""), words=request.GET.get("words", ""))
    try:
        key = house.people.log_in(
            request.POST.get("name", ""),
            request.POST.get("phrase", ""),
            source=request.META.get("REMOTE_ADDR", ""),
            now=now(),
        )
    except BadInput as trouble:
        return _door(request, to=request.POST.get("to", ""), words=_words(request), trouble=trouble)
    rotate_token(request)
    response = _to(_onward(request))
    _hand_over(request, response, key)
    return response


@require_POST
def log_out(request: HttpRequest) -> HttpResponse:
    """End this log-in."""
    house = house_of(request)
    response = _to(LOG_IN if house else "/")
    if house is not None:
        house.people.log_out(key_of(request))
        response.delete_cookie(cookie_name(request), samesite="Strict")
    return response


@require_http_methods(["GET", "HEAD", "POST"])
def phrase_page(request: HttpRequest) -> HttpResponse:
    """Change one's own pass phrase, knowing the old one."""
    house, hand = house_of(request), hand_of(request)
    if house is None or hand is None:
        return _to("/")
    if request.method != "POST":
        return page(request, "phrase.html", None)
    old, new = request.POST.get("phrase", ""), request.POST.get("new", "")
    try:
        if new != request.POST.get("again", ""):
            raise BadInput(
                given="two new pass phrases that differ",
                holds="the same one twice",
                do="Type both once more.",
            )
        house.people.renew_phrase(hand.name, old, new, source=request.META.get("REMOTE_ADDR", ""), now=now())
    except BadInput as trouble:
        return page(request, "phrase.html", None, code=_code(trouble), trouble=trouble)
    return _to(LOG_IN)


@require_http_methods(["GET", "HEAD", "POST"])
def people_page(request: HttpRequest) -> HttpResponse:
    """For an owner: who may log in; anybody can be logged out everywhere."""
    house, hand = house_of(request), hand_of(request)
    if house is None or hand is None or hand.role != OWNER:
        raise BadInput(
            given="only an owner sees who may log in",
            holds="pages on the house network, and an owner logged in",
            do="On the machine itself: witnessmark people",
        )
    if request.method == "POST":
        house.people.end_log_ins(request.POST.get("name", ""))
        return _to("/people")
    return page(request, "people.html", None, people=house.people.everybody(), hand_name=hand.name)


def _hand_over(request: HttpRequest, response: HttpResponse, key: str) -> None:
    """Give the browser its key: no script reads it, no other site sends it."""
    response.set_cookie(
        cookie_name(request),
        key,
        max_age=int(LONGEST.total_seconds()),
        httponly=True,
        samesite="Strict",
        secure=request.is_secure(),
    )


def _stranger(request: HttpRequest) -> HttpResponse:
    """To the door; what was typed goes along, and comes back after logging in."""
    if request.method in ("GET", "HEAD"):
        return _to(f"{LOG_IN}?{urlencode({'to': request.get_full_path()[:2000]})}")
    trouble = BadInput(
        given="you are not logged in, or no longer",
        holds="a log-in of less than a week, used within twelve hours",
        do="Log in. What you typed is kept, and read back to you then.",
    )
    return _door(request, words=_words(request), trouble=trouble)


def _onlooker(request: HttpRequest) -> HttpResponse:
    trouble = BadInput(
        given="an onlooker was going to write",
        holds="an owner or a helper",
        do="Ask an owner to let you write. Nothing was written.",
    )
    return page(request, "trouble.html", None, code=403, trouble=trouble, words=_words(request))


def _door(
    request: HttpRequest, *, to: str = "", words: str = "", trouble: BadInput | None = None
) -> HttpResponse:
    code = 200 if trouble is None else _code(trouble)
    plain = not request.is_secure()
    return page(request, "in.html", None, code=code, to=to, words=words, trouble=trouble, readable=plain)


def _code(trouble: BadInput) -> int:
    return 429 if isinstance(trouble, TooManyTries) else 403


def _onward(request: HttpRequest) -> str:
    """Where one was going, if that is a page of these; a line typed before is read back first."""
    if words := _words(request):
        return f"/line?{urlencode({'words': words})}"
    to = request.POST.get("to", "")
    safe = to.startswith("/") and url_has_allowed_host_and_scheme(to, allowed_hosts=None)
    return to if safe and to.isprintable() else "/"


def _words(request: HttpRequest) -> str:
    """The line that was typed; a form with files in it is not opened for a stranger."""
    plain = request.content_type == "application/x-www-form-urlencoded"
    return request.POST.get("words", "")[:1000] if plain else ""


def _to(address: str) -> HttpResponse:
    return HttpResponse(status=303, headers={"Location": address})
