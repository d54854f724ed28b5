"""Pictures coming in: known by their content, turned upright, and made anew of nothing but what is seen.

What a camera writes beside the picture (place, time, device, a small copy of the whole) does not come
through: only the points of the picture are kept, saved as JPEG.
"""

from __future__ import annotations

import io
import struct

from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from witnessmark.ground.errors import BadInput

MOST_BYTES = 25 * 2**20  # of a picture sent
MOST_POINTS = 60_000_000  # of a picture once unpacked
LONGEST_EDGE = 3000  # points; what is kept is no larger
THUMBNAIL_EDGE = 480
KINDS = ("JPEG", "PNG", "WEBP")
_QUALITY = 88
_SMALL_QUALITY = 78
_TROUBLE = (
    UnidentifiedImageError,
    Image.DecompressionBombError,
    OSError,
    SyntaxError,
    ValueError,
    TypeError,
    struct.error,
    EOFError,
    IndexError,
    OverflowError,
)
# What the head of a file says that some phones write; nothing here can read it.
_PHONE_HEADS = (b"heic", b"heix", b"hevc", b"mif1", b"msf1", b"heim", b"heis", b"avif")


def cleaned(raw: bytes, name: str = "") -> bytes:
    """A picture as it is kept: upright, at most 3000 points long, with nothing beside what is seen.

    raw   the file as it came; JPEG, PNG or WebP, known by its content, never by its name
    name  what to call it where it is refused

    The same file gives the same bytes. Raises BadInput for what is no such picture, is cut short,
    or is too large.
    """
    said = name or "the file"
    if len(raw) > MOST_BYTES:
        raise _refused(f"{said} has {len(raw) / 2**20:.0f} MB", f"a picture of at most {MOST_BYTES >> 20} MB")
    if raw[4:8] == b"ftyp" and raw[8:12] in _PHONE_HEADS:
        raise BadInput(
            given=f"{said} is a picture of a kind that only some phones read (HEIF)",
            holds="JPEG, PNG or WebP",
            do="Set the phone's camera to JPEG (often called: most compatible), and take it once more.",
        )
    try:
        with Image.open(io.BytesIO(raw), formats=KINDS) as picture:
            if picture.width * picture.height > MOST_POINTS:
                points = f"{picture.width} by {picture.height} points"
                raise _refused(f"{said} has {points}", f"a picture of at most {MOST_POINTS // 10**6} million")
            picture.draft(None, (LONGEST_EDGE, LONGEST_EDGE))
            return _as_jpeg(_upright(picture), LONGEST_EDGE, _QUALITY)
    except Image.DecompressionBombError as trouble:
        raise _refused(f"{said} would unpack to far too much", "a picture as a camera takes it") from trouble
    except BadInput:
        raise
    except _TROUBLE as trouble:
        raise _refused(f"{said} does not read as a picture", "a whole JPEG, PNG or WebP") from trouble


def smaller(raw: bytes, edge: int = THUMBNAIL_EDGE) -> bytes:
    """A kept picture at most so many points long, for a page or for paper.

    Raises BadInput where it does not read as a picture.
    """
    try:
        with Image.open(io.BytesIO(raw), formats=("JPEG",)) as picture:
            picture.draft("RGB", (edge, edge))
            return _as_jpeg(picture.convert("RGB"), edge, _SMALL_QUALITY)
    except _TROUBLE as trouble:
        raise _refused("a photo of the record does not read as a picture", "a whole JPEG") from trouble


def _upright(picture: Image.Image) -> Image.Image:
    """The picture as it is meant to be looked at, in plain red, green and blue, on white."""
    profile = picture.info.get("icc_profile")
    picture.load()
    turned = ImageOps.exif_transpose(picture)
    if turned.mode not in ("RGB", "CMYK", "L"):
        clear = turned.convert("RGBA")
        ground = Image.new("RGBA", clear.size, "white")
        return Image.alpha_composite(ground, clear).convert("RGB")
    return _plain_colours(turned, profile).convert("RGB")


def _plain_colours(picture: Image.Image, profile: object) -> Image.Image:
    """Colours as every screen shows them; a profile that cannot be read changes nothing."""
    if not isinstance(profile, bytes) or picture.mode == "L":
        return picture
    try:
        seen = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        plain = ImageCms.profileToProfile(picture, seen, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError):
        return picture
    return plain or picture


def _as_jpeg(picture: Image.Image, edge: int, quality: int) -> bytes:
    """Only the points, saved: a new picture is made of them, so that nothing else can come along."""
    if max(picture.size) > edge:
        picture.thumbnail((edge, edge), Image.Resampling.BICUBIC, reducing_gap=2.0)
    bare = Image.new("RGB", picture.size)
    bare.paste(picture)
    made = io.BytesIO()
    bare.save(made, "JPEG", quality=quality)
    return made.getvalue()


def _refused(given: str, holds: str) -> BadInput:
    return BadInput(given=given, holds=holds, do="Send another; nothing of this one was kept.")
