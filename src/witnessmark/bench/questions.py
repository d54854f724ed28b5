"""Every question of the bench, and the one way to ask: typed words in, a slip out."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from witnessmark.bench.answers import (
    bolts,
    brakes,
    coats,
    coolant,
    leaks,
    loads,
    metal,
    oil_cases,
    oils,
    paint_window,
    shims,
    steering,
    threads,
    weld_group,
    weld_order,
    welds,
    wires,
)
from witnessmark.bench.kinds import FILE_MARK
from witnessmark.bench.question import Input, Question, values
from witnessmark.bench.slip import Asked, Slip
from witnessmark.ground.errors import BadInput

QUESTIONS: tuple[Question, ...] = (
    *threads.QUESTIONS,
    *bolts.QUESTIONS,
    *shims.QUESTIONS,
    *oils.QUESTIONS,
    *oil_cases.QUESTIONS,
    *coolant.QUESTIONS,
    *welds.QUESTIONS,
    *weld_group.QUESTIONS,
    *weld_order.QUESTIONS,
    *metal.QUESTIONS,
    *paint_window.QUESTIONS,
    *coats.QUESTIONS,
    *wires.QUESTIONS,
    *brakes.QUESTIONS,
    *steering.QUESTIONS,
    *loads.QUESTIONS,
    *leaks.QUESTIONS,
)
"""In the order the list of moments shows them."""


def find_question(subject: str, question: str) -> Question:
    """One question by its two words; an unknown one is refused with the near ones."""
    subjects = list(dict.fromkeys(q.subject for q in QUESTIONS))
    if subject not in subjects:
        raise _unknown("subject", subject, subjects)
    there = {q.question: q for q in QUESTIONS if q.subject == subject}
    if question not in there:
        raise _unknown(f"question about {subject}", question, list(there))
    return there[question]


def ask(
    subject: str, question: str, typed: Mapping[str, str], files: Mapping[str, str] | None = None
) -> Slip:
    """Answer a question from what was typed.

    typed  input name to words, as {"thread": "M8", "torque": "13 lbf ft"}
    files  the text of each file named as @name in typed, already read by the shell

    Raises BadInput for what is missing, unknown, unreadable or impossible.
    """
    which = find_question(subject, question)
    asked = read_inputs(which, typed, files or {})
    return replace(which.answer(**values(asked)), asked=asked)


def ask_values(subject: str, question: str, **given: Any) -> Slip:
    """Answer a question from values already in the inside units, as `bolts tighten` with nut_factor=0.2."""
    return find_question(subject, question).answer(**given)


def read_inputs(which: Question, typed: Mapping[str, str], files: Mapping[str, str]) -> dict[str, Asked]:
    """Each input read by its own reader, in the question's order."""
    known = {i.name: i for i in which.inputs}
    for name in typed:
        if name not in known:
            raise _unknown(f"input of {which.subject} {which.question}", name, list(known), which)
    missing = [i for i in which.inputs if not i.optional and i.name not in typed]
    if missing:
        raise BadInput(
            given=f"{which.subject} {which.question} lacks {', '.join(i.name for i in missing)}",
            holds="; ".join(f"{i.name}: {i.help}, as {i.example}" for i in missing),
            do=f"For example: {which.call()}",
        )
    return {i.name: _read(i, typed[i.name], files) for i in which.inputs if i.name in typed}


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
