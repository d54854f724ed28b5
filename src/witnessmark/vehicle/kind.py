"""The close-out catalogue's row: what a joint of this kind owes once it was opened."""

from __future__ import annotations

from msgspec import Struct

CLOSED_BY = ("tighten", "set", "fit", "connect", "fill", "weld", "coat", "bleed", "place")


class Limit(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A published fail line: never the aim of a closing check."""

    text: str
    authority: str = ""
    place: str = ""
    edition: str = ""
    source: str = ""
    seen: str = "excerpt"


class Renewal(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """What is renewed when the joint was disturbed; `when` is "always" or a condition looked for."""

    item: str
    when: str = "always"
    words: tuple[str, ...] = ()
    number: int = 1
    sources: tuple[str, ...] = ()

    @property
    def always(self) -> bool:
        return self.when == "always"


class Check(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A closing check: closes at the book's figure or "as new"; may fail at an authority's."""

    name: str
    text: str
    stage: str
    closes_at: str = "owner's book, else as new or measured good"
    figure: bool = False
    fails_at: tuple[Limit, ...] = ()
    sources: tuple[str, ...] = ()


class Record(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """What is written down at closing: a figure, a photo, a mark."""

    name: str
    text: str = ""


class LookAgain(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A look after use: at kilometres run, days, or heat cycles since closing."""

    name: str
    text: str
    km: tuple[float, ...] = ()
    days: tuple[int, ...] = ()
    heat_cycles: tuple[int, ...] = ()
    how: str = "look"


class Upset(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """What opening this joint upsets elsewhere, to be put right before a gate."""

    name: str
    text: str
    if_missed: str
    stage: str = "wheels"
    words: tuple[str, ...] = ()


class Kind(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One kind of joint. Fields as in the data file's head note; minutes are (well, likely, if it fights)."""

    key: str
    name: str
    words: tuple[str, ...]
    system: str
    closed_by: str
    if_missed: str
    lets_go_because: str
    minutes: tuple[int, int, int]
    helper: str = "no"
    nut_rule: str = "none"
    minutes_standing: str = "common practice"
    sources: tuple[str, ...] = ()
    sources_cover: str = ""
    hot_work: bool = False
    fluid: str = ""
    pipe_open: bool = False
    cautions: tuple[str, ...] = ()
    renew: tuple[Renewal, ...] = ()
    check: tuple[Check, ...] = ()
    record: tuple[Record, ...] = ()
    look_again: tuple[LookAgain, ...] = ()
    upset: tuple[Upset, ...] = ()
