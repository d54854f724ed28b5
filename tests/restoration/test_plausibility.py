"""A figure is judged as it is read back: a planted slip is caught, doubt admitted, nothing blocked."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from tests.building import described
from tests.cli.running import run
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.restoration.begin import begin
from witnessmark.restoration.many import write_many
from witnessmark.restoration.plausibility import Plausible, plausible
from witnessmark.restoration.restoration import Restoration
from witnessmark.vehicle.things import Figure, Joint

NOW = datetime(2026, 3, 14, 10, 40)
JOINTS = (
    Joint(name="hanger bolts", kind="body-mount", thread="M12", grade="8.8"),
    Joint(name="cover bolts", kind="gasketed-cover", thread="M6", grade="8.8"),
    Joint(name="box bolts", kind="plain-fixing", thread="M8"),
    Joint(name="mount bolts", kind="plain-fixing"),
    Joint(name="brake union", kind="brake-union", thread="3/8 UNF"),
    Joint(name="fill plug", kind="fill-and-drain-plug", thread="3/4 BSP"),
    Joint(name="odd bolts", kind="plain-fixing", thread="24 tpi"),
    Joint(name="old bolts", kind="plain-fixing", thread="M8", grade="S"),
    Joint(name="flange nut", kind="pinion-seal", thread="M18 x 1.5", grade="8.8"),
)
BAND = "dry to oiled steel (nut factor 0.22 to 0.12)"


@pytest.fixture
def open_record(tmp_path: Path) -> Restoration:
    restoration = begin(tmp_path, "the van", now=NOW, body="van", country="GB")
    restoration.write_fact(described(*JOINTS), "the joints")
    return restoration


def judged(restoration: Restoration, words: str) -> Plausible:
    (one,) = restoration.hear(words).plausible
    return one


def test_thirteen_newton_metres_where_pound_feet_were_meant_is_caught(open_record):
    heard = open_record.hear("book says hanger bolts 13 Nm p 41")
    assert judged(open_record, "book says hanger bolts 13 Nm p 41").state == "low"
    assert "13 lbf ft (17.6 N·m)" in heard.plausible[0].unit_slip
    assert heard.sentence().endswith(
        f"13 Nm on M12, 8.8, is low, 10 % to 18 % of proof, {BAND}: oiled it stays under 20 % of proof; "
        "perhaps meant 13 lbf ft (17.6 N·m); your book comes first."
    )
    assert judged(open_record, "book says hanger bolts 13 lbf ft p 41").state == "within"


def test_forty_seven_pound_feet_on_m6_are_over_and_pound_inches_are_named(open_record):
    one = judged(open_record, "book says cover bolts 47 lbf ft p 12")
    assert one.state == "over"
    assert "47 lbf in (5.3 N·m)" in one.unit_slip
    assert "even dry it passes proof" in one.sentence


def test_the_band_is_named_and_so_is_every_grade_where_none_is_known(open_record):
    said = judged(open_record, "book says box bolts 13 lbf ft p 3").sentence
    assert said == f"13 lbf ft on M8, grade not known, is doubtful at 4.8 and 5.8, within at 8.8, {BAND}."
    over = judged(open_record, "book says mount bolts 47 lbf ft p 3, M6").sentence
    assert "over at 4.8 to 8.8" in over
    assert "whether a unit was mixed up cannot be told" in over


def test_a_grade_no_table_has_is_one_that_nobody_can_read(open_record):
    one = judged(open_record, "book says old bolts 13 lbf ft p 3")
    assert (one.grade, one.state) == ("", "cannot tell")


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("mount bolts", "the thread of mount bolts is not in this record"),
        ("brake union", "what is tightened there is hollow"),
        ("fill plug", "3/4 BSP is a pipe thread"),
        ("odd bolts", "tables do not know the thread 24 tpi"),
    ],
)
def test_it_says_so_where_it_cannot_tell(open_record, name, why):
    one = judged(open_record, f"book says {name} 13 lbf ft p 3")
    assert (one.state, one.unit_slip) == ("cannot tell", "")
    assert one.sentence.startswith("Whether 13 lbf ft is plausible cannot be told: ")
    assert why in one.sentence


def test_a_thread_told_in_the_same_line_counts(open_record):
    assert judged(open_record, "book says mount bolts 13 lbf ft p 3, M8").thread == "M8"


def test_a_thread_told_later_judges_the_figure_on_record(open_record):
    open_record.write(open_record.hear("book says mount bolts 47 lbf ft p 3"))
    one = judged(open_record, "book says mount bolts M6")
    assert (one.figure, one.thread) == ("47 lbf ft", "M6")
    assert "over" in one.sentence


def test_what_is_tightened_is_judged_only_where_thread_and_grade_are_known(open_record):
    assert judged(open_record, "tight cover bolts 47 lbf ft").state == "over"
    assert judged(open_record, "closed cover bolts 47 lbf ft").state == "over"
    for words in ("tight box bolts 13 lbf ft", "tight mount bolts 13 lbf ft", "tight cover bolts"):
        assert open_record.hear(words).plausible == ()


def test_other_figures_are_none_of_its_business(open_record):
    assert open_record.hear("book says fill plug 1.2 L").plausible == ()
    assert open_record.hear("closed flange nut 1.5 Nm").plausible == ()
    assert judged(open_record, "tight flange nut 95 lbf ft").state == "within"


def test_joints_of_one_thread_share_a_sentence_and_of_two_do_not():
    joints = {j.name: j for j in (Joint(name="a", thread="M8"), Joint(name="b", thread="M8"), JOINTS[0])}
    torque = Quantity("18 N·m", 18.0, "N·m")
    figure = Figure(low=18, high=18, unit="N·m", typed="18 N·m")
    fact = f.ReadFigure(at=("a", "b", "hanger bolts", "not described"), figure=figure, figures=(torque,))
    assert [one.joints for one in plausible((fact,), joints)] == [("a", "b"), ("hanger bolts",)]


def test_both_ends_of_a_band_are_judged():
    joint = Joint(name="a", kind="plain-fixing", thread="M8", grade="8.8")
    ends = (Quantity("18 N·m", 18.0, "N·m"), Quantity("60 N·m", 60.0, "N·m"))
    found = plausible((f.ReadFigure(at=("a",), figures=ends),), {"a": joint})
    assert [one.state for one in found] == ["within", "over"]


def test_a_joint_described_by_the_same_line_is_known():
    joint = Joint(name="a", kind="plain-fixing", thread="M6", grade="8.8")
    torque = Quantity("60 N·m", 60.0, "N·m")
    found = plausible((described(joint), f.ReadFigure(at=("a",), figures=(torque,))), {})
    assert [one.state for one in found] == ["over"]


def test_an_absurd_figure_is_told_and_not_refused():
    joint = Joint(name="a", kind="plain-fixing", thread="M6", grade="8.8")
    torque = Quantity("20000 N·m", 20_000.0, "N·m")
    (one,) = plausible((f.ReadFigure(at=("a",), figures=(torque,)),), {"a": joint})
    assert one.state == "cannot tell"
    assert "20000" in one.sentence


def test_it_never_blocks(open_record):
    heard = open_record.hear("book says cover bolts 47 lbf ft p 12")
    assert heard.sure
    open_record.write(heard)
    assert open_record.flow().vehicle.joints["cover bolts"].figure.typed == "47 lbf ft"


def test_a_correction_is_judged_too(open_record):
    open_record.write(open_record.hear("book says cover bolts 4 lbf ft p 12"))
    heard = open_record.hear("strike last, misread; book says cover bolts 47 lbf ft p 12")
    assert [one.state for one in heard.plausible] == ["over"]


def test_a_file_of_lines_is_read_back_with_it(open_record):
    many = write_many(open_record, "book says cover bolts 47 lbf ft p 12\nlifted rear on stands", write=False)
    assert "is over" in many.lines[0].sentence
    assert "proof" not in many.lines[1].sentence


def test_a_script_is_given_it_too(tmp_path, open_record):
    said = run(tmp_path, "write", "--json", "--yes", "book says cover bolts 47 lbf ft p 12").json()
    (one,) = said["plausible"]
    assert (one["joints"], one["state"], one["grade"]) == (["cover bolts"], "over", "8.8")
    assert one["sentence"].startswith("47 lbf ft on M6, 8.8, is over")
    assert said["line"] is not None
    assert run(tmp_path, "write", "--json", "--yes", "lifted rear on stands").json()["plausible"] == []


def test_thread_and_grade_are_spoken_of_where_the_record_has_them(open_record):
    assert open_record.hear("took off hanger bolts").sentence().endswith("Thread: M12, 8.8.")
    assert open_record.hear("tight box bolts 13 lbf ft").sentence().endswith("Thread: M8.")
    assert "Thread" not in open_record.hear("took off mount bolts").sentence()
    assert "Thread" not in open_record.hear("looked at hanger bolts").sentence()
    assert "Thread" not in open_record.hear("tight cover bolts 4 lbf ft").sentence()


def test_a_grade_typed_in_the_books_line_settles_what_was_doubtful(open_record: Restoration) -> None:
    (bare,) = open_record.hear("book says box bolts 18 Nm").plausible
    (told,) = open_record.hear("book says box bolts M8 8.8 18 Nm").plausible
    assert bare.state == "cannot tell"
    assert (told.grade, told.state) == ("8.8", "within")
