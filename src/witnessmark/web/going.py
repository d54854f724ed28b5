"""What takes longer than a moment goes on behind a page that says so, and can be left off.

The work is done in a thread of its own. Whoever asked waits a moment for it; then a page stands in, which
asks again by itself, without scripts. What is left off writes nothing, and its answer is thrown away.
"""

from __future__ import annotations

import secrets
import time
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from functools import wraps
from threading import Lock
from typing import Concatenate, ParamSpec

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_POST, require_safe

from witnessmark.ground.errors import BadInput
from witnessmark.web.house import hand_of
from witnessmark.web.showing import page

GOINGS = "witnessmark.goings"
GOING = "witnessmark.going"
PATIENCE = 1.0  # seconds until a page stands in
AT_ONCE, MOST_KEPT = 8, 24
P = ParamSpec("P")


class LeftOff(BadInput):
    """Somebody who had asked for it wanted it no longer."""

    def __init__(self) -> None:
        super().__init__(
            given="it was left off before it was done",
            holds="the wait, where it is still wanted",
            do="Ask again. Nothing was written.",
        )


class Going:
    """One piece of work on its way.

    what   for whoever waits: "the session sheet"
    where  the address that asked for it; whose  the hand
    """

    def __init__(self, what: str, where: str, whose: str, began: float) -> None:
        self.key = secrets.token_hex(16)
        self.what, self.where, self.whose, self.began = what, where, whose, began
        self.answer: Future[HttpResponse] = Future()
        self._lock = Lock()
        self._left = self._final = False

    def leave_off(self) -> bool:
        """Want it no longer; False where it is past the point at which that can be."""
        with self._lock:
            self._left = not self._final
            return self._left

    def go_on(self, *, final: bool = False) -> None:
        """Raise LeftOff where nobody wants it any more; `final`: what follows writes, and is done."""
        with self._lock:
            if self._left:
                raise LeftOff
            self._final = self._final or final


class Goings:
    """All work on its way in one program, and the last answers that were not fetched."""

    def __init__(self, patience: float = PATIENCE, clock: Callable[[], float] = time.monotonic) -> None:
        self.patience = patience
        self.clock = clock
        self._hands = ThreadPoolExecutor(AT_ONCE, thread_name_prefix="going")
        self._kept: dict[str, Going] = {}
        self._lock = Lock()

    def begin(self, going: Going, work: Callable[[], HttpResponse]) -> None:
        """Let it go on by itself; the oldest answers make room."""
        with self._lock:
            while len(self._kept) >= MOST_KEPT:
                oldest = next((key for key, one in self._kept.items() if one.answer.done()), None)
                if oldest is None:
                    raise BadInput(
                        given="much is on its way already",
                        holds=f"fewer than {MOST_KEPT} things at once",
                        do="Wait for one of them, or leave one off. Nothing was written.",
                    )
                del self._kept[oldest]
            self._kept[going.key] = going

        def all_of_it() -> HttpResponse:
            going.go_on()
            return work()

        going.answer = self._hands.submit(all_of_it)

    def find(self, key: str, whose: str) -> Going:
        """One that this hand asked for. Raises BadInput where there is none."""
        with self._lock:
            going = self._kept.get(key)
        if going is None or going.whose != whose:
            raise BadInput(
                given="what was asked for here is not on its way",
                holds="a page that was opened a short while ago",
                do="Ask for it again.",
            )
        return going

    def seconds(self, going: Going) -> int:
        """How long it has been going."""
        return int(self.clock() - going.began)


def unhurried(
    what: str,
) -> Callable[
    [Callable[Concatenate[HttpRequest, P], HttpResponse]], Callable[Concatenate[HttpRequest, P], HttpResponse]
]:
    """Let a view take its time: after a moment a page stands in for it."""

    def around(
        view: Callable[Concatenate[HttpRequest, P], HttpResponse],
    ) -> Callable[Concatenate[HttpRequest, P], HttpResponse]:
        @wraps(view)
        def wrapped(request: HttpRequest, /, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
            goings = request.META.get(GOINGS)
            if not isinstance(goings, Goings):
                return view(request, *args, **kwargs)
            _ = request.POST  # read now: the connection is not there later
            going = Going(what, request.get_full_path(), _whose(request), goings.clock())
            request.META[GOING] = going
            goings.begin(going, lambda: view(request, *args, **kwargs))
            wait([going.answer], goings.patience)
            if going.answer.done():
                return going.answer.result()
            return HttpResponse(status=303, headers={"Location": f"/going/{going.key}"})

        return wrapped

    return around


def go_on(request: HttpRequest, *, final: bool = False) -> None:
    """For a view between two steps: stop here where it was left off; see `Going.go_on`."""
    going = request.META.get(GOING)
    if isinstance(going, Going):
        going.go_on(final=final)


@require_safe
def going_page(request: HttpRequest, key: str) -> HttpResponse:
    """The answer, once it is there; until then how long it has been going. It asks again by itself."""
    goings = _goings(request)
    going = goings.find(key, _whose(request))
    wait([going.answer], goings.patience)
    if going.answer.done():
        return going.answer.result()
    shown = page(request, "going.html", None, going=going, seconds=goings.seconds(going))
    shown["Refresh"] = "1"
    return shown


@require_POST
def leave_off(request: HttpRequest, key: str) -> HttpResponse:
    """Want it no longer; what is past the point of being left off is waited for."""
    going = _goings(request).find(key, _whose(request))
    left = going.leave_off()
    return HttpResponse(status=303, headers={"Location": "/" if left else f"/going/{key}"})


def _goings(request: HttpRequest) -> Goings:
    goings = request.META.get(GOINGS)
    return goings if isinstance(goings, Goings) else Goings()


def _whose(request: HttpRequest) -> str:
    hand = hand_of(request)
    return hand.name if hand else ""
