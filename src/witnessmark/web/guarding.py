"""What every answer passes on its way out: headers that bind the browser, and trouble told in three parts."""

from __future__ import annotations

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase

from witnessmark.ground.errors import WitnessMarkError
from witnessmark.web.house import house_of
from witnessmark.web.trouble import trouble_page

Answer = Callable[[HttpRequest], HttpResponseBase]

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)


def headed(answer: Answer) -> Answer:
    """Only this program's own script, style and pictures; nothing kept by others; nothing framed."""

    def with_headers(request: HttpRequest) -> HttpResponseBase:
        response = answer(request)
        response["Content-Security-Policy"] = POLICY
        response["Permissions-Policy"] = "geolocation=(), microphone=(), payment=()"
        response["Cross-Origin-Resource-Policy"] = "same-origin"
        if house_of(request):
            response["Cache-Control"] = "no-store"  # a borrowed tablet keeps nothing, photos neither
        response.setdefault("Cache-Control", "private, no-cache")
        for cookie in response.cookies.values():
            cookie["secure"] = cookie["secure"] or request.is_secure()
        return response

    return with_headers


class _ToldPlainly:
    """Bad input becomes a page that says what was given, what would hold and what to do."""

    def __init__(self, answer: Answer) -> None:
        self.answer = answer

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        return self.answer(request)

    def process_exception(self, request: HttpRequest, trouble: Exception) -> HttpResponse | None:
        return trouble_page(request, trouble) if isinstance(trouble, WitnessMarkError) else None


def told_plainly(answer: Answer) -> Answer:
    """Trouble raised on purpose is told, never shown as a fault of the program."""
    return _ToldPlainly(answer)
