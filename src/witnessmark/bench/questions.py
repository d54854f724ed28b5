"""Every question of the bench, and the one way to ask: typed words in, a slip out."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from functools import cache
from importlib import import_module
from types import MappingProxyType
from typing import Any

from msgspec.structs import replace

from witnessmark.bench.drawer import EMPTY, Drawer
from witnessmark.bench.kinds import FILE_MARK
from witnessmark.bench.question import Input, Question, values
from witnessmark.bench.slip import Asked, Slip
from witnessmark.ground.errors import BadInput

SUBJECTS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "threads": ("threads",),
        "bolts": ("bolts",),
        "seals": ("seals",),
        "fits": ("fits",),
        "orings": ("orings",),
        "shims": ("shims",),
        "oils": ("oils", "oil_cases"),
        "coolant": ("coolant",),
        "welds": ("welds", "weld_group", "weld_order"),
        "steel": ("metal",),
        "sheet": ("metal",),
        "paint": ("paint_window", "coats"),
        "wires": ("wires",),
        "brakes": ("brakes",),
        "steering": ("steering",),
        "loads": ("loads",),
        "leaks": ("leaks",),
    }
)
"""Subjects in the order they are told, and the files of `answers` that hold their questions.

A file is read only when its subject is asked about: one question has to answer at once.
"""

OWN_KIT = "own kit"


@cache
def questions_about(subject: str) -> tuple[Question, ...]:
    """Every question of one subject; an unknown subject is refused with the near ones."""
    if subject not in SUBJECTS:
        raise _unknown("subject", subject, list(SUBJECTS))
    modules = (import_module(f"witnessmark.bench.answers.{name}") for name in SUBJECTS[subject])
    return tuple(q for module in modules for q in module.QUESTIONS if q.subject == subject)


def every_question() -> tuple[Question, ...]:
    """All questions, subject by subject."""
    return tuple(q for subject in SUBJECTS for q in questions_about(subject))


def find_question(subject: str, question: str) -> Question:
    """One question by its two words; an unknown one is refused with the near ones."""
    there = {q.question: q for q in questions_about(subject)}
    if question not in there:
        raise _unknown(f"question about {subject}", question, list(there))
    return there[question]


def ask(
    subject: str,
    question: str,
    typed: Mapping[str, str],
    files: Mapping[str, str] | None = None,
    drawer: Drawer = EMPTY,
) -> Slip:
    """Answer a question from what was typed.

    typed   input name to words, as {"thread": "M8", "torque": "13 lbf ft"}
    files   the text of each file named as @name in typed, already read by the shell
    drawer  the person's own kit, searched with what was typed and before the tables

    Raises BadInput for what is missing, unknown, unreadable or impossible.
    """
    which = find_question(subject, question)
    asked = read_inputs(which, typed, files or {}, drawer.adds_to(subject, question))
    return replace(which.answer(**values(asked)), asked=asked)


def ask_values(subject: str, question: str, **given: Any) -> Slip:
    """Answer a question from values already in the inside units, as `bolts tighten` with nut_factor=0.2."""
    return find_question(subject, question).answer(**given)


def read_inputs(
    which: Question,
    typed: Mapping[str, str],
    files: Mapping[str, str],
    own: Mapping[str, tuple[Any, ...]] = MappingProxyType({}),
) -> dict[str, Asked]:
    """Each input read by its own reader, in the question's order; own pieces stand behind those typed."""
    known = {i.name: i for i in which.inputs}
    for name in typed:
        if name not in known:
            raise _unknown(f"input of {which.subject} {which.question}", name, list(known), which)
    missing = [i for i in which.inputs if not i.optional and i.name not in typed and i.name not in own]
    if missing:
        raise BadInput(
            given=f"{which.subject} {which.question} lacks {', '.join(i.name for i in missing)}",
            holds="; ".join(f"{i.name}: {i.help}, as {i.example}" for i in missing),
            do=f"For example: {which.call()}",
        )
    asked = {i.name: _read(i, typed[i.name], files) for i in which.inputs if i.name in typed}
    return asked | {name: _with_own(asked.get(name), pieces) for name, pieces in own.items()}


def _with_own(asked: Asked | None, pieces: tuple[Any, ...]) -> Asked:
    if asked is None:
        return Asked(OWN_KIT, pieces, "mm")
    return Asked(f"{asked.typed} and {OWN_KIT}", (*asked.value, *pieces), asked.unit)


def _read(one: Input, typed: str, files: Mapping[str, str]) -> Asked:
    if not typed.startswith(FILE_MARK):
        return one.read(one.name, typed)
    name = typed[len(FILE_MARK) :]
    if name not in files:
        raise BadInput(given=f"{one.name} is the file {name!r}, which was not read",
                       holds=f"{one.help}, as {one.example}", do="Give a file that can be read.")  # fmt: skip
    found = one.read(one.name, files[name])
    return Asked(typed, found.value, found.unit)


def _unknown(kind: str, name: str, known: list[str], which: Question | None = None) -> BadInput:
    near = tuple(difflib.get_close_matches(name.lower(), known, n=3, cutoff=0.5))
    hint = f"Did you mean {' or '.join(near)}?" if near else "Give one of these."
    return BadInput(
        given=f"there is no {kind} called {name!r}",
        holds=f"one of {', '.join(known)}",
        do=f"{hint} For example: {which.call()}" if which else hint,
        near=near,
    )
