"""The basket as parcels: one drawn parcel a supplier, above a ruler of days and sessions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from witnessmark.bench.picture.svg import HAIR, LARGE, PLAIN, SMALL, THICK, THIN, drawing, line, rect, text
from witnessmark.buy.buying import Buying, Parcel
from witnessmark.sheets.phrases import counted, short_day

EDGE = 5.0
LINE, HEAD = 5.0, 16.0
ROW = 6.5
MOST_LINES = 8

# Paper millimetres: for a desk or a printed sheet, and for a phone.
BROAD, NARROW = 180.0, 74.0


def parcels_svg(buying: Buying, wide: float = BROAD) -> str:
    """The chosen basket as a picture, mm on paper; "" where nothing is ordered.

    A parcel is as tall as it has lines. Below, each parcel's days, from the likely to the latest, against
    the sessions.
    """
    choice = buying.choice
    if choice is None or not choice.parcels:
        return ""
    across = min(len(choice.parcels), 3 if wide > NARROW else 1)
    broad = (wide - 2 * EDGE - 5 * (across - 1)) / across
    shapes: list[str] = []
    top = EDGE
    for first in range(0, len(choice.parcels), across):
        row = choice.parcels[first : first + across]
        tall = HEAD + LINE * max(_lines(parcel) for parcel in row) + 2
        for n, parcel in enumerate(row):
            shapes += _parcel(parcel, EDGE + n * (broad + 5), top, broad, tall)
        top += tall + 5
    ruler = _Ruler(buying, choice.parcels, top, wide)
    title = f"Tonight's order: {choice.money.said} in {counted(len(choice.parcels), 'parcel')}"
    return drawing(wide, ruler.foot + 16, [*shapes, *ruler.shapes()], title=title)


def _lines(parcel: Parcel) -> int:
    return min(len(parcel.lines), MOST_LINES + 1)


def _parcel(parcel: Parcel, x: float, y: float, broad: float, tall: float) -> Iterator[str]:
    """A box with its string round the head, the sum on it, and what is in it."""
    yield rect((x, y), (x + broad, y + tall), width=THICK, fill="white")
    yield line((x, y + HEAD - 3.5), (x + broad, y + HEAD - 3.5), width=THIN)
    yield line((x + broad - 18, y + 6.5), (x + broad - 18, y + HEAD - 3.5), width=THIN)
    yield from _bow(x + broad - 18, y + HEAD - 3.5)
    yield text((x + 2, y + 5), _cut(parcel.supplier, int(broad / 2.2)), size=LARGE, bold=True)
    post = f"post {parcel.post.said}" if parcel.post.minor else "no post"
    yield text((x + 2, y + 10.5), f"{parcel.goods.said} + {post}", size=PLAIN)
    yield text((x + broad - 2, y + 10.5), parcel.paid.said, size=PLAIN, bold=True, anchor="end")
    shown = parcel.lines[:MOST_LINES]
    for n, one in enumerate(shown):
        at = y + HEAD + 1.5 + LINE * n
        number = one.packs * one.quote.pack
        yield text((x + 2, at), _cut(f"{number} × {one.need.what}", int((broad - 18) / 1.5)), size=PLAIN)
        yield text((x + broad - 2, at), one.price.said, size=PLAIN, anchor="end")
    if len(parcel.lines) > MOST_LINES:
        more = f"and {len(parcel.lines) - MOST_LINES} more"
        yield text((x + 2, y + HEAD + 1.5 + LINE * MOST_LINES), more, size=PLAIN)


def _bow(x: float, y: float) -> Iterator[str]:
    for away in (-1, 1):
        path = f"M{x} {y}q{away * 5} -4 {away * 5} -1q0 3 {-away * 5} 1"
        yield f'<path d="{path}" stroke-width="{THIN}" fill="white"/>'
        yield line((x, y), (x + away * 3, y + 3), width=THIN)


def _cut(words: str, room: int) -> str:
    return words if len(words) <= room else f"{words[: room - 1].rstrip()}…"


class _Ruler:
    """Days from left to right: a bar a parcel from likely to latest, a heavy stroke a session."""

    def __init__(self, buying: Buying, parcels: Sequence[Parcel], top: float, wide: float) -> None:
        self.parcels, self.top, self.wide = parcels, top, wide
        self.first = min(parcel.sent for parcel in parcels)
        self.last = max(day for p in parcels for day in (p.latest, *buying.sessions[:1])) + timedelta(1)
        self.sessions = [day for day in buying.sessions if self.first <= day <= self.last]
        self.named_beside = wide > NARROW
        self.row = ROW if self.named_beside else 1.7 * ROW
        self.left = EDGE + (44 if self.named_beside else 4)
        self.foot = top + 8 + self.row * len(parcels)

    def at(self, day: date) -> float:
        """Where a day stands on the paper."""
        days = max(1, (self.last - self.first).days)
        return self.left + (self.wide - EDGE - 6 - self.left) * (day - self.first).days / days

    def shapes(self) -> Iterator[str]:
        """The ruler, the sessions, the parcels, and what the marks mean."""
        yield line((self.left, self.foot), (self.at(self.last), self.foot), width=THIN)
        for n in range((self.last - self.first).days + 1):
            x = self.at(self.first + timedelta(n))
            yield line((x, self.foot), (x, self.foot + 1.5), width=HAIR)
        for day in (self.first, self.last):
            yield text((self.at(day), self.foot + 5), short_day(day)[:-5], size=SMALL, anchor="middle")
        for day in self.sessions:
            x = self.at(day)
            yield line((x, self.top + 5), (x, self.foot), width=2 * THICK)
            words = f"session {short_day(day)[:-5]}"
            yield text((x, self.top + 3.5), words, size=SMALL, anchor="middle", halo=True)
        for n, parcel in enumerate(self.parcels):
            yield from self._bar(parcel, self.top + 4 + self.row * (n + 1))
        words = "dashes: on the way; box: likely to latest day"
        yield text((EDGE, self.foot + 11), words, size=SMALL)

    def _bar(self, parcel: Parcel, y: float) -> Iterator[str]:
        yield line((self.at(parcel.sent), y), (self.at(parcel.likely), y), width=THIN, dash="1 1")
        far = max(self.at(parcel.latest), self.at(parcel.likely) + 1)
        yield rect((self.at(parcel.likely), y - 1.5), (far, y + 1.5), width=THIN, fill="white")
        name = _cut(parcel.supplier, 26)
        if self.named_beside:
            yield text((EDGE, y + 1), name, size=SMALL)
        else:
            yield text((self.at(parcel.sent), y - 2.6), name, size=SMALL, halo=True)
