"""The bench asked from a page: what was typed, what will not do about a field, the slip kept with a joint."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from witnessmark.bench.question import Question
from witnessmark.bench.questions import ask, find_question
from witnessmark.bench.slip import Slip
from witnessmark.bench.slip_text import VERDICT
from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Remarked
from witnessmark.owed.debt import spoken
from witnessmark.restoration.devices import ids_from, written_as
from witnessmark.restoration.drawer import drawer_owned
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.naming import thing_named
from witnessmark.restoration.restoration import Restoration

LONGEST_VALUE = 600


class Benched(Struct, frozen=True, kw_only=True):
    """A question as it stands on the page.

    typed     input name to the words typed; empty ones left out
    slip      the answer, None where something is missing or will not do
    troubles  input name to what will not do about it; "" of the question as a whole
    """

    question: Question
    typed: Mapping[str, str]
    slip: Slip | None = None
    troubles: Mapping[str, BadInput] = {}


def benched(flow: Flow, subject: str, question: str, sent: Mapping[str, str]) -> Benched:
    """Ask with what was typed; nothing typed asks nothing. Raises BadInput for an unknown question."""
    which = find_question(subject, question)
    typed = {i.name: words for i in which.inputs if (words := sent.get(i.name, "").strip())}
    if not typed:
        return Benched(question=which, typed={})
    troubles = _troubles(which, typed)
    if troubles:
        return Benched(question=which, typed=typed, troubles=troubles)
    try:
        slip = ask(subject, question, typed, drawer=drawer_owned(flow.state.supply))
    except BadInput as trouble:
        return Benched(question=which, typed=typed, troubles={"": trouble})
    return Benched(question=which, typed=typed, slip=slip)


def _troubles(which: Question, typed: Mapping[str, str]) -> dict[str, BadInput]:
    """What will not do about each field by itself."""
    found: dict[str, BadInput] = {}
    for one in which.inputs:
        words = typed.get(one.name, "")
        if len(words) > LONGEST_VALUE or words.startswith("@"):
            found[one.name] = BadInput(
                given=f"{one.name} is {words[:24]!r}",
                holds=f"{one.help}, as {one.example}",
                do="Type it here: a page reads no file of this machine.",
            )
        elif words:
            try:
                one.read(one.name, words)
            except BadInput as trouble:
                found[one.name] = trouble
    return found


def keep_slip(restoration: Restoration, asked: Benched, joint: str, device_id: str) -> tuple[Entry, ...]:
    """Write the answer down with the thing it was asked for, once however often it is sent.

    It is a remark: it pays nothing and changes no state.
    """
    if asked.slip is None:
        raise next(
            iter(asked.troubles.values()),
            BadInput(given="nothing was asked", holds="an answer on the page", do="Type the numbers first."),
        )
    name = thing_named(joint, restoration.flow().vehicle)
    words = f"bench for {spoken(name)}: {told_short(asked)}"
    before = written_as(restoration.entries, device_id, words)
    if before:
        return before
    restoration.new_id = ids_from(device_id)
    return restoration.write_fact(Remarked(at=(name,), remark=told_short(asked)), words)


def told_short(asked: Benched) -> str:
    """Question, what was typed, and the answer in one line."""
    which, slip = asked.question, asked.slip
    typed = ", ".join(f"{name} {words}" for name, words in asked.typed.items())
    verdict = f"{VERDICT[slip.verdict]}: " if slip and slip.verdict else ""
    return f"{which.subject} {which.question} with {typed}; {verdict}{slip.because if slip else ''}"
