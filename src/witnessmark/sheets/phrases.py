"""The small phrases every sheet uses: days, minutes, chances, codes, and text made fit to show."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from datetime import date

from witnessmark.ground.codes import code_of
from witnessmark.ground.missed import if_missed
from witnessmark.jobs.operation import Minutes
from witnessmark.vehicle.sides import parted

_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

# Characters that would turn the direction of a whole line round.
_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def day_words(day: date) -> str:
    """A day as it is said.

    >>> day_words(date(2026, 3, 14))
    'Saturday 14 March 2026'
    """
    return f"{_WEEKDAYS[day.weekday()]} {day.day} {_MONTHS[day.month - 1]} {day.year}"


def short_day(day: date) -> str:
    """A day for a narrow place.

    >>> short_day(date(2026, 3, 14))
    '14 Mar 2026'
    """
    return f"{day.day} {_MONTHS[day.month - 1][:3]} {day.year}"


def days_words(days: int) -> str:
    """How long a thing has stood open.

    >>> days_words(0), days_words(1), days_words(12)
    ('today', '1 day', '12 days')
    """
    return "today" if days <= 0 else counted(days, "day")


def counted(number: int, word: str) -> str:
    """A number with its word.

    >>> counted(1, "thing"), counted(3, "thing")
    ('1 thing', '3 things')
    """
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def minutes_words(minutes: float) -> str:
    """Minutes as they are said, to the nearest five above a quarter of an hour.

    >>> minutes_words(7), minutes_words(43), minutes_words(60), minutes_words(118), minutes_words(95)
    ('7 min', '45 min', '1 h', '2 h', '1 h 35')
    """
    whole = round(minutes) if minutes < 15 else 5 * round(minutes / 5)
    hours, rest = divmod(whole, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def band_words(minutes: Minutes) -> str:
    """Three guesses as a band.

    >>> band_words(Minutes(15, 35, 120))
    'about 35 min (15 min to 2 h)'
    """
    low, high = minutes_words(minutes.low), minutes_words(minutes.high)
    likely = minutes_words(minutes.likely)
    return f"about {likely}" if low == high else f"about {likely} ({low} to {high})"


def in_ten(chance: float) -> str:
    """A chance in plain words, never a decimal.

    >>> in_ten(0.68), in_ten(0.02), in_ten(0.99)
    ('about 7 in 10', 'less than 1 in 10', 'better than 9 in 10')
    """
    tenths = round(chance * 10)
    if tenths < 1:
        return "less than 1 in 10"
    return "better than 9 in 10" if tenths > 9 else f"about {tenths} in 10"


def missed_words(key: str) -> str:
    """The words shown for the key of what happens if missed; "" stays "".

    >>> missed_words("lets_go")
    'lets go'
    """
    return if_missed(key).words if key else ""


def where_words(name: str, place: str) -> str:
    """Side and place of a whole name, for words that name the thing without its side.

    >>> where_words("hub nut, left rear", "rear axle"), where_words("gearbox", "left rear")
    ('left rear, rear axle', 'left rear')
    """
    side = parted(name)[1]
    return ", ".join(dict.fromkeys(part for part in (side, place) if part))


def sheet_code(kind: str, subject: str, vehicle: str, day: date, line: int) -> str:
    """The code of a printed sheet: the same for the same sheet of the same record on the same day."""
    return code_of(f"{kind}/{subject}/{vehicle}/{day.isoformat()}/{line}")


def free_code(text: str, taken: Iterable[str]) -> str:
    """A code for this text that is not among those taken."""
    used = frozenset(taken)
    turn = 0
    while (code := code_of(text, turn)) in used:
        turn += 1
    return code


def fit_to_show(text: str) -> str:
    r"""Text with every control character and every mark that turns a line round made a visible blank.

    >>> fit_to_show("a\x1b[2Jb\tc")
    'a�[2Jb c'
    """
    if text.isprintable() and not _TURNING.intersection(text):
        return text
    return "".join(_shown(c) for c in text)


def _shown(character: str) -> str:
    if character in "\t\n\r":
        return " "
    hidden = character in _TURNING or unicodedata.category(character) in ("Cc", "Cs", "Cn", "Zl", "Zp")
    return "\N{REPLACEMENT CHARACTER}" if hidden else character
