"""Small copies of photos, made one after another beside everything else: no page waits for them."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from threading import Condition, Thread

from witnessmark.exchange.pictures import smaller
from witnessmark.ground.errors import BadInput
from witnessmark.store.photo_folder import keep_thumbnail, photo_file, thumbnail


class Thumbnails:
    """The small copies of one record's photos. Its one thread is there only while there is work."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._waiting: dict[str, None] = {}
        self._at_work = False
        self._moved = Condition()

    def want(self, names: Sequence[str]) -> None:
        """Have these made, soon; comes back at once."""
        with self._moved:
            self._waiting |= dict.fromkeys(names)
            if self._waiting and not self._at_work:
                self._at_work = True
                Thread(target=self._work, daemon=True).start()

    def small(self, name: str) -> bytes | None:
        """The small copy; None where it is not made yet, and then it soon is."""
        made = thumbnail(self.folder, name)
        if made is None:
            self.want((name,))
        return made

    def settle(self, seconds: float) -> bool:
        """Wait until nothing is left to make; whether that was so in time."""
        with self._moved:
            return self._moved.wait_for(lambda: not self._at_work, seconds)

    def _work(self) -> None:
        while name := self._next():
            with suppress(BadInput, OSError):
                if thumbnail(self.folder, name) is None:
                    keep_thumbnail(self.folder, name, smaller(photo_file(self.folder, name).read_bytes()))

    def _next(self) -> str:
        """The next to be made; "" ends the thread."""
        with self._moved:
            name = next(iter(self._waiting), "")
            self._waiting.pop(name, None)
            if not name:
                self._at_work = False
                self._moved.notify_all()
            return name
