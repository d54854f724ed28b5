"""Photos of a restoration: taken in, written with a line or beside one, and found again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.exchange.pictures import cleaned
from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AtFact, Photographed, Struck
from witnessmark.journal.order import in_force
from witnessmark.owed.debt import spoken
from witnessmark.restoration.devices import ids_from, new_id, written_as
from witnessmark.restoration.heard import Heard
from witnessmark.restoration.restoration import Restoration
from witnessmark.sheets.phrases import counted
from witnessmark.store.photo_folder import is_photo_name, keep_photo, photo_file

MOST_AT_ONCE = 60


class Sent(Struct, frozen=True):
    """A file as it was sent, with the name it was sent under."""

    content: bytes
    name: str = ""


def take_in(folder: Path, sent: Iterable[Sent]) -> tuple[str, ...]:
    """Keep pictures in the record's folder and give their names, in order; no line names them yet.

    Every one is looked at before the first is kept. Raises BadInput for the first that will not do.
    """
    pictures: list[bytes] = []
    for one in sent:
        if len(pictures) == MOST_AT_ONCE:
            raise BadInput(
                given=f"more than {MOST_AT_ONCE} photos at once",
                holds=f"at most {MOST_AT_ONCE}",
                do="Send them in two goes; nothing of these was kept.",
            )
        pictures.append(cleaned(one.content, one.name))
    return tuple(dict.fromkeys(keep_photo(folder, picture) for picture in pictures))


def kept_names(folder: Path, names: Sequence[str]) -> tuple[str, ...]:
    """Those of the names under which a photo lies in the folder."""
    there = []
    for name in dict.fromkeys(names):
        if is_photo_name(name):
            photo_file(folder, name)
            there.append(name)
    return tuple(there)


def write_with_photos(
    restoration: Restoration, heard: Heard, device_id: str, photos: Sequence[str]
) -> tuple[Entry, ...]:
    """Write a line and its photos under the device's id, in one go; once, however often it is sent.

    A line that itself says "photo of ..." takes the photos into its own fact.
    """
    before = written_as(restoration.entries, device_id, heard.words)
    if before:
        return before
    taken = any(e.id == device_id for e in restoration.entries)
    restoration.new_id = ids_from(new_id() if taken else device_id)
    own = heard.facts[0] if len(heard.facts) == 1 else None
    if photos and isinstance(own, Photographed):
        return restoration.write(replace(heard, facts=(replace(own, photos=tuple(photos)),)))
    if not photos:
        return restoration.write(heard)
    stored = restoration.write(heard, lambda line: photographed(_named(line), photos, line[-1].line))
    return stored[: len(heard.facts)]


def photographed(at: Sequence[str], photos: Sequence[str], line: int) -> tuple[Photographed, str]:
    """The fact that photos go with a line, and its words."""
    return Photographed(at=tuple(at), photos=tuple(photos), of=line), _words(photos, f"with line {line}")


def _named(line: Sequence[Entry]) -> tuple[str, ...]:
    """Every part and joint that a line's entries are about; of a strike, what it says instead."""
    facts = [e.fact.instead if isinstance(e.fact, Struck) else e.fact for e in line]
    return tuple(dict.fromkeys(name for fact in facts if isinstance(fact, AtFact) for name in fact.at))


def _words(photos: Sequence[str], of_what: str) -> str:
    return f"{counted(len(photos), 'photo')} {of_what}" if len(photos) > 1 else f"photo {of_what}"


def add_to_line(
    restoration: Restoration, number: int, photos: Sequence[str], device_id: str
) -> tuple[Entry, ...]:
    """Put photos with a line that is written already. They count as taken when it was done."""
    line = next((e for e in restoration.entries if e.line == number), None)
    if line is None:
        raise BadInput(
            given=f"there is no line {number}",
            holds=f"a line from 1 to {restoration.last_line}",
            do="Look the number up in the journal.",
        )
    struck = in_force(restoration.entries).get(number)
    fact, words = photographed(_named((struck or line,)), photos, number)
    if before := written_as(restoration.entries, device_id, words):
        return before
    restoration.new_id = ids_from(device_id)
    return restoration.write_fact(fact, words, day=line.day, at=line.time)


def add_of_thing(
    restoration: Restoration, name: str, photos: Sequence[str], device_id: str
) -> tuple[Entry, ...]:
    """Write photos of a part or a joint, taken now."""
    vehicle = restoration.flow().vehicle
    if name not in vehicle.parts and name not in vehicle.joints:
        raise BadInput(
            given=f"{name!r} is no part and no joint of this record",
            holds="the whole name of one, as: hub nut, left rear",
            do="Write a line about it first; then its photos go with that line.",
        )
    words = _words(photos, f"of {spoken(name)}")
    if before := written_as(restoration.entries, device_id, words):
        return before
    restoration.new_id = ids_from(device_id)
    return restoration.write_fact(Photographed(at=(name,), photos=tuple(photos)), words)


def photo_content(folder: Path, name: str) -> bytes:
    """A photo, whole. Raises BadInput where there is none of that name."""
    return photo_file(folder, name).read_bytes()
