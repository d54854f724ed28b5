"""Where a number comes from: one ladder of standing, and how its source was seen."""

from __future__ import annotations

from msgspec import Struct

STANDINGS = (
    "owner's book",
    "standard",
    "authority",
    "handbook",
    "maker",
    "measured",
    "common practice",
    "from memory",
    "guess",
)
SEEN = ("page", "excerpt", "none")
HOLLOW = frozenset({"from memory", "guess"})


class Source(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One source: who issued it, what it is called, where in it, how it was seen."""

    key: str
    title: str
    issuer: str = ""
    section: str = ""
    edition: str = ""
    read: str = ""
    standing: str = "common practice"
    seen: str = "none"
    covers: str = ""
    via: str = ""
    link: str = ""

    def cited(self) -> str:
        """One line for a sheet.

        >>> Source(key="a", issuer="An issuer", title="A title", section="s. 3", read="2026-11").cited()
        'An issuer, A title, s. 3 (read 2026-11)'
        """
        parts = [p for p in (self.issuer, self.title, self.section, self.edition) if p]
        read = f" (read {self.read})" if self.read else ""
        return ", ".join(parts) + read


def rank(standing: str) -> int:
    """How high a standing is on the ladder; 0 is the owner's book."""
    return STANDINGS.index(standing)
