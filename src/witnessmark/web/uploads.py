"""Files on their way in: held in memory or in a nameless place until they were looked at, and no longer."""

from __future__ import annotations

from tempfile import SpooledTemporaryFile
from typing import IO, Any, Literal

from django.core.files.uploadedfile import UploadedFile
from django.core.files.uploadhandler import FileUploadHandler
from django.http import HttpRequest

from witnessmark.exchange.pictures import MOST_BYTES
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.photos import Sent, kept_names, take_in
from witnessmark.web.record import AT_HAND

MOST_TOGETHER = 512 * 2**20  # of one question with all its files
_IN_MEMORY = 4 * 2**20
_LONGEST_NAME = 60


class Nameless(FileUploadHandler):
    """Takes each file into a place without a name; more of one than may come is counted and let go.

    The place is closed with the question.
    """

    def new_file(self, *args: Any, **named: Any) -> None:
        super().new_file(*args, **named)
        self.place: IO[bytes] = SpooledTemporaryFile(_IN_MEMORY)  # noqa: SIM115

    def receive_data_chunk(self, raw_data: bytes, start: int) -> bytes | None:
        if start <= MOST_BYTES:
            self.place.write(raw_data)
        return None

    def file_complete(self, file_size: int) -> UploadedFile[Any]:
        self.place.seek(0)
        return UploadedFile(self.place, self.file_name, self.content_type, file_size, self.charset)


def photos_kept(request: HttpRequest, how: Literal["GET", "POST"]) -> tuple[str, ...]:
    """Names of the photos that were sent ahead of a form, as the form or the address gives them."""
    at_hand = request.META[AT_HAND]
    assert isinstance(at_hand, AtHand)
    return kept_names(at_hand.folder, getattr(request, how).getlist("kept"))


def photos_sent(request: HttpRequest) -> tuple[str, ...]:
    """Names of the photos that came with a form, all of them on the disk; those sent before come first.

    Raises BadInput for the first that is no picture.
    """
    at_hand = request.META[AT_HAND]
    assert isinstance(at_hand, AtHand)
    before = photos_kept(request, "POST")
    files = request.FILES.getlist("photo")
    sent = (Sent(file.read(), (file.name or "")[:_LONGEST_NAME]) for file in files)
    taken = take_in(at_hand.folder, sent)
    at_hand.thumbnails.want(taken)
    return tuple(dict.fromkeys((*before, *taken)))
