"""One reading in the making: what of the line is placed, and what makes it doubtful."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.things import Joint, Part
from witnessmark.words.atoms import Atom, Span
from witnessmark.words.lexicon import lexicon
from witnessmark.words.line import Line
from witnessmark.words.matching import Call
from witnessmark.words.naming import Hit
from witnessmark.words.proper import proper_runs
from witnessmark.words.verbs import verbs
from witnessmark.words.vocabulary import Vocabulary


class Work:
    """What one reading has placed so far.

    told    atoms that tell the kind of fact
    placed  atoms that found their place in the fact
    taken   atoms of a check or item that hold no other name
    passed  atoms that are no part of a name, as the container in "tins of"
    doubts  why the reading is not sure, each a few words
    proper  names of people and firms, as spans of atoms
    parts, joints  new things this line brings to the record
    """

    def __init__(
        self,
        line: Line,
        hits: tuple[Hit, ...],
        call: Call,
        vocabulary: Vocabulary,
        *,
        today: date,
        recent: tuple[str, ...] = (),
        kind: str = "",
        pick: dict[str, str] | None = None,
    ) -> None:
        self.line, self.hits, self.call, self.vocabulary = line, hits, call, vocabulary
        self.today, self.recent, self.kind = today, recent, kind
        self.pick = pick or {}
        self.told = call.also | call.atoms
        self.proper = proper_runs(line, vocabulary)
        own = verbs()[call.tag]
        self.placed: set[int] = {
            i for i in self.told if own.says_itself(line.atoms[i].low) and line.atoms[i].value is None
        }
        self.passed: set[int] = set()
        self.taken: set[int] = set()
        self.doubts: list[str] = []
        self.parts: list[Part] = []
        self.joints: list[Joint] = []
        self.asked = ""
        self.choices: tuple[tuple[str, str], ...] = ()
        self.name = ""
        self.side = ""
        self.variants: tuple[str, ...] = ()

    # ---- placing

    @property
    def atoms(self) -> tuple[Atom, ...]:
        return self.line.atoms

    def place(self, first: int, last: int | None = None) -> None:
        self.placed.update(range(first, first + 1 if last is None else last))

    def is_free(self, first: int, last: int | None = None) -> bool:
        return self.placed.isdisjoint(range(first, first + 1 if last is None else last))

    def doubt(self, why: str) -> None:
        if why not in self.doubts:
            self.doubts.append(why)

    def words(self, first: int, last: int) -> str:
        return self.line.words(first, last)

    def typed(self, first: int, last: int) -> str:
        """The words of a run in lower case with their hyphens, slips of spelling mended."""
        said = ""
        for at in range(first, last):
            atom = self.atoms[at]
            gap = self.line.text[self.atoms[at - 1].end : atom.start] if at > first else ""
            said += gap if gap in ("-", "/", "") else " "
            said += atom.low if atom.mended else self.words(at, at + 1).lower()
        return said

    # ---- taking

    def spans(self, *classes: str) -> list[Span]:
        """Free spans of these classes, the longer first where two begin together, in order."""
        found = [
            s
            for group in self.line.spans.values()
            for s in group
            if s.cls in classes and self.is_free(s.first, s.last)
        ]
        found.sort(key=lambda s: (s.first, s.first - s.last))
        chosen: list[Span] = []
        for span in found:
            if not chosen or span.first >= chosen[-1].last:
                chosen.append(span)
        return chosen

    def take(self, span: Span) -> str:
        """Place a span; its words as typed."""
        self.place(span.first, span.last)
        return self.words(span.first, span.last)

    def quantities(self, *kinds: str) -> list[tuple[int, Quantity]]:
        """Free quantities of these kinds (or of any), with their atoms."""
        return [
            (at, atom.quantity.quantity)
            for at, atom in enumerate(self.atoms)
            if atom.quantity and self.is_free(at) and (not kinds or atom.quantity.kind in kinds)
        ]

    def take_quantities(self, *kinds: str) -> tuple[Quantity, ...]:
        found = self.quantities(*kinds)
        for at, _ in found:
            self.place(at)
        return tuple(quantity for _, quantity in found)

    def numbers(self) -> list[int]:
        """Free atoms that are plain numbers."""
        return [at for at, atom in enumerate(self.atoms) if atom.value is not None and self.is_free(at)]

    def take_number(self, *, before: Iterable[int] = ()) -> float | None:
        """A plain number right before one of these atoms (a word or two between), or the first free one."""
        free = [at for at in self.numbers() if self.atoms[at].low not in ("a", "an")]
        starts = sorted(before)
        for at in free:
            if not starts or any(0 < start - at <= 2 for start in starts):
                self.place(at)
                return self.atoms[at].value
        return None

    def after(self, first: int, *, stop: frozenset[str] = frozenset()) -> tuple[int, int]:
        """The run of free words from here to the next mark, figure, day, placed word or word in `stop`."""
        last = first
        while last < len(self.atoms) and self.is_free(last) and self.atoms[last].sort in ("word", "number"):
            if self.atoms[last].low in stop:
                break
            last += 1
        return first, last

    def find(self, *lows: str) -> int | None:
        """The first free atom that is one of these words."""
        return next((i for i, a in enumerate(self.atoms) if a.low in lows and self.is_free(i)), None)

    def find_told(self, *lows: str) -> int | None:
        """The first atom that is one of these words, free or telling the kind of fact."""
        found = (i for i, a in enumerate(self.atoms) if a.low in lows and (self.is_free(i) or i in self.told))
        return next(found, None)

    def has(self, *lows: str) -> bool:
        """Whether one of these words stands anywhere in the line."""
        return any(a.low in lows for a in self.atoms)

    def says(self, *lows: str) -> bool:
        """Whether one of these words tells the kind of fact."""
        return any(self.atoms[i].low in lows for i in self.call.atoms)

    def tidy(self, first: int, last: int) -> tuple[int, int]:
        """A run without small words at its ends."""
        known = lexicon()
        while (
            first < last
            and (self.atoms[first].low in known.glue or self.atoms[first].low in known.trim)
            and tuple(a.low for a in self.atoms[first : first + 2]) not in known.keep_start
        ):
            first += 1
        while first < last and (
            self.atoms[last - 1].low in known.glue or self.atoms[last - 1].low in known.trim
        ):
            last -= 1
        return first, last
