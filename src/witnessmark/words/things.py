"""What a fact is about, known or new; and small turns of speech for the sentence."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.sides import parted, whole_name
from witnessmark.vehicle.things import Part
from witnessmark.words.lexicon import lexicon
from witnessmark.words.naming import is_head
from witnessmark.words.newnames import (
    PART,
    bring_in,
    is_tool,
    kind_choices,
    kind_given,
    phrase,
    tell_kind,
)
from witnessmark.words.sided import merged_sides, wants_all
from witnessmark.words.subjects import known_subjects
from witnessmark.words.work import Work

NOT_PLAIN = "what it is about is not told plainly"
_HANDED = ("left", "right")
_BOTH = 2.0


def things(
    work: Work, *, need: bool = True, kinds: Sequence[str] = (), usual: str = "", plainly: bool = False
) -> tuple[str, ...]:
    """Whole names of what the line is about; a thing not known is described by this line.

    need   a line of this sort without a name is doubtful
    kinds  kinds a new thing of this sort of line is likely to be
    usual  the kind it is where its name tells nothing
    plainly  a new thing must end in a word that things are called by
    """
    wholes = known_subjects(work)
    if wholes:
        _count(work, wholes)
        return wholes
    run = phrase(work)
    if run is None or is_tool(work, run) or (plainly and not is_head(work.atoms[run[1] - 1].low)):
        note_side(work)
        return _lately(work) if need else ()
    name = work.typed(*run)
    plain = is_head(work.atoms[run[1] - 1].low)
    kind = kind_given(work.kind) if work.kind else tell_kind(name) or (usual if plain else "")
    if not kind and not need:
        return ()
    return new_thing(work, run, name, kind, kinds)


def _is_led_by_a_stranger(work: Work, first: int) -> bool:
    """Whether an unplaced word touches a new name: "the garage window" is none of the vehicle's."""
    before = first - 1
    if before < 0 or not work.is_free(before) or work.atoms[before].sort != "word":
        return False
    known = lexicon()
    return work.atoms[before].low not in known.glue | known.trim | known.beside | known.clause


def _lately(work: Work) -> tuple[str, ...]:
    """Nothing is named: what was lately written about is offered, and doubted."""
    if not work.recent or work.call.doubted:
        work.doubt("nothing is named")
        return ()
    work.doubt("nothing is named: the last thing is taken")
    work.name = parted(work.recent[0])[0]
    return work.recent[:1]


def new_thing(
    work: Work, run: tuple[int, int], name: str, kind: str, kinds: Sequence[str]
) -> tuple[str, ...]:
    if _is_led_by_a_stranger(work, run[0]):
        work.doubt("a word before the name is not known")
    number = work.take_number(before=range(*run)) or _times(work, run[1])
    work.place(*run)
    sides = merged_sides(work, range(*run))
    many = wants_all(work, range(*run))
    if many and len(sides) == 1 and sides[0] in ("front", "rear"):
        sides = [f"{hand} {sides[0]}" for hand in _HANDED]
    elif many and not sides:
        number = number or (_BOTH if work.has("both") else None)
        work.doubt("it is not told which ones")
    work.name, work.side = name, sides[0] if len(sides) == 1 else ""
    if many and len(sides) > 1:
        work.side = sides[0].split()[-1]
    if any(work.atoms[i].mended for i in range(*run)):
        work.doubt("the spelling may mean another word")
    if not kind:
        work.asked, work.choices = name, kind_choices(name, kinds)
        work.doubt("its kind is not known")
    return tuple(bring_in(work, name, side, kind, int(number or 1)) for side in sides or [""])


def _times(work: Work, at: int) -> float | None:
    """A count right behind the name: "bed boards x11"."""
    if at >= len(work.atoms) or not work.is_free(at) or not work.words(at, at + 1).lower().startswith("x"):
        return None
    if work.atoms[at].value is not None:
        work.place(at)
    return work.atoms[at].value


def note_side(work: Work) -> None:
    """The side told of a thing that the record does not know."""
    sides = merged_sides(work, ())
    if sides:
        work.side = sides[0]


def _count(work: Work, wholes: Sequence[str]) -> None:
    """A count typed before a known name is placed where the record says the same."""
    starts = [h.first for h in work.hits if h.atoms <= work.placed]
    for at in work.numbers():
        value = work.atoms[at].value
        beside = any(0 < start - at <= 2 for start in starts)
        joints = [work.vocabulary.vehicle.joints.get(w) for w in wholes]
        known = {j.number for j in joints if j} | {len(wholes)}
        if beside and value in known and value != 1:
            work.place(at)


def listed(names: Sequence[str]) -> str:
    """Names as they are read back.

    >>> listed(["wheel nuts, left rear", "drum, left rear"])
    'wheel nuts, left rear and drum, left rear'
    """
    if len(names) < 2:
        return "".join(names)
    return ", ".join(names[:-1]) + " and " + names[-1]


def figures_said(figures: Sequence[Quantity]) -> str:
    """Figures as typed, joined.

    >>> figures_said([Quantity("47 Nm", 47.0, "N·m"), Quantity("2 mm", 2.0, "mm")])
    '47 Nm, 2 mm'
    """
    return ", ".join(q.typed for q in figures)


def new_said(work: Work) -> str:
    """That a thing is new to the record, and as what."""
    if not work.parts and not work.joints:
        return ""
    kind = part_said(work.parts[0]) if work.parts else work.joints[0].kind.replace("-", " ")
    return f" (new to the record, as {kind})"


def part_said(part: Part) -> str:
    """What a new part is said to be.

    >>> part_said(Part(name="wing, left", where="donor"))
    'a part on the donor'
    """
    return f"a part on the {part.where}" if part.where else "a part"


def is_part(work: Work, whole: str) -> bool:
    """Whether a whole name is a part's, known or new."""
    if any(p.name == whole for p in work.parts):
        return True
    return work.vocabulary.sort_of(whole) == PART


def whole(name: str, side: str) -> str:
    """A whole name, or just the side where nothing is named."""
    return whole_name(name, side) if name else side
