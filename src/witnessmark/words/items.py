"""What is renewed at a joint, found among the words of a line."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.atoms import Span
from witnessmark.words.naming import FULL, Hit, is_noun
from witnessmark.words.subjects import choose
from witnessmark.words.trade import trade
from witnessmark.words.work import Work


def take_item(work: Work) -> str:
    """The renewable a line speaks of beside its joint, by the catalogue's name; "" where there is none.

    Words that are the thing's own name are no renewable of it: "fitted new pinion seal" is the
    pinion seal itself. Where several kinds renew a thing by these words, the joint's kind settles it.
    """
    for span in _item_spans(work):
        joint = _led_to(work, span)
        own = _own(work, span, [joint]) if joint else ""
        if own:
            work.place(span.first, span.last)
            work.taken.update(range(span.first, span.last))
            return own
    spans = [s for s in _item_spans(work) if not _is_named(work, s)]
    if not spans:
        return ""
    kinds = kinds_named(work)
    for span in spans:
        own = _of_kinds(span, kinds)
        if own:
            work.place(span.first, span.last)
            return own
    return "" if kinds else _without_joint(work, spans)


def _led_to(work: Work, span: Span) -> Hit | None:
    """The whole name that "to", "on" or "for" leads to from these words: they are its item then."""
    if span.last >= len(work.atoms) or work.atoms[span.last].low not in ("to", "on", "in", "for", "at"):
        return None
    return next((h for h in work.hits if h.how == FULL and span.last < h.first <= span.last + 2), None)


def _own(work: Work, span: Span, hits: Sequence[Hit]) -> str:
    joints = work.vocabulary.vehicle.joints
    return _of_kinds(span, [joints[w].kind for h in hits for w in h.named.variants.values() if w in joints])


def _of_kinds(span: Span, kinds: Sequence[str]) -> str:
    """The item by the name that one of these kinds gives it; "" where none renews it."""
    items = trade().items[tuple(span.means.split())]
    return next((item for item, keys in items.items() if keys & set(kinds)), "")


def _item_spans(work: Work) -> list[Span]:
    return [
        s
        for s in work.line.spans_of("item")
        if work.is_free(s.first, s.last) and not work.line.under[s.first]
    ]


def _is_named(work: Work, span: Span) -> bool:
    """Whether the words are part of a whole name in the line."""
    return any(h.how == FULL and h.atoms & set(range(span.first, span.last)) for h in work.hits)


def kinds_named(work: Work) -> list[str]:
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
        if words in known.kinds or _is_thing(work, span) or _is_qualified(work, span):
            continue
        items = known.items[words]
        work.place(span.first, span.last)
        work.doubt("the joint it belongs to is not named")
        return span.means if len(items) > 1 and span.means in items else next(iter(items))
    return ""


def _is_qualified(work: Work, span: Span) -> bool:
    """Whether a noun before it makes it another thing: "speedo cable" is no cable of the handbrake."""
    before = span.first - 1
    return before >= 0 and work.atoms[before].sort == "word" and is_noun(work.atoms[before].low)


def _is_thing(work: Work, span: Span) -> bool:
    """Whether more of a name stands before the words: "gearbox output seal" is a thing, "seal" an item."""
    return any(h.atoms & set(range(span.first, span.last)) for h in work.hits)
