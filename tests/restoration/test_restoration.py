"""Hearing, writing and striking: read back first, told once it is on the disk, nothing lost to a rival."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

import pytest

from witnessmark.ground.errors import BadInput, LostRace
from witnessmark.restoration.begin import begin, reopen
from witnessmark.restoration.carrying import export_file, import_file
from witnessmark.restoration.many import write_many
from witnessmark.restoration.restoration import Restoration

NOW = datetime(2026, 3, 14, 10, 40)
KNOWN = """
@ 2026-03-07 09:00
new joint: hub nut left rear, tapered drive hub
new joint: hub nut right rear, tapered drive hub
new joint: pinion seal, pinion seal
"""


@pytest.fixture
def open_record(tmp_path: Path) -> Restoration:
    restoration = begin(tmp_path, "the van", now=NOW, body="van", country="GB")
    assert write_many(restoration, KNOWN, write=True).stored == 3
    return restoration


def test_a_line_is_read_back_with_what_follows_before_it_is_written(open_record):
    heard = open_record.hear("took off hub nut left rear")
    said = heard.sentence()
    assert said.startswith("Took off hub nut, left rear. Now apart. Owes: ")
    assert "new half shaft split pin or tab" in said
    assert open_record.last_line == 4
    (stored,) = open_record.write(heard)
    assert stored.line == 5
    assert stored.words == "took off hub nut left rear"
    assert (stored.day, stored.time) == (NOW.date(), "10:40")


def test_what_a_line_pays_is_said_too(open_record):
    open_record.write(open_record.hear("took off hub nut left rear"))
    assert (
        "Pays: put back and tighten to figure"
        in open_record.hear("tight hub nut left rear 140 Nm").sentence()
    )


def test_a_new_thing_asks_its_kind_and_the_answer_completes_the_line(open_record):
    heard = open_record.hear("took off frobnicator left rear")
    assert not heard.sure
    assert heard.understood.ask is not None
    assert "frobnicator" in str(heard.unsure())
    answered = open_record.hear("took off frobnicator left rear", kind="plain-fixing")
    assert answered.sure
    open_record.write(answered)
    assert open_record.flow().word("frobnicator, left rear") == "apart"


def test_a_rival_hand_loses_nothing(tmp_path, open_record):
    mine = open_record.hear("took off hub nut left rear")
    theirs = reopen(tmp_path, now=NOW)
    theirs.write(theirs.hear("took off hub nut right rear"))
    with pytest.raises(LostRace) as trouble:
        open_record.write(mine)
    assert trouble.value.unwritten[0].words == "took off hub nut left rear"  # type: ignore[attr-defined]
    assert [e.words for e in reopen(tmp_path, now=NOW).entries][-1] == "took off hub nut right rear"


def test_the_same_id_written_twice_stands_once(open_record):
    open_record.new_id = lambda: "made-on-the-phone"
    heard = open_record.hear("took off hub nut left rear")
    first = open_record.write(heard)
    again = open_record.write(heard)
    assert first == again
    assert open_record.last_line == 5


def test_a_strike_says_what_comes_back_and_its_correction_takes_the_place(open_record):
    open_record.write(open_record.hear("took off hub nut left rear"))
    words = "strike last, that was the other side; took off hub nut right rear"
    heard = open_record.hear(words)
    assert heard.sentence().startswith(
        "Struck line 5, 'took off hub nut left rear': that was the other side."
    )
    open_record.write(heard)
    flow = open_record.flow()
    assert flow.word("hub nut, left rear") == "as found"
    assert flow.word("hub nut, right rear") == "apart"
    assert flow.faults == ()


@pytest.mark.parametrize(
    ("words", "given"),
    [
        ("strike 99, wrong", "there is no line 99"),
        ("strike 2", "without a reason"),
        ("strike last, wrong; took off frobnicator", "the corrected line reads"),
    ],
)
def test_a_strike_that_will_not_do_is_refused(open_record, words, given):
    with pytest.raises(BadInput) as trouble:
        open_record.hear(words)
    assert given in trouble.value.given


def test_a_strike_of_a_struck_line_or_of_a_strike_is_refused(open_record):
    open_record.write(open_record.hear("took off hub nut left rear"))
    open_record.write(open_record.hear("strike 5, wrong side"))
    for line, given in ((5, "struck already"), (6, "itself a strike")):
        with pytest.raises(BadInput) as trouble:
            open_record.hear(f"strike {line}, wrong again")
        assert given in trouble.value.given


def test_a_description_other_lines_lean_on_is_shown_before_it_is_struck(open_record):
    open_record.write(open_record.hear("took off hub nut left rear"))
    assert [e.line for e in open_record.orphaned_by(2)] == [5]


def test_days_to_come_are_no_facts(open_record):
    with pytest.raises(BadInput) as trouble:
        open_record.hear("took off hub nut left rear", day=date(2026, 3, 20))
    assert "has not come yet" in trouble.value.given


def test_a_line_done_earlier_stands_at_the_end_of_its_day(open_record):
    heard = open_record.hear("took off hub nut left rear", day=date(2026, 3, 10))
    (stored,) = open_record.write(heard)
    assert stored.time == "24:00"
    assert stored.written_day == NOW.date()


def test_as_known_on_a_day_and_as_done_by_a_day_differ(open_record):
    open_record.write(open_record.hear("took off hub nut left rear", day=date(2026, 3, 10)))
    assert open_record.flow(on=date(2026, 3, 12)).word("hub nut, left rear") == "as found"
    assert open_record.flow(by=date(2026, 3, 12)).word("hub nut, left rear") == "apart"
    assert open_record.flow(by=date(2026, 3, 9)).word("hub nut, left rear") == "as found"


def test_a_file_with_one_doubtful_line_writes_nothing(open_record):
    many = write_many(open_record, "took off hub nut left rear\ntightned wobble sprocket", write=True)
    assert many.stored == 0
    assert "wobble" in many.unsure().given
    assert open_record.last_line == 4


def test_an_archive_comes_back_equal(tmp_path, open_record):
    open_record.write(open_record.hear("took off hub nut left rear"))
    export_file(open_record, tmp_path, tmp_path / "van.zip")
    taken = import_file(tmp_path / "copy", tmp_path / "van.zip", take_good=False, now=NOW)
    assert taken.written == 5
    assert reopen(tmp_path / "copy", now=NOW).entries == open_record.entries
    with pytest.raises(BadInput):
        import_file(tmp_path / "copy", tmp_path / "van.zip", take_good=False, now=NOW)
