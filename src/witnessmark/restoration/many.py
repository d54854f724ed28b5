"""Many lines at once, from a file: read in order, each against what the lines before it described."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Described, DescribedVehicle, FoundBehind, ReadFigure, Struck
from witnessmark.journal.order import standing
from witnessmark.restoration.plausibility import plausible
from witnessmark.restoration.restoration import Restoration
from witnessmark.state.description import vehicle_from
from witnessmark.words.lines import TypedLine, read_lines
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of

_DESCRIBING = (Described, DescribedVehicle, ReadFigure, FoundBehind, Struck)


class Written(Struct, frozen=True, kw_only=True):
    """One line of the file, as it was read."""

    number: int
    words: str
    sentence: str
    sure: bool


class Many(Struct, frozen=True, kw_only=True):
    """What became of a file of lines: all were written, or none."""

    lines: tuple[Written, ...]
    stored: int

    def unsure(self) -> BadInput:
        """The trouble when nothing was written."""
        doubtful = [line for line in self.lines if not line.sure]
        if doubtful:
            said = "; ".join(f"line {d.number}, {d.words!r}" for d in doubtful[:3])
            more = f" and {len(doubtful) - 3} more" if len(doubtful) > 3 else ""
            return BadInput(
                given=f"{said}{more} not understood without doubt; nothing was written",
                holds="lines each with a verb of the trade and a name the record knows",
                do="Mend those lines in the file, or write them one by one, where a question can be asked.",
                near=tuple(d.sentence for d in doubtful[:2]),
            )
        return BadInput(
            given=f"{len(self.lines)} lines were read, and not written",
            holds="a yes",
            do="Give the same file again with --yes.",
        )


def write_many(restoration: Restoration, text: str, *, write: bool) -> Many:
    """Read a file's lines in order; write all of them when `write` and every one is sure, else none."""
    reader = _Reader(restoration)
    for typed in read_lines(text):
        reader.read(typed)
    sure = all(line.sure for line in reader.lines)
    stored = restoration.write_entries(reader.entries) if write and sure and reader.entries else ()
    return Many(lines=tuple(reader.lines), stored=len(stored))


class _Reader:
    """Reads line after line, keeping the names of the vehicle as the lines so far describe it."""

    def __init__(self, restoration: Restoration) -> None:
        self.restoration = restoration
        self.vocabulary: Vocabulary = vocabulary_of(restoration.flow().vehicle)
        self.entries: list[Entry] = []
        self.lines: list[Written] = []

    def read(self, typed: TypedLine) -> None:
        reading, facts = self.restoration.read_typed(typed, self.vocabulary, self.entries)
        told = plausible(facts, self.vocabulary.vehicle.joints)
        sentence = " ".join((reading.sentence, *(one.sentence for one in told)))
        self.lines.append(
            Written(number=typed.number, words=typed.words, sentence=sentence, sure=bool(facts))
        )
        if not facts:
            return
        self.entries += self.restoration.entries_of(typed, reading, facts, len(self.entries))
        if any(isinstance(fact, _DESCRIBING) for fact in facts):
            self.vocabulary = vocabulary_of(
                vehicle_from(standing((*self.restoration.entries, *self.entries)))
            )
