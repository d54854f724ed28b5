"""Paper read back: every row is there, every page carries its head and foot, all of it black on white."""

import hashlib
import subprocess
import sys
from datetime import date
from functools import cache
from pathlib import Path

import numpy as np
import pypdfium2
import pypdfium2.raw as raw
import pytest
import zxingcpp
from PIL import Image

from tests.press.paper import MM, body, flat, ink, page_texts, picture, runs
from tests.sheets.every import KINDS, every_sheet, run_together, words_on
from tests.sheets.made_up import NAME, TODAY, hand_made_answer
from witnessmark.gate.answer import Hold
from witnessmark.ground.errors import BadInput
from witnessmark.press.printing import labels_of, print_to, to_pdf, to_png_pages, to_svg_pages
from witnessmark.press.square import square_text
from witnessmark.sheets.gate import gate_sheet
from witnessmark.sheets.lists import owed_sheet
from witnessmark.sheets.phrases import day_words
from witnessmark.sheets.plain import as_plain
from witnessmark.sheets.rows import Due, JointRow, Label, Section, Sheet, Step, Words

HOSTILE = (
    '#set text(1pt) $x^2$ *bold* _it_ \\back `raw` <tag> @ref // no /* c */ ~ -- --- "q" \'s',
    "{{ x }} ${y} %s =cmd|calc",
    "Łódź ćž ŐŰ œ ½ × ° µ Ω → кириллица",
    "a" * 90 + " end",
)
OTHER_WAY = ("עברית שמאל", "العربية يسار")


@cache
def pdf(kind: str) -> bytes:
    return to_pdf(every_sheet()[kind])


def hostile(kind: str, names: tuple[str, ...]) -> Sheet:
    rows = tuple(
        JointRow(
            name=n, state="loose", if_missed="lets go", dues=(Due(what=n, because=f"for {n}", code="AB2C"),)
        )
        for n in names
    )
    words = tuple(Words(text=n, label="label") for n in names)
    steps = tuple(Step(number=i, text=n) for i, n in enumerate(names, 1))
    sections = (
        Section(heading="lets go", rows=rows, if_missed="lets go"),
        Section(heading="today", rows=steps),
        Section(heading="don't forget", rows=words),
    )
    return Sheet(
        kind=kind, title=names[0], vehicle=names[0], date=TODAY, line=9, code="AB2C", sections=sections,
        headline=names[0], notes=names, footer=names,
    )  # fmt: skip


# ---- what stands on it


@pytest.mark.parametrize("kind", [k for k in KINDS if k != "labels"])
def test_every_word_of_the_plain_values_stands_on_the_paper(kind: str) -> None:
    read = body(pdf(kind))
    missing = [word for word in words_on(as_plain(every_sheet()[kind])) if run_together(word) not in read]
    assert missing == []


@pytest.mark.parametrize("kind", KINDS)
def test_every_page_says_whose_it_is_its_day_line_code_and_number(kind: str) -> None:
    sheet = every_sheet()[kind]
    texts = page_texts(pdf(kind))
    for number, text in enumerate(texts, 1):
        for part in (
            sheet.vehicle, day_words(sheet.date), f"to journal line {sheet.line}", sheet.code,
            f"page {number} of {len(texts)}", "100 mm: measure me",
        ):  # fmt: skip
            assert flat(part) in flat(text), part


def test_two_hundred_holds_run_over_many_pages_and_none_is_lost() -> None:
    holds = tuple(
        Hold(
            if_missed=("lets_go", "wets")[n % 2], what=f"thing number {n} is to be proven",
            name=f"joint {n // 3}", joint=f"joint {n // 3}", state=("apart", "loose", "tight")[n % 3],
            because=f"reason {n}", line=n + 1, days=n, pays="", code=f"C{n:03d}", sort="check",
        )
        for n in range(200)
    )  # fmt: skip
    made = to_pdf(gate_sheet(hand_made_answer(holds), vehicle=NAME, line=300))
    read = body(made)
    assert len(page_texts(made)) > 10
    assert [h.code for h in holds if flat(h.code) not in read] == []
    assert [h.what for h in holds if flat(h.what) not in read] == []


def test_nothing_owed_is_one_calm_page() -> None:
    made = to_pdf(owed_sheet((), {}, vehicle=NAME, today=TODAY, line=0))
    assert len(page_texts(made)) == 1
    assert flat("Nothing owed.") in body(made)


@pytest.mark.parametrize("kind", ["gate", "wall"])
def test_hostile_names_come_out_as_they_were_typed(kind: str) -> None:
    read = body(to_pdf(hostile(kind, HOSTILE)))
    assert [name for name in HOSTILE if flat(name) not in read] == []


def test_names_written_from_right_to_left_come_out_whole() -> None:
    read = "".join(page_texts(to_pdf(hostile("gate", OTHER_WAY))))
    assert [word for name in OTHER_WAY for word in name.split() if word not in read] == []


def test_a_sign_no_face_carries_is_printed_as_its_number_and_not_lost() -> None:
    read = body(to_pdf(hostile("gate", ("jack 🔧 日",))))
    assert flat("jack U+1F527 U+65E5") in read


def test_control_characters_are_made_visible_and_turn_nothing_round() -> None:
    read = body(to_pdf(hostile("gate", ("hub\x07 nut\u202e left",))))
    assert flat("hub\N{REPLACEMENT CHARACTER} nut\N{REPLACEMENT CHARACTER} left") in read


# ---- how it looks


@pytest.mark.parametrize("kind", KINDS)
def test_it_is_black_and_grey_and_nothing_is_told_by_colour(kind: str) -> None:
    for page in range(min(3, len(page_texts(pdf(kind))))):
        seen = picture(pdf(kind), page, 60).astype(int)
        assert (seen.max(axis=2) - seen.min(axis=2)).max() == 0


@pytest.mark.parametrize("kind", KINDS)
def test_the_bar_is_a_hundred_millimetres(kind: str) -> None:
    dpi = 200
    page = ink(pdf(kind), 0, dpi)
    foot = page[int(page.shape[0] * 0.93) :]
    longest = max((length for line in foot for _, length in runs(line)), default=0)
    assert longest / dpi * MM == pytest.approx(100, abs=0.5)


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_cut_off_at_the_edge_of_the_paper(kind: str, paper: str) -> None:
    made = to_pdf(every_sheet()[kind], paper=paper)  # type: ignore[arg-type]
    for page in range(len(page_texts(made))):
        seen = ink(made, page, 50)
        edge = round(4 / MM * 50)
        assert not seen[:edge].any()
        assert not seen[-edge:].any()
        assert not seen[:, :edge].any()
        assert not seen[:, -edge:].any()


def test_the_walls_capitals_stand_twelve_millimetres_high() -> None:
    dpi = 300
    row = JointRow(name="EHE HEH", state="loose", if_missed="lets go")
    sheet = Sheet(
        kind="wall", title="Wall", vehicle=NAME, date=TODAY, line=1, code="ABCD",
        sections=(Section(heading="lets go", rows=(row,), if_missed="lets go"), Section(heading="today")),
    )  # fmt: skip
    page = ink(to_pdf(sheet), 0, dpi)
    names = page[int(50 / MM * dpi) : int(200 / MM * dpi), int(56 / MM * dpi) : int(100 / MM * dpi)]
    tallest = max(length for _, length in runs(np.asarray(names.any(axis=1)))) / dpi * MM
    assert 12.0 <= tallest < 12.6


@pytest.mark.parametrize("kind", ["session", "closing", "gate"])
def test_the_body_is_set_in_fourteen_points_or_more(kind: str) -> None:
    document = pypdfium2.PdfDocument(pdf(kind))
    sizes = []
    for page in document:
        text = page.get_textpage()
        top, bottom = page.get_height() - 27 / MM * 72, 20 / MM * 72
        for n in range(text.count_chars()):
            _, low, _, high = text.get_charbox(n)
            size = raw.FPDFText_GetFontSize(text.raw, n)
            if high < top and low > bottom and text.get_text_range(n, 1).strip():
                sizes.append(size)
        text.close()
    document.close()
    assert len(sizes) > 500
    assert min(sizes) > 13.99


# ---- labels


def squares(pdf_bytes: bytes, page: int, dpi: float) -> list[str]:
    image = Image.fromarray(picture(pdf_bytes, page, dpi))
    return sorted(found.text for found in zxingcpp.read_barcodes(image))


def test_the_square_of_every_label_reads_back() -> None:
    labels = labels_of(every_sheet()["labels"])
    assert len(labels) == 9
    assert squares(pdf("labels"), 0, 200) == sorted(square_text(label) for label in labels)


def test_every_label_has_its_words() -> None:
    read = body(pdf("labels"))
    for label in labels_of(every_sheet()["labels"]):
        for part in (label.what, label.code, label.side, label.came_from, label.keep.replace(":", "")):
            assert flat(part) in read, part


def test_a_single_label_has_a_page_of_its_own() -> None:
    sheet = every_sheet()["labels"]
    made = to_pdf(sheet, single=True)
    texts = page_texts(made)
    for number, (label, text) in enumerate(zip(labels_of(sheet), texts, strict=True), 1):
        for part in (label.what, label.code, label.note, sheet.vehicle, f"page {number} of 9", "measure me"):
            assert flat(part) in flat(text), part
    assert squares(made, 2, 150) == [square_text(labels_of(sheet)[2])]


def test_twenty_five_labels_take_two_pages_of_three_by_eight() -> None:
    rows = tuple(Label(what=f"bag {n}", code=f"B{n:03d}".replace("0", "Z")) for n in range(25))
    sheet = Sheet(
        kind="labels", title="Labels", vehicle=NAME, date=TODAY, line=1, code="ABCD",
        sections=(Section(heading="labels", rows=rows),),
    )  # fmt: skip
    texts = page_texts(to_pdf(sheet))
    assert [text.count("bag ") for text in texts] == [24, 1]
    dpi = 200
    image = Image.fromarray(picture(to_pdf(sheet), 0, dpi))
    middles = [found.position for found in zxingcpp.read_barcodes(image)]
    assert len(middles) == 24
    assert len({round(p.top_left.x / dpi * MM) for p in middles}) == 3
    assert len({round(p.top_left.y / dpi * MM) for p in middles}) == 8


def test_labels_nobody_needs_are_a_page_that_says_so() -> None:
    sheet = Sheet(
        kind="labels", title="Labels", vehicle=NAME, date=TODAY, line=1, code="ABCD",
        sections=(Section(heading="labels", empty="Nothing to label."),),
    )  # fmt: skip
    assert flat("Nothing to label.") in body(to_pdf(sheet))


# ---- bytes


@pytest.mark.parametrize("kind", ["wall", "closing", "labels"])
def test_the_same_sheet_gives_the_same_bytes(kind: str) -> None:
    assert to_pdf(every_sheet()[kind]) == pdf(kind)


def test_another_run_on_another_clock_gives_the_same_bytes() -> None:
    code = (
        "import hashlib, tests.sheets.every as e, witnessmark.press.printing as p;"
        "print(hashlib.sha256(p.to_pdf(e.every_sheet()['session'])).hexdigest())"
    )
    env = {"PYTHONPATH": "src:.", "PYTHONHASHSEED": "77", "TZ": "Pacific/Auckland"}
    root = Path(__file__).resolve().parents[2]
    ran = subprocess.run(
        [sys.executable, "-c", code], cwd=root, env=env, capture_output=True, encoding="utf-8", check=True
    )
    assert ran.stdout.strip() == hashlib.sha256(pdf("session")).hexdigest()


def test_no_moment_is_kept_in_the_file() -> None:
    assert b"CreationDate" not in pdf("gate")
    assert b"ModDate" not in pdf("gate")


def test_pages_come_as_pictures_and_drawings_too() -> None:
    sheet = every_sheet()["session"]
    pages = len(page_texts(pdf("session")))
    assert [png[:4] for png in to_png_pages(sheet, ppi=40)] == [b"\x89PNG"] * pages
    assert [svg[:4] for svg in to_svg_pages(sheet)] == [b"<svg"] * pages


def test_letter_paper_has_its_own_size() -> None:
    document = pypdfium2.PdfDocument(to_pdf(every_sheet()["gate"], paper="us-letter"))
    assert document[0].get_size() == pytest.approx((612, 792))
    document.close()


def test_printing_writes_the_whole_file_or_nothing(tmp_path: Path) -> None:
    out = tmp_path / "ü wall.pdf"
    print_to(every_sheet()["wall"], out)
    assert out.read_bytes() == pdf("wall")
    with pytest.raises(BadInput) as refused:
        print_to(every_sheet()["wall"], tmp_path / "nowhere" / "wall.pdf")
    assert "cannot be written" in refused.value.given
    assert sorted(p.name for p in tmp_path.iterdir()) == ["ü wall.pdf"]


def test_ink_is_read_the_right_way_round() -> None:
    line = np.array([False, True, True, False, True])
    assert list(runs(line)) == [(1, 2), (4, 1)]
    assert date(2026, 3, 14) == TODAY
