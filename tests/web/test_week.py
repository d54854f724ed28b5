"""What is told to others: the week on a page and as files, the history as one PDF."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pypdf
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from tests.pictures import PLACE, shot
from tests.web.van import browser, text_of, van, words_in
from witnessmark.restoration.at_hand import AtHand


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def client(small: AtHand) -> Client:
    return browser(small)


def with_photos(client: Client) -> None:
    for line, number in ((3, 1), (6, 2)):
        photo = SimpleUploadedFile("a.jpg", shot(number, (2000, 1500)))
        client.post(f"/journal/{line}/photo", {"id": f"{number}" * 20, "photo": photo})


def test_the_week_is_told_with_its_photos_and_earlier_weeks_are_near(client: Client) -> None:
    with_photos(client)
    answer = client.get("/week", {"ending": "2025-11-03"})
    said = text_of(answer)
    assert "A week on the van 28 October to 3 November 2025" in said
    assert "Apart: wheel nuts, left rear; brake drum, left rear; hub nut, left rear;" in said
    assert "The shaft seal, left rear: found weeping." in said
    assert answer.content.decode().count("may be seen") == 2
    assert "/week?ending=2025-10-27" in answer.content.decode()
    assert "blue tin" not in said  # where things lie is nobody's affair


def test_without_a_day_the_latest_week_of_work_is_told(client: Client, small: AtHand) -> None:
    with small.opened() as restoration:
        restoration.write(restoration.hear("proved wheel nuts left rear on 4 March"))
    assert "8 to 14 March 2026" in text_of(client.get("/week"))


def test_the_files_hold_the_photos_that_were_left_ticked_and_no_place(client: Client, small: AtHand) -> None:
    with_photos(client)
    names = sorted(file.name for file in (small.folder / "photos").iterdir())
    answer = client.get("/week/files", {"ending": "2025-11-03", "photo": names[:1]})
    assert answer["Content-Disposition"] == 'attachment; filename="week-2025-11-03.zip"'
    with zipfile.ZipFile(io.BytesIO(answer.content)) as together:
        assert together.namelist() == ["week.html", "week.md", "1.jpg"]
        photo = together.read("1.jpg")
        assert b'src="1.jpg"' in together.read("week.html")
        assert names[0].encode() not in together.read("week.html")
    assert PLACE not in photo
    picture = Image.open(io.BytesIO(photo))
    assert (picture.size, dict(picture.getexif())) == ((1600, 1200), {})


def test_the_same_week_gives_the_same_file(client: Client) -> None:
    first, again = (client.get("/week/files", {"ending": "2025-11-03"}).content for _ in range(2))
    assert first == again


def test_the_history_is_read_here_and_printed_with_its_photos(client: Client, small: AtHand) -> None:
    with_photos(client)
    said = text_of(client.get("/history", {"part": "0"}))
    assert "History of a restoration" in said
    assert "2 photos" in said
    answer = client.post("/history")
    assert answer["Content-Type"] == "application/pdf"
    pages = pypdf.PdfReader(io.BytesIO(answer.content)).pages
    printed = " ".join(page.extract_text() for page in pages)
    for heading in (
        "What lets go",
        "Figures, with their standing",
        "Parts, with their sources",
        "What was found",
    ):
        assert heading in printed
    assert words_in(small)[-1].startswith("printed the history sheet ")
