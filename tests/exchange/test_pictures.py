"""Pictures coming in: only what is seen comes through, upright; whatever is no whole picture is refused.

What is left beside the points is read by another reader of JPEG segments, written here after ITU-T T.81,
annex B (markers; from memory), which does not lean on the library that makes the pictures.
"""

from __future__ import annotations

import io
import struct
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from tests.pictures import BLUE, MAKER, PLACE, RED, drawn, saved, shot
from witnessmark.exchange.pictures import LONGEST_EDGE, MOST_BYTES, cleaned, smaller
from witnessmark.ground.errors import BadInput


def opened(raw: bytes) -> Image.Image:
    picture = Image.open(io.BytesIO(raw))
    picture.load()
    return picture


def segments(raw: bytes) -> list[int]:
    """The markers of a JPEG up to its scan."""
    found, at = [], 2
    while raw[at] == 0xFF and raw[at + 1] != 0xDA:
        found.append(raw[at + 1])
        at += 2 + int.from_bytes(raw[at + 2 : at + 4], "big")
    return found


def near(points: object, colour: tuple[int, int, int]) -> bool:
    assert isinstance(points, tuple)
    return all(abs(a - b) < 30 for a, b in zip(points, colour, strict=True))


def test_place_maker_and_every_other_word_of_the_camera_are_gone() -> None:
    raw = shot()
    assert {0xE1, 0xFE} <= set(segments(raw))  # as it came: APP1 with the place, and a comment
    assert PLACE in raw
    kept = cleaned(raw)
    assert set(segments(kept)) & {*range(0xE1, 0xF0), 0xFE} == set()
    assert PLACE not in kept
    assert MAKER.encode() not in kept
    assert not opened(kept).getexif()


@pytest.mark.parametrize("turned", range(1, 9))
def test_every_way_a_phone_was_held_comes_out_upright(turned: int) -> None:
    """The eight orientations of EXIF (tag 274): each file shows the same scene once it is turned."""
    undo = {
        2: Image.Transpose.FLIP_LEFT_RIGHT,
        3: Image.Transpose.ROTATE_180,
        4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE,
        6: Image.Transpose.ROTATE_90,
        7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }
    scene = drawn(size=(320, 240))
    held = scene.transpose(undo[turned]) if turned in undo else scene
    exif = Image.Exif()
    exif[274] = turned
    raw = io.BytesIO()
    held.save(raw, "JPEG", exif=exif, quality=95)
    seen = opened(cleaned(raw.getvalue()))
    assert seen.size == (320, 240)
    assert near(seen.getpixel((160, 100)), RED)
    assert near(seen.getpixel((300, 230)), BLUE)


@pytest.mark.parametrize("kind", ["PNG", "WEBP", "JPEG"])
def test_three_kinds_come_in_and_one_is_kept(kind: str) -> None:
    kept = opened(cleaned(saved(kind)))
    assert (kept.format, kept.mode, kept.size) == ("JPEG", "RGB", (320, 240))


@pytest.mark.parametrize("mode", ["L", "LA", "P", "RGBA", "1"])
def test_other_ways_of_colour_become_plain_on_white(mode: str) -> None:
    picture = drawn().convert(mode)
    if mode in ("RGBA", "LA"):
        picture.putalpha(0)
    kept = opened(cleaned(saved("PNG", picture)))
    assert kept.mode == "RGB"
    if mode in ("RGBA", "LA"):
        assert near(kept.getpixel((5, 5)), (255, 255, 255))


def test_a_large_picture_is_brought_to_size_and_a_thumbnail_is_light() -> None:
    kept = cleaned(shot(size=(4000, 3000)))
    assert opened(kept).size == (LONGEST_EDGE, LONGEST_EDGE * 3 // 4)
    small = smaller(kept)
    assert max(opened(small).size) == 480
    assert len(small) < 40_000
    assert opened(smaller(cleaned(shot(size=(100, 80))))).size == (100, 80)


def test_the_same_file_gives_the_same_bytes() -> None:
    assert cleaned(shot(3)) == cleaned(shot(3))
    assert cleaned(shot(3)) != cleaned(shot(4))


def swollen(wide: int, high: int) -> bytes:
    """A PNG of a few bytes that says it is enormous."""

    def chunk(name: bytes, data: bytes) -> bytes:
        body = name + data
        return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))

    head = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"")) + chunk(b"IEND", b"")
    )


HEIF = b"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic" + bytes(64)


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (b"", "does not read as a picture"),
        (b"GIF89a" + bytes(40), "does not read as a picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "does not read as a picture"),
        (b"%PDF-1.7 and no picture", "does not read as a picture"),
        (shot()[:400], "does not read as a picture"),
        (saved("BMP"), "does not read as a picture"),
        (HEIF, "only some phones"),
        (swollen(9000, 8000), "9000 by 8000 points"),
        (swollen(60000, 60000), "far too much"),
        (bytes(MOST_BYTES + 1), "MB"),
    ],
    ids=["empty", "gif", "svg", "pdf", "cut-short", "bmp", "heif", "72-million", "bomb", "too-heavy"],
)
def test_what_is_no_such_picture_is_refused_in_three_parts(raw: bytes, said: str) -> None:
    with pytest.raises(BadInput, match=said) as refused:
        cleaned(raw, "left.jpg")
    assert refused.value.given.startswith("left.jpg")
    assert refused.value.do


@pytest.mark.filterwarnings("ignore::UserWarning")  # the library's own, about torn words of the camera
@given(st.binary(max_size=300), st.integers(0, 600), st.integers(0, 40))
def test_a_torn_file_is_a_picture_or_is_refused_and_nothing_else(junk: bytes, at: int, cut: int) -> None:
    raw = shot()
    try:
        kept = cleaned(raw[:at] + junk + raw[at + cut :])
    except BadInput:
        return
    assert opened(kept).format == "JPEG"
