"""Whole assemblies by the last words of their names, and parts on the donor (common practice, no source)."""

from __future__ import annotations

import pytest

from tests.words.garage import best
from witnessmark.vehicle.things import Part


@pytest.mark.parametrize("verb", ["closed", "drained", "filled", "turned"])
def test_what_is_told_of_whole_assemblies_reaches_one_by_the_words_of_its_list(verb: str) -> None:
    reading = best(f"{verb} rear axle")
    assert getattr(reading.fact, "at", ()) == ("drive axle",)
    assert reading.sure


def test_a_part_that_comes_off_is_meant_before_its_assembly() -> None:
    assert getattr(best("took off axle").fact, "at", ()) == ("axle",)


@pytest.mark.parametrize(
    ("line", "name"),
    [("drained axle drain plug", "axle drain plug"), ("closed axle cover", "axle cover")],
)
def test_a_joint_or_part_of_more_words_is_meant_before_its_assembly(line: str, name: str) -> None:
    assert getattr(best(line).fact, "at", ()) == (name,)


def test_a_new_part_on_the_donor_is_described_there() -> None:
    reading = best("new part: steering column on the donor")
    assert reading.facts[-1].parts == (Part(name="steering column", where="donor"),)  # type: ignore[union-attr]
    assert reading.sentence == "Described steering column, as a part on the donor."
    assert best(reading.sentence).facts == reading.facts


@pytest.mark.parametrize("name", ["master cylinder", "half-shaft", "u-bolt nut"])
def test_a_new_part_is_named_as_typed(name: str) -> None:
    reading = best(f"new part: {name}")
    assert [part.name for part in reading.facts[-1].parts] == [name]  # type: ignore[union-attr]
    assert reading.sure
