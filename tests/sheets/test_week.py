"""The week's story: what it tells, and that nothing private can come into it, whatever a record holds."""

from __future__ import annotations

import re
from datetime import date, timedelta

import html5lib
from hypothesis import given
from hypothesis import strategies as st

from tests.building import FIRST_DAY, described, entry
from witnessmark.ground.quantity import Quantity
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.journal.order import reading_order, standing
from witnessmark.sheets.week import Story, week_story
from witnessmark.sheets.week_told import as_html, as_markdown, days_of, photo_file_names
from witnessmark.state.description import vehicle_from
from witnessmark.state.photos import album_from
from witnessmark.vehicle.things import Joint, Part

NUT, SEAL = "hub nut, left rear", "pinion seal"
LAST = FIRST_DAY + timedelta(days=6)
VEHICLE = f.DescribedVehicle(name="Aunt Edna's van", body="van", country="GB")
THINGS = described(Joint(name=NUT, kind="tapered-drive-hub"), Joint(name=SEAL, kind="pinion-seal"))


def lines(*facts: f.AnyFact) -> list[Entry]:
    return [entry(fact, n) for n, fact in enumerate((VEHICLE, THINGS, *facts), 1)]


def told(entries: list[Entry], operations: tuple[Operation, ...] = (), last: date = LAST) -> Story:
    held = standing(entries)
    strikes = [e for e in entries if isinstance(e.fact, f.Struck)]
    return week_story(
        reading_order([*held, *strikes]),
        vehicle_from(held),
        album_from(entries).photos,
        album_from(entries).pairs,
        operations,
        last=last,
    )


def test_it_tells_what_was_done_one_number_what_went_wrong_and_what_is_next() -> None:
    step = Operation(
        id="x", what="prove", sort="prove", name=NUT, job="close", minutes=Minutes(5, 10, 20), where="rear"
    )
    story = told(
        lines(
            f.TookOff(at=(NUT,)),
            f.Found(at=(SEAL,), condition="weeping"),
            f.Tightened(at=(NUT,), figures=(Quantity("110 lbf ft", 149.1, "N·m"),)),
            f.Measured(at=(NUT,), what="end float", figures=(Quantity("0.08 mm", 0.08, "mm"),)),
            f.LookedAt(at=(SEAL,)),
        ),
        (step,),
    )
    assert story.done == (("Apart", NUT), ("Back together", NUT), ("Proved", SEAL))
    assert story.number == ("0.08 mm", "measured: end float, hub nut, left rear.")
    assert story.wrong == "The pinion seal: found weeping."
    assert story.ahead == "proving hub nut, left rear."
    assert (story.what, days_of(story)) == ("van", "7 to 13 March 2026")


def test_a_week_without_figures_counts_and_one_without_anything_says_so() -> None:
    assert told(lines(f.TookOff(at=(NUT,)))).number == ("1", "thing taken apart this week.")
    still = told(lines(), last=LAST + timedelta(days=60))
    assert (still.done, still.number[0], still.wrong) == ((), "0", "Nothing that was written down.")
    assert told(lines(f.TookOff(at=(NUT,)), f.Struck(line=3, why="x"))).wrong.startswith("1 line had to be")


def test_days_of_two_months_and_two_years_are_said() -> None:
    assert days_of(told(lines(), last=date(2026, 3, 3))) == "25 February to 3 March 2026"
    assert days_of(told(lines(), last=date(2026, 1, 3))) == "28 December 2025 to 3 January 2026"


def test_of_a_week_gone_by_what_came_next_is_told() -> None:
    entries = [*lines(f.TookOff(at=(NUT,))), entry(f.Opened(at=(SEAL,)), 4, LAST + timedelta(days=9))]
    entries.append(entry(f.Tightened(at=(NUT,)), 5, LAST + timedelta(days=10)))
    assert told(entries).ahead == "opening pinion seal; closing hub nut, left rear."


def test_three_photos_a_pair_first_then_what_shows_something_else() -> None:
    many = tuple(f"off {n}" for n in range(5))
    story = told(
        lines(
            f.TookOff(at=(NUT,)),
            f.Photographed(at=(NUT,), photos=many, of=3),
            f.Opened(at=(SEAL,)),
            f.Photographed(at=(SEAL,), photos=("seal",), of=5),
            f.Tightened(at=(NUT,)),
            f.Photographed(at=(NUT,), photos=("tight",), of=7),
        )
    )
    assert [(shot.name, shot.caption) for shot in story.photos] == [
        ("off 0", "Took off hub nut, left rear."),
        ("seal", "Opened pinion seal."),
        ("tight", "Tightened hub nut, left rear."),
    ]
    assert photo_file_names(story) == {"off 0": "1.jpg", "seal": "2.jpg", "tight": "3.jpg"}


def test_a_name_that_is_somebodys_own_is_told_by_its_kind() -> None:
    own = described(Joint(name="Kettlewick's nut", kind="wheel-nuts"), Part(name="Kettlewick's jack"))
    story = told(lines(own, f.TookOff(at=("Kettlewick's nut",)), f.TookOff(at=("Kettlewick's jack",))))
    assert story.done == (("Apart", "wheel and wheel nuts; a part"),)


SECRET = "Xq7Kettlewick"
texts = st.sampled_from(
    [SECRET, f"hub {SECRET}", f"<b>{SECRET}</b>", f"{SECRET}'s hub nut", f"£40 to {SECRET}", f"**{SECRET}"]
)
at_some = st.lists(texts | st.sampled_from([NUT, SEAL]), min_size=1, max_size=2).map(tuple)
quantities = st.lists(texts.map(lambda t: Quantity(t, 4.0, "mm")), max_size=1).map(tuple)
doings = st.one_of(
    st.builds(f.TookOff, at=at_some, remark=texts),
    st.builds(f.Found, at=at_some, condition=texts | st.just("worn"), item=texts, remark=texts),
    st.builds(f.Measured, at=at_some, what=texts, figures=quantities),
    st.builds(f.Proved, at=at_some, check=texts, figures=quantities),
    st.builds(f.Tightened, at=at_some, figures=quantities),
    st.builds(f.Fitted, at=at_some, item=texts, why_not_new=texts),
    st.builds(f.Stored, at=at_some, where=texts),
    st.builds(f.SentAway, at=at_some, with_whom=texts),
    st.builds(f.Ordered, item=texts, supplier=texts, price=st.just(41.37)),
    st.builds(f.Came, item=texts, supplier=texts),
    st.builds(f.Paid, amount=st.just(41.37), what=texts, to=texts),
    st.builds(f.Held, people=st.tuples(texts)),
    st.builds(f.Remarked, at=at_some, remark=texts),
    st.builds(f.Coated, at=at_some, product=texts),
    st.builds(f.Photographed, at=at_some, photos=st.tuples(texts)),
    st.builds(
        lambda named: described(Joint(name=named, kind="wheel-nuts"), Part(name=f"{named} part")), texts
    ),
    st.builds(f.Struck, line=st.integers(3, 9), why=texts),
)
steps = st.builds(
    Operation,
    id=texts,
    what=texts,
    sort=st.sampled_from(["open", "work", "close", "prove"]),
    name=texts,
    job=texts,
    minutes=st.just(Minutes(1, 2, 3)),
)


@given(st.lists(doings, max_size=9), st.lists(steps, max_size=3))
def test_nothing_private_can_come_into_what_is_published(
    facts: list[f.AnyFact], operations: list[Operation]
) -> None:
    entries = lines(*facts)
    story = told(entries, tuple(operations))
    for published in (as_html(story), as_markdown(story), *photo_file_names(story).values()):
        assert SECRET.casefold() not in published.casefold()
        assert "Edna" not in published
        assert not re.search(r"41[.]37|£|<b>X", published)


def test_what_is_published_is_one_valid_page_and_says_the_same_as_the_markdown() -> None:
    story = told(
        lines(f.TookOff(at=(NUT,)), f.Photographed(at=(NUT,), photos=("a",), of=3), f.LookedAt(at=(SEAL,)))
    )
    page = as_html(story)
    html5lib.HTMLParser(strict=True).parse(page)
    plain = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", page.partition("<body>")[2])).strip()
    marked = re.sub(r"!\[[^]]*\]\([^)]*\)|[*#]", " ", as_markdown(story))
    assert plain.split() == marked.split()
    assert '<img src="1.jpg" alt="Took off hub nut, left rear."' in page
    assert not re.search(r"https?:|<script|src=\"/", page)
