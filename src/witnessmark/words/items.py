"""What is renewed at a joint, found among the words of a line."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.line import Span
from witnessmark.words.naming import FULL
from witnessmark.words.subjects import choose
from witnessmark.words.trade import trade
from witnessmark.words.work import Work


def take_item(work: Work, *, needs_name: bool = True) -> str:
    """The renewable a line speaks of beside its joint, by the catalogue's name for it; "" where there is none.

    Words that are the thing's own name are no renewable of it: "fitted new pinion seal" is the
    pinion seal itself. Where several kinds renew a thing by these words, the joint's kind settles it.
    """
    spans = [s for s in _item_spans(work) if not _is_named(work, s)]
    if not spans:
        return ""
    kinds = _kinds(work)
    for span in spans:
        items = trade().items[tuple(span.means.split())]
        own = [item for item, keys in items.items() if keys & set(kinds)]
        if own:
            work.place(span.first, span.last)
            return own[0]
    if needs_name and not kinds:
        return _without_joint(work, spans)
    return ""


def _item_spans(work: Work) -> list[Span]:
    return [
        s
        for s in work.line.spans_of("item")
        if work.is_free(s.first, s.last) and not work.line.under[s.first]
    ]


def _is_named(work: Work, span: Span) -> bool:
    """Whether the words are part of a whole name in the line."""
    return any(h.how == FULL and h.atoms & set(range(span.first, span.last)) for h in work.hits)


def _kinds(work: Work) -> list[str]:
    """Kinds of the joints the line is most likely about."""
    before = list(work.doubts)
    chosen = choose(work)
    work.doubts = before
    joints = work.vocabulary.vehicle.joints
    return [joints[w].kind for hit in chosen for w in hit.named.variants.values() if w in joints]


def _without_joint(work: Work, spans: Sequence[Span]) -> str:
    """No joint is named: an item that is no joint itself is taken, and doubted."""
    known = trade()
    for span in spans:
        words = tuple(span.means.split())
        if words in known.kinds or _is_thing(work, span):
            continue
        items = known.items[words]
        work.place(span.first, span.last)
        work.doubt("the joint it belongs to is not named")
        return span.means if len(items) > 1 and span.means in items else next(iter(items))
    return ""


def _is_thing(work: Work, span: Span) -> bool:
    """Whether more of a name stands before the words: "gearbox output seal" is a thing, "seal" an item."""
    return any(h.atoms & set(range(span.first, span.last)) for h in work.hits)
