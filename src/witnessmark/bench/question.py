"""What a question of the bench is: its words, what it is given, and the function that answers it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec import Struct

from witnessmark.bench.slip import Asked, Slip

Reader = Callable[[str, str], Asked]
"""Reads what was typed: given the input's name and the words; raises BadInput."""


class Input(Struct, frozen=True, kw_only=True):
    """One thing a question is given.

    read      reader from `bench.kinds`, or the subject's own
    help      what it is, in a few words
    example   as a person would type it
    optional  may be left out; the function's own default then holds
    either    one of several ways of which one must be given; the example call shows this one
    """

    name: str
    read: Reader
    help: str
    example: str
    optional: bool = False
    either: bool = False


class Question(Struct, frozen=True, kw_only=True):
    """One question.

    moment    where a person stands when asking it: "a seal to drive in"
    answer    given the inputs' values by name; gives a slip, raises BadInput
    inputs    in the order they are told; every name is one keyword of `answer`
    """

    subject: str
    question: str
    moment: str
    answer: Callable[..., Slip]
    inputs: tuple[Input, ...]

    def call(self) -> str:
        """An example call, with what must be given; it is answered as it stands."""
        given = (f"{i.name}={_quoted(i.example)}" for i in self.inputs if i.either or not i.optional)
        return " ".join(["witnessmark bench", self.subject, self.question, *given])


def need(name: str, read: Reader, help: str, example: str) -> Input:
    """An input that must be given."""
    return Input(name=name, read=read, help=help, example=example)


def may(name: str, read: Reader, help: str, example: str) -> Input:
    """An input that may be left out."""
    return Input(name=name, read=read, help=help, example=example, optional=True)


def either(name: str, read: Reader, help: str, example: str) -> Input:
    """An input that may be given in another way; the example call gives it in this one."""
    return Input(name=name, read=read, help=help, example=example, optional=True, either=True)


def _quoted(text: str) -> str:
    return f'"{text}"' if any(c in text for c in " ;,()&|") else text


def values(asked: dict[str, Asked]) -> dict[str, Any]:
    """The values alone, ready to be handed to a question's function."""
    return {name: one.value for name, one in asked.items()}
