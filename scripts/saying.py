"""Lines made of the ways of saying in tests/words/more_lines: slots filled, asides hung on, words misspelt.

The same seed makes the same lines.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from random import Random
from typing import Any

FOLDER = Path(__file__).resolve().parent.parent / "tests" / "words" / "more_lines"
_SLOT = re.compile(r"\{(\w)\}")
_VOWELS = "aeiou"
Row = dict[str, Any]


def headed(name: str) -> dict[str, list[str]]:
    """A text file of lines under headings in square brackets; # lines and empty ones aside."""
    found: dict[str, list[str]] = {}
    heading = ""
    for line in (FOLDER / name).read_text("utf-8").splitlines():
        if line.startswith("["):
            heading = line.strip("[]")
        elif line.strip() and not line.startswith("#"):
            found.setdefault(heading, []).append(line)
    return found


OWN_WORDS = "ways_9.txt"


def ways(*, own: bool) -> list[tuple[str, str]]:
    """The ways of saying with their kinds of fact, in order: in the record's own words, or the others."""
    names = sorted(p.name for p in FOLDER.glob("ways_*.txt") if (p.name == OWN_WORDS) is own)
    return [(tag, way) for name in names for tag, group in headed(name).items() for way in group]


class Sayer:
    """Makes lines, each from one way of saying."""

    def __init__(self, seed: int) -> None:
        self.chance = Random(seed)
        self.filling: Mapping[str, Any] = tomllib.loads((FOLDER / "fillings.toml").read_text("utf-8"))
        self.asides = headed("asides.txt")
        self.sided = frozenset(self.filling["sided"])

    def rows(self, times: int, *, own: bool) -> list[Row]:
        """Each way said so many times: the first time plainly, one in the record's own words always."""
        return [
            self.row(tag, way, plainly=own or not time) for tag, way in ways(own=own) for time in range(times)
        ]

    def row(self, tag: str, way: str, *, plainly: bool) -> Row:
        known: list[str] = []
        text = self.filled(way, known)
        if not plainly:
            text = self.spoilt(self.surrounded(text, known))
        while self.chance.random() < 0.5:
            known.append(self.chance.choice(self.filling["things"]))
        return {"line": text, "known": known, "verb": tag}

    def filled(self, way: str, known: list[str]) -> str:
        return _SLOT.sub(
            lambda slot: (
                self.thing(known) if slot[1] == "t" else self.chance.choice(self.filling["slots"][slot[1]])
            ),
            way,
        )

    def thing(self, known: list[str]) -> str:
        """A thing as typed; the record knows it more often than not."""
        name = typed = self.chance.choice(self.filling["things"])
        side = ""
        if name in self.sided and self.chance.random() < 0.75:
            side = self.chance.choice(list(self.filling["sides"]))
            form = self.chance.choice(self.filling["sides"][side])
            typed = self.chance.choices(
                (f"{name} {form}", f"{form} {name}", f"{name}, {form}"), (0.5, 0.4, 0.1)
            )[0]
        if self.chance.random() < 0.6:
            known.append(f"{name}, {side}" if side else name)
            if " " in name and self.chance.random() < 0.3:
                typed = typed.replace(name, name.split()[-1], 1)
        if self.chance.random() < 0.25:
            typed = self.chance.choice(("the ", "the ", "the old ", "my ", "that ", "both ")) + typed
        return typed

    def surrounded(self, text: str, known: list[str]) -> str:
        """With what people say before and behind it."""
        if self.chance.random() < 0.15:
            text = f"{self.filled(self.chance.choice(self.asides['before']), known)} {text}"
        for _ in range(self.chance.choices((0, 1, 2), (0.45, 0.35, 0.2))[0]):
            text += self.filled(self.chance.choice(self.asides["behind"]), known)
        return text

    def spoilt(self, text: str) -> str:
        """Some lines typed with a thumb, the others with a slip here and there."""
        spoil = self._shorten if self.chance.random() < 0.2 else self._slip
        return " ".join(word for word in map(spoil, text.split(" ")) if word)

    def _shorten(self, word: str) -> str:
        short = self.filling["short"].get(word)
        if short is not None:
            return short if self.chance.random() < (0.25 if word in ("to", "for", "off") else 0.6) else word
        if len(word) < 4 or not word.isalpha() or self.chance.random() < 0.5:
            return word
        how = self.chance.randrange(3)
        if how == 0:
            return word[0] + "".join(sign for sign in word[1:] if sign not in _VOWELS)
        if how == 1 and word.endswith("ed"):
            return word[:-2] + "d"
        return self._without_vowel(word)

    def _without_vowel(self, word: str) -> str:
        places = [at for at in range(1, len(word)) if word[at] in _VOWELS]
        return _cut(word, self.chance.choice(places)) if places else word

    def _slip(self, word: str) -> str:
        if len(word) < 5 or not (word.isalpha() and word.islower()) or self.chance.random() > 0.04:
            return word
        at = self.chance.randrange(1, len(word) - 1)
        how = self.chance.randrange(4)
        if how == 0:
            return _cut(word, at)
        if how == 1:
            return word[:at] + word[at] + word[at:]
        if how == 2:
            return word[:at] + word[at + 1] + word[at] + word[at + 2 :]
        return self._without_vowel(word)


def _cut(word: str, at: int) -> str:
    return word[:at] + word[at + 1 :]
