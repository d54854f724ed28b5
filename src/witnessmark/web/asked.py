"""What a browser sends, read with care: numbers within bounds, words of a length, ids that are ids."""

from __future__ import annotations

from datetime import date

from django.http import HttpRequest

from witnessmark.ground.errors import BadInput

LONGEST_LINE = 1000
SHORTEST_SESSION, LONGEST_SESSION = 0.25, 24.0


class LineNumber:
    """A journal line's number in an address."""

    regex = "[1-9][0-9]{0,8}"

    def to_python(self, value: str) -> int:
        return int(value)

    def to_url(self, value: int) -> str:
        return str(value)


class PhotoName:
    """A photo's name in an address: a check sum, and nothing that could be a path."""

    regex = "[0-9a-f]{64}[.]jpg"

    def to_python(self, value: str) -> str:
        return value

    def to_url(self, value: str) -> str:
        return value


def words_of(typed: str) -> str:
    """A line's words on one line; too long a line is bad input."""
    words = " ".join(typed.replace("\x00", " ").split())
    if len(words) > LONGEST_LINE:
        raise BadInput(
            given=f"a line of {len(words)} letters",
            holds=f"a line of at most {LONGEST_LINE}",
            do="Write it as several lines.",
        )
    return words


def hours_of(request: HttpRequest) -> float:
    """Length of the session asked for, in hours; 3 where none is given."""
    typed = request.GET.get("hours", "").strip().replace(",", ".") or "3"
    try:
        hours = float(typed)
    except ValueError:
        hours = 0.0
    if not SHORTEST_SESSION <= hours <= LONGEST_SESSION:
        raise BadInput(
            given=f"a session of {typed[:20]} hours",
            holds="from a quarter of an hour to 24 hours",
            do="Give its length in hours, as 3 or 0.5.",
        )
    return hours


def number_of(typed: str) -> int:
    """A small number from a form, 0 where it is none."""
    return int(typed) if typed.isascii() and typed.isdigit() and len(typed) < 7 else 0


def day_of(typed: str) -> date | None:
    """A day as a device sends it, None where it sends none.

    >>> day_of("2026-03-14"), day_of("soon")
    (datetime.date(2026, 3, 14), None)
    """
    try:
        return date.fromisoformat(typed)
    except ValueError:
        return None


def time_of(typed: str) -> str:
    """A time of day as a device sends it, "" where it sends none.

    >>> time_of("09:05"), time_of("25:00")
    ('09:05', '')
    """
    hours, colon, minutes = typed.partition(":")
    plain = colon and len(typed) == 5 and (hours + minutes).isascii() and (hours + minutes).isdigit()
    return typed if plain and int(hours) < 24 and int(minutes) < 60 else ""
