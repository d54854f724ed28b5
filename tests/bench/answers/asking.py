"""One way for the tests to ask: typed words in, a slip out, and what every slip must hold."""

from witnessmark.bench.questions import ask
from witnessmark.bench.slip import Slip, to_plain
from witnessmark.bench.slip_text import as_text
from witnessmark.tables.sources import cautions, sources


def asked(subject: str, question: str, **typed: str) -> Slip:
    """Ask without a file."""
    return asked_from({}, subject, question, **typed)


def asked_from(files: dict[str, str], subject: str, question: str, **typed: str) -> Slip:
    """Ask, and look at what every answer owes: words, working, known sources, cautions, JSON, text."""
    slip = ask(subject, question, typed, files)
    assert (slip.subject, slip.question) == (subject, question)
    assert slip.because
    assert slip.working
    assert slip.sources
    assert set(slip.sources) <= set(sources())
    assert set(slip.cautions) <= set(cautions())
    plain = to_plain(slip)
    assert set(plain["asked"]) == set(typed)
    assert subject in as_text(slip)
    return slip
