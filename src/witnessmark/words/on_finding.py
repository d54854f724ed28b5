"""Facts of finding, measuring, proving and putting right."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.journal.facts import Found, FoundBehind, LookedAt, Measured, Proved, PutRight
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.conditions import condition
from witnessmark.words.answers import find_answer, take_named
from witnessmark.words.atoms import Span
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.figures import bare_lengths, dimensioned
from witnessmark.words.items import kinds_named, take_item
from witnessmark.words.lexicon import lexicon, stems
from witnessmark.words.naming import FULL
from witnessmark.words.newnames import is_plain_thing, phrase
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import figures_said, listed, new_said, things
from witnessmark.words.work import Work


def _found(work: Work) -> Built:
    seen = _take_condition(work)
    item = take_item(work)
    at = things(work)
    size = _take_size(work)
    figures = (*work.take_quantities(), *dimensioned(work))
    if not seen and not item:
        work.doubt("no word for what was found is known")
    fact = Found(at=at, condition=seen, item=item, size=size, figures=figures)
    thing = f"{item} {seen}".strip() if item else ""
    tail = joined(thing, f"{listed(at)}{new_said(work)}", "" if item else seen, size, figures_said(figures))
    return Built((fact,), tail)


def _take_condition(work: Work) -> str:
    """The word for what was found: a bad one before a good one, those in the main clause first."""
    spans = [
        s for s in _conditions(work) if not any(s.first in h.atoms for h in work.hits if h.how == "full")
    ]
    if not spans:
        return ""
    best = min(
        spans, key=lambda s: (work.line.under[s.first], not condition(s.means).bad, s.first - s.last, s.first)
    )
    work.place(best.first, best.last)
    if _touches_a_stranger(work, best):
        work.doubt("it may be said of another thing")
    if len({condition(s.means).bad for s in spans}) > 1:
        work.doubt("good and bad are both told")
    return best.means


def _touches_a_stranger(work: Work, span: Span) -> bool:
    """Whether a noun that is no name stands before it: "marks gone", "rubber gone"."""
    before = span.first - 1
    if before < 0 or work.atoms[before].sort != "word" or not work.is_free(before):
        return False
    known, low = lexicon(), work.atoms[before].low
    named = any(before in h.atoms for h in work.hits) or any(
        s.last - 1 == before for s in work.line.spans_of("item")
    )
    return not named and low not in known.glue | known.trim | known.beside | known.clause | known.turning


def _conditions(work: Work) -> list[Span]:
    """Condition spans that are free but for the words that tell the kind of fact."""
    told = work.call.atoms
    found = [
        s
        for group in work.line.spans.values()
        for s in group
        if s.cls == "condition" and (work.is_free(s.first, s.last) or set(range(s.first, s.last)) & told)
    ]
    wider = [*found, *work.line.spans_of("item")]
    return [
        s
        for s in found
        if not any(
            o.first <= s.first and s.last <= o.last and o.last - o.first > s.last - s.first for o in wider
        )
    ]


def _take_size(work: Work) -> str:
    sizes = {a.quantity.size for a in work.atoms if a.quantity and a.quantity.size}
    threads = [(i, a.thread) for i, a in enumerate(work.atoms) if a.thread and work.is_free(i)]
    for at, _ in threads:
        work.place(at)
    return ", ".join([*sorted(sizes), *(t.thread for _, t in threads if t)])


def _measured(work: Work) -> Built:
    """Which dimension, of what, and its figures; a kind's own word for what is written down comes first."""
    what = _take_record(work)
    at = known_subjects(work)
    dimensions = work.spans("dimension")
    figures = dimensioned(work)
    if dimensions and not what:
        what = work.take(dimensions[0]).lower()
    at = at or things(work, need=not what)
    size = _take_size(work)
    figures = (*work.take_quantities(), *figures)
    figures = figures or (() if size else bare_lengths(work))
    if not at:
        work.doubt("it is not told of what")
    if not figures and not size:
        work.doubt("no figure with its unit is told")
    fact = Measured(at=at, what=what, size=size, figures=figures)
    shown = size if size and len(figures) > 1 else figures_said(figures)
    return Built((fact,), joined(f"{listed(at)}{new_said(work)}", f"{what} {shown}".strip()))


def _take_record(work: Work) -> str:
    """What the kind of a joint asks to be written down, by its name: "clicks", "hose date"."""
    names = {record.name for key in kinds_named(work) for record in kind_of(key).record}
    for name in sorted(names, key=lambda n: (-len(n), n)):
        words = stems(name)
        for begin in range(len(work.line.canon) - len(words) + 1):
            run = work.line.canon[begin : begin + len(words)]
            first, last = run[0].first, run[-1].last
            if (
                tuple(c.stem for c in run) == words
                and work.is_free(first, last)
                and not _is_of_name(work, first, last)
            ):
                work.place(first, last)
                work.taken.update(range(first, last))
                return name
    return ""


def _is_of_name(work: Work, first: int, last: int) -> bool:
    """Whether the words are the last of a whole name: "coat" in "floor top coat"."""
    return any(h.how == FULL and h.last == last and h.first < first for h in work.hits)


def _proved(work: Work) -> Built:
    check, at, seen = _answered(work)
    figures = work.take_quantities()
    if not check and not at:
        work.doubt("no check and no known thing is named")
    fact = Proved(at=at, check=check, seen=seen, figures=figures)
    return Built(
        (fact,), joined(_on(check, at) + new_said(work), figures_said(figures), "seen" if seen else "")
    )


def _looked_at(work: Work) -> Built:
    check, at, _ = _answered(work)
    figures = work.take_quantities()
    if not check and not at:
        work.doubt("no check and no known thing is named")
    for span in _conditions(work):
        if condition(span.means).bad and work.is_free(span.first) and span.first not in work.told:
            work.doubt("something bad is told as well")
    tail = joined(_on(check, at) + new_said(work), figures_said(figures))
    over = tail.startswith("look over ")
    return Built(
        (LookedAt(at=at, check=check, figures=figures),),
        tail.removeprefix("look "),
        says="Looked" if over else "",
    )


def _answered(work: Work) -> tuple[str, tuple[str, ...], bool]:
    """The check or ask named, the known things it is about, and whether "seen" was said.

    A thing not known stays in the remark: a look describes nothing.
    """
    answer = take_named(work)
    at = known_subjects(work)
    answer = answer or find_answer(work, at)
    if not at:
        _note_stranger(work, answer is None)
    seen = work.find_told("seen")
    if seen is not None:
        work.place(seen)
    return (answer.name if answer else ""), at, seen is not None


def _note_stranger(work: Work, alone: bool) -> None:
    """A thing the record does not know is told by name and side; its words stay in the remark."""
    run = phrase(work)
    if run is not None and (alone or is_plain_thing(work, run)):
        work.name = work.typed(*run)
    elif work.taken:
        run = min(work.taken), max(work.taken) + 1
        work.name = work.typed(*run)
    sides = {a.side.side for i, a in enumerate(work.atoms) if a.side and i not in range(*(run or (0, 0)))}
    work.side = sides.pop() if len(sides) == 1 else ""


def _name_as_typed(work: Work) -> None:
    """What was upset, by the known name that holds its words, or else by those words themselves."""
    if not work.taken:
        return
    hit = next((h for h in work.hits if h.how == FULL and h.atoms & work.taken), None)
    work.name = hit.named.plain if hit else work.typed(min(work.taken), max(work.taken) + 1)


def _on(check: str, at: tuple[str, ...]) -> str:
    return f"{check}, {listed(at)}" if check and at else check or listed(at)


def _put_right(work: Work) -> Built:
    answer = find_answer(work, (), upsets_first=True)
    figures = work.take_quantities()
    if answer is not None:
        _name_as_typed(work)
        return Built(
            (PutRight(what=answer.name, figures=figures),), joined(answer.name, figures_said(figures))
        )
    at = known_subjects(work)
    if at:
        work.doubt("what was put right is not among what can be upset")
        return Built((PutRight(what=at[0], figures=figures),), joined(at[0], figures_said(figures)))
    run = phrase(work)
    what = ""
    if run:
        work.place(*run)
        what = work.typed(*run)
    work.doubt("what was put right is not among what can be upset")
    return Built((PutRight(what=what or "something", figures=figures),), joined(what, figures_said(figures)))


def _found_behind(work: Work) -> Built:
    """What stands before it: names joined by "and" are all off first, those behind "or" are another way."""
    lows = {work.atoms[i].low: i for i in sorted(work.told, reverse=True)}
    place = next((lows[word] for word in _PARTING if word in lows), None)
    ahead, behind = _halves(work, place)
    if not ahead or not behind:
        work.doubt("it takes a thing, and what stands in its way")
    at = tuple(ahead[:1]) or (things(work, need=True) if not behind else ())
    routes = _routes(work, behind)
    fact = FoundBehind(at=at, routes=routes)
    said = " or ".join(listed(route) for route in routes)
    return Built((fact,), f"{listed(at)} behind {said}" if said else listed(at))


_PARTING = (
    "until",
    "till",
    "unless",
    "without",
    "behind",
    "under",
    "after",
    "before",
    "by",
    "way",
    "to",
    "only",
    "off",
)


def _halves(work: Work, place: int | None) -> tuple[list[str], list[tuple[str, int]]]:
    """Whole names before and after the parting words; "in the way of" turns them round."""
    split = place if place is not None else len(work.atoms)
    turned = work.says("way", "needs", "need", "must", "has", "have") and not work.says(
        "cant", "cannot", "couldnt"
    )
    first: list[tuple[str, int]] = []
    second: list[tuple[str, int]] = []
    side = ""
    hits = [h for h in work.hits if h.score > 40]
    for hit in hits:
        told = [a.side.side for a in work.atoms[hit.last : hit.last + 2] if a.side] or [side]
        for i in range(hit.last, min(hit.last + 2, len(work.atoms))):
            if work.atoms[i].side:
                work.place(i)
        side = told[0] or side
        whole = _variant(hit.named.variants, told[0])
        work.placed |= hit.atoms
        (first if hit.first < split else second).append((whole, hit.first))
    ahead, behind = (second, first) if turned else (first, second)
    if ahead:
        work.name = ahead[0][0].partition(",")[0]
    return [w for w, _ in ahead], behind


def _variant(variants: Mapping[str, str], side: str) -> str:
    if side in variants:
        return variants[side]
    within = [s for s in variants if s and (set(side.split()) & set(s.split()) if side else True)]
    return variants[within[0]] if within else next(iter(variants.values()))


def _routes(work: Work, behind: list[tuple[str, int]]) -> tuple[tuple[str, ...], ...]:
    """Split at "or"."""
    ors = [i for i, a in enumerate(work.atoms) if a.low == "or"]
    for i in ors:
        work.place(i)
    routes: dict[int, list[str]] = {}
    for whole, at in behind:
        routes.setdefault(sum(o < at for o in ors), []).append(whole)
    return tuple(tuple(route) for route in routes.values())


ON_FINDING: Mapping[str, Builder] = {
    "found": _found,
    "found_behind": _found_behind,
    "measured": _measured,
    "proved": _proved,
    "looked_at": _looked_at,
    "put_right": _put_right,
}
