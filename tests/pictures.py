"""Pictures for tests, drawn here: as a camera writes them, with place, time and maker beside the points."""

from __future__ import annotations

import io

from PIL import Image, ImageDraw
from PIL.ExifTags import GPS, IFD, Base

PLACE = b"51.477928"
MAKER = "Invented Cameras"
RED, BLUE = (200, 20, 20), (20, 20, 200)


def drawn(number: int = 1, size: tuple[int, int] = (320, 240)) -> Image.Image:
    """Red above, blue below, and as many strokes as the number says, so that no two are alike."""
    picture = Image.new("RGB", size, RED)
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, size[1] // 2, size[0], size[1]), fill=BLUE)
    for stroke in range(number % 97):
        pen.line((3 * stroke, 0, 3 * stroke, 8), fill="white")
    pen.text((10, size[1] // 2 + 10), f"picture {number}", fill="white")
    return picture


def shot(number: int = 1, size: tuple[int, int] = (320, 240), *, turned: int = 1) -> bytes:
    """A JPEG as a phone sends it, with where it was taken; `turned` is the orientation it says."""
    exif = Image.Exif()
    exif[Base.Make] = MAKER
    exif[Base.Orientation] = turned
    exif[Base.DateTime] = "2026:03:14 10:00:00"
    place = exif.get_ifd(IFD.GPSInfo)
    place[GPS.GPSLatitudeRef] = "N"
    place[GPS.GPSLatitude] = (51.0, 28.0, 40.54)
    place[GPS.GPSLongitudeRef] = "W"
    place[GPS.GPSLongitude] = (0.0, 0.0, 5.31)
    made = io.BytesIO()
    drawn(number, size).save(made, "JPEG", exif=exif, comment=PLACE, quality=90)
    return made.getvalue()


def saved(kind: str, picture: Image.Image | None = None) -> bytes:
    """The drawn picture as a file of another kind."""
    made = io.BytesIO()
    (picture or drawn()).save(made, kind)
    return made.getvalue()
