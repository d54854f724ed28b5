"""Who may read and write on the house network: people with roles, and their log-ins.

An owner may do everything. A helper may write. An onlooker may read. On the machine itself nobody logs in.
"""

from __future__ import annotations

import hashlib
import secrets
import unicodedata
from datetime import datetime, timedelta
from pathlib import Path

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.phrases import hashed, is_old, is_right, usable_phrase
from witnessmark.store.doors import Doors, LogIn, Person

OWNER, HELPER, ONLOOKER = "owner", "helper", "onlooker"
ROLES = (OWNER, HELPER, ONLOOKER)
LONGEST_NAME = 40

IDLE = timedelta(hours=12)  # an evening and a night
LONGEST = timedelta(days=7)
SEEN_EVERY = timedelta(minutes=5)  # how exactly "last seen" is kept
WINDOW = timedelta(minutes=15)
MOST_BY_NAME, MOST_FROM = 20, 8  # wrong tries in that time: by name, from one address


class TooManyTries(BadInput):
    """So many wrong tries that a spell must pass."""


class Hand(Struct, frozen=True, kw_only=True):
    """Who asks: a name for the record, and a role. On this machine itself: you, the owner."""

    name: str = "you"
    role: str = OWNER
    logged_in: bool = False

    @property
    def may_write(self) -> bool:
        return self.role in (OWNER, HELPER)


class People:
    """The people of one folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._doors = Doors(folder)

    # ---- who there is

    def everybody(self) -> tuple[Person, ...]:
        """Everybody, by name."""
        return self._doors.people()

    def owners(self) -> tuple[Person, ...]:
        """Those without whom nobody could let others in."""
        return tuple(person for person in self.everybody() if person.role == OWNER)

    def add(self, name: str, role: str, phrase: str) -> Person:
        """Add somebody. Raises BadInput for a name that stands already, and for a phrase that will not do."""
        shown = usable_name(name)
        if role not in ROLES:
            raise BadInput(given=f"role {role!r}", holds=f"one of {', '.join(ROLES)}", do="Give one.")
        if self._known(shown) is not None:
            raise BadInput(
                given=f"{shown} is there already",
                holds="a name of their own for everybody",
                do="Take the person out first, or add a letter to the name.",
            )
        return self._keep(shown, role, phrase)

    def change_phrase(self, name: str, phrase: str) -> Person:
        """Give somebody another pass phrase; whoever is logged in under that name is so no longer."""
        person = self._demand(name)
        return self._keep(person.name, person.role, phrase)

    def remove(self, name: str) -> Person:
        """Take somebody out, log-ins and all. Raises BadInput for the last owner while others are there."""
        person = self._demand(name)
        others = [one for one in self.everybody() if one.plain != person.plain]
        if others and not any(one.role == OWNER for one in others):
            raise BadInput(
                given=f"{person.name} is the last owner",
                holds="an owner while there are others",
                do="Add another owner first, or take the others out.",
            )
        self._doors.remove(person.plain)
        return person

    def end_log_ins(self, name: str) -> Person:
        """Log somebody out everywhere."""
        person = self._demand(name)
        self._doors.end_all(person.plain)
        return person

    # ---- logging in

    def log_in(self, name: str, phrase: str, *, source: str, now: datetime) -> str:
        """Log somebody in; the key to hand back, which is kept nowhere.

        source  the address it comes from: wrong tries are counted by it, and by the name

        Raises TooManyTries, or BadInput, which never says whether the name or the phrase was wrong.
        """
        tries = self._tried(name, source, now)
        person = self._known(name)
        if not is_right(person.phrase if person else "", phrase) or person is None:
            raise BadInput(
                given="a name and a pass phrase that do not belong together",
                holds="those an owner gave out",
                do="Type both once more.",
            )
        self._doors.try_was_right(tries)
        if is_old(person.phrase):
            self._doors.rehash(person.plain, hashed(usable_phrase(phrase)))
        self._doors.forget_before(now - LONGEST)
        key = secrets.token_urlsafe(32)
        self._doors.begin(_mark(key), person.plain, now)
        return key

    def whose(self, key: str, now: datetime) -> Person | None:
        """Who holds this key; None where nobody does, it lay idle too long, or is too old."""
        found = self._doors.log_in(_mark(key)) if key else None
        if found is None:
            return None
        if _is_over(found, now):
            self._doors.end(_mark(key))
            return None
        if now - found.used >= SEEN_EVERY:
            self._doors.used(_mark(key), now)
        return found.person

    def log_out(self, key: str) -> None:
        """End this log-in."""
        self._doors.end(_mark(key))

    def renew_phrase(self, name: str, old: str, new: str, *, source: str, now: datetime) -> None:
        """Let somebody change their own pass phrase, who knows the old one. All their log-ins end."""
        tries = self._tried(name, source, now)
        if not is_right(self._demand(name).phrase, old):
            raise BadInput(
                given="a pass phrase that is not yours now",
                holds="the one you logged in with",
                do="Type it once more.",
            )
        self._doors.try_was_right(tries)
        self.change_phrase(name, new)

    # ---- inside

    def _tried(self, name: str, source: str, now: datetime) -> tuple[int, ...]:
        """Count a try, by name and by where it comes from."""
        by_name, numbers = self._doors.try_begins((f"name {_plain(name)[:LONGEST_NAME]}",), now - WINDOW, now)
        by_source, more = self._doors.try_begins((f"from {source}",), now - WINDOW, now)
        if by_name > MOST_BY_NAME or by_source > MOST_FROM:
            minutes = int(WINDOW.total_seconds() // 60)
            raise TooManyTries(
                given="too many wrong tries",
                holds=f"fewer in {minutes} minutes",
                do=f"Wait {minutes} minutes. On the machine itself no log-in is asked.",
            )
        return (*numbers, *more)

    def _known(self, name: str) -> Person | None:
        return next((one for one in self.everybody() if one.plain == _plain(name)), None)

    def _demand(self, name: str) -> Person:
        person = self._known(name)
        if person is None:
            raise BadInput(
                given=f"nobody is called {name!r}",
                holds=", ".join(one.name for one in self.everybody()) or "somebody who was added",
                do="Give one of these names.",
            )
        return person

    def _keep(self, name: str, role: str, phrase: str) -> Person:
        kept = hashed(usable_phrase(phrase, name))
        person = Person(plain=_plain(name), name=name, role=role, phrase=kept)
        self._doors.keep(person)
        return person


def usable_name(typed: str) -> str:
    """A person's name as it will stand beside their lines.

    >>> usable_name("  Ada   Ott ")
    'Ada Ott'
    """
    name = " ".join(unicodedata.normalize("NFC", typed).split())
    if not 1 <= len(name) <= LONGEST_NAME or not all(letter.isprintable() for letter in name):
        raise BadInput(
            given=f"the name {typed[:60]!r}",
            holds=f"1 to {LONGEST_NAME} letters",
            do="Give the name you call them by.",
        )
    return name


def _plain(name: str) -> str:
    return " ".join(unicodedata.normalize("NFC", name).casefold().split())


def _is_over(found: LogIn, now: datetime) -> bool:
    return now - found.used > IDLE or now - found.begun > LONGEST


def _mark(key: str) -> bytes:
    """What is kept of a key: enough to know it again, not enough to make it."""
    return hashlib.sha256(key.encode("utf-8", "replace")).digest()
