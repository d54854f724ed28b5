"""What a builder hands back."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from witnessmark.journal.facts import AnyFact
from witnessmark.words.verbs import verbs
from witnessmark.words.work import Work


class Built(Struct, frozen=True):
    """The fact (or facts, in order), and what the sentence says behind its first words."""

    facts: tuple[AnyFact, ...]
    tail: str = ""
    says: str = ""

    def sentence(self, tag: str) -> str:
        """The whole sentence."""
        head = self.says or verbs()[tag].says
        tail = self.tail.strip().strip(",").strip()
        return f"{head} {tail}".strip().rstrip(":") + "."


Builder = Callable[[Work], Built]


def joined(*pieces: str) -> str:
    """Pieces of a sentence, parted by commas; empty ones left out.

    >>> joined("hub nut", "", "140 Nm")
    'hub nut, 140 Nm'
    """
    return ", ".join(p for p in pieces if p)
